import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { build } from "esbuild";
import { describe, expect, test } from "vitest";
import { sheetOf } from "../../../src/sheet/draft/sheetOf";
import type { ExcelWorkbook } from "../../../src/workbook/excel/excelWorkbook";
import { comparable } from "../contract";
import { book1904, usualBook } from "../contractBooks";
import { excelDouble } from "./excelDouble";
import { FakeExcel } from "./fakeExcel";

const FOLDER = resolve("src/workbook/excel");

/** One value taken out of one load. */
interface Removal {
  readonly file: string;
  readonly load: string;
  readonly value: string;
  readonly source: string;
}

/** Every way to leave out one value of one load in the adapter; a load with one value goes altogether. */
function removals(): Removal[] {
  return readdirSync(FOLDER).flatMap((file) => {
    const source = readFileSync(join(FOLDER, file), "utf8");
    return [...source.matchAll(/(\w+)\.load\("([^"]*)"\);/g)].flatMap(([load, object, list]) => {
      const values = list!.split(",");
      return values.map((value) => {
        const others = values.filter((other) => other !== value).join(",");
        const instead = others ? `${object}.load("${others}");` : "";
        return { file, load: load!, value, source: source.replace(load!, instead) };
      });
    });
  });
}

/** The adapter, built anew, with one of its files changed. */
async function adapterWith(change?: Removal): Promise<typeof ExcelWorkbook> {
  const bundle = await build({
    entryPoints: [join(FOLDER, "excelWorkbook.ts")],
    bundle: true,
    write: false,
    format: "esm",
    logLevel: "silent",
    plugins: [
      {
        name: "change",
        setup: ({ onLoad }) =>
          onLoad({ filter: /src.workbook.excel.\w+\.ts$/ }, ({ path }) =>
            change && path === join(FOLDER, change.file) ? { contents: change.source, loader: "ts" } : null,
          ),
      },
    ],
  });
  const url = `data:text/javascript;base64,${Buffer.from(bundle.outputFiles[0]!.contents).toString("base64")}`;
  return ((await import(/* @vite-ignore */ url)) as { ExcelWorkbook: typeof ExcelWorkbook }).ExcelWorkbook;
}

const NEW = sheetOf(
  "Wide",
  [{ kind: "table", name: "Findings", columns: [{ heading: "Cell" }], rows: [["B1"]], empty: "" }],
  { paper: "A4", landscape: false, footer: "" },
);

/** Everything the adapter can read, once; rejects or fails where something is not as it stands in Excel. */
async function readEverything(Adapter: typeof ExcelWorkbook): Promise<void> {
  const fake = new FakeExcel(usualBook);
  const workbook = new Adapter(excelDouble(fake));
  expect(await workbook.listSheets()).toEqual(usualBook.map(({ name, hidden }) => ({ name, hidden })));
  for (const sheet of usualBook)
    expect(comparable(await workbook.readSheet(sheet.name))).toEqual(comparable(sheet));
  expect(await workbook.readCell({ sheet: "Odd cells", row: 7, column: 1 })).toEqual({ error: "#N/A" });
  await workbook.selectCell({ sheet: "Fill log", row: 4, column: 0 });
  expect(await workbook.readSelection()).toEqual({ sheet: "Fill log", rows: [4], outOfSight: 0 });
  fake.book.further = [{ firstRow: 5, lastRow: 8, firstColumn: 0, lastColumn: 0 }];
  expect(await workbook.readSelection()).toEqual({ sheet: "Fill log", rows: [4, 5, 6, 8], outOfSight: 1 });
  fake.book.formulas.set("Fill log!3,0", { formula: "=BRIM.MOD(A1:A9)", rows: 9 });
  expect(await workbook.readCellInHand()).toMatchObject({
    address: { sheet: "Fill log", row: 4, column: 0 },
    formula: "BRIM.MOD(A1:A9)",
    down: 1,
  });
  await workbook.selectCell({ sheet: "Odd cells", row: 7, column: 1 });
  expect((await workbook.readCellInHand()).value).toEqual({ error: "#N/A" });
  fake.book.formulas.set("Odd cells!7,1", { formula: "=NA()", rows: 1 });
  expect(await workbook.readCellInHand()).toMatchObject({ formula: "NA()", down: 0 });
  const one = { firstRow: 7, lastRow: 7, firstColumn: 1, lastColumn: 1 };
  expect(await workbook.readArea("Odd cells", one)).toEqual([[{ error: "#N/A" }]]);
  const log = usualBook.find(({ name }) => name === "Fill log")!;
  const added = await workbook.appendRow("Fill log", [{ column: 2, value: "0025830" }]);
  expect(added).toEqual({ sheet: "Fill log", row: log.rows.length, column: 2 });
  const totals = ({ values }: { readonly values: readonly unknown[] }) => values[2] === "0025830";
  expect(await workbook.appendRow("Fill log", [{ column: 2, value: "GP1002" }], totals)).toEqual(added);
  await workbook.writeSetting("brimbook", { country: "US" });
  expect(await workbook.readSetting("brimbook")).toEqual({ country: "US" });

  const held = { cell: { sheet: "Odd cells", row: 7, column: 1 }, held: { error: "#N/A" } };
  expect(await workbook.marks.mark([held])).toEqual([]);
  expect(await workbook.marks.clear()).toBe(1);
  fake.book.sheets[0]!.rows[0] = { values: [{ error: "#NAME?" }] };
  fake.book.formulas.set(`${fake.book.sheets[0]!.name}!0,0`, { formula: "=BRIM.MOD(32)", rows: 1 });
  const broken = await workbook.findBrokenFormulas();
  expect(broken).toHaveLength(1);
  expect(await workbook.repairFormulas(broken)).toEqual({ repaired: 1, protectedSheets: [] });
  expect(await workbook.addSheets([NEW, NEW])).toEqual(["Wide (2)", "Wide (3)"]);
  expect(fake.book.tables.map(({ name }) => name)).toEqual(["Findings", "Findings_2"]);

  const shows = new Adapter(excelDouble(new FakeExcel(book1904)));
  expect((await shows.readSheet("Log")).dateSystem).toBe(1904);
  const mute = new FakeExcel(book1904);
  mute.book.showDate = () => "the day before";
  expect((await new Adapter(excelDouble(mute)).readSheet("Log")).dateSystem).toBe(1904);
}

describe("every value the adapter reads is loaded", () => {
  test("as it stands, the adapter reads everything", async () => {
    await readEverything(await adapterWith());
  });

  test("no load is written in a way that this test would not find", () => {
    const sources = readdirSync(FOLDER).map((file) => readFileSync(join(FOLDER, file), "utf8"));
    const loads = sources.join("\n").match(/\.load\b/g) ?? [];
    expect(new Set(removals().map(({ file, load }) => file + load)).size).toBe(loads.length);
    expect(loads.length).toBeGreaterThan(5);
  });

  test.each(removals())("without $value of $load in $file it does not", async (removal) => {
    const Adapter = await adapterWith(removal);
    await expect(readEverything(Adapter)).rejects.toThrow();
  });
});
