import { tabNames } from "../../sheet/tabNames";
import { settingsPart, SETTINGS_NAMESPACE } from "../settingsPart";
import { WorkbookProblem } from "../workbook";
import type { WorkbookContent } from "./content";
import { Pace, type PaceOptions } from "./pace";
import { ZipWriter } from "./zipWriter";
import {
  COMPANIONS,
  contentTypesXml,
  METADATA_XML,
  ROOT_RELATIONS_XML,
  settingsPropertiesXml,
  SETTINGS_PROPERTIES,
  SETTINGS_RELATIONS_XML,
  sheetPart,
  workbookRelationsXml,
  workbookXml,
} from "./xlsx/packageXml";
import { sheetReports } from "./xlsx/reportParts";
import { ROWS_PER_PIECE, sheetXml, TextNumbers, type BookNumbers } from "./xlsx/sheetXml";
import { StyleNumbers } from "./xlsx/stylesXml";

/**
 * A workbook as the bytes of an .xlsx file. The same content gives the same bytes: nothing in them depends on
 * the day or the machine.
 *
 * @throws WorkbookProblem where the content cannot be an .xlsx file
 */
export async function writeXlsx(content: WorkbookContent, options: PaceOptions = {}): Promise<Uint8Array> {
  const { sheets } = content;
  if (sheets.length === 0) throw new WorkbookProblem("There is no sheet to save: add one, then save again.");
  const pace = new Pace(options);
  pace.total = sheets.reduce((sum, sheet) => sum + sheet.rows.length, 0);
  const shown = Math.max(
    0,
    sheets.findIndex((sheet) => !sheet.hidden),
  );
  const names = tabNames(sheets.map((sheet) => sheet.name));
  const reports = sheetReports(sheets.map((sheet, index) => ({ ...sheet, name: names[index]! })));
  const reportParts = reports.flatMap((report) => report?.parts ?? []);
  const tabs = sheets.map(({ hidden }, index) => ({
    name: names[index]!,
    hidden: hidden && index !== shown,
    printTitles: reports[index]?.printTitles,
  }));
  const withSettings = content.settings.size > 0;
  const book: BookNumbers = { styles: new StyleNumbers(), texts: new TextNumbers(), needsCalculation: false };

  const zip = new ZipWriter(pace);
  await zip.add("[Content_Types].xml", contentTypesXml(sheets.length, withSettings, reportParts));
  await zip.add("_rels/.rels", ROOT_RELATIONS_XML);
  for (const [index, sheet] of sheets.entries()) {
    await zip.add(sheetPart(index), sheetXml(sheet, index === shown, book, reports[index]), ROWS_PER_PIECE);
  }
  for (const { name, xml } of reportParts) await zip.add(name, xml);
  await zip.add("xl/workbook.xml", workbookXml(tabs, shown, sheets[0]!.dateSystem, book.needsCalculation));
  await zip.add("xl/_rels/workbook.xml.rels", workbookRelationsXml(sheets.length, withSettings));
  await zip.add(COMPANIONS.STYLES.name, book.styles.xml());
  await zip.add(COMPANIONS.TEXTS.name, book.texts.xml());
  await zip.add(COMPANIONS.METADATA.name, METADATA_XML);
  if (withSettings) {
    await zip.add(COMPANIONS.SETTINGS.name, settingsPart(content.settings));
    await zip.add("customXml/_rels/item1.xml.rels", SETTINGS_RELATIONS_XML);
    await zip.add(SETTINGS_PROPERTIES, settingsPropertiesXml(SETTINGS_NAMESPACE));
  }
  const bytes = zip.finish();
  pace.finish();
  return bytes;
}
