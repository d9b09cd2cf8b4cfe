import type { Frame } from "playwright-core";
import { afterEach, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { sheetOf } from "../../src/sheet/draft/sheetOf";
import type { Sheet } from "../../src/sheet/sheet";
import { ExcelWorkbook } from "../../src/workbook/excel/excelWorkbook";
import type { WorkbookChange } from "../../src/workbook/workbook";
import { describeWorkbookContract, expectProblem } from "../workbook/contract";
import { usualBook } from "../workbook/contractBooks";
import { excelDouble } from "../workbook/excel/excelDouble";
import { FakeExcel } from "../workbook/excel/fakeExcel";
import type { WireRequest } from "../workbook/excel/wire";
import { ActionType } from "../workbook/excel/wire";
import { bundled, openInExcel, type PaneInExcel } from "./bridge";
import type { InExcel } from "./bridgePage";
import { useBrowser } from "./browser";
import { buildAddIn } from "./builtPane";
import { FarWorkbook } from "./farWorkbook";

const browser = useBrowser();
let script: string;

beforeAll(async () => {
  if (!process.env.HF) buildAddIn();
  script = await bundled("tests/e2e/excelPage.ts");
});

/** The Excel host alone, on Microsoft's office.js, over its bridge to the fake Excel. */
async function openHost(sheets: readonly Sheet[], excelApi?: string): Promise<PaneInExcel> {
  const excel = await openInExcel(browser(), { sheets, script, ...(excelApi && { excelApi }) });
  await excel.frame.waitForFunction(() => window.brimbook !== undefined);
  return excel;
}

interface InPage {
  readonly excel: InExcel;
  readonly heard: WorkbookChange[];
  meetAnew(): void;
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
  const excel = await openHost(sheets);
  const { frame } = excel;
  return {
    workbook: new FarWorkbook(frame),
    selected: () => frame.evaluate(() => window.brimbook!.selected()!),
    reopened: async () => {
      await frame.evaluate(() => (window as unknown as InPage).meetAnew());
      return new FarWorkbook(frame);
    },
    close: async () => {
      expect(await excel.faults()).toEqual([]);
      await excel.close();
    },
  };
});

describe("the Excel host", () => {
  let excel: PaneInExcel;
  let frame: Frame;
  const open = async (excelApi?: string) => {
    excel = await openHost(usualBook, excelApi);
    ({ frame } = excel);
  };
  afterEach(async () => {
    expect(await excel.faults()).toEqual([]);
    await excel.close();
  });

  test("needs nothing that came after ExcelApi 1.12, which the manifest asks for", async () => {
    await open("1.12");
    await useAll(new FarWorkbook(frame));
    expect(await frame.evaluate(() => Office.context.requirements.isSetSupported("ExcelApi", "1.13"))).toBe(
      false,
    );
  });

  test("writes sheets, marks cells and repairs formulas with no more than ExcelApi 1.12 either", async () => {
    await open("1.12");
    expect(await new FarWorkbook(frame).addSheets([report])).toEqual(["Findings"]);
    const done = await frame.evaluate(async () => {
      const workbook = window.brimbook!.workbook as ExcelWorkbook;
      const cell = { sheet: "Fill log", row: 4, column: 3 };
      const leftOut = await workbook.marks.mark([
        { cell, held: 3000 },
        { cell: { ...cell, row: 5 }, held: "changed since" },
      ]);
      const cleared = await workbook.marks.clear();
      const { book } = (window as unknown as InPage).excel.fake;
      book.sheets.find(({ name }) => name === "Fill log")!.rows[10] = { values: [{ error: "#NAME?" }] };
      book.formulas.set("Fill log!10,0", { formula: '=_xldudf_BRIM_MOD("EAN32","ft")', rows: 1 });
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
    await open();
    await frame.evaluate(() => {
      (window as unknown as InPage).excel.fake.refuse = () => "AccessDenied";
    });
    await expectProblem(new FarWorkbook(frame).readSheet("Fill log"), "protected");
  });

  test.each(["1.12", "1.20"])(
    "hears of edits with ExcelApi %s, and of none while closed",
    async (excelApi) => {
      await open(excelApi);
      const heard = () => frame.evaluate(() => (window as unknown as InPage).heard);
      const edit = (row: number) =>
        frame.evaluate((at) => {
          const { fake } = (window as unknown as InPage).excel;
          fake.edit(
            fake.book.sheets.find(({ name }) => name === "Fill log")!,
            at,
            ["GP-1"],
          );
        }, row);
      // Excel is asked for each event in a request of its own.
      await expect
        .poll(async () => {
          await edit(8);
          return heard();
        })
        .toContainEqual({ kind: "rows", sheet: "Fill log", firstRow: 8, lastRow: 8 });
      // What was asked for again meanwhile is told while the pane is still in sight.
      await frame.waitForTimeout(500);
      await frame.evaluate(() => {
        (window as unknown as InPage).excel.showPane("Hidden");
      });
      await frame.waitForTimeout(300);
      await frame.evaluate(() => void (window as unknown as InPage).heard.splice(0));
      await edit(5);
      await frame.waitForTimeout(300);
      expect(await heard()).toEqual([]);
      await frame.evaluate(() => {
        (window as unknown as InPage).excel.showPane("Visible");
      });
      await expect.poll(heard).toEqual([{ kind: "rows", sheet: "Fill log", firstRow: 5, lastRow: 5 }]);
    },
  );
});

describe("our double of office.js", () => {
  let excel: PaneInExcel;
  beforeEach(async () => {
    excel = await openHost(usualBook);
  });
  afterEach(() => excel.close());

  test("is no more lenient than Microsoft's: what was not loaded is refused in the same way", async () => {
    const codes = await excel.frame.evaluate(() =>
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
    // The page itself has asked for the list of sheets, and office.js whether it may begin.
    await excel.frame.waitForFunction(() =>
      (window as unknown as InPage).excel.fake.requests.some(({ Actions }) =>
        Actions.some(({ Name }) => Name === "NotifyActionHandlerReady"),
      ),
    );
    const requests = () => excel.frame.evaluate(() => (window as unknown as InPage).excel.fake.requests);
    const before = (await requests()).length;
    await useAll(new FarWorkbook(excel.frame));
    const theirs = (await requests()).slice(before);
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

const HOUSEKEEPING: ReadonlySet<number> = new Set([ActionType.instantiate, ActionType.trace]);

/** What requests ask Excel for, one list each, without office.js's housekeeping. */
const asked = (requests: readonly WireRequest[]) => requests.map(questions).filter((each) => each.length > 0);

function questions({ Actions, ObjectPaths }: WireRequest): string[] {
  return Actions.filter(({ ActionType: type, Name }) => !HOUSEKEEPING.has(type) && !Name.startsWith("_")).map(
    ({ ObjectPathId, Name, ArgumentInfo, QueryInfo }) => {
      const path = ObjectPaths[ObjectPathId]!;
      const object = `${path.Name}${JSON.stringify(path.ArgumentInfo?.Arguments ?? [])}`;
      return `${object}: ${JSON.stringify(QueryInfo?.Select ?? [Name, ...(ArgumentInfo?.Arguments ?? [])])}`;
    },
  );
}
