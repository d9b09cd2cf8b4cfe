import { describe, expect, test } from "vitest";
import { sheetOf } from "../../../src/sheet/draft/sheetOf";
import type { CellToMark } from "../../../src/workbook/workbook";
import { ExcelWorkbook } from "../../../src/workbook/excel/excelWorkbook";
import { expectProblem } from "../contract";
import { usualBook } from "../contractBooks";
import { excelDouble } from "./excelDouble";
import { FakeExcel } from "./fakeExcel";
import { ActionType } from "./wire";

function open(excelApi?: string) {
  const fake = new FakeExcel(usualBook);
  return { fake, workbook: new ExcelWorkbook(excelDouble(fake, excelApi)), log: fake.book.sheets[0]! };
}

const sheetNamed = (fake: FakeExcel, name: string) => fake.book.sheets.find((sheet) => sheet.name === name)!;

const report = sheetOf(
  "Findings",
  [
    {
      ...{ kind: "table", name: "Findings", columns: [{ heading: "Cell" }, { heading: "Fills" }], empty: "" },
      rows: [
        ["'quoted", 2],
        [{ value: null, formula: "SUM(B2:B2)" }, 1],
      ],
      chart: {
        ...{
          kind: "bars",
          title: "Fills",
          axes: ["Cell", "Fills"],
          says: "Two figures.",
          rowsHigh: 8,
          step: 1,
        },
        series: [{ name: "Fills", categories: 0, values: 1, colour: "#0D5A71" }],
      },
    },
  ],
  { paper: "Letter", landscape: false, footer: "" },
);

describe("new sheets in Excel", () => {
  test("have a table under a free name, a chart, a page set up, and formulas only where they were meant", async () => {
    const { fake, workbook } = open();
    fake.book.tables.push({
      name: "findings",
      sheet: fake.book.sheets[0]!,
      area: fake.book.sheets[0]!.used(true)!,
    });
    expect(await workbook.addSheets([report])).toEqual(["Findings"]);
    expect(fake.book.tables.map(({ name }) => name)).toEqual(["findings", "Findings_2"]);
    expect(fake.book.looks.join("\n")).toMatch(/Findings\.charts\.add\(\)\.title\.text = "Fills"/);
    expect(fake.book.looks.join("\n")).toMatch(/axes\.valueAxis\.majorUnit = 1/);
    expect(fake.book.looks.join("\n")).toMatch(/pageLayout\.paperSize = "Letter"/);
    expect([...fake.book.formulas.values()].map(({ formula }) => formula)).toEqual(["=SUM(B2:B2)"]);
    expect(fake.selected.sheet).toBe("Findings");
  });

  test("for stock that is cut already print at full size, with its margins, and nothing at the foot", async () => {
    const { fake, workbook } = open();
    const stock = { leftMm: 4, topMm: 12.7 };
    await workbook.addSheets([{ ...report, charts: [], tables: [], page: { ...report.page, stock } }]);
    const looks = fake.book.looks.filter((look) => look.includes("pageLayout"));
    expect(looks.join("\n")).toContain('pageLayout.zoom = {"scale":100}');
    expect(looks.join("\n")).toContain("pageLayout.topMargin = 36");
    expect(looks.join("\n")).toContain("pageLayout.bottomMargin = 0");
    expect(looks.filter((look) => look.includes("headersFooters"))).toEqual([]);
  });

  test.each(["RequestPayloadSizeLimitExceeded", "AccessDenied", "InvalidOperationInCellEditMode"])(
    "leave nothing behind where Excel refuses one with %s",
    async (code) => {
      const { fake, workbook } = open();
      let writes = 0;
      fake.refuse = ({ Actions }) => {
        const writesCells = Actions.some(
          ({ ActionType: type, Name }) => type === ActionType.set && Name === "Formulas",
        );
        return writesCells && (writes += 1) === 2 ? code : undefined;
      };
      await expectProblem(workbook.addSheets([report, report]));
      expect((await workbook.listSheets()).map(({ name }) => name)).toEqual(
        usualBook.map(({ name }) => name),
      );
    },
  );

  test("called off leave nothing behind", async () => {
    const { workbook } = open();
    const caller = new AbortController();
    const adding = workbook.addSheets([report, report], () => caller.abort(), caller.signal);
    await expect(adding).rejects.toMatchObject({ name: "AbortError" });
    expect(await workbook.listSheets()).toHaveLength(usualBook.length);
  });
});

describe("marks in Excel", () => {
  const at = (row: number, column: number, held: CellToMark["held"], sheet = "Fill log"): CellToMark => ({
    cell: { sheet, row, column },
    held,
  });
  const judged = [at(4, 3, 3000), at(8, 2, "10/19"), at(1, 0, "changed since"), at(0, 0, "x", "Gone")];

  test("lie over the cells that still hold what was judged; the others are told", async () => {
    const { fake, workbook } = open();
    expect(await workbook.marks.mark(judged)).toEqual([judged[2]!.cell, judged[3]!.cell]);
    expect(fake.book.marks).toHaveLength(1);
    expect(fake.book.marks[0]!.areas.map(({ firstRow, firstColumn }) => [firstRow, firstColumn])).toEqual([
      [4, 3],
      [8, 2],
    ]);
    expect((await workbook.readSheet("Fill log")).rows[4]!.values[3]).toBe(3000);
    expect(fake.book.looks.some((look) => look.includes("font.bold"))).toBe(true);
  });

  test("are known again by another pane, and taken away without touching other conditional formats", async () => {
    const { fake, workbook } = open();
    const sheet = sheetNamed(fake, "Fill log");
    fake.book.marks.push({ id: "{theirs}", sheet, areas: [], formula: "=A1>3" });
    await workbook.marks.mark(judged);
    await workbook.marks.mark(judged.slice(0, 1));
    expect(fake.book.marks).toHaveLength(2);
    const anew = new ExcelWorkbook(excelDouble(fake));
    expect(await anew.marks.clear()).toBe(1);
    expect(fake.book.marks.map(({ id }) => id)).toEqual(["{theirs}"]);
    expect(await anew.marks.clear()).toBe(0);
  });

  test("are refused on a protected sheet, which stays protected", async () => {
    const { fake, workbook } = open();
    sheetNamed(fake, "Fill log").protected = true;
    await expectProblem(workbook.marks.mark(judged), "Fill log");
    expect(fake.book.marks).toEqual([]);
  });

  test("many go in groups that Excel's limit on names can take", async () => {
    const { fake, workbook } = open();
    const long = sheetNamed(fake, "Long");
    const cells = long.rows.slice(0, 1200).map((row, index) => at(index, 0, row.values[0] ?? null, "Long"));
    expect(await workbook.marks.mark(cells)).toEqual([]);
    expect(fake.book.marks.reduce((sum, { areas }) => sum + areas.length, 0)).toBe(cells.length);
    expect(Math.max(...fake.book.marks.map(({ areas }) => areas.length))).toBeLessThanOrEqual(50);
  });

  test("are refused while a cell is being edited", async () => {
    const { fake, workbook } = open();
    const marking = workbook.marks.mark(judged);
    fake.startEditing();
    setTimeout(() => fake.finishEditing());
    await expectProblem(marking, "Enter");
  });
});

describe("formulas that Excel did not know", () => {
  /** Puts a formula that shows an error into a cell. */
  function put(fake: FakeExcel, sheet: string, row: number, formula: string, shown = "#NAME?") {
    const { rows } = sheetNamed(fake, sheet);
    rows[row] = { values: [{ error: shown }] };
    fake.book.formulas.set(`${sheet}!${row},0`, { formula, rows: 1 });
  }

  test("are found and written again, those of a Mac without their prefix; all others stay", async () => {
    const { fake, workbook } = open();
    fake.book.calculate = () => 111.375;
    put(fake, "Fill log", 10, '=BRIM.MOD("EAN32","ft")');
    put(fake, "Fill log", 11, '=_xldudf_BRIM_MOD("EAN32","ft")');
    put(fake, "Fill log", 12, '=BRIM.MOD("argon","ft")', "#VALUE!");
    put(fake, "Wide", 3, "=NOSUCH(1)");
    put(fake, "Old register", 9, '=1+_xldudf_BRIM_MOD(A1,"_xldudf_BRIM_MOD")', "#NAME?");
    const broken = await workbook.findBrokenFormulas();
    expect(broken).toEqual([
      { cell: { sheet: "Fill log", row: 10, column: 0 }, formula: '=BRIM.MOD("EAN32","ft")' },
      { cell: { sheet: "Fill log", row: 11, column: 0 }, formula: '=BRIM.MOD("EAN32","ft")' },
      { cell: { sheet: "Old register", row: 9, column: 0 }, formula: '=1+BRIM.MOD(A1,"_xldudf_BRIM_MOD")' },
    ]);
    expect(await workbook.repairFormulas(broken)).toEqual({ repaired: 3, protectedSheets: [] });
    expect(fake.book.formulas.get("Fill log!11,0")?.formula).toBe('=BRIM.MOD("EAN32","ft")');
    expect(await workbook.readCell({ sheet: "Fill log", row: 10, column: 0 })).toBe(111.375);
    expect(fake.book.formulas.get("Wide!3,0")?.formula).toBe("=NOSUCH(1)");
    expect(await workbook.findBrokenFormulas()).toEqual([]);
  });

  test("on protected sheets are told and left", async () => {
    const { fake, workbook } = open();
    put(fake, "Fill log", 10, '=BRIM.MOD(32,"ft")');
    put(fake, "Wide", 3, '=BRIM.MOD(36,"ft")');
    sheetNamed(fake, "Fill log").protected = true;
    const repair = await workbook.repairFormulas(await workbook.findBrokenFormulas());
    expect(repair).toEqual({ repaired: 1, protectedSheets: ["Fill log"] });
    expect(await workbook.findBrokenFormulas()).toHaveLength(1);
  });
});

describe("one undo for what belongs together", () => {
  test.each([
    ["1.20", true],
    ["1.19", undefined],
  ])("is asked for where Excel has it: ExcelApi %s", async (excelApi, expected) => {
    const fake = new FakeExcel(usualBook);
    const double = excelDouble(fake, excelApi);
    const asked: unknown[] = [];
    const { run } = double.Excel;
    const Excel = {
      run: ((options: object, batch: never) => {
        if ("delayForCellEdit" in options && !options.delayForCellEdit)
          asked.push(Reflect.get(options, "mergeUndoGroup"));
        return run(options as never, batch);
      }) as typeof run,
    };
    await new ExcelWorkbook({ ...double, Excel }).marks.mark([
      { cell: { sheet: "Fill log", row: 4, column: 3 }, held: 3000 },
    ]);
    expect(new Set(asked)).toEqual(new Set([expected]));
  });
});
