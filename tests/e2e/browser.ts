import { existsSync, readFileSync } from "node:fs";
import {
  chromium,
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  type Page,
} from "playwright-core";
import { afterAll, beforeAll, expect, inject } from "vitest";
import { columnIndex, type CellAddress, type CellValue, type Sheet } from "../../src/sheet/sheet";
import { useFace, type Face } from "./faces";
import type { Workbook } from "../../src/workbook/workbook";

const CHROMIUM = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
  existsSync,
);

declare global {
  interface Window {
    readonly brimbook?: { readonly workbook: Workbook; readonly selected: () => CellAddress | undefined };
  }
}

const LAUNCH = {
  executablePath: CHROMIUM,
  args: [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ],
};

/** A browser of its own that keeps what it learns in a folder, as a person's does. */
export function browserOfAPerson(folder: string): Promise<BrowserContext> {
  return chromium.launchPersistentContext(folder, LAUNCH);
}

/** One browser for the tests of a file. */
export function useBrowser(): () => Browser {
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.launch(LAUNCH);
  });
  afterAll(async () => {
    await browser.close();
  });
  return () => browser;
}

/**
 * The page in a window of its own, with the sample log open. What goes wrong in the page is collected. Nothing is kept
 * on the device, unless the options allow service workers. `before` runs in the page before its own code.
 */
export async function openPage(
  browser: Browser,
  options: BrowserContextOptions = {},
  face: Face = "shipped",
  before: () => void = () => undefined,
): Promise<BrimbookPage> {
  const context = await browser.newContext({
    viewport: { width: 1366, height: 768 },
    serviceWorkers: "block",
    ...options,
  });
  const page = await context.newPage();
  await useFace(page, face);
  await page.addInitScript(before);
  await page.addInitScript(startClockAt, Date.parse("2026-10-31T12:00:00"));
  const opened = new BrimbookPage(page);
  await page.goto(inject("address"));
  await opened.untilOpen("gannet-point.xlsx");
  return opened;
}

/** Runs in the page: its clock goes on from the day as of which the sample's key was written. */
function startClockAt(time: number): void {
  const shift = time - Date.now();
  const now = Date.now.bind(Date);
  globalThis.Date = new Proxy(Date, {
    construct: (Real, given: []) => (given.length > 0 ? new Real(...given) : new Real(now() + shift)),
    get: (Real, name) => (name === "now" ? () => now() + shift : (Reflect.get(Real, name) as unknown)),
  });
  // A browser's own Temporal would go by the machine's clock; ours is loaded in its place and asks Date.
  Reflect.deleteProperty(globalThis, "Temporal");
}

/** The page as a person uses it, and what the tests look at. */
export class BrimbookPage {
  /** Errors, refused requests, and requests that leave the page's own origin. */
  readonly faults: string[] = [];

  constructor(
    readonly page: Page,
    address = inject("address"),
  ) {
    page.on("pageerror", (error) => this.faults.push(error.message));
    page.on("console", (message) => {
      if (message.type() === "error") this.faults.push(message.text());
    });
    page.on("request", (request) => {
      const foreign = !/^(data|blob):/.test(request.url()) && !request.url().startsWith(address);
      if (foreign) this.faults.push(`request to ${request.url()}`);
    });
  }

  /** Waits until this file lies open. */
  async untilOpen(fileName: string): Promise<void> {
    await this.page.getByText(`${fileName}: `).waitFor();
  }

  async openFile(name: string, bytes: Uint8Array): Promise<void> {
    await this.page
      .getByLabel("File to open")
      .setInputFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });
  }

  /** Saves a copy and takes it from the downloads. */
  async savedCopy(): Promise<Uint8Array> {
    const download = this.page.waitForEvent("download");
    await this.page.getByRole("button", { name: "Save a copy" }).click();
    return readFileSync(await (await download).path());
  }

  /** Puts the cursor on a cell, named as in a formula. */
  async select(sheet: string, cell: string): Promise<void> {
    const [, letters, number] = /^([A-Z]+)(\d+)$/.exec(cell)!;
    const address = { sheet, row: Number(number) - 1, column: columnIndex(letters!) };
    await this.page.evaluate((wanted) => window.brimbook!.workbook.selectCell(wanted), address);
    await expect.poll(() => this.selected()).toEqual(address);
  }

  /** Clicks a cell of the sheet that is shown, which must not be scrolled. */
  async clickCell(row: number, column: number): Promise<void> {
    const [x, y] = await this.page.evaluate(
      ([row, column]) => {
        const { engine } = window.brimbook!.workbook as unknown as EngineOfPage;
        const cell = engine.api.getActiveWorkbook().getActiveSheet().getRange(row, column).getCellRect();
        const canvases = [...document.querySelectorAll("section canvas")].map((each) =>
          each.getBoundingClientRect(),
        );
        const canvas = canvases.reduce((grid, each) => (each.height > grid.height ? each : grid));
        return [canvas.x + cell.x + 12, canvas.y + cell.y + cell.height / 2] as const;
      },
      [row, column] as const,
    );
    await this.page.mouse.click(x, y);
  }

  /** Takes the keyboard into the grid, which a page just opened does not do by itself. */
  async enterGrid(): Promise<void> {
    const isIn = () =>
      this.page.evaluate(() => document.activeElement?.closest("section")?.ariaLabel === "Workbook");
    const goIn = async () => {
      if (!(await isIn())) await this.page.keyboard.press("F6");
      return isIn();
    };
    await expect.poll(goIn).toBe(true);
  }

  /** Types into a cell and presses Enter. */
  async type(sheet: string, cell: string, text: string): Promise<void> {
    await this.select(sheet, cell);
    await this.enterGrid();
    await this.page.keyboard.type(text);
    await this.page.keyboard.press("Enter");
  }

  async readSheet(name: string): Promise<Sheet> {
    return this.page.evaluate((sheet) => window.brimbook!.workbook.readSheet(sheet), name);
  }

  /** What a cell holds, once it holds anything. */
  async value(sheet: string, row: number, column: number): Promise<CellValue> {
    let value: CellValue | undefined;
    await expect
      .poll(
        async () =>
          (value = await this.page.evaluate((address) => window.brimbook!.workbook.readCell!(address), {
            sheet,
            row,
            column,
          })),
        { timeout: 20_000 },
      )
      .not.toBeNull();
    return value ?? null;
  }

  selected(): Promise<CellAddress | undefined> {
    return this.page.evaluate(() => window.brimbook!.selected());
  }

  cellLine(): Promise<string> {
    return this.page.getByRole("status", { name: "Selected cell" }).innerText();
  }

  async close(): Promise<void> {
    await this.page.context().close();
  }
}

/** The grid behind the page, as far as the tests must reach into it. */
interface EngineOfPage {
  readonly engine: {
    readonly api: {
      getActiveWorkbook(): {
        getActiveSheet(): { getRange(row: number, column: number): { getCellRect(): DOMRect } };
      };
    };
  };
}
