import { readFileSync } from "node:fs";
import type { AxeResults } from "axe-core";
import type { Locator } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { evaluate } from "../../src/functions/evaluate";
import { openPage, useBrowser, type BrimbookPage } from "./browser";
import {
  CLEAN,
  keyboardIn,
  openFill,
  PAST_HYDRO,
  receive,
  stepsByFunction,
  stops,
  TO_FORTY,
} from "./fillArea";

const browser = useBrowser();
const axe = readFileSync("node_modules/axe-core/axe.min.js", "utf8");

describe("filling a cylinder of the sample", () => {
  let brimbook: BrimbookPage;
  let pane: Locator;
  beforeAll(async () => {
    brimbook = await openPage(browser());
    pane = await openFill(brimbook.page);
  });
  afterAll(() => brimbook.close());

  test("refuses one past hydro, with a slip to print", async () => {
    expect(await receive(pane, PAST_HYDRO)).toBe("Do not fill");
    await pane.getByRole("button", { name: "Print a refusal slip" }).waitFor();
  });

  test("plans without pure oxygen where the cylinder is not clean for it", async () => {
    expect(await receive(pane, TO_FORTY)).toBe("Fill");
    await pane.getByRole("button", { name: "Next: plan the fill" }).click();
    await pane.getByRole("textbox", { name: /^Pressure, psi/ }).fill("500");
    await pane.getByRole("button", { name: /^Take EAN32.2 from the log/ }).click();
    await pane.getByRole("button", { name: /^To its limit: 3000 psi/ }).click();
    await pane.getByRole("textbox", { name: "Mix", exact: true }).fill("EAN32");
    await pane.locator("[data-part=may]").getByText("Not this way").waitFor();
    await pane.getByRole("button", { name: /^The station/ }).click();
    await pane.getByRole("textbox", { name: /^Continuous, up to/ }).fill("40");
    await expect.poll(() => pane.locator("[data-part=may]").count()).toBe(0);
    const [[top]] = evaluate("TOPWITH", [500, 32.2, 3000, 32, "psi"]) as [[number]];
    expect(await pane.locator("[data-part=plan]").innerText()).toContain(`EAN${Number(top.toFixed(1))}`);
  });

  test("goes from the counter to the log by keyboard alone, with the worksheet's own figures", async () => {
    const { page } = brimbook;
    await pane.getByRole("button", { name: "Receive", exact: true }).focus();
    await page.keyboard.press("Enter");
    expect(await receive(pane, CLEAN)).toBe("Fill");
    const { reach, type } = keyboardIn(page, pane);
    await reach(/^Next: plan/);
    await page.keyboard.press("Enter");
    expect(await pane.getByRole("textbox", { name: "Mix, analysed" }).inputValue()).toBe("");
    await type(/^Pressure, psi/, "500");
    await type("Mix, analysed", "air");
    await type(/^Pressure, settled/, "3000");
    await type(/^Mix$/, "EAN36");
    // Continuous, which was set up before, needs no pure oxygen and comes first; the person chooses otherwise.
    await expect.poll(() => stops(pane)).toEqual(["3000"]);
    for (let tabs = 0; tabs < 80 && !(await pane.getByRole("radio", { checked: true }).evaluate((radio) => radio === document.activeElement)); tabs++)
      await page.keyboard.press("Tab");
    await page.keyboard.press("ArrowDown");
    await expect.poll(() => stops(pane)).toEqual(stepsByFunction(500, "air", 3000, 36, "psi"));
    await reach(/^Next: fill/);
    await page.keyboard.press("Enter");
    await type(/^Gas temperature/, "105");
    const [[warm]] = evaluate("SETTLED", [3000, 36, 70, 105, "psi"]) as [[number]];
    await expect.poll(() => pane.locator("[data-part=warm]").last().innerText()).toBe(`${warm.toFixed(0)} psi at 105 °F`);
    await reach(/^Next: analyse/);
    await page.keyboard.press("Enter");
    await type(/^Oxygen, %/, "35.8");
    await type(/^Analysed by/, "R.");
    await reach(/^Next: hand over/);
    await page.keyboard.press("Enter");
    await type(/^Received by/, "C-014");
    await pane.locator("[data-part=label]").getByText(/^EAN35.8 · O2 35.8 % · MOD/).waitFor();
    await reach("Add the row");
    await page.keyboard.press("Enter");
    await pane.locator("[data-part=log-row]").getByText(/^Written into row/).waitFor();
    const written = await pane.locator("[data-part=log-row]").getByText(/^Written into row/).innerText();
    const [, row, sheet] = /row (\d+) of (.+)\.$/.exec(written)!;
    const cells = (await brimbook.readSheet(sheet!)).rows[Number(row) - 1]!.values;
    expect(cells).toContain(CLEAN);
    expect(cells).toContain(35.8);
    expect(cells).toContain(3000);
  });

  test("prints card and label from a page of their own", async () => {
    const { page } = brimbook;
    await page.evaluate(() => {
      HTMLIFrameElement.prototype.remove = () => undefined;
    });
    await pane.getByRole("button", { name: "Print the fill card" }).click();
    const frame = page.frameLocator("[data-part=printed]");
    await frame.getByRole("heading", { name: "Fill card", includeHidden: true }).waitFor({ state: "attached" });
    expect(await frame.locator(".stop").count()).toBe(2);
  });

  test("fits 320 px without sideways scroll at every step, and axe finds nothing", async () => {
    const { page } = brimbook;
    await page.evaluate(axe);
    await page.setViewportSize({ width: 320, height: 700 });
    await page.getByRole("tab", { name: "Check and fill" }).click();
    for (const step of ["Receive", "Plan", "Fill", "Analyse", "Hand over"]) {
      await pane.getByRole("navigation", { name: "Steps" }).getByRole("button", { name: step, exact: true }).click();
      await pane.getByRole("heading", { name: step, level: 2 }).waitFor();
      const overflow = await pane.evaluate((element) => element.scrollWidth - element.clientWidth);
      expect(`${step} ${overflow}`).toBe(`${step} 0`);
      const low = await pane.locator("[role=tabpanel]").first().locator("button:visible, input:visible").evaluateAll((elements) =>
        elements
          .filter((element) => !element.closest("h3") && element.getAttribute("type") !== "radio" && element.getAttribute("type") !== "checkbox")
          .map((element) => [element.textContent || element.getAttribute("aria-label"), Math.round((element.closest(".fui-Input") ?? element).getBoundingClientRect().height)] as const)
          .filter(([, height]) => height < 44),
      );
      expect(low.map(([name]) => name).filter((name) => name !== "Copy row")).toEqual([]);
      const found = await page.evaluate(() =>
        (window as unknown as { axe: { run(at: string): Promise<AxeResults> } }).axe.run("main"),
      );
      expect(found.violations.map(({ id, nodes }) => `${step} ${id}: ${nodes[0]!.html}`)).toEqual([]);
    }
  });

  test("nothing went wrong in the page, and nothing left it", () => {
    expect(brimbook.faults).toEqual([]);
  });
}); // prettier-ignore
