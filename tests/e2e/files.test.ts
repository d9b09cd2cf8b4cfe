import { afterEach, beforeEach, describe, expect, test } from "vitest";
import type { Sheet } from "../../src/sheet/sheet";
import { openFile } from "../../src/workbook/file/openFile";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { contentOf } from "./books";
import { openPage, useBrowser, type BrimbookPage } from "./browser";

const browser = useBrowser();

const LOG: Sheet = {
  name: "Log",
  hidden: false,
  dateSystem: 1900,
  rows: [
    { values: ["Serial", "Date", "End psi", "Oxygen", "Clean", "MOD"] },
    {
      values: ["007", 46_296, 3000, 0.32, true, null],
      formats: [undefined, "m/d/yyyy", "#,##0", "0%"],
    },
    { values: ["GP-118", 46_297.5, 2950, 0.36, false, "10/50"], formats: [undefined, "m/d/yyyy h:mm"] },
  ],
  merges: [],
};

describe("files", () => {
  let brimbook: BrimbookPage;
  beforeEach(async () => {
    brimbook = await openPage(browser());
  });
  afterEach(() => brimbook.close());

  test("an .xlsx file is shown as it is, and a saved copy of it reads back equal, with styles and formulas", async () => {
    const content = {
      ...contentOf([LOG]),
      settings: new Map([["brimbook", { version: 1, country: "US" }]]),
    };
    const [sheet] = content.sheets;
    const styled = {
      ...content,
      sheets: [
        {
          ...sheet!,
          frozenRows: 1,
          columns: [{ widthCharacters: 12 }, undefined, { hidden: true }],
          rows: sheet!.rows.map((row, index) => ({
            ...row,
            ...(index === 0 && {
              heightPt: 24,
              styles: row.values.map(() => ({ bold: true, fill: "#d9eaee", wrap: true })),
            }),
            ...(index === 1 && {
              values: [...row.values.slice(0, 5), 111.375],
              origins: [...Array<undefined>(5), { formula: 'BRIM.MOD(D2,"ft")' }],
            }),
          })),
        },
      ],
    };
    await brimbook.openFile("log.xlsx", await writeXlsx(styled));
    await brimbook.untilOpen("log.xlsx");
    expect(await brimbook.value("Log", 1, 5)).toBe(111.375);

    const before = (await openFile(await writeXlsx(styled), "log.xlsx")).content;
    const after = (await openFile(await brimbook.savedCopy(), "log copy.xlsx")).content;
    expect(after).toEqual(before);
  });

  test("what is typed is in the saved copy, and so is what a formula spills", async () => {
    await brimbook.openFile("log.xlsx", await writeXlsx(contentOf([LOG])));
    await brimbook.untilOpen("log.xlsx");
    await brimbook.type("Log", "A6", "GP-120");
    await brimbook.type("Log", "H1", '=BRIM.FILLSTEPS("empty","air",200,"EAN32","bar")');
    await brimbook.value("Log", 0, 7);
    const saved = (await openFile(await brimbook.savedCopy(), "log copy.xlsx")).content.sheets[0]!;
    expect(saved.rows[5]!.values[0]).toBe("GP-120");
    expect(saved.rows[0]!.values.slice(7, 11)).toEqual(["Step", "Gas", "Add", "Stop at"]);
    expect(saved.rows[0]!.origins?.[7]).toMatchObject({
      formula: 'BRIM.FILLSTEPS("empty","air",200,"EAN32","bar")',
      fills: { firstRow: 0, firstColumn: 7, lastRow: 2, lastColumn: 10 },
    });
    expect(saved.rows[1]!.origins?.[8]).toBe("spill");
  });

  test("a .csv file is opened", async () => {
    const text = "Serial;Date;End bar\n007;2026-10-19;207,5\nGP-118;2026-10-20;210\n";
    await brimbook.openFile("log.csv", new TextEncoder().encode(text));
    await brimbook.untilOpen("log.csv");
    const [sheet] = await brimbook.page.evaluate(() => window.brimbook!.workbook.listSheets());
    const { rows } = await brimbook.readSheet(sheet!.name);
    expect(rows).toHaveLength(3);
    expect(rows[1]!.values[0]).toBe("007");
  });

  test("a file dropped on the page is opened", async () => {
    const bytes = [...(await writeXlsx(contentOf([LOG])))];
    const transfer = await brimbook.page.evaluateHandle((bytes) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([new Uint8Array(bytes)], "dropped.xlsx"));
      return transfer;
    }, bytes);
    await brimbook.page.dispatchEvent("canvas >> nth=-1", "dragover", { dataTransfer: transfer });
    await brimbook.page.getByText("Drop the file to open it").waitFor();
    await brimbook.page.dispatchEvent("canvas >> nth=-1", "drop", { dataTransfer: transfer });
    await brimbook.untilOpen("dropped.xlsx");
    expect((await brimbook.readSheet("Log")).rows[1]!.values[0]).toBe("007");
  });

  test("a file that is no workbook is refused in a sentence, and what was open stays open", async () => {
    await brimbook.openFile("photo.xlsx", new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3]));
    const message = brimbook.page.getByText("“photo.xlsx” cannot be read");
    await message.waitFor();
    expect(await message.innerText()).not.toMatch(/Error|at .*\.js/);
    await brimbook.untilOpen("gannet-point.xlsx");
    await brimbook.page.getByRole("button", { name: "Dismiss" }).click();
    expect(await message.isVisible()).toBe(false);
  });

  test("changes that are not saved are not thrown away unasked", async () => {
    await brimbook.openFile("log.xlsx", await writeXlsx(contentOf([LOG])));
    await brimbook.untilOpen("log.xlsx");
    await brimbook.type("Log", "A6", "GP-120");
    await brimbook.openFile("other.xlsx", await writeXlsx(contentOf([{ ...LOG, name: "Other" }])));
    await brimbook.page.getByText("log.xlsx has changes that are not saved").waitFor();
    await brimbook.page.getByRole("button", { name: "Keep working" }).click();
    expect((await brimbook.readSheet("Log")).rows[5]!.values[0]).toBe("GP-120");

    await brimbook.openFile("other.xlsx", await writeXlsx(contentOf([{ ...LOG, name: "Other" }])));
    await brimbook.page.getByRole("button", { name: "Open and lose changes" }).click();
    await brimbook.untilOpen("other.xlsx");
  });

  test("a long opening shows how far it is and can be called off", async () => {
    const rows = Array.from({ length: 60_000 }, (_, index) => ({
      values: [`GP-${index}`, 46_000 + (index % 300), 3000, 0.32, "R.", "partial pressure"],
    }));
    await brimbook.openFile("long.xlsx", await writeXlsx(contentOf([{ ...LOG, name: "Long", rows }])));
    await brimbook.page.getByRole("progressbar").waitFor();
    await brimbook.page.getByRole("button", { name: "Cancel" }).click();
    await brimbook.page.getByRole("progressbar").waitFor({ state: "detached" });
    await brimbook.untilOpen("gannet-point.xlsx");
  });
});
