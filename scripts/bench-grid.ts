/* npx tsx scripts/bench-grid.ts: the local workbook in headless Chromium, from a key press to what the screen knows. */
import { existsSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { chromium, type Page } from "playwright-core";
import type { CellAddress, Sheet } from "../src/sheet/sheet";
import { writeXlsx } from "../src/workbook/file/writeXlsx";
import type { Workbook } from "../src/workbook/workbook";
import { servedPage } from "./bench-page";

const ROWS = 10_000;
const LOG_ROWS = 20_000;

/** What the page keeps for the console. */
interface BrimbookWindow {
  readonly brimbook?: { readonly workbook: Workbook };
}

export async function benchGrid(print: (line: string) => void): Promise<void> {
  const program = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
    existsSync,
  );
  if (!program) {
    print("Local workbook: not measured, as Chromium is not here");
    return;
  }
  print("Local workbook in Chromium (one run, calculation and drawing included)");
  const server = await servedPage();
  const browser = await chromium.launch({ executablePath: program, args: ["--headless", "--no-sandbox"] });
  try {
    const page = await browser.newPage({ viewport: { width: 1366, height: 768 } });
    const toSample = await seconds(async () => {
      await page.goto(server.address);
      await page.getByText("gannet-point.xlsx: ").waitFor();
    });
    print(row("from the address to the sample log in the grid (goal 5 s)", toSample));

    await open(page, "numbers.xlsx", numbersAndMixes());
    const builtIn = await answered(page, 3, `=SQRT(A2:A${ROWS + 1})`);
    print(row(`=SQRT(...) of the engine over ${ROWS} rows`, builtIn));
    const mod = await answered(page, 5, `=BRIM.MOD(B2:B${ROWS + 1},"ft")`);
    print(
      row(`=BRIM.MOD(...,"ft") over the same rows`, mod, `${(mod / builtIn).toFixed(2)} of the built-in`),
    );
    const stops = `=BRIM.STOPAT("oxygen",A2:A${ROWS + 1},"EAN32",3000,"EAN36","psi")`;
    print(row(`=BRIM.STOPAT("oxygen",...) over the same rows (goal 1 s)`, await answered(page, 7, stops)));

    await saveCopy(page);
    const log = longLog();
    const shown = await seconds(() => open(page, "long.xlsx", log));
    print(row(`opening an .xlsx of ${LOG_ROWS} rows × 20 columns (goal 4 s)`, shown));
    print(row("saving it", await seconds(() => saveCopy(page))));
  } finally {
    await browser.close();
    server.stop();
  }
}

async function open(page: Page, name: string, bytes: Promise<Uint8Array>): Promise<void> {
  const buffer = Buffer.from(await bytes);
  await page.getByLabel("File to open").setInputFiles({ name, mimeType: "application/octet-stream", buffer });
  await page.getByText(`${name}: `).waitFor({ timeout: 60_000 });
}

async function saveCopy(page: Page): Promise<void> {
  const download = page.waitForEvent("download", { timeout: 60_000 });
  await page.getByRole("button", { name: "Save a copy" }).click();
  await (await download).path();
}

/** Types a formula into row 2 of a column; seconds from Enter until its last row has an answer. */
async function answered(page: Page, column: number, formula: string): Promise<number> {
  const first = { sheet: "Numbers", row: 1, column };
  await page.evaluate(
    (cell) => (window as BrimbookWindow).brimbook!.workbook.selectCell(cell),
    first satisfies CellAddress,
  );
  await page.keyboard.type(formula);
  await page.evaluate(noteEnter);
  await page.keyboard.press("Enter");
  return page.evaluate(untilAnswered, { ...first, row: ROWS });
}

/** Runs in the page. */
function noteEnter(): void {
  window.addEventListener("keydown", () => performance.mark("enter"), { capture: true, once: true });
}

/** Runs in the page. */
async function untilAnswered(cell: CellAddress): Promise<number> {
  const { workbook } = (window as BrimbookWindow).brimbook!;
  while (typeof (await workbook.readCell!(cell)) !== "number") await new Promise(requestAnimationFrame);
  return performance.measure("answer", "enter").duration / 1000;
}

function numbersAndMixes(): Promise<Uint8Array> {
  const rows = Array.from({ length: ROWS + 1 }, (_, at) =>
    at === 0 ? ["Start", "Mix"] : [1 + (at % 999), ["EAN32", "EAN28", "air", "EAN36"][at % 4]!],
  );
  return book("Numbers", rows);
}

function longLog(): Promise<Uint8Array> {
  const heading = ["Date", "Serial", "Start psi", "End psi", "Mix", "Method", "Filled by"];
  const rows = Array.from({ length: LOG_ROWS }, (_, at) => [
    46_000 + Math.floor(at / 60),
    `GP${1000 + (at % 400)}`,
    (at * 37) % 900,
    2900 + (at % 150),
    ["air", "EAN32", "EAN36"][at % 3]!,
    ["air", "premix", "partial pressure"][at % 3]!,
    at % 2 ? "R." : "T.",
    ...Array.from({ length: 13 }, (__, further) => (further % 2 ? `note ${at % 97}` : at * further)),
  ]);
  return book("Log", [[...heading, ...Array.from({ length: 13 }, (_, at) => `Extra ${at + 1}`)], ...rows]);
}

function book(name: string, rows: readonly (readonly (string | number)[])[]): Promise<Uint8Array> {
  const sheet: Sheet = {
    name,
    hidden: false,
    dateSystem: 1900,
    rows: rows.map((values) => ({ values })),
    merges: [],
  };
  return writeXlsx({
    sheets: [{ ...sheet, columns: [], frozenRows: 1, frozenColumns: 0 }],
    settings: new Map(),
    leftOut: [],
  });
}

async function seconds(work: () => Promise<unknown>): Promise<number> {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
}

function row(what: string, time: number, remark = ""): string {
  return `  ${what.padEnd(66)} ${time.toFixed(2)} s${remark && ` (${remark})`}`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  await benchGrid((line) => {
    console.log(line);
  });
