import type { Locator } from "playwright-core";
import { afterEach, describe, expect, test } from "vitest";
import { openPage, useBrowser, type BrimbookPage } from "./browser";
import { CLEAN, openFill, PAST_HYDRO, receive, TO_FORTY } from "./fillArea";
import { FACES } from "./faces";
import { layoutFaults } from "./layout";

const browser = useBrowser();

let brimbook: BrimbookPage;
afterEach(() => brimbook.close());

const isDrawnIn = (family: string) =>
  brimbook.page.evaluate((family) => {
    const canvas = document.createElement("canvas").getContext("2d")!;
    const width = (font: string) => {
      canvas.font = `40px ${font}`;
      return canvas.measureText("Mgő 0123").width;
    };
    return width(`"${family}", monospace`) === width('"Source Sans 3", monospace');
  }, family);

describe("the shipped face", () => {
  test("is what page, pane and grid are drawn in, with digits as wide as each other", async () => {
    brimbook = await openPage(browser());
    const { page } = brimbook;
    for (const place of ["header h1", "main", "main button", "section [data-u-comp] "]) {
      const family = await page
        .locator(place)
        .first()
        .evaluate((each) => getComputedStyle(each).fontFamily);
      expect(`${place}: ${family}`).toBe(`${place}: "Source Sans 3", sans-serif`);
    }
    expect(await page.evaluate(() => document.fonts.check('600 14px "Source Sans 3"', "aő"))).toBe(true);
    const widths = await page.evaluate(() => {
      const canvas = document.createElement("canvas").getContext("2d")!;
      return ["400", "600"].flatMap((weight) => {
        canvas.font = `${weight} 100px "Source Sans 3"`;
        return [..."0123456789"].map((digit) => `${weight} ${canvas.measureText(digit).width.toFixed(2)}`);
      });
    });
    expect(new Set(widths).size).toBe(2);
  });

  test("stands in for Calibri and Arial in cells where the machine has neither", async () => {
    brimbook = await openPage(browser());
    const has = (name: string) =>
      brimbook.page.evaluate(
        (name) =>
          new FontFace("probe", `local("${name}")`).load().then(
            () => true,
            () => false,
          ),
        name,
      );
    for (const name of ["Calibri", "Arial"]) expect(await isDrawnIn(name)).toBe(!(await has(name)));
    expect(await isDrawnIn("Helvetica Neue")).toBe(true);
    expect(await isDrawnIn("monospace")).toBe(false);
  });
});

describe.each(FACES)("in the %s face at 320 px", (face) => {
  test("every area fits, and no word is broken", async () => {
    brimbook = await openPage(browser(), { viewport: { width: 320, height: 700 } }, face);
    const { page } = brimbook;
    await page.getByRole("tab", { name: "Check and fill" }).click();
    const found: string[] = [];
    const pane = page.getByRole("main");
    const look = async (step: string) => {
      found.push(...(await layoutFaults(pane)).map((fault) => `${step}: ${fault}`));
    };
    await look("first question");
    await openFill(page);
    await look("receive");
    await receive(pane, CLEAN);
    await look("received");
    await pane.getByRole("navigation", { name: "Steps" }).getByRole("button", { name: "Plan" }).click();
    await look("plan");
    await pane.getByRole("button", { name: "A row" }).click();
    const row = (name: string | RegExp, text: string) => pane.getByRole("textbox", { name }).fill(text);
    await row(
      /^Cylinders, one a line/,
      `${CLEAN}, 11.1, 500, air\n${TO_FORTY}, 11.1, 500, air\n${PAST_HYDRO}, 11.1, 0, air`,
    );
    await pane.getByRole("button", { name: "Check them all" }).click();
    for (const way of ["continuous", "bank"] as const) {
      await pane.getByRole("combobox", { name: "Filled" }).selectOption(way);
      await row(/^Fill to/, "3000");
      if (way === "continuous") {
        await row("Mix wanted", "EAN32");
        await row("One stream for all", "34");
      } else {
        await row(/^The bank, one a line/, "A, 40, 1800\nB, 40, 3600");
        await row("Gas in the bank", "air");
      }
      await pane.locator("[data-part=row-answer]").waitFor();
      await look(`a row, ${way}`);
    }
    for (const area of ["Check the log", "Month end", "Fill costs", "Rules & shop"]) {
      await pane.getByRole("tab", { name: area }).click();
      const panel = pane.locator("[role=tabpanel]:visible").first();
      await panel.getByRole("button").first().waitFor();
      await look(area);
      const starts = panel.getByRole("button", { name: /^(?:Check the log|Show|Work out)/ });
      if (!(await starts.count())) continue;
      await starts.first().click();
      await untilStill(pane);
      await look(`${area}, answered`);
      for (const tab of await panel.getByRole("tab").all()) {
        await tab.click();
        const folded = panel.locator("button[aria-expanded=false]:not([aria-haspopup]):visible");
        for (let opened = 0; opened < 12 && (await folded.count()) > 0; opened++)
          await folded.first().click();
        await look(`${area}, ${await tab.innerText()}`);
      }
    }
    expect(found).toEqual([]);
  });
});

/** Waits until nothing is being worked out, and two looks at the pane see the same. */
async function untilStill(pane: Locator): Promise<void> {
  let before = "";
  await expect
    .poll(
      async () => {
        const [now, busy] = [await pane.innerText(), await pane.getByRole("progressbar").count()];
        const isStill = now === before && busy === 0;
        before = now;
        return isStill;
      },
      { interval: 500, timeout: 20_000 },
    )
    .toBe(true);
}
