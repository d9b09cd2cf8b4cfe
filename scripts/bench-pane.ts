/* npx tsx scripts/bench-pane.ts: the built task pane in headless Chromium, behind a double of office.js. */
import { existsSync, readFileSync } from "node:fs";
import { extname, join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { chromium, type Browser } from "playwright-core";
import { usualBook } from "../tests/workbook/contractBooks";

const ORIGIN = "https://localhost:3000";
const FOLDER = "dist/excel";
const RUNS = 5;
const TYPES: Readonly<Record<string, string>> = { ".html": "text/html", ".js": "text/javascript" };

/**
 * From the address to the first thing a person can use (goal 0.5 s): the first question, drawn. The files come from
 * this computer; Microsoft's script, Excel and the network add their own time to it.
 */
export async function benchPane(print: (line: string) => void): Promise<void> {
  const program = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
    existsSync,
  );
  if (!program || !existsSync(join(FOLDER, "taskpane.html"))) {
    print(
      `Task pane: not measured, as ${program ? "it is not built (npm run build)" : "Chromium is not here"}`,
    );
    return;
  }
  print(`Task pane in Chromium, ${RUNS} windows, each without a cache`);
  const double = await build({ entryPoints: ["tests/e2e/officePage.ts"], bundle: true, write: false });
  const browser = await chromium.launch({ executablePath: program, args: ["--headless", "--no-sandbox"] });
  try {
    const taken: number[] = [];
    for (let run = 0; run < RUNS; run += 1) taken.push(await firstUse(browser, double.outputFiles[0]!.text));
    taken.sort((a, b) => a - b);
    const [least, middle, most] = [taken[0]!, taken[RUNS >> 1]!, taken.at(-1)!].map((ms) =>
      (ms / 1000).toFixed(2),
    );
    print(
      `  ${"from the address to the first question (goal 0.5 s)".padEnd(66)} ${middle} s (${least} to ${most})`,
    );
  } finally {
    await browser.close();
  }
}

/** Milliseconds until the heading of the first question has been drawn, by the page's own clock. */
async function firstUse(browser: Browser, office: string): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 350, height: 640 } });
  try {
    const page = await context.newPage();
    await context.route("**/*", async (route) => {
      const url = route.request().url();
      if (!url.startsWith(ORIGIN)) return route.fulfill({ contentType: "text/javascript", body: office });
      const file = join(FOLDER, url.slice(ORIGIN.length));
      return existsSync(file)
        ? route.fulfill({ contentType: TYPES[extname(file)], body: readFileSync(file) })
        : route.fulfill({ status: 404 });
    });
    await page.addInitScript((sheets) => {
      Object.assign(window, { opened: { sheets } });
    }, usualBook);
    await page.addInitScript(noteFirstQuestion);
    await page.goto(`${ORIGIN}/taskpane.html`);
    return await page.evaluate(() => (window as unknown as { firstUse: Promise<number> }).firstUse);
  } finally {
    await context.close();
  }
}

/** Runs in the page before its own scripts. */
function noteFirstQuestion(): void {
  const firstUse = new Promise<number>((resolve) => {
    const observer = new MutationObserver(() => {
      if (!document.querySelector("form h2")) return;
      observer.disconnect();
      requestAnimationFrame(() => requestAnimationFrame(() => resolve(performance.now())));
    });
    observer.observe(document, { childList: true, subtree: true });
  });
  Object.assign(window, { firstUse });
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href)
  await benchPane((line) => {
    console.log(line);
  });
