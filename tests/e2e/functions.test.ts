import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openPage, useBrowser, type BrimbookPage } from "./browser";
import { blankBook } from "./books";

const browser = useBrowser();

describe("worksheet functions in the grid", () => {
  let brimbook: BrimbookPage;
  beforeAll(async () => {
    brimbook = await openPage(browser());
    await brimbook.openFile("blank.xlsx", await blankBook());
    await brimbook.untilOpen("blank.xlsx");
  });
  afterAll(() => brimbook.close());

  test("BRIM.MOD answers with the depth of the table: EAN32 in feet is 111.375", async () => {
    await brimbook.type("Sheet", "B2", '=BRIM.MOD("EAN32","ft")');
    expect(await brimbook.value("Sheet", 1, 1)).toBe(111.375);
  });

  test("a cell as argument is followed when it changes", async () => {
    await brimbook.type("Sheet", "B4", "32");
    await brimbook.type("Sheet", "C4", '=BRIM.MOD(B4,"m")');
    expect(await brimbook.value("Sheet", 3, 2)).toBe(33.75);
    await brimbook.type("Sheet", "B4", "36");
    await expect.poll(() => brimbook.value("Sheet", 3, 2)).toBeCloseTo(28.8889, 4);
  });

  test("BRIM.FILLSTEPS fills a table with its steps", async () => {
    await brimbook.type("Sheet", "E2", '=BRIM.FILLSTEPS("empty","air",3000,"EAN32","psi")');
    expect(await brimbook.value("Sheet", 1, 4)).toBe("Step");
    const rows = (await brimbook.readSheet("Sheet")).rows.slice(1, 4).map((row) => row.values.slice(4, 8));
    expect(rows[0]).toEqual(["Step", "Gas", "Add", "Stop at"]);
    expect(rows.map((row) => row[0])).toEqual(["Step", "oxygen", "top"]);
    expect(rows[1]![3]).toBeCloseTo(404.96, 2);
    expect(rows[2]![3]).toBeCloseTo(3000, 9);
  });

  test("an error in the grid has its sentence on the page", async () => {
    await brimbook.type("Sheet", "B10", '=BRIM.MOD(3,"ft")');
    expect(await brimbook.value("Sheet", 9, 1)).toEqual({ error: "#VALUE!" });
    await brimbook.select("Sheet", "B10");
    await expect.poll(() => brimbook.cellLine()).toContain("Oxygen 3: write 0.32, 32 or EAN32");
  });

  test("an error inside another formula has its sentence too", async () => {
    await brimbook.type("Sheet", "B11", '=ROUND(BRIM.MOD("argon","ft"),0)');
    expect(await brimbook.value("Sheet", 10, 1)).toEqual({ error: "#VALUE!" });
    await brimbook.select("Sheet", "B11");
    await expect.poll(() => brimbook.cellLine()).toMatch(/argon/i);
  });

  test("an answer says how it came about", async () => {
    await brimbook.select("Sheet", "C4");
    await expect.poll(() => brimbook.cellLine()).toContain("EAN36");
    expect(await brimbook.cellLine()).toContain('=BRIM.MOD(B4,"m")');
  });

  test("a column as argument answers down the column, a bad row in that row only", async () => {
    for (const [cell, mix] of [
      ["B14", "EAN32"],
      ["B15", "argon"],
      ["B16", "air"],
    ] as const) {
      await brimbook.type("Sheet", cell, mix);
    }
    await brimbook.type("Sheet", "C14", '=BRIM.MOD(B14:B16,"m")');
    expect(await brimbook.value("Sheet", 13, 2)).toBe(33.75);
    expect(await brimbook.value("Sheet", 14, 2)).toEqual({ error: "#VALUE!" });
    await brimbook.select("Sheet", "C15");
    await expect.poll(() => brimbook.cellLine()).toMatch(/argon/i);
  });

  test("the formula helper names the arguments while one types", async () => {
    await brimbook.select("Sheet", "H20");
    await brimbook.enterGrid();
    await brimbook.page.keyboard.type("=BRIM.MINDEPTH(");
    await brimbook.page.getByText("minPpO2").first().waitFor();
    await brimbook.page.keyboard.press("Escape");
  });

  test("nothing went wrong in the page, and nothing left it", () => {
    expect(brimbook.faults).toEqual([]);
  });
});
