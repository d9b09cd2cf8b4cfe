import type { Browser } from "playwright-core";
import { writeXlsx } from "../src/workbook/file/writeXlsx";
import { servedPage } from "./bench-page";
import { madeUpSheetsAndPrices } from "./bench-sheets";
import { Hand } from "./hand";
import { tasksDuring, type HeldTask } from "./held-tasks";

/** Opens a log in the local workbook, checks it, marks it and saves it. */
export async function holdOfPage(
  browser: Browser,
  fills: number,
  told: (what: string, tasks: readonly HeldTask[]) => void,
): Promise<void> {
  const server = await servedPage();
  const context = await browser.newContext({ viewport: { width: 1366, height: 768 } });
  try {
    const page = await context.newPage();
    const hand = new Hand(page);
    const measure = async (what: string, act: () => Promise<void>) => {
      told(what, await tasksDuring(browser, page, act));
    };
    await page.goto(server.address);
    await hand.choose("select[name=country]", "US");
    await hand.press("label", /^US/);
    await hand.press("main button", /^Start$/);
    const sheets = madeUpSheetsAndPrices(fills).map((sheet) => ({
      ...sheet,
      columns: [],
      frozenRows: 1,
      frozenColumns: 0,
    }));
    const bytes = await writeXlsx({ sheets, settings: new Map(), leftOut: [] });
    const file = { name: "long.xlsx", mimeType: "application/octet-stream", buffer: Buffer.from(bytes) };
    await measure("opening the file", async () => {
      await page.locator("input[type=file]").setInputFiles(file);
      await hand.until("section span", /^long\.xlsx: /);
    });
    await hand.choose("select[name=country]", "US");
    await hand.press("label", /^US/);
    await measure("reading the sheets and describing the log", async () => {
      await hand.press("main button", /^Start$/);
      await hand.press("[role=tab]", /^Check the log/);
      await hand.until(".fui-Button:not([aria-disabled=true])", /^Check the log$/);
    });
    await measure("the audit, until its findings are shown", async () => {
      await hand.press(".fui-Button", /^Check the log$/);
      await hand.until("h2", /^[0-9,]+ findings/);
    });
    await measure("marks on the log", async () => {
      await hand.press("button", /^Mark on the log$/);
      await hand.until("main p", /^Marked/);
    });
    await measure("marks taken away", async () => {
      await hand.press("button", /^Take marks away$/);
      await hand.until("main p", /^The marks are gone/);
    });
    await measure("a findings sheet", async () => {
      await hand.press("button", /^Write a findings sheet$/);
      await hand.until("main p", /^Written to the new sheet/);
    });
    await measure("saving a copy", async () => {
      const saved = page.waitForEvent("download", { timeout: 120_000 });
      await hand.press("button", /^Save a copy$/);
      await (await saved).path();
    });
  } finally {
    await context.close();
    server.stop();
  }
}
