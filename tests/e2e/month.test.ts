import { strFromU8, unzipSync } from "fflate";
import { expect, test } from "vitest";
import { openFile } from "../../src/workbook/file/openFile";
import { openPage, useBrowser } from "./browser";

const browser = useBrowser();

test("month end: the report is written into the workbook as new sheets, and a saved copy has its charts and tables", async () => {
  const opened = await openPage(browser());
  const { page } = opened;
  const pane = page.getByRole("main");
  await pane.getByRole("combobox").first().selectOption({ label: "United States" });
  await pane.getByRole("radio", { name: /^US/ }).check();
  await pane.getByRole("button", { name: "Start" }).click();
  await page.getByRole("tab", { name: "Month end" }).click();
  await page.getByRole("option", { name: /^October 2026/ }).waitFor({ state: "attached" });
  await page.getByRole("combobox", { name: "Month" }).selectOption("2026-10");
  await page.getByRole("button", { name: "Make the report" }).click();
  await page.getByRole("img", { name: /Fills in each week of October 2026/ }).waitFor();
  const before = await page.evaluate(() => window.brimbook!.workbook.listSheets());
  await page.getByRole("button", { name: "Write as new sheets" }).click();
  await page.getByText(/^Written as new sheets: Month 2026-10/).waitFor();
  const after = await page.evaluate(() => window.brimbook!.workbook.listSheets());
  expect(after.slice(0, before.length)).toEqual(before);
  expect(after.length - before.length).toBe(10);

  const bytes = await opened.savedCopy();
  const parts = Object.keys(unzipSync(bytes));
  expect(parts.filter((name) => name.startsWith("xl/charts/"))).toHaveLength(3);
  expect(parts.filter((name) => name.startsWith("xl/tables/")).length).toBeGreaterThan(8);
  const { sheets } = (await openFile(bytes, "copy.xlsx")).content;
  expect(sheets.find(({ name }) => name === "Month 2026-10")!.rows[0]!.values[0]).toBe(
    "Fill report, October 2026",
  );
  expect(strFromU8(unzipSync(bytes)["xl/workbook.xml"]!)).toContain("_xlnm.Print_Titles");
  expect(opened.faults).toEqual([]);
  await opened.close();
});
