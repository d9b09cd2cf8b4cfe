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

const number = (id: string, ...given: readonly (string | number)[]): number =>
  evaluate(id, given)[0]![0] as number;
const part = (pane: Locator, name: string) => pane.locator(`[data-part=${name}]`);
const fill = (pane: Locator, name: string | RegExp, text: string) =>
  pane.getByRole("textbox", { name, ...(typeof name === "string" && { exact: true }) }).fill(text);
const press = (pane: Locator, name: string | RegExp) =>
  pane.getByRole("button", { name, ...(typeof name === "string" && { exact: true }) }).click();

async function plan(
  pane: Locator,
  start: string,
  startMix: string,
  end: string,
  endMix: string,
): Promise<void> {
  await pane.getByRole("navigation", { name: "Steps" }).getByRole("button", { name: "Plan" }).click();
  await fill(pane, /^Pressure, psi/, start);
  await fill(pane, "Mix, analysed", startMix);
  await fill(pane, /^Pressure, settled/, end);
  await fill(pane, "Mix", endMix);
}

describe("one cylinder, after the plan", () => {
  let brimbook: BrimbookPage;
  let pane: Locator;
  beforeAll(async () => {
    brimbook = await openPage(browser());
    pane = await openFill(brimbook.page);
    expect(await receive(pane, CLEAN)).toBe("Fill");
    await plan(pane, "500", "air", "3000", "EAN36");
  });
  afterAll(() => brimbook.close());

  test("is topped from the reading found once it has cooled: settled reading, mix and warm stop are SETTLED's and MIXAFTER's", async () => {
    await press(pane, /^Next: fill/);
    await fill(pane, /^Gas temperature/, "105");
    await fill(pane, /^Reading found/, "2800");
    await fill(pane, /^Found at/, "80");
    const oxygenStop = number("STOPAT", "oxygen", 500, "air", 3000, 36, "psi");
    const afterOxygen = number("MIXAFTER", 500, "air", oxygenStop, "oxygen", "psi");
    const now = number("MIXAFTER", oxygenStop, afterOxygen, 2800, "air", "psi", "oxygen", 70, 80);
    const settled = number("SETTLED", 2800, now, 80, 70, "psi");
    const after = number("MIXAFTER", settled, now, 3000, "air", "psi");
    const warm = number("SETTLED", 3000, after, 70, 105, "psi");
    const said = await part(pane, "top-off").innerText();
    expect(said).toContain(
      `Settled that is ${settled.toFixed(0)} psi at 70 °F, and the mix is now O2 ${now.toFixed(1)} %`,
    );
    expect(said).toContain(
      `Top to 3000 psi settled; to ${warm.toFixed(0)} psi at 105 °F. Then: O2 ${after.toFixed(1)} %.`,
    );
  });

  test("that came out wrong is put right by the steps of FILLSTEPS, or kept as analysed with the MOD of MOD", async () => {
    await press(pane, /^Next: analyse/);
    await fill(pane, /^Oxygen, %/, "33.1");
    await fill(pane, /^Pressure, settled/, "2900");
    await part(pane, "corrections").waitFor();
    const said = await part(pane, "analysis").innerText();
    expect(said).toContain("−2.9 points of oxygen from the order: out of tolerance.");
    expect(said).toContain(`MOD ${Math.floor(number("MOD", 33.1, "ft"))} ft`);
    // By adding oxygen alone, to an end above the ordered one; then to the ordered end.
    const [end] = await stops(pane);
    expect(number("MIXAFTER", 2900, 33.1, Number(end), "oxygen", "psi")).toBeCloseTo(36, 1);
    await press(part(pane, "corrections"), /^Drain, then oxygen/);
    await expect
      .poll(async () => (await stops(pane)).slice(1))
      .toEqual(stepsByFunction(2900, 33.1, 3000, 36, "psi"));
  });

  test("has its card as a sheet of the workbook, with the stops of FILLSTEPS and the warm readings of SETTLED", async () => {
    await press(pane, /^Hand over as analysed/);
    await press(pane, "Insert the card as a sheet");
    await brimbook.page.getByText(/^It is in the sheet Fill card/).waitFor({ state: "attached" });
    const name = `Fill card ${CLEAN}`;
    const cells = (await brimbook.readSheet(name)).rows.map(({ values }) => values);
    const steps = cells.filter((row) => row.includes("☐"));
    expect(steps.map((row) => String(row[2]))).toEqual(stepsByFunction(500, "air", 3000, 36, "psi"));
    const warm = number("SETTLED", 3000, 36, 70, 105, "psi");
    expect(steps.at(-1)![3]).toBe(`${warm.toFixed(0)} psi at 105 °F`);
    expect(cells.flat()).toContain("Customer's signature");
    expect(cells.flat()).toContain(`${Math.floor(number("MOD", 36, "ft"))} ft at 1.4`);
  });

  test("has its label as a sheet, from the analysis, and what is still open is said", async () => {
    expect(await part(pane, "still-open").innerText()).toBe(
      "Still open: certification not seen; not signed.",
    );
    await pane.getByRole("navigation", { name: "Steps" }).getByRole("button", { name: "Analyse" }).click();
    await fill(pane, /^Analysed by/, "R.");
    await press(pane, /^Hand over as analysed/);
    await press(pane, "Insert the label as a sheet");
    await brimbook.page.getByText("It is in the sheet Labels.").waitFor({ state: "attached" });
    const cells = (await brimbook.readSheet("Labels")).rows.map(({ values }) => values[0]);
    expect(cells.slice(0, 2)).toEqual([
      "EAN33.1",
      `MOD ${Math.floor(number("MOD", 33.1, "ft"))} ft at ppO2 1.4`,
    ]);
  });

  test("nothing went wrong in the page, and nothing left it", () => {
    expect(brimbook.faults).toEqual([]);
  });
});

describe("a row of cylinders", () => {
  let brimbook: BrimbookPage;
  let pane: Locator;
  let size: string;
  beforeAll(async () => {
    brimbook = await openPage(browser());
    pane = await openFill(brimbook.page);
    await press(pane, "A row");
    const register = await brimbook.readSheet("Cylinders");
    size = String(register.rows.find(({ values }) => values[0] === CLEAN)!.values[2]);
  });
  afterAll(() => brimbook.close());

  test("comes from the rows selected in the log, by keyboard; a row that is made tells no pressure", async () => {
    const { page } = brimbook;
    const sheet = "October 2026";
    const waiting = [[CLEAN, 450, 32], [TO_FORTY, 700, "air"], [PAST_HYDRO, 500, "air"]] as const;
    const first = (await brimbook.readSheet(sheet)).rows.length;
    for (const [serial, start, mix] of waiting)
      await page.evaluate(
        ([name, each]) =>
          window.brimbook!.workbook.appendRow!(name, [
            { column: 1, value: 46_326, format: "m/d/yyyy" },
            ...each.map((value, index) => ({ column: [3, 6, 7][index]!, value })),
          ]),
        [sheet, [serial, start, mix]] as const,
      );
    await page.locator("canvas[id^=univer-sheet-main]").click({ position: { x: 300, y: 200 } });
    await brimbook.select(sheet, `D${first - 1}`);
    for (let row = 0; row < 4; row++) await page.keyboard.press("Shift+ArrowDown");
    await press(pane, "Take the rows selected in the sheet");
    await part(pane, "rows-taken").waitFor();
    const list = pane.getByRole("textbox", { name: /^Cylinders, one a line/ });
    const lines = (await list.inputValue()).split("\n");
    expect(lines.slice(-3)).toEqual([
      `${CLEAN}, ${size}, 450 psi, EAN32`,
      expect.stringMatching(new RegExp(`^${TO_FORTY}, .+, 700 psi, air$`)),
      expect.stringMatching(new RegExp(`^${PAST_HYDRO}, .+, 500 psi, air$`)),
    ]);
    expect(await part(pane, "rows-taken").innerText()).toMatch(/what is left in it now is not known/);
    expect(await part(pane, "row-verdicts").innerText()).toMatch(new RegExp(`${PAST_HYDRO}\\s+Do not fill`));
    await press(pane, "Take them out again");
    expect(await list.inputValue()).toBe("");
  });

  test("by continuous blending has the streams of TOPWITH, what one stream makes as MIXAFTER, and the flow of INJECT", async () => {
    await fill(pane, /^Cylinders, one a line/, `${CLEAN}, ${size}, 450, EAN32\n${TO_FORTY}, ${size}, 700, air\n${PAST_HYDRO}, ${size}, 500, air`);
    await press(pane, "Check them all");
    await part(pane, "row-verdicts").waitFor();
    await pane.getByRole("combobox", { name: "Filled" }).selectOption("continuous");
    await fill(pane, "Mix wanted", "EAN32");
    await fill(pane, /^Fill to/, "3000");
    await fill(pane, "One stream for all", "34");
    const rows = part(pane, "row-answer").locator("tbody tr");
    await expect.poll(() => rows.count()).toBe(2);
    const given = [[CLEAN, 450, "EAN32"], [TO_FORTY, 700, "air"]] as const;
    for (const [index, [serial, start, mix]] of given.entries()) {
      const own = number("TOPWITH", start, mix, 3000, 32, "psi");
      const made = number("MIXAFTER", start, mix, 3000, 34, "psi");
      const cells = await rows.nth(index).locator("td").allInnerTexts();
      const right = Math.abs(made - 32) <= 1 ? "right" : "out of tolerance";
      expect(cells).toEqual([serial, String(start), `${own.toFixed(1)} %`, `O2 ${made.toFixed(1)} %, ${right}`]);
    }
    expect(await part(pane, "row-common").innerText()).toContain(`${number("INJECT", 34, 100).toFixed(1)} % is the oxygen supply`);
    expect(await part(pane, "row-refused").innerText()).toMatch(new RegExp(`${PAST_HYDRO}: Hydro .* ran out`));
  });

  test("from a bank stands with each bottle as DECANT has it, and no gas of FREEGAS is lost", async () => {
    await pane.getByRole("combobox", { name: "Filled" }).selectOption("bank");
    await fill(pane, /^Cylinders, one a line/, `${CLEAN}, 11.1, 500, air\n${TO_FORTY}, 11.1, 500, air`);
    await fill(pane, /^The bank, one a line/, "A, 40, 1800\nB, 40, 3600");
    const rows = part(pane, "row-answer").locator("tbody tr");
    await expect.poll(() => rows.count()).toBeGreaterThan(2);
    const openings = await rows.evaluateAll((each) => each.map((row) => [...row.querySelectorAll("td")].map(({ innerText }) => innerText)));
    const equal = number("DECANT", "40 L", 1800, "11.1 L", 500, "air", "psi");
    expect(openings[0]).toEqual([`A on ${CLEAN}`, "500", equal.toFixed(0), equal.toFixed(0)]);
    expect(openings[1]!.slice(0, 3)).toEqual([`B on ${CLEAN}`, equal.toFixed(0), "3000"]);
    const gas = (litres: number, psi: number) => number("FREEGAS", `${litres} L`, psi, "air", "psi");
    const left = Number(openings[1]![3]);
    const before = gas(40, 3600) + gas(11.1, equal);
    expect(Math.abs(gas(40, left) + gas(11.1, 3000) - before)).toBeLessThan(gas(40, left + 1) - gas(40, left));
    const answer = await part(pane, "row-answer").innerText();
    const last = Number(openings.at(-1)![3]);
    expect(answer).toContain(`B ${last} psi`);
    expect(answer).toMatch(/Then (?:no|\d+) more like the last come out full\./);
  });

  test("is filled in and worked out by keyboard alone", async () => {
    const { page } = brimbook;
    const { reach, type } = keyboardIn(page, pane);
    await pane.getByRole("button", { name: "A row" }).focus();
    await type(/^Cylinders, one a line/, `${CLEAN}, ${size}, 600, air`);
    await reach("Check them all");
    await page.keyboard.press("Enter");
    await expect.poll(() => part(pane, "row-verdicts").locator("tbody tr").count()).toBe(1);
    await reach("Filled", "combobox");
    await page.keyboard.press("ArrowDown");
    await type("Mix wanted", "EAN30");
    await type(/^Fill to/, "3100");
    await type("One stream for all", "");
    const own = number("TOPWITH", 600, "air", 3100, 30, "psi");
    await expect
      .poll(() => part(pane, "row-answer").locator("tbody td").nth(2).innerText())
      .toBe(`${own.toFixed(1)} %`);
  });

  test.each([
    ["light", { colorScheme: "light", forcedColors: "none" }],
    ["dark", { colorScheme: "dark", forcedColors: "none" }],
    ["forced colours", { colorScheme: "dark", forcedColors: "active" }],
  ] as const)("fits 320 px either way it is filled, in %s, and axe finds nothing", async (_, look) => {
    const { page } = brimbook;
    await page.emulateMedia(look);
    await page.setViewportSize({ width: 320, height: 700 });
    await page.getByRole("tab", { name: "Check and fill" }).click();
    await page.evaluate(axe);
    for (const way of ["bank", "continuous"]) {
      await pane.getByRole("combobox", { name: "Filled" }).selectOption(way);
      await part(pane, "row-answer").waitFor();
      const overflow = await pane.evaluate((element) => element.scrollWidth - element.clientWidth);
      expect(`${way} ${overflow}`).toBe(`${way} 0`);
      const found = await page.evaluate(() =>
        (window as unknown as { axe: { run(at: string): Promise<AxeResults> } }).axe.run("main"),
      );
      expect(found.violations.map(({ id, nodes }) => `${way} ${id}: ${nodes[0]!.html}`)).toEqual([]);
    }
  });

  test("nothing went wrong in the page, and nothing left it", () => {
    expect(brimbook.faults).toEqual([]);
  });
}); // prettier-ignore
