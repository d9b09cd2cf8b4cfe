import { afterEach, describe, expect, test } from "vitest";
import { openPage, useBrowser, type BrimbookPage } from "./browser";

const browser = useBrowser();

describe("the page", () => {
  let brimbook: BrimbookPage;
  afterEach(() => brimbook.close());

  test("opens the sample log by itself, says what it opened, and asks nobody outside", async () => {
    brimbook = await openPage(browser());
    expect(await brimbook.page.title()).toBe("Brimbook");
    expect(await brimbook.page.getByText(/gannet-point\.xlsx: \d+ rows in \d+ sheets?\./).count()).toBe(1);
    expect(await brimbook.page.getByRole("heading", { level: 1 }).allInnerTexts()).toEqual(["Brimbook"]);
    expect(brimbook.faults).toEqual([]);
  });

  test("shows workbook and pane side by side where there is room", async () => {
    brimbook = await openPage(browser());
    const pane = (await brimbook.page.getByRole("main").boundingBox())!;
    expect(pane.width).toBeGreaterThanOrEqual(345);
    expect(pane.width).toBeLessThanOrEqual(355);
    expect(pane.x + pane.width).toBe(1366);
    expect(await brimbook.page.getByRole("tab", { name: "Workbook" }).isVisible()).toBe(false);
  });

  test("at 320 px workbook and pane take turns, and nothing hangs over", async () => {
    brimbook = await openPage(browser(), { viewport: { width: 320, height: 640 } });
    const { page } = brimbook;
    expect(await page.getByRole("main").isVisible()).toBe(false);
    expect(await overhang(brimbook)).toBeLessThanOrEqual(0);
    await page.getByRole("tab", { name: "Check and fill" }).click();
    expect((await page.getByRole("main").boundingBox())!.width).toBe(320);
    expect(await page.getByRole("region", { name: "Workbook" }).isVisible()).toBe(false);
    expect(await overhang(brimbook)).toBeLessThanOrEqual(0);

    const [sheet] = await page.evaluate(() => window.brimbook!.workbook.listSheets());
    await brimbook.select(sheet!.name, "B6");
    expect(await page.getByRole("region", { name: "Workbook" }).isVisible()).toBe(true);
    expect(await brimbook.selected()).toEqual({ sheet: sheet!.name, row: 5, column: 1 });
  });

  test("follows the system between light and dark", async () => {
    brimbook = await openPage(browser(), { colorScheme: "light" });
    const { page } = brimbook;
    const brightness = () =>
      page.evaluate(() => {
        const colour = getComputedStyle(document.querySelector("header")!).backgroundColor;
        return (colour.match(/\d+/g) ?? []).slice(0, 3).reduce((sum, part) => sum + Number(part), 0) / 765;
      });
    expect(await brightness()).toBeGreaterThan(0.8);
    await page.emulateMedia({ colorScheme: "dark" });
    await expect.poll(brightness).toBeLessThan(0.3);
  });

  test("what is typed in the pane goes to the pane, not into the grid", async () => {
    brimbook = await openPage(browser());
    const { page } = brimbook;
    await page.getByRole("combobox").first().focus();
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("Enter");
    const focused = await page.evaluate(() =>
      document.querySelector("main")?.contains(document.activeElement),
    );
    expect(focused).toBe(true);
    expect(await page.evaluate(() => window.brimbook!.selected())).toMatchObject({ row: 0, column: 0 });
  });
});

describe("the keyboard", () => {
  let brimbook: BrimbookPage;
  afterEach(() => brimbook.close());

  const focusIsIn = (place: string) =>
    brimbook.page.evaluate((within) => document.activeElement?.closest(within) !== null, place);
  const GRID = "section[aria-label=Workbook]";

  test("is not in the grid when a log lies open, so that a key pressed then changes nothing", async () => {
    brimbook = await openPage(browser());
    const { page } = brimbook;
    /* The grid asks for the focus some time after it has opened the workbook. */
    await page.getByRole("combobox").first().waitFor();
    await page.waitForTimeout(1500);
    expect(await focusIsIn(GRID)).toBe(false);
    const [sheet] = await page.evaluate(() => window.brimbook!.workbook.listSheets());
    const before = await brimbook.readSheet(sheet!.name);
    await page.keyboard.type("7");
    await page.keyboard.press("Enter");
    expect(await brimbook.readSheet(sheet!.name)).toEqual(before);
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Open file");
  });

  test("goes by F6 from the grid to the pane and back, each time to where it was", async () => {
    brimbook = await openPage(browser());
    const { page } = brimbook;
    await page.getByRole("combobox").first().waitFor();
    expect(await page.getByText("F6 goes from grid to pane and back.").isVisible()).toBe(true);
    const [sheet] = await page.evaluate(() => window.brimbook!.workbook.listSheets());
    await brimbook.select(sheet!.name, "B6");
    await brimbook.enterGrid();
    await page.keyboard.press("ArrowDown");
    await expect.poll(() => brimbook.selected()).toMatchObject({ row: 6, column: 1 });
    await page.keyboard.press("Tab");
    expect(await focusIsIn(GRID)).toBe(true);

    await page.keyboard.press("F6");
    expect(await focusIsIn("main")).toBe(true);
    await page.keyboard.press("Tab");
    const control = await page.evaluateHandle(() => document.activeElement);
    await page.keyboard.press("Shift+F6");
    expect(await focusIsIn(GRID)).toBe(true);
    await page.keyboard.type("Kept");
    await page.keyboard.press("Enter");
    expect(await brimbook.value(sheet!.name, 6, 2)).toBe("Kept");
    await page.keyboard.press("F6");
    expect(await page.evaluate((was) => document.activeElement === was, control)).toBe(true);
  });

  test("at 320 px F6 turns to what it goes to", async () => {
    brimbook = await openPage(browser(), { viewport: { width: 320, height: 640 } });
    const { page } = brimbook;
    await brimbook.enterGrid();
    await page.keyboard.press("F6");
    expect(await page.getByRole("main").isVisible()).toBe(true);
    expect(await focusIsIn("main")).toBe(true);
    await page.keyboard.press("F6");
    expect(await page.getByRole("main").isVisible()).toBe(false);
    expect(await focusIsIn(GRID)).toBe(true);
  });
});

/** How far the furthest of the page's own controls reaches beyond the right edge; the grid scrolls by itself. */
function overhang(brimbook: BrimbookPage): Promise<number> {
  return brimbook.page.evaluate(() => {
    const controls = [
      ...document.querySelectorAll("h1, p, button, [role=tab], [role=status], input, select"),
    ];
    const own = controls.filter((control) => !control.closest("[data-u-comp]"));
    const edges = own.map((control) => control.getBoundingClientRect().right);
    return Math.max(document.documentElement.scrollWidth, ...edges) - window.innerWidth;
  });
}
