import { readFileSync } from "node:fs";
import { Temporal } from "temporal-polyfill";
import { countryRules } from "../../src/cylinders/countryRules";
import { countryContext } from "../../src/log/countryContext";
import type { Log } from "../../src/log/log";
import { readLog } from "../../src/log/readLog";
import { monthReport, type MonthReport } from "../../src/reports/month/monthReport";
import type { MonthOptions } from "../../src/reports/month/options";
import { draftValue, type SheetDraft } from "../../src/sheet/draft/draft";
import type { CellValue } from "../../src/sheet/sheet";
import { openFile } from "../../src/workbook/file/openFile";
import { readShopSettings, type ShopSettings } from "../../src/workbook/settings";

export const SAMPLE = new URL("../../shared/samples/gannet-point.xlsx", import.meta.url);
export const US = countryRules("US");
export const AS_OF = Temporal.PlainDate.from("2026-10-31");

export interface Sample {
  readonly log: Log;
  readonly settings: ShopSettings;
}

/** The sample log as the command line reads it. */
export async function readSample(): Promise<Sample> {
  const workbook = await openFile(new Uint8Array(readFileSync(SAMPLE)), "gannet-point.xlsx");
  const { settings } = await readShopSettings(workbook);
  const sheets = await Promise.all((await workbook.listSheets()).map(({ name }) => workbook.readSheet(name)));
  return { log: readLog(sheets, { ...countryContext(US), units: "us", asOf: AS_OF }), settings };
}

export function optionsFor({ settings }: Sample, more: Partial<MonthOptions> = {}): MonthOptions {
  const { house, airTests, sources } = settings;
  return {
    month: Temporal.PlainYearMonth.from("2026-10"),
    asOf: AS_OF,
    units: "us",
    paper: "Letter",
    names: false,
    audit: { house, airTests, sources },
    accepted: settings.accepted,
    program: "Brimbook",
    ...more,
  };
}

export function reportOf(sample: Sample, more: Partial<MonthOptions> = {}): Promise<MonthReport> {
  return monthReport(sample.log, US, optionsFor(sample, more));
}

export function sheetNamed({ drafts }: Pick<MonthReport, "drafts">, name: string): SheetDraft {
  return drafts.find((draft) => draft.name.startsWith(name))!;
}

/** A table's rows, by its headings. */
export function tableOf(draft: SheetDraft, nth = 0): readonly Readonly<Record<string, CellValue>>[] {
  const { firstRow, lastRow } = draft.tables[nth]!.area;
  const values = draft.rows.map(({ cells }) => cells.map(draftValue));
  const headings = values[firstRow]!.map(String);
  return values
    .slice(firstRow + 1, lastRow + 1)
    .map((row) => Object.fromEntries(headings.map((heading, column) => [heading, row[column] ?? null])));
}

/** Labels and what stands beside them, the first of each. */
export function factsOf(draft: SheetDraft): ReadonlyMap<string, CellValue> {
  const facts = new Map<string, CellValue>();
  for (const { cells } of draft.rows) {
    const label = draftValue(cells[0]);
    if (typeof label === "string" && !facts.has(label)) facts.set(label, draftValue(cells[1]));
  }
  return facts;
}
