import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, extname, join } from "node:path";
import { build } from "esbuild";
import type { Browser, BrowserContextOptions, Frame, Page } from "playwright-core";
import type { InExcel, OpenedInExcel } from "./bridgePage";
import { FOLDER, ORIGIN } from "./builtPane";

/** Microsoft's office.js as npm has it; its licence lets one try add-ins with it, and it is never shipped. */
const OFFICE = dirname(createRequire(import.meta.url).resolve("@microsoft/office-js/dist/office.js"));
const CDN = "https://appsforoffice.microsoft.com/lib/1/hosted/";
const HOST = "https://excel.example/";

/** What an Excel lets the pane's frame do: on the web neither dialogs nor downloads, on Windows both. */
export const SANDBOX = {
  web: "allow-scripts allow-same-origin allow-forms allow-popups",
  windows: "allow-scripts allow-same-origin allow-forms allow-popups allow-modals allow-downloads",
} as const;

export interface BridgeOptions extends OpenedInExcel {
  readonly sandbox?: keyof typeof SANDBOX;
  /** A page of the tests' own in place of the pane: its script, bundled. */
  readonly script?: string;
  readonly context?: BrowserContextOptions;
}

export interface PaneInExcel {
  readonly page: Page;
  /** The pane, in a frame as Excel on the web has it. */
  readonly frame: Frame;
  /** Errors, requests to anything but the add-in's own files and Microsoft's, and what the fake Excel did not know. */
  faults(): Promise<string[]>;
  close(): Promise<void>;
}

const TYPES: Readonly<Record<string, string>> = {
  ...{ ".html": "text/html", ".js": "text/javascript", ".json": "application/json", ".css": "text/css" },
  ...{ ".png": "image/png", ".woff2": "font/woff2" },
};

/** Complaints of office.js about the sandbox or its own telemetry, which Excel does not mind either. */
const NOT_OURS = /sessionStorage|localStorage|firstpartyapps\.oaspapps\.com/;

let bridgeScript: Promise<string> | undefined;

/** A script of the tests as one file for the browser. */
export async function bundled(path: string): Promise<string> {
  const bundle = await build({ entryPoints: [path], bundle: true, write: false });
  return bundle.outputFiles[0]!.text;
}

/** Opens the built pane, under its own policy, on Microsoft's own office.js, in a frame of a page that plays Excel. */
export async function openInExcel(browser: Browser, options: BridgeOptions): Promise<PaneInExcel> {
  const { sandbox = "windows", script, context: contextOptions, ...opened } = options;
  bridgeScript ??= bundled("tests/e2e/bridgePage.ts");
  const context = await browser.newContext({ viewport: { width: 350, height: 640 }, ...contextOptions });
  const page = await context.newPage();
  const faults: string[] = [];
  page.on("pageerror", (error) => faults.push(error.stack ?? error.message));
  page.on("console", (message) => {
    if (message.type() === "error" && !NOT_OURS.test(message.text())) faults.push(message.text());
  });
  const own = script === undefined ? "taskpane.html" : "tests.html";
  await context.route("**/*", async (route) => {
    const { href, origin, pathname } = new URL(route.request().url());
    if (href === HOST) return route.fulfill({ contentType: "text/html", body: hostPage(sandbox, own) });
    if (href === `${ORIGIN}/tests.js`)
      return route.fulfill({ contentType: "text/javascript", body: script! });
    if (`${origin}${pathname}` === `${ORIGIN}/tests.html`)
      return route.fulfill({ contentType: "text/html", body: testsPage() });
    const path = href.startsWith(CDN)
      ? join(OFFICE, pathname.replace("/lib/1/hosted/", ""))
      : href.startsWith(`${ORIGIN}/`)
        ? join(FOLDER, `${origin}${pathname}`.slice(ORIGIN.length + 1))
        : "";
    if (path !== "" && existsSync(path))
      return route.fulfill({ contentType: TYPES[extname(path)], body: readFileSync(path) });
    if (!NOT_OURS.test(href)) faults.push(`request to ${href}`);
    return route.fulfill({ status: 404 });
  });
  await page.addInitScript((what) => {
    Object.assign(window, { opened: what });
  }, opened as OpenedInExcel);
  await page.addInitScript({ content: `if (window !== top) { ${await bridgeScript} }` });
  await page.goto(HOST);
  const frame = page.frame({ name: "pane" })!;
  return {
    page,
    frame,
    faults: async () => {
      const unknown = await frame.evaluate(
        () => (window as unknown as { excel: InExcel }).excel.fake.unknown,
      );
      return [...faults, ...unknown.map((name) => `The fake Excel does not know ${name}.`)];
    },
    close: () => context.close(),
  };
}

const hostPage = (sandbox: keyof typeof SANDBOX, own: string) =>
  `<!doctype html><title>Excel</title><style>html,body,iframe{margin:0;width:100%;height:100%;border:0;display:block}</style>` +
  `<iframe name="pane" title="Brimbook" sandbox="${SANDBOX[sandbox]}" src="${ORIGIN}/${own}?_host_Info=Excel$Win32$16.01$en-US$$$1"></iframe>`;

/** The tests' own page stands under the pane's policy too. */
function testsPage(): string {
  const pane = readFileSync(join(FOLDER, "taskpane.html"), "utf8");
  const policy = /<meta\s+http-equiv="Content-Security-Policy"[^>]*>/i.exec(pane)![0];
  return `<!doctype html><html><head>${policy}<script src="${CDN}office.js"></script><script defer src="tests.js"></script></head></html>`;
}
