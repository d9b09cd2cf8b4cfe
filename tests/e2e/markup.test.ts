import { readFileSync } from "node:fs";
import type { Locator } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { openFile } from "../../src/workbook/file/openFile";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { openPage, useBrowser, type BrimbookPage } from "./browser";

const browser = useBrowser();

/** Each would tell of itself if any part of the page took it for markup, a script or an address. */
const MARKUP = [
  `<img src=x onerror="window.ran='image'">`,
  `<svg onload="window.ran='svg'"></svg>`,
  `<script>window.ran='script'</script>`,
  `"><iframe srcdoc="<script>parent.ran='frame'</script>"></iframe>`,
  `javascript:window.ran='address'`,
];

/** The sample with markup in every sheet name, serial, owner and remark that is text. */
async function withMarkup(): Promise<Uint8Array> {
  const { content } = await openFile(readFileSync("shared/samples/gannet-point.xlsx"), "gannet-point.xlsx");
  let turn = 0;
  const marked = (text: string) => `${text} ${MARKUP[turn++ % MARKUP.length]!}`;
  const SERIAL_OR_OWNER = /^(?:[A-Z]{1,2}\d{4,}|C-\d{3}|Shop)$/;
  const serials = new Map<string, string>();
  return writeXlsx({
    ...content,
    sheets: content.sheets.map((sheet, index) => ({
      ...sheet,
      name: `<b onclick=ran=1>${index}`,
      rows: sheet.rows.map((row) => ({
        ...row,
        values: row.values.map((value) => {
          if (typeof value !== "string") return value;
          if (SERIAL_OR_OWNER.test(value)) {
            if (!serials.has(value)) serials.set(value, marked(value));
            return serials.get(value)!;
          }
          return value.length > 24 ? marked(value) : value;
        }),
      })),
    })),
  });
}

describe("markup in sheet names, serials, owners and remarks", () => {
  let brimbook: BrimbookPage;
  let pane: Locator;
  beforeAll(async () => {
    brimbook = await openPage(browser());
    pane = brimbook.page.getByRole("main");
    await brimbook.openFile("<img src=x onerror=ran=1>.xlsx", await withMarkup());
    await brimbook.untilOpen("<img src=x onerror=ran=1>.xlsx");
  });
  afterAll(() => brimbook.close());

  /** Nothing ran, nothing was refused by the policy either, and no element of the markup exists. */
  const nothingRan = async () => {
    const ran = await brimbook.page.evaluate(() => (window as { ran?: unknown }).ran);
    const made = await brimbook.page
      .locator("[onerror], [onload], [onclick], iframe[srcdoc], a[href^='javascript:'], img[src=x]")
      .count();
    expect({ ran, made, faults: brimbook.faults }).toEqual({ ran: undefined, made: 0, faults: [] });
  };

  test("runs nothing where the log is opened and checked", async () => {
    await nothingRan();
    await pane.getByRole("combobox").first().selectOption({ label: "United States" });
    await pane.getByRole("radio", { name: /^US/ }).check();
    await pane.getByRole("button", { name: "Start" }).click();
    await pane.getByRole("tab", { name: "Check the log" }).click();
    await pane.locator("[data-part=finding]").first().waitFor();
    await pane.getByText("onerror=").first().waitFor();
    await nothingRan();
  });

  test("runs nothing in the other areas", async () => {
    for (const area of await pane.getByRole("tablist", { name: "Areas" }).getByRole("tab").all()) {
      await area.click();
      await pane.locator("[role=tabpanel]:visible").getByRole("button").first().waitFor();
      await nothingRan();
    }
  });

  test("runs nothing in the cells, and no link of a cell leads to a script", async () => {
    const sheets = await brimbook.page.evaluate(() => window.brimbook!.workbook.listSheets());
    for (const { name } of sheets) {
      await brimbook.select(name, "D6");
      await nothingRan();
    }
    const [first] = sheets;
    await brimbook.type(first!.name, "A6", '=HYPERLINK("javascript:window.ran=1","press")');
    await brimbook.clickCell(5, 0);
    await nothingRan();
  });
});
