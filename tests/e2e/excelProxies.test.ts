import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { createRequire } from "node:module";
import { build } from "esbuild";
import type { Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { sheetOf } from "../../src/sheet/draft/sheetOf";
import type { Sheet } from "../../src/sheet/sheet";
import { ExcelWorkbook } from "../../src/workbook/excel/excelWorkbook";
import { describeWorkbookContract, expectProblem } from "../workbook/contract";
import { usualBook } from "../workbook/contractBooks";
import { excelDouble } from "../workbook/excel/excelDouble";
import { FakeExcel } from "../workbook/excel/fakeExcel";
import type { WireRequest } from "../workbook/excel/wire";
import { ActionType } from "../workbook/excel/wire";
import { useBrowser } from "./browser";
import { FarWorkbook } from "./farWorkbook";

/** Microsoft's office.js as npm has it; its licence lets one try add-ins with it, and it is never shipped. */
const officeJs = dirname(createRequire(import.meta.url).resolve("@microsoft/office-js/dist/office.js"));
const ORIGIN = "https://brimbook.test";

const browser = useBrowser();
let script: string;

beforeAll(async () => {
  const bundle = await build({ entryPoints: ["tests/e2e/excelPage.ts"], bundle: true, write: false });
  script = bundle.outputFiles[0]!.text;
});

/** A page in which office.js takes itself to be inside of Excel on Windows. */
async function openExcelPage(sheets: readonly Sheet[]): Promise<Page> {
  const context = await browser().newContext();
  const page = await context.newPage();
  await page.route("**/*", async (route) => {
    const { origin, pathname } = new URL(route.request().url());
    if (origin !== ORIGIN) return route.abort();
    if (pathname === "/pane.html") {
      return route.fulfill({
        contentType: "text/html",
        body: '<!doctype html><script src="office/office.js"></script>',
      });
    }
    try {
      const body = readFileSync(join(officeJs, pathname.replace("/office/", "")));
      await route.fulfill({ contentType: "text/javascript", body });
    } catch {
      await route.fulfill({ status: 404 });
    }
  });
  await page.goto(`${ORIGIN}/pane.html?_host_Info=Excel$Win32$16.01$en-US`);
  await page.waitForFunction(() => typeof Excel !== "undefined" && "RequestContext" in Excel);
  await page.addScriptTag({ content: script });
  await page.evaluate((book) => (window as unknown as InPage).openExcel(book), sheets as Sheet[]);
  return page;
}

interface InPage {
  openExcel(sheets: readonly Sheet[]): void;
  meetAnew(): void;
  requests(): WireRequest[];
  playExcelApi(version: string): void;
  refuse(code: string): void;
  breakFormula(sheet: string, row: number, formula: string): void;
}

const report = sheetOf(
  "Findings",
  [
    {
      ...{ kind: "table", name: "Findings", columns: [{ heading: "Cell" }, { heading: "Fills" }], empty: "" },
      rows: [
        ["B1", 2],
        ["B2", 3],
      ],
      chart: {
        ...{ kind: "dots", title: "Fills", axes: ["Cell", "Fills"], says: "Two figures.", rowsHigh: 8 },
        series: [{ name: "Fills", categories: 1, values: 1, colour: "#0D5A71", line: true }],
      },
    },
  ],
  { paper: "Letter", landscape: false, footer: "" },
);

describeWorkbookContract("Excel behind Microsoft's own proxies", async (sheets) => {
  const page = await openExcelPage(sheets);
  return {
    workbook: new FarWorkbook(page),
    selected: () => page.evaluate(() => window.brimbook!.selected()!),
    reopened: async () => {
      await page.evaluate(() => (window as unknown as InPage).meetAnew());
      return new FarWorkbook(page);
    },
    close: () => page.context().close(),
  };
});

describe("the Excel host", () => {
  let page: Page;
  beforeEach(async () => {
    page = await openExcelPage(usualBook);
  });
  afterEach(() => page.context().close());

  test("needs nothing that came after ExcelApi 1.12, which the manifest asks for", async () => {
    await page.evaluate(() => (window as unknown as InPage).playExcelApi("1.12"));
    await useAll(new FarWorkbook(page));
    const merged = await page.evaluate(() =>
      Excel.run(async (context) => {
        context.workbook.worksheets
          .getItem("Wide")
          .getRangeByIndexes(0, 0, 1, 1)
          .getMergedAreasOrNullObject();
        await context.sync();
      }).catch((error: unknown) => (error as { code: string }).code),
    );
    expect(merged).toBe("ApiNotFound");
  });

  test("writes sheets, marks cells and repairs formulas with no more than ExcelApi 1.12 either", async () => {
    await page.evaluate(() => (window as unknown as InPage).playExcelApi("1.12"));
    expect(await new FarWorkbook(page).addSheets([report])).toEqual(["Findings"]);
    const done = await page.evaluate(async () => {
      const workbook = window.brimbook!.workbook as ExcelWorkbook;
      const cell = { sheet: "Fill log", row: 4, column: 3 };
      const leftOut = await workbook.marks.mark([
        { cell, held: 3000 },
        { cell: { ...cell, row: 5 }, held: "changed since" },
      ]);
      const cleared = await workbook.marks.clear();
      (window as unknown as InPage).breakFormula("Fill log", 10, '=_xldudf_BRIM_MOD("EAN32","ft")');
      const broken = await workbook.findBrokenFormulas();
      return { leftOut, cleared, broken, repair: await workbook.repairFormulas(broken) };
    });
    expect(done).toEqual({
      leftOut: [{ sheet: "Fill log", row: 5, column: 3 }],
      cleared: 1,
      broken: [{ cell: { sheet: "Fill log", row: 10, column: 0 }, formula: '=BRIM.MOD("EAN32","ft")' }],
      repair: { repaired: 1, protectedSheets: [] },
    });
  });

  test("makes a sentence of an error as office.js throws it", async () => {
    await page.evaluate(() => (window as unknown as InPage).refuse("AccessDenied"));
    await expectProblem(new FarWorkbook(page).readSheet("Fill log"), "protected");
  });
});

describe("our double of office.js", () => {
  let page: Page;
  beforeAll(async () => {
    page = await openExcelPage(usualBook);
  });
  afterAll(() => page.context().close());

  test("is no more lenient than Microsoft's: what was not loaded is refused in the same way", async () => {
    const codes = await page.evaluate(() =>
      Excel.run(async (context) => {
        const codeOf = (read: () => unknown) => {
          try {
            return `read: ${String(read())}`;
          } catch (error) {
            return (error as { code: string }).code;
          }
        };
        const sheet = context.workbook.worksheets.getItemOrNullObject("Fill log");
        const result = sheet.getRangeByIndexes(7, 0, 1, 1).getRowProperties({ rowHidden: true });
        const before = [
          codeOf(() => sheet.name),
          codeOf(() => sheet.isNullObject),
          codeOf(() => result.value),
          codeOf(() => context.workbook.worksheets.items),
        ];
        sheet.load("name");
        await context.sync();
        return [
          ...before,
          codeOf(() => sheet.name),
          codeOf(() => sheet.isNullObject),
          codeOf(() => result.value[0]!.rowHidden),
          codeOf(() => sheet.visibility),
        ];
      }),
    );
    const notLoaded = "PropertyNotLoaded";
    expect(codes).toEqual([
      ...[notLoaded, notLoaded, "ValueNotLoaded", notLoaded],
      ...["read: Fill log", "read: false", "read: true", notLoaded],
    ]);
  });

  test("asks Excel for the same things in the same order as Microsoft's", async () => {
    const fake = new FakeExcel(usualBook);
    await useAll(new ExcelWorkbook(excelDouble(fake)));
    const far = await openExcelPage(usualBook);
    await useAll(new FarWorkbook(far));
    const theirs = await far.evaluate(() => (window as unknown as InPage).requests());
    await far.context().close();
    expect(asked(theirs)).toEqual(asked(fake.requests));
  });
});

async function useAll(workbook: ExcelWorkbook | FarWorkbook): Promise<void> {
  await workbook.listSheets();
  for (const { name } of usualBook) await workbook.readSheet(name);
  await workbook.readCell({ sheet: "Fill log", row: 4, column: 0 });
  await workbook.selectCell({ sheet: "Wide", row: 0, column: 60 });
  await workbook.readSelection();
  await workbook.readSetting("brimbook");
  await workbook.writeSetting("brimbook", { country: "US" });
  await workbook.writeSetting("brimbook", { country: "UK" });
  await workbook.writeSetting("brimbook", null);
}

/** What requests ask Excel for, one list each, without office.js's housekeeping. */
const asked = (requests: readonly WireRequest[]) => requests.map(questions).filter((each) => each.length > 0);

function questions({ Actions, ObjectPaths }: WireRequest): string[] {
  return Actions.filter(
    ({ ActionType: type, Name }) => type !== ActionType.instantiate && !Name.startsWith("_"),
  ).map(({ ObjectPathId, Name, ArgumentInfo, QueryInfo }) => {
    const path = ObjectPaths[ObjectPathId]!;
    const object = `${path.Name}${JSON.stringify(path.ArgumentInfo?.Arguments ?? [])}`;
    return `${object}: ${JSON.stringify(QueryInfo?.Select ?? [Name, ...(ArgumentInfo?.Arguments ?? [])])}`;
  });
}
