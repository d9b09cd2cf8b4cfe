import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { createContext, runInContext } from "node:vm";
import type { AxeResults } from "axe-core";
import type { Page } from "playwright-core";
import { afterEach, beforeAll, describe, expect, test } from "vitest";
import { cellName, type Sheet } from "../../src/sheet/sheet";
import { NO_OFFICE } from "../../src/taskpane/notices";
import { WORKSHEET_FUNCTIONS } from "../../src/functions/catalogue";
import type { Argument } from "../../src/typed/cells";
import { evaluate } from "../../src/functions/evaluate";
import { COUNTRIES, countryRules } from "../../src/cylinders/countryRules";
import sizes from "#shared/cylinders/sizes.json";
import { manifestFaults } from "../manifest/crossChecks";
import {
  buildAddIn,
  builtFiles,
  FOLDER,
  officeDouble,
  openPane,
  ORIGIN,
  OFFICE_JS,
  sampleSheets,
} from "./builtPane";
import { useBrowser } from "./browser";

const browser = useBrowser();
const axe = readFileSync("node_modules/axe-core/axe.min.js", "utf8");
let office: string;
let sheets: Sheet[];
let opened: Awaited<ReturnType<typeof openPane>> | undefined;

beforeAll(async () => {
  buildAddIn();
  [office, sheets] = await Promise.all([officeDouble(), sampleSheets()]);
});
afterEach(() => opened?.page.context().close());

/** Opens the pane on the sample log. */
async function open(options: Parameters<typeof openPane>[3] = {}, dark?: boolean): Promise<Page> {
  opened = await openPane(browser(), office, { sheets, ...(dark !== undefined && { dark }) }, options);
  await opened!.page.getByRole("heading", { name: "Check your fill log" }).waitFor();
  return opened.page;
}

async function answer(page: Page): Promise<void> {
  await page.getByRole("combobox").first().selectOption({ label: "United States" });
  await page.getByRole("radio", { name: /^US/ }).check();
  await page.getByRole("button", { name: "Start" }).click();
}

const findings = (page: Page) => page.locator("[data-part=finding]");

async function check(page: Page): Promise<void> {
  await answer(page);
  await findings(page).first().waitFor();
}

/** What axe has against the page, one line each. */
async function violations(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  return page.evaluate(async () => {
    const { run } = (window as unknown as { axe: { run(page: Document): Promise<AxeResults> } }).axe;
    const { violations: found } = await run(document);
    return found.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
  });
}

/** How far the page, or anything in it that a person reads or presses, reaches beyond the right edge. */
const overhang = (page: Page) =>
  page.evaluate(() => {
    const seen = [...document.querySelectorAll("h1, h2, h3, p, button, input, select, label, li, td")].filter(
      (element) => element.checkVisibility() && !element.closest("[role=status]"),
    );
    const edges = seen.map((element) => element.getBoundingClientRect().right);
    return Math.max(document.documentElement.scrollWidth, ...edges) - window.innerWidth;
  });

const brightness = (page: Page) =>
  page.evaluate(() => {
    const colour = getComputedStyle(document.querySelector("main")!).backgroundColor;
    return (colour.match(/\d+/g) ?? []).slice(0, 3).reduce((sum, part) => sum + Number(part), 0) / 765;
  });

/** As much of jsdom as reading XML takes; it comes without types. */
interface Jsdom {
  readonly JSDOM: new () => { window: { DOMParser: typeof DOMParser } };
}

describe("what npm run build makes", () => {
  test("holds nothing of localhost, and no address of ours but the one it was built for", () => {
    for (const file of builtFiles()) {
      if (!/\.(html|js|json|xml)$/.test(file)) continue;
      expect(readFileSync(join(FOLDER, file), "utf8"), file).not.toMatch(/localhost|127\.0\.0\.1/);
    }
  });

  test("has a manifest that fits together, with a file behind each address", () => {
    const { JSDOM } = createRequire(import.meta.url)("jsdom") as Jsdom;
    globalThis.DOMParser = new JSDOM().window.DOMParser;
    const manifest = readFileSync(join(FOLDER, "manifest.xml"), "utf8");
    const imageSize = (path: string): [number, number] => {
      const png = readFileSync(join(FOLDER, path));
      return [png.readUInt32BE(16), png.readUInt32BE(20)];
    };
    const serves = (path: string) => builtFiles().includes(path);
    expect(manifestFaults(manifest, { origin: ORIGIN, serves, imageSize })).toEqual([]);
  });

  test("has functions that answer as they do in the sources, for every country, class and size", () => {
    const functions = new Map<string, (...given: unknown[]) => unknown[][]>();
    class CellError {
      constructor(
        readonly error: string,
        readonly message: string,
      ) {}
    }
    const CustomFunctions = {
      associate: (id: string, run: (...given: unknown[]) => unknown[][]) => functions.set(id, run),
      Error: CellError,
      ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
    };
    const context = createContext({ CustomFunctions, setTimeout });
    runInContext(readFileSync(join(FOLDER, "functions.js"), "utf8"), context);
    // As the pane says it: dates count from 1900.
    (context as { brimbookDates: (system: 1900 | 1904) => boolean }).brimbookDates(1900);
    const built = (id: string, given: readonly Argument[]) => {
      try {
        return functions.get(id)!(
          ...given.map((argument) => (Array.isArray(argument) ? argument : [[argument]])),
        );
      } catch (thrown) {
        return [[thrown]];
      }
    };
    const alike = (id: string, given: readonly Argument[]) => {
      expect(JSON.stringify(built(id, given)), JSON.stringify([id, ...given])).toBe(
        JSON.stringify(evaluate(id, given)),
      );
      compared += 1;
    };
    let compared = 0;
    for (const { id, examples } of WORKSHEET_FUNCTIONS) {
      if (id !== "WHY") for (const example of examples) alike(id, example);
    }
    for (const name of sizes.cylinders.flatMap(({ names }) => names))
      alike("FREEGAS", [name, 200, "air", "bar"]);
    for (const { code } of COUNTRIES) {
      for (const { classes } of countryRules(code).cylinders) {
        for (const cylinderClass of [null, ...classes]) {
          alike("HYDRODUE", ["2019-06", code, cylinderClass]);
          alike("VISUALDUE", ["2026-05", code, cylinderClass]);
        }
      }
      for (const rating of ["air only", 40, 100, null])
        for (const mix of ["air", "EAN32", "EAN50", "oxygen", "18/45", null])
          for (const method of ["partial pressure", "continuous", "banked", null])
            for (const date of ["2026-10-31", "2021-01-05"])
              alike("FILLCHECK", [date, "2020-05", "2025-11", rating, mix, method, code]);
    }
    expect(compared).toBeGreaterThan(3000);
  });
});

describe.each([320, 350])("the pane at %i px", (width) => {
  const viewport = { width, height: 378 };
  test.each([
    ["light", { viewport, colorScheme: "light" }],
    ["dark", { viewport, colorScheme: "dark" }],
    ["forced colours", { viewport, forcedColors: "active" }],
  ] as const)(
    "in %s is readable at each step, hangs nowhere over, and axe finds nothing",
    async (appearance, options) => {
      const page = await open(options);
      const look = async (step: string) => {
        if (process.env.PICTURES) {
          const name = `${width}-${appearance}-${step}.png`.replaceAll(" ", "-");
          await page.screenshot({ path: join(process.env.PICTURES, name) });
        }
        expect(await violations(page), step).toEqual([]);
        expect(await overhang(page), step).toBeLessThanOrEqual(0);
      };
      await look("asks");
      await answer(page);
      await findings(page).first().waitFor();
      await look("has checked");
      for (const tab of await page.getByRole("tablist", { name: "Areas" }).getByRole("tab").all()) {
        await tab.click();
        await page
          .locator("[role=tabpanel]:visible")
          .getByRole("heading")
          .or(page.getByRole("button"))
          .first()
          .waitFor();
        await look((await tab.textContent()) ?? "");
      }
      expect(opened!.faults).toEqual([]);
    },
  );
});

describe("the pane in Excel", () => {
  test("asks nobody but its own address and Microsoft's office.js, and keeps to its policy", async () => {
    const page = await open();
    await check(page);
    const own = (url: string) => url === OFFICE_JS || url.startsWith(`${ORIGIN}/`);
    expect(opened!.requests.filter((url) => !own(url))).toEqual([]);
    // Its own address serves the page, its scripts and the typeface, and is asked for nothing else.
    expect(opened!.requests.filter((url) => !/\.(html|js|woff2)$/.test(new URL(url).pathname))).toEqual([]);
    expect(opened!.faults).toEqual([]);
    const blocked = await page.evaluate(() =>
      fetch("https://elsewhere.example/").then(
        () => "answered",
        () => "blocked",
      ),
    );
    expect(blocked).toBe("blocked");
    expect(opened!.requests.some((url) => url.includes("elsewhere"))).toBe(false);
  });

  test("registers every function before it starts", async () => {
    const page = await open();
    const registered = await page.evaluate(() => [...window.excel.functions.keys()]);
    const told = (
      JSON.parse(readFileSync(join(FOLDER, "functions.json"), "utf8")) as {
        functions: { id: string }[];
      }
    ).functions.map(({ id }) => id);
    expect(registered.sort()).toEqual(told.sort());
  });

  test("follows the theme of Excel, whatever the system has, and looks again when it is used", async () => {
    const page = await open({ colorScheme: "light" }, true);
    expect(await brightness(page)).toBeLessThan(0.3);
    await page.evaluate(() => {
      window.excel.setTheme(false);
      window.dispatchEvent(new Event("focus"));
    });
    await expect.poll(() => brightness(page)).toBeGreaterThan(0.8);
  });

  test("follows the system where Excel names no theme", async () => {
    const page = await open({ colorScheme: "dark" });
    expect(await brightness(page)).toBeLessThan(0.3);
    await page.emulateMedia({ colorScheme: "light" });
    await expect.poll(() => brightness(page)).toBeGreaterThan(0.8);
  });

  test("can be used with the keyboard alone, from the first question to the cell of a finding", async () => {
    const page = await open();
    const tabTo = async (what: string) => {
      for (let press = 0; press < 60; press += 1) {
        await page.keyboard.press("Tab");
        const focused = await page.evaluate(() => {
          const element = document.activeElement as HTMLInputElement | null;
          const name = element?.getAttribute("aria-label") ?? element?.textContent ?? "";
          const kind = element?.role ?? element?.type ?? element?.tagName ?? "";
          return `${kind} ${element?.dataset.part ?? ""} ${name}`;
        });
        if (focused.includes(what)) return;
      }
      throw new Error(`Tab never comes to ${what}.`);
    };
    await tabTo("select");
    await page.keyboard.type("United S");
    await tabTo("radio");
    await page.keyboard.press("Space");
    await tabTo("submit  Start");
    await page.keyboard.press("Enter");
    await findings(page).first().waitFor();
    await tabTo("button finding ");
    const place = await page.evaluate(() => document.activeElement?.closest("li")?.textContent);
    await page.keyboard.press("Enter");
    await expect
      .poll(async () => {
        const selected = await page.evaluate(() => window.excel.selected());
        return place?.includes(`${selected.sheet}!${cellName(selected)}`);
      })
      .toBe(true);
    // The ring that shows where one is can be seen.
    const outline = await page.evaluate(() => getComputedStyle(document.activeElement!).outlineStyle);
    expect(outline).not.toBe("none");
  });

  test("says when a cell has changed since it was judged, and when a cell is being edited", async () => {
    const page = await open();
    await check(page);
    const text = await findings(page).first().textContent();
    const [, sheet, letters, number] = /([^·!]+)!([A-Z]+)(\d+)\s*$/.exec(text!)!;
    await page.evaluate(
      ([name, row]) => {
        const rows = window.excel.fake.book.sheets.find((each) => each.name === name)!.rows;
        rows[row] = { ...rows[row]!, values: rows[row]!.values.map(() => "changed") };
      },
      [sheet!.trim(), Number(number) - 1] as const,
    );
    await findings(page).first().click();
    await page
      .getByText(/changed|holds/i)
      .first()
      .waitFor();
    expect(await page.getByRole("main").innerText()).toContain(`${letters}${number}`);

    await page.evaluate(() => {
      window.excel.fake.startEditing();
    });
    await findings(page).nth(1).click();
    await page.evaluate(() => {
      window.excel.fake.finishEditing();
    });
    expect(opened!.faults).toEqual([]);
  });

  test("offers to write formulas again that show #NAME?, and does", async () => {
    const page = await open();
    await page.evaluate(() => {
      const { book } = window.excel.fake;
      book.calculate = () => 111.375;
      const sheet = book.sheets.at(-1)!;
      for (const formula of ['=BRIM.MOD("EAN32","ft")', '=_xldudf_BRIM_MOD("EAN32","ft")']) {
        book.formulas.set(`${sheet.name}!${sheet.rows.length},0`, { formula, rows: 1 });
        sheet.rows.push({ values: [{ error: "#NAME?" }] });
      }
      document.dispatchEvent(new Event("visibilitychange"));
    });
    await page.getByText("2 formulas of Brimbook show #NAME?").waitFor();
    expect(await violations(page)).toEqual([]);
    await page.getByRole("button", { name: "Repair formulas" }).click();
    await page.getByText("2 formulas were written again.").first().waitFor();
    const formulas = await page.evaluate(() =>
      [...window.excel.fake.book.formulas.values()].map((each) => each.formula),
    );
    expect(formulas).toEqual(['=BRIM.MOD("EAN32","ft")', '=BRIM.MOD("EAN32","ft")']);
    expect(await page.getByRole("button", { name: "Repair formulas" }).count()).toBe(0);
    expect(opened!.faults).toEqual([]);
  });

  test("says when Excel still has the functions of another version", async () => {
    const page = await open();
    expect(await page.getByText("of another version").count()).toBe(0);
    await page.context().close();
    // An older script in Excel's cache has left its own version.
    opened = await openPane(
      browser(),
      `${office};Object.defineProperty(window, "brimbookFunctions", { get: () => "0.0.9", set: () => {} });`,
      { sheets },
    );
    await opened.page.getByText("worksheet functions of another version").waitFor();
  });

  test("says what to do where office.js cannot be reached", async () => {
    opened = await openPane(browser(), undefined, { sheets: [] });
    await opened!.page.getByText(NO_OFFICE).waitFor();
    expect(opened!.faults).toEqual([]);
  });

  test("its help page needs no script and has nothing against it", async () => {
    opened = await openPane(browser(), office, { sheets });
    await opened!.page.goto(`${ORIGIN}/support.html`);
    expect(await violations(opened!.page)).toEqual([]);
    await opened!.page.goto(`${ORIGIN}/functions.html`);
    expect(await violations(opened!.page)).toEqual([]);
    expect(opened!.faults).toEqual([]);
  });
});
