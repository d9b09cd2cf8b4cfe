/* npx tsx scripts/bench-log.ts: how fast logs are opened and read on this machine. */
import { pathToFileURL } from "node:url";
import { strToU8, Zip, ZipDeflate } from "fflate";
import { readLog } from "../src/log/readLog";
import { BLANK_ROW, type CellValue, type Sheet, type SheetRow } from "../src/sheet/sheet";
import type { WorkbookContent } from "../src/workbook/file/content";
import { openFile } from "../src/workbook/file/openFile";
import { writeXlsx } from "../src/workbook/file/writeXlsx";

const ROWS = 100_000;
const FILE_ROWS = 20_000;
const MILLION = 1_000_000;

export async function benchLog(print: (line: string) => void): Promise<void> {
  print("Logs (best of several runs, one thread)");
  const log = fillSheet(ROWS);
  const read = await seconds(5, () => readLog([log], { units: "us" }));
  row(print, `${thousands(ROWS)} rows of 20 columns, read and typed`, read, "goal 0.7 s");
  const far: Sheet = {
    ...log,
    rows: [...log.rows.slice(0, 200), ...blanks(MILLION), ...log.rows.slice(200, 201)],
  };
  row(print, "a million blank rows between two fills, read", await seconds(3, () => readLog([far])));

  const sparse = await zipped(millionRows(false));
  row(
    print,
    "used range of a million rows, stored sparsely, opened and read",
    await opened(sparse),
    "goal 1 s",
  );
  const stored = await zipped(millionRows(true));
  row(print, "the same, every row stored", await opened(stored), "goal 10 s");

  const file = await writeXlsx(contentOf(fillSheet(FILE_ROWS)));
  row(print, `${thousands(FILE_ROWS)} rows of 20 columns in an .xlsx of ${megabytes(file)}, opened`, await seconds(3, () => openFile(file, "log.xlsx")), "goal 4 s with the grid"); // prettier-ignore
  row(print, "  and saved", await seconds(3, async () => writeXlsx(contentOf(fillSheet(FILE_ROWS)))));
}

const HEADINGS = [
  "No.", "Date", "Time", "Serial", "Owner", "Start psi", "Start mix", "Ordered mix", "Method", "Bank", "O2 to",
  "End psi", "Temp °F", "Settled psi", "O2 %", "MOD ft", "Filled by", "Signature", "Price", "Remarks",
]; // prettier-ignore
const MIXES = ["EAN32", "air", "EAN36", "28", "TX 18/45", "EAN50"];
const DATES = HEADINGS.map((heading) =>
  heading === "Date" ? "m/d/yyyy" : heading === "Time" ? "h:mm" : undefined,
);

/** A log with the usual variety: 140 cylinders, a month of some thirty days after another, now and then a remark. */
function fillSheet(rows: number): Sheet {
  const fills = Array.from({ length: rows }, (_, at): SheetRow => ({ values: fill(at), formats: DATES }));
  return {
    name: "Fills",
    hidden: false,
    dateSystem: 1900,
    merges: [],
    rows: [{ values: HEADINGS }, ...fills],
  };
}

function fill(at: number): CellValue[] {
  const mix = MIXES[at % MIXES.length]!;
  return [
    at + 1, 45_000 + Math.floor(at / 60), (480 + (at % 600)) / 1440, `A1${String(at % 140).padStart(4, "0")}`,
    `C-${(at * 7) % 200}`, 300 + (at % 50) * 10, MIXES[(at + 1) % MIXES.length]!, mix, mix === "air" ? "air" : "PP",
    `Bank ${1 + (at % 3)}`, 400 + (at % 40) * 5, 2900 + (at % 30) * 10, 70 + (at % 40), 2850 + (at % 20) * 10,
    20.8 + (at % 150) / 10, 80 + (at % 60), at % 2 ? "R." : "T.", "x", 8 + (at % 9), at % 10 ? null : `note ${at % 500}`,
  ]; // prettier-ignore
}

function blanks(rows: number): readonly SheetRow[] {
  return Array.from({ length: rows }, () => BLANK_ROW);
}

/** A sheet of twenty fills whose formatting goes on for a million rows: as one row far down, or as every row. */
function* millionRows(everyRow: boolean): Generator<string> {
  yield `<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>`;
  for (let first = 1; first <= (everyRow ? MILLION : 20); first += 10_000) {
    const rows = Array.from({ length: everyRow ? 10_000 : 20 }, (_, n) => rowXml(first + n));
    yield rows.join("");
  }
  if (!everyRow) yield `<row r="${MILLION}" s="1" customFormat="1"><c r="XFD${MILLION}" s="1"/></row>`;
  yield `</sheetData></worksheet>`;
}

function rowXml(row: number): string {
  const text = (column: string, value: string) =>
    `<c r="${column}${row}" t="inlineStr"><is><t>${value}</t></is></c>`;
  const cells =
    row === 1
      ? ["Date", "Serial", "Start psi", "End psi"].map((heading, n) => text("ABCD"[n]!, heading)).join("")
      : row <= 20
        ? `${text("A", "2026-10-03")}${text("B", "A10001")}<c r="C${row}"><v>500</v></c><c r="D${row}"><v>3000</v></c>`
        : `<c r="A${row}" s="1"/><c r="B${row}" s="1"/><c r="C${row}" s="1"/><c r="D${row}" s="1"/>`;
  return `<row r="${row}" s="1" customFormat="1">${cells}</row>`;
}

/** A workbook of one sheet, whose part comes in pieces. */
async function zipped(sheet: Iterable<string>): Promise<Uint8Array> {
  const pieces: Uint8Array[] = [];
  const zip = new Zip((error, piece) => {
    if (error) throw error;
    pieces.push(piece);
  });
  const parts: readonly (readonly [string, Iterable<string>])[] = [
    ...PARTS,
    ["xl/worksheets/sheet1.xml", sheet],
  ];
  for (const [name, contents] of parts) {
    const part = new ZipDeflate(name, { level: 6 });
    zip.add(part);
    for (const piece of contents) part.push(strToU8(piece));
    part.push(new Uint8Array(0), true);
  }
  zip.end();
  return Buffer.concat(pieces);
}

const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";
const PARTS: readonly (readonly [string, readonly string[]])[] = [
  ["[Content_Types].xml", [`<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>`]],
  ["_rels/.rels", [`<Relationships xmlns="${PACKAGE}"><Relationship Id="a" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>`]],
  ["xl/workbook.xml", [`<workbook xmlns:r="${OFFICE}"><sheets><sheet name="Fills" sheetId="1" r:id="a"/></sheets></workbook>`]],
  ["xl/_rels/workbook.xml.rels", [`<Relationships xmlns="${PACKAGE}"><Relationship Id="a" Type="${OFFICE}/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="b" Type="${OFFICE}/styles" Target="styles.xml"/></Relationships>`]],
  ["xl/styles.xml", [`<styleSheet><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs></styleSheet>`]],
]; // prettier-ignore

async function opened(bytes: Uint8Array): Promise<number> {
  return seconds(2, async () => {
    const { rows } = readLog((await openFile(bytes, "log.xlsx")).content.sheets);
    if (rows.fills !== 19) throw new Error(`${rows.fills} fills read of 19.`);
  });
}

function contentOf(sheet: Sheet): WorkbookContent {
  return {
    sheets: [{ ...sheet, columns: [], frozenRows: 0, frozenColumns: 0 }],
    settings: new Map(),
    leftOut: [],
  };
}

/** The best of so many runs. */
async function seconds(runs: number, act: () => unknown): Promise<number> {
  let best = Infinity;
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    await act();
    best = Math.min(best, (performance.now() - start) / 1000);
  }
  return best;
}

function row(print: (line: string) => void, what: string, took: number, goal = ""): void {
  print(`  ${what.padEnd(72)} ${took.toFixed(2)} s${goal === "" ? "" : ` (${goal})`}`);
}

const thousands = (number: number) => number.toLocaleString("en-US");
const megabytes = (bytes: Uint8Array) => `${(bytes.length / 1e6).toFixed(1)} MB`;

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) void benchLog((line) => console.log(line));
