/* npx tsx scripts/bench-reports.ts: how fast the month report is made of a large log. */
import { pathToFileURL } from "node:url";
import { Temporal } from "temporal-polyfill";
import { countryRules } from "../src/cylinders/countryRules";
import { countryContext } from "../src/log/countryContext";
import { readLog } from "../src/log/readLog";
import { monthReport } from "../src/reports/month/monthReport";
import { PROGRAM } from "../src/reports/month/options";
import type { CellValue, Sheet } from "../src/sheet/sheet";
import { FileWorkbook } from "../src/workbook/file/fileWorkbook";
import { writeXlsx } from "../src/workbook/file/writeXlsx";

const ROWS = 20_000;
const CYLINDERS = 400;
/** 1 January 2026. */
const FIRST_DAY = 46_023;
const DAYS = 334;

/** From the sheets of a log in memory to the bytes of the report's file. */
export async function benchReports(print: (line: string) => void): Promise<void> {
  print("Reports (best of several runs, one thread)");
  const sheets = [fills(), register()];
  const rules = countryRules("US");
  const asOf = Temporal.PlainDate.from("2026-11-30");
  const options = {
    month: Temporal.PlainYearMonth.from("2026-10"),
    asOf,
    units: "us",
    paper: "Letter",
    names: false,
    audit: {},
    program: PROGRAM,
  } as const;
  let whole = Infinity;
  let read = Infinity;
  let bytes = 0;
  for (let run = 0; run < 4; run++) {
    const start = performance.now();
    const log = readLog(sheets, { ...countryContext(rules), units: "us", asOf });
    read = Math.min(read, performance.now() - start);
    const { drafts } = await monthReport(log, rules, options);
    const workbook = new FileWorkbook({ sheets: [], settings: new Map(), leftOut: [] });
    await workbook.addSheets(drafts);
    bytes = (await writeXlsx(workbook.content)).length;
    whole = Math.min(whole, performance.now() - start);
  }
  const name = `month report of a log of ${ROWS.toLocaleString("en-US")} fills, as a file`;
  print(
    `  ${name.padEnd(66)} ${seconds(whole)} (goal 3 s; reading ${seconds(read)}; ${Math.round(bytes / 1000)} kB)`,
  );
}

const MIXES = ["EAN32", "air", "EAN36", "EAN32", "TX 18/45", "EAN50"];
const ANALYSES = [32.1, null, 35.8, 31.7, 18.2, 50.3];

function fills(): Sheet {
  const headings = ["No.", "Date", "Serial", "Owner", "Start psi", "Start mix", "Ordered mix", "Method", "End psi", "O2 %", "He %", "Analysed by", "MOD ft", "Filled by", "Signature"]; // prettier-ignore
  const rows = Array.from({ length: ROWS }, (_, at): CellValue[] => {
    const mix = MIXES[at % MIXES.length]!;
    const helium = mix.startsWith("TX") ? 45 : null;
    const method = mix === "air" ? "air" : at % 3 ? "partial pressure" : "premix";
    return [
      at + 1, FIRST_DAY + Math.floor((at * DAYS) / ROWS), serial(at % CYLINDERS), `C-${(at * 7) % 200}`, 300 + (at % 50) * 10,
      MIXES[(at + 1) % MIXES.length]!, mix, method, 2900 + (at % 30) * 10, ANALYSES[at % MIXES.length]!, helium,
      mix === "air" ? null : "R.", mix === "air" ? null : 110, at % 2 ? "R." : "T.", at % 9 ? "x" : null,
    ]; // prettier-ignore
  });
  return sheetOf("Fills", headings, rows, (heading) => (heading === "Date" ? "m/d/yyyy" : undefined));
}

function register(): Sheet {
  const headings = [
    "Serial",
    "Size",
    "Class",
    "Made",
    "Service psi",
    "Last hydro",
    "Last visual",
    "O2 rating",
  ];
  const rows = Array.from({ length: CYLINDERS }, (_, at): CellValue[] => [
    serial(at), "AL80", "3AL", "2012/03", 3000, `20${20 + (at % 6)}/0${1 + (at % 9)}`, `202${5 + (at % 2)}/0${1 + (at % 9)}`,
    at % 4 ? "O2 clean" : 40,
  ]); // prettier-ignore
  return sheetOf("Cylinders", headings, rows, () => undefined);
}

function serial(at: number): string {
  return `GP${String(10_000 + at * 37)}`;
}

function sheetOf(
  name: string,
  headings: readonly string[],
  rows: readonly (readonly CellValue[])[],
  formatOf: (heading: string) => string | undefined,
): Sheet {
  const formats = headings.map(formatOf);
  return {
    name,
    hidden: false,
    dateSystem: 1900,
    merges: [],
    rows: [{ values: headings }, ...rows.map((values) => ({ values, formats }))],
  };
}

const seconds = (milliseconds: number) => `${(milliseconds / 1000).toFixed(2)} s`;

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  await benchReports((line) => console.log(line));
