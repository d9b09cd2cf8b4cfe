import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { columnIndex } from "../../src/sheet/sheet";
import { openPage, useBrowser, type BrimbookPage } from "./browser";

interface Key {
  readonly findings: readonly {
    rule: string;
    severity: string;
    sheet: string;
    cell: string;
    serial: string;
  }[];
}

const key = JSON.parse(readFileSync("shared/samples/gannet-point.key.json", "utf8")) as Key;
const browser = useBrowser();

describe("checking the sample log beside the grid", () => {
  let brimbook: BrimbookPage;
  beforeAll(async () => {
    brimbook = await openPage(browser());
  });
  afterAll(() => brimbook.close());

  const findings = () => brimbook.page.locator("[data-part=finding]");

  test("asks for country and units, then finds what was planted", async () => {
    const pane = brimbook.page.getByRole("main");
    await pane.getByRole("combobox").first().selectOption({ label: "United States" });
    await pane.getByRole("radio", { name: /^US/ }).check();
    await pane.getByRole("button", { name: "Start" }).click();
    await pane.getByRole("button", { name: "Check the log" }).click();
    await pane.getByText(`${key.findings.length} findings`).first().waitFor();
    const places = async () =>
      (await findings().allTextContents()).map((text) => text.split(" · ").at(-1)).sort();
    await expect.poll(places).toEqual(key.findings.map(({ sheet, cell }) => `${sheet}!${cell}`).sort());
  });

  test("a click on a finding puts the cursor on its cell, also on another sheet", async () => {
    for (const sheet of ["October 2026", "August 2026"]) {
      const planted = key.findings.filter((finding) => finding.sheet === sheet).at(-1)!;
      const [, letters, number] = /^([A-Z]+)(\d+)$/.exec(planted.cell)!;
      await findings()
        .filter({ hasText: `${sheet}!${planted.cell}` })
        .first()
        .click();
      await expect
        .poll(() => brimbook.selected())
        .toEqual({ sheet, row: Number(number) - 1, column: columnIndex(letters!) });
      await expect.poll(() => brimbook.cellLine()).toContain(planted.cell);
    }
  });

  test("nothing went wrong in the page, and nothing left it", () => {
    expect(brimbook.faults).toEqual([]);
  });
});
