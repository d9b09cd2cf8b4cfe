import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { extname, join, resolve } from "node:path";
import { build } from "esbuild";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { expect } from "vitest";
import type { Sheet } from "../../src/sheet/sheet";
import { openFile } from "../../src/workbook/file/openFile";

/** The address the add-in is built for; nothing is ever asked of it, as the tests answer in its place. */
export const ORIGIN = "https://fills.example.org/brimbook";
export const OFFICE_JS = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

const INTO = ".cache/built-for-tests";
export const FOLDER = resolve(INTO, "excel");

/** Builds the add-in as `npm run build -- --env origin=…` does, beside the usual folder. */
export function buildAddIn(): void {
  const webpack = [
    "node_modules/webpack-cli/bin/cli.js",
    "--config-name",
    "functions",
    "--config-name",
    "excel",
  ];
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [...webpack, "--env", `origin=${ORIGIN}/`, "--env", `into=${INTO}`, "--stats", "errors-warnings"],
    { encoding: "utf8" },
  );
  expect(status, stdout + stderr).toBe(0);
}

/** The files of the built folder, by path. */
export function builtFiles(folder = FOLDER, prefix = ""): string[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    return statSync(path).isDirectory() ? builtFiles(path, `${prefix}${name}/`) : [`${prefix}${name}`];
  });
}

/** All sheets of the sample log, as a host hands them over. */
export async function sampleSheets(): Promise<Sheet[]> {
  const workbook = await openFile(readFileSync("shared/samples/gannet-point.xlsx"), "gannet-point.xlsx");
  const names = await workbook.listSheets();
  return Promise.all(names.map(({ name }) => workbook.readSheet(name)));
}

/** The script that stands in for office.js. */
export async function officeDouble(): Promise<string> {
  const bundle = await build({ entryPoints: ["tests/e2e/officePage.ts"], bundle: true, write: false });
  return bundle.outputFiles[0]!.text;
}

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".json": "application/json",
  ".png": "image/png",
  ".woff2": "font/woff2",
};

interface Opened {
  readonly page: Page;
  /** Errors, and requests to anything but the add-in's own files and office.js. */
  readonly faults: string[];
  /** What was asked for. */
  readonly requests: string[];
}

/** Opens the built pane in a window of its own, behind a double of office.js, or none. */
export async function openPane(
  browser: Browser,
  office: string | undefined,
  opened: { sheets: readonly Sheet[]; dark?: boolean; excelApi?: string },
  options: BrowserContextOptions = {},
): Promise<Opened> {
  const context = await browser.newContext({ viewport: { width: 350, height: 640 }, ...options });
  const page = await context.newPage();
  const faults: string[] = [];
  const requests: string[] = [];
  page.on("pageerror", (error) => faults.push(error.message));
  page.on("console", (message) => {
    if (message.type() === "error" && office !== undefined) faults.push(message.text());
  });
  await context.route("**/*", async (route) => {
    const url = route.request().url();
    requests.push(url);
    if (url === OFFICE_JS) {
      return office === undefined
        ? route.abort()
        : route.fulfill({ contentType: "text/javascript", body: office });
    }
    const file = url.startsWith(`${ORIGIN}/`) ? join(FOLDER, url.slice(ORIGIN.length + 1)) : "";
    if (existsSync(file)) {
      return route.fulfill({ contentType: TYPES[extname(file)], body: readFileSync(file) });
    }
    faults.push(`request to ${url}`);
    return route.fulfill({ status: 404 });
  });
  await page.addInitScript((what) => {
    Object.assign(window, { opened: what });
  }, opened);
  await page.goto(`${ORIGIN}/taskpane.html`);
  return { page, faults, requests };
}
