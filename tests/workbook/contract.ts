import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { draftValue } from "../../src/sheet/draft/draft";
import { sheetOf } from "../../src/sheet/draft/sheetOf";
import type { CellAddress, Sheet, SheetRow } from "../../src/sheet/sheet";
import { isBlank } from "../../src/sheet/sheet";
import type { Workbook } from "../../src/workbook/workbook";
import { book1904, usualBook } from "./contractBooks";

/** A workbook in a host, and what a test must be able to see of it. All of it may live in another process. */
export interface HostUnderTest {
  readonly workbook: Workbook;
  /** The cell the cursor stands on; asked only where the host can select. */
  selected(): Promise<CellAddress>;
  /** The same workbook met anew: a new pane beside it, or the saved file opened again. */
  reopened(): Promise<Workbook>;
  /** Ends whatever was started. */
  close?(): Promise<void>;
}

/** Builds a workbook that holds exactly these sheets. They are plain data, so they may cross into a browser. */
export type MakeHost = (sheets: readonly Sheet[]) => Promise<HostUnderTest>;

/** What every host must do alike. */
export function describeWorkbookContract(name: string, makeHost: MakeHost): void {
  describe(`${name}: the workbook contract`, () => {
    let host: HostUnderTest;
    const workbook = () => host.workbook;

    beforeAll(async () => {
      host = await makeHost(usualBook);
    });
    afterAll(async () => {
      await host?.close?.();
    });

    describe("sheets", () => {
      test("are listed in the order of their tabs, hidden ones too", async () => {
        expect(await workbook().listSheets()).toEqual(
          usualBook.map(({ name, hidden }) => ({ name, hidden })),
        );
      });

      test.each(usualBook.map((sheet) => [sheet.name, sheet] as const))(
        "%s reads as it stands",
        async (name, sheet) => {
          expect(comparable(await workbook().readSheet(name))).toEqual(comparable(sheet));
        },
      );

      test("end at the last row that holds anything", async () => {
        expect((await workbook().readSheet("Island")).rows.length).toBe(9);
        expect((await workbook().readSheet("Nothing")).rows).toEqual([]);
      });

      test("have null for every blank, never empty text or a gap", async () => {
        const values = (await workbook().readSheet("Fill log")).rows.flatMap((row) => [...row.values]);
        expect(values.filter((value) => value === "" || value === undefined)).toEqual([]);
        expect(values).toContain(null);
      });

      test("can be read side by side", async () => {
        const names = ["Fill log", "Odd cells", "Long", "Fill log"];
        const sheets = await Promise.all(names.map((each) => workbook().readSheet(each)));
        expect(sheets.map((sheet) => sheet.name)).toEqual(names);
        expect(comparable(sheets[3]!)).toEqual(comparable(sheets[0]!));
      });

      test("that are not there are refused in a sentence with the name", async () => {
        await expectProblem(workbook().readSheet("Fill log 2019"), "Fill log 2019");
      });
    });

    describe("a long read", () => {
      test("reports progress that never goes back and ends at 1", async () => {
        const shares: number[] = [];
        await workbook().readSheet("Long", (share) => shares.push(share));
        expect(shares.at(-1)).toBe(1);
        expect(shares).toEqual([...shares].sort((a, b) => a - b));
        expect(shares.every((share) => share >= 0 && share <= 1)).toBe(true);
      });

      test("is not begun when it was already called off", async () => {
        await expect(workbook().readSheet("Long", undefined, AbortSignal.abort())).rejects.toMatchObject({
          name: "AbortError",
        });
      });

      test("called off on the way is given up, or finished whole; never cut short", async () => {
        const caller = new AbortController();
        const outcome = await workbook()
          .readSheet("Long", () => caller.abort(), caller.signal)
          .catch((problem: Error) => problem);
        if (outcome instanceof Error) expect(outcome.name).toBe("AbortError");
        else expect(outcome.rows.length).toBe(usualBook.find((sheet) => sheet.name === "Long")!.rows.length);
      });
    });

    describe("selecting", () => {
      const places: CellAddress[] = [
        { sheet: "Fill log", row: 8, column: 3 },
        { sheet: "Wide", row: 0, column: 60 },
        { sheet: `O'Dive's "best" – log & <co>`, row: 1, column: 0 },
        { sheet: "Nothing", row: 0, column: 0 },
      ];

      test.each(places)("shows $sheet, row $row, column $column", async (place) => {
        if (!workbook().capabilities.select) return expectProblem(workbook().selectCell(place));
        await workbook().selectCell(place);
        expect(await host.selected()).toEqual(place);
      });

      test("is heard of as rows, hidden ones and those below the last entry left out", async () => {
        const own = workbook();
        if (!own.readSelection) return expect(own.capabilities.select).toBe(false);
        const after = async (sheet: string, row: number) => {
          await own.selectCell({ sheet, row, column: 2 });
          return own.readSelection!();
        };
        expect(await after("Fill log", 8)).toEqual({ sheet: "Fill log", rows: [8], outOfSight: 0 });
        expect(await after("Fill log", 7)).toEqual({ sheet: "Fill log", rows: [], outOfSight: 1 });
        expect(await after("Wide", 40)).toEqual({ sheet: "Wide", rows: [], outOfSight: 0 });
        expect(await after("Nothing", 0)).toEqual({ sheet: "Nothing", rows: [], outOfSight: 0 });
      });

      test("on a sheet that is gone or hidden is refused in a sentence with its name", async () => {
        await expectProblem(workbook().selectCell({ sheet: "Gone", row: 0, column: 0 }), "Gone");
        await expectProblem(
          workbook().selectCell({ sheet: "Old register", row: 1, column: 1 }),
          "Old register",
        );
      });
    });

    describe("settings", () => {
      const settings: unknown = {
        rules: "US",
        units: "metric",
        columns: { "Fill log": [{ heading: `Größe & "x" <b> ]]> 'y'`, field: "serial" }, null] },
        accepted: [true, false, 0, -1.5, "", "two\nlines\r\n\ttab", "🌊 \u2028 \\ \\u0041", [], {}],
        long: "0123456789".repeat(5000),
      };
      const keeps = () => workbook().capabilities.settings;

      test("never kept are null", async () => {
        expect(await workbook().readSetting("never kept")).toBeNull();
      });

      test.each([settings, false, 0, "", [1, [2]], "text"])(
        "come back as they were kept (%#)",
        async (value) => {
          if (!keeps()) return expectProblem(workbook().writeSetting("contract", value));
          await workbook().writeSetting("contract", value);
          expect(await workbook().readSetting("contract")).toEqual(value);
          expect(await (await host.reopened()).readSetting("contract")).toEqual(value);
        },
      );

      test("of different names keep apart, the last word counts, null takes out", async () => {
        if (!keeps()) return;
        await workbook().writeSetting("one", { is: 1 });
        await workbook().writeSetting("two", { is: 2 });
        await workbook().writeSetting("one", { is: 3 });
        expect(await workbook().readSetting("one")).toEqual({ is: 3 });
        await workbook().writeSetting("one", null);
        await workbook().writeSetting("one", null);
        expect(await workbook().readSetting("one")).toBeNull();
        expect(await workbook().readSetting("two")).toEqual({ is: 2 });
        const anew = await host.reopened();
        expect(await anew.readSetting("one")).toBeNull();
        expect(await anew.readSetting("two")).toEqual({ is: 2 });
      });

      test("written side by side are all kept", async () => {
        if (!keeps()) return;
        const names = ["left", "middle", "right"];
        await Promise.all(names.map((each) => workbook().writeSetting(each, each.length)));
        expect(await Promise.all(names.map((each) => workbook().readSetting(each)))).toEqual([4, 6, 5]);
      });

      test("leave the sheets alone", async () => {
        if (!keeps()) return;
        await workbook().writeSetting("contract", settings);
        expect(await workbook().listSheets()).toEqual(
          usualBook.map(({ name, hidden }) => ({ name, hidden })),
        );
      });
    });

    describe("new sheets", () => {
      const page = { paper: "A4", landscape: true, footer: "Gannet Point & co" } as const;
      const report = sheetOf(
        "Fill log",
        [
          { kind: "title", lines: ["Findings: what to do"] },
          {
            kind: "table",
            name: "Findings",
            columns: [
              { heading: "Serial" },
              { heading: "Filled", format: "yyyy-mm-dd" },
              { heading: "Fills" },
            ],
            rows: [
              ["007", 46_298, 3],
              ["=1+1", 46_299, 0.5],
              [{ value: "Wide!B1", link: { cell: { sheet: "Wide", row: 0, column: 1 } } }, null, 12],
              ["+44", 46_300, 1],
            ],
            empty: "Nothing found.",
            chart: {
              ...{
                kind: "columns",
                title: "Fills",
                axes: ["Serial", "Fills"],
                says: "Four figures.",
                rowsHigh: 10,
              },
              series: [{ name: "Fills", categories: 0, values: 2, colour: "#0D5A71" }],
            },
          },
        ],
        page,
      );
      const values = report.rows.map(({ cells }) => {
        const row = cells.map(draftValue);
        while (row.length > 0 && isBlank(row.at(-1))) row.pop();
        return row;
      });
      while (values.at(-1)?.length === 0) values.pop();

      test("stand behind the others, under free names, with every text as text; the others stay as they were", async () => {
        const own = await makeHost(usualBook);
        try {
          const names = await own.workbook.addSheets([report, report]);
          expect(names).toEqual(["Fill log (2)", "Fill log (3)"]);
          const listed = await own.workbook.listSheets();
          expect(listed.map(({ name }) => name)).toEqual([...usualBook.map(({ name }) => name), ...names]);
          for (const name of names) {
            const read = (await own.workbook.readSheet(name)).rows.map((row) => {
              const cells = [...row.values];
              while (cells.length > 0 && isBlank(cells.at(-1))) cells.pop();
              return cells;
            });
            while (read.at(-1)?.length === 0) read.pop();
            expect(read).toEqual(values);
          }
          for (const sheet of usualBook) {
            expect(comparable(await own.workbook.readSheet(sheet.name))).toEqual(comparable(sheet));
          }
        } finally {
          await own.close?.();
        }
      });
    });

    test("dates of a workbook that counts from 1904 are the same days", async () => {
      const old = await makeHost(book1904);
      try {
        const sheet = await old.workbook.readSheet("Log");
        const shift = sheet.dateSystem === 1904 ? 1462 : 0;
        const serials = sheet.rows.slice(1).map((row) => Number(row.values[0]) + shift);
        expect(serials).toEqual([46_296, 46_297]);
        expect(sheet.rows.slice(1).map((row) => row.values[1])).toEqual([230, 1462]);
      } finally {
        await old.close?.();
      }
    });
  });
}

/** Checks for a refusal that a user can read: one sentence, with the name of what it is about. */
export async function expectProblem(attempt: Promise<unknown>, about = ""): Promise<void> {
  const outcome = await attempt.then(
    () => "no refusal",
    (problem: unknown) => problem,
  );
  expect(outcome).toMatchObject({ name: "WorkbookProblem" });
  const { message } = outcome as Error;
  expect(message).toMatch(/^[A-Z"“].*\.$/s);
  expect(message).toContain(about);
}

/** A sheet without what hosts may say in different ways: trailing blanks, General, the order of merges. */
export function comparable(sheet: Sheet): unknown {
  const rows = sheet.rows.map(comparableRow);
  while (rows.length > 0 && rows.at(-1)!.cells.length === 0) rows.pop();
  return {
    name: sheet.name,
    hidden: sheet.hidden,
    dateSystem: sheet.dateSystem,
    rows,
    merges: [...sheet.merges].sort((a, b) => a.firstRow - b.firstRow || a.firstColumn - b.firstColumn),
  };
}

function comparableRow(row: SheetRow): { hidden: boolean; cells: unknown[] } {
  const cells: unknown[] = row.values.map((value, column) => {
    const format = row.formats?.[column];
    return isBlank(value) || format === undefined || format === "General" ? value : { value, format };
  });
  while (cells.length > 0 && cells.at(-1) === null) cells.pop();
  return { hidden: row.hidden ?? false, cells };
}
