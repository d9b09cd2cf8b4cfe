import type { PageDraft } from "../../../sheet/draft/draft";
import { cellName } from "../../../sheet/sheet";
import type { LinkedCell, SheetContent } from "../content";
import { escapeXml } from "../xml";
import { chartXml } from "./chartXml";
import { drawingXml } from "./drawingXml";
import { fixedRows, quotedSheet, RELATIONS } from "./names";
import { relationsXml, SHEET_TYPES, type Part, type Relation } from "./parts";
import { numberTables, tableXml, type NumberedTable } from "./tableXml";

/** What a sheet's own part says besides its cells, and the parts that belong to it. */
export interface SheetReport {
  /** Before the sheet's views. */
  readonly head: string;
  /** After its merged cells. */
  readonly tail: string;
  readonly parts: readonly Part[];
  /** The rows that every page repeats, as a defined name refers to them. */
  readonly printTitles?: string;
}

const CHART_TYPE = "application/vnd.openxmlformats-officedocument.drawingml.chart+xml";
const DRAWING_TYPE = "application/vnd.openxmlformats-officedocument.drawing+xml";

/** By sheet; undefined for sheets that have neither links nor anything of our reports. */
export function sheetReports(sheets: readonly SheetContent[]): readonly (SheetReport | undefined)[] {
  const tables = numberTables(sheets);
  let chartsBefore = 0;
  return sheets.map((sheet, index) => {
    if (!sheet.report && !sheet.links?.length) return undefined;
    const before = chartsBefore;
    chartsBefore += sheet.report?.charts.length ?? 0;
    return sheetReport(sheet, index + 1, tables[index]!, before);
  });
}

function sheetReport(
  sheet: SheetContent,
  number: number,
  tables: readonly NumberedTable[],
  chartsBefore: number,
): SheetReport {
  const { links = [], report } = sheet;
  const { charts = [], page } = report ?? {};
  const relations: Relation[] = [];
  const related = (type: string, target: string, external = false): string => {
    const known = relations.findIndex((each) => each.target === target);
    if (known >= 0) return `rId${known + 1}`;
    return `rId${relations.push({ type: `${RELATIONS}/${type}`, target, external })}`;
  };
  const linksXml = hyperlinksXml(links, (file) => related("hyperlink", file, true));
  const drawing = `xl/drawings/drawing${number}.xml`;
  const chartPart = (index: number) => `xl/charts/chart${chartsBefore + index + 1}.xml`;
  const drawingElement =
    charts.length > 0 ? `<drawing r:id="${related("drawing", `../${fromSheets(drawing)}`)}"/>` : "";
  const tablePart = (table: NumberedTable) => `xl/tables/table${table.number}.xml`;
  const tableElements = tables.map(
    (table) => `<tablePart r:id="${related("table", `../${fromSheets(tablePart(table))}`)}"/>`,
  );
  return {
    head: page && !page.stock ? `<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>` : "",
    tail:
      linksXml +
      (page ? pageXml(page) : "") +
      drawingElement +
      (tables.length > 0
        ? `<tableParts count="${tables.length}">${tableElements.join("")}</tableParts>`
        : ""),
    parts: [
      ...(relations.length > 0
        ? [{ name: `xl/worksheets/_rels/sheet${number}.xml.rels`, xml: relationsXml(relations) }]
        : []),
      ...tables.map((table) => ({
        name: tablePart(table),
        contentType: `${SHEET_TYPES}.table+xml`,
        xml: tableXml(table),
      })),
      ...(charts.length > 0
        ? [
            { name: drawing, contentType: DRAWING_TYPE, xml: drawingXml(charts) },
            {
              name: `xl/drawings/_rels/drawing${number}.xml.rels`,
              xml: relationsXml(
                charts.map((_chart, index) => ({
                  type: `${RELATIONS}/chart`,
                  target: `../${fromSheets(chartPart(index))}`,
                })),
              ),
            },
          ]
        : []),
      ...charts.map((chart, index) => ({
        name: chartPart(index),
        contentType: CHART_TYPE,
        xml: chartXml(chart, sheet),
      })),
    ],
    ...(page?.titleRows && { printTitles: fixedRows(sheet.name, page.titleRows) }),
  };
}

/** As parts in folders beside it refer to a part: not every program knows the way from the root. */
function fromSheets(part: string): string {
  return part.replace(/^xl\//, "");
}

function hyperlinksXml(links: readonly LinkedCell[], relationTo: (file: string) => string): string {
  if (links.length === 0) return "";
  const entries = links.map(({ row, column, link }) => {
    const place = escapeXml(`${quotedSheet(link.cell.sheet)}!${cellName(link.cell)}`);
    const file = link.file === undefined ? "" : ` r:id="${relationTo(encodeURI(link.file))}"`;
    return `<hyperlink ref="${cellName({ row, column })}"${file} location="${place}"/>`;
  });
  return `<hyperlinks>${entries.join("")}</hyperlinks>`;
}

/** Paper by its number (ECMA-376 part 1, 18.3.1.63). */
const PAPERS = { Letter: 1, A4: 9 } as const;

function pageXml({ paper, landscape, onePage, stock, footer }: PageDraft): string {
  const text = footer.replaceAll("&", "&&");
  const inches = (mm: number) => (mm / 25.4).toFixed(4);
  const margins = stock
    ? `left="${inches(stock.leftMm)}" right="0" top="${inches(stock.topMm)}" bottom="0" header="0" footer="0"`
    : `left="0.5" right="0.5" top="0.6" bottom="0.7" header="0.3" footer="0.35"`;
  return (
    `<pageMargins ${margins}/>` +
    `<pageSetup paperSize="${PAPERS[paper]}" orientation="${landscape ? "landscape" : "portrait"}"${stock ? "" : ` fitToWidth="1" fitToHeight="${onePage ? 1 : 0}"`}/>` +
    (stock
      ? ""
      : `<headerFooter><oddFooter>${escapeXml(`&L&8${text}&R&8&P / &N`)}</oddFooter></headerFooter>`)
  );
}
