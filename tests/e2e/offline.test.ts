import { cpSync, mkdtempSync, readFileSync, rmSync, unlinkSync, writeFileSync } from "node:fs";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { BrowserContext, Page } from "playwright-core";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { pageServer } from "../../scripts/page-server.mjs";
import { openFile } from "../../src/workbook/file/openFile";
import { BrimbookPage, browserOfAPerson, useBrowser } from "./browser";
import { openFill } from "./fillArea";

const browser = useBrowser();

/** The built page on a server of its own, which goes away and comes back with a newer build. */
describe("the page kept on a device", () => {
  let folder: string;
  let server: Server | undefined;
  let port = 0;
  let context: BrowserContext;

  const serve = async () => {
    server = pageServer(folder);
    await new Promise<void>((done) => server!.listen(port, "localhost", done));
    port = (server.address() as AddressInfo).port;
  };
  const goAway = async () => {
    server!.closeAllConnections();
    await new Promise((done) => server!.close(done));
    server = undefined;
  };
  const address = () => `http://localhost:${port}/`;

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), "brimbook-kept-"));
    cpSync("dist/page", folder, { recursive: true });
    port = 0;
    await serve();
    context = await browser().newContext({ viewport: { width: 1366, height: 768 }, acceptDownloads: true });
  });
  afterEach(async () => {
    await context.close();
    if (server) await goAway();
    rmSync(folder, { recursive: true });
  });

  const open = async (): Promise<BrimbookPage> => {
    const page = await context.newPage();
    const brimbook = new BrimbookPage(page, address());
    await page.goto(address());
    await brimbook.untilOpen("gannet-point.xlsx");
    return brimbook;
  };
  const untilKept = (page: Page) =>
    page.evaluate(async () => {
      const { active } = await navigator.serviceWorker.ready;
      if (active!.state !== "activated")
        await new Promise((done) => {
          active!.addEventListener("statechange", done, { once: true });
        });
    });

  test("can be installed, by the browser's own criteria", async () => {
    await context.close();
    context = await browserOfAPerson(join(folder, ".profile"));
    const { page, faults } = await open();
    await untilKept(page);
    const devtools = await context.newCDPSession(page);
    const { installabilityErrors } = await devtools.send("Page.getInstallabilityErrors");
    expect(installabilityErrors).toEqual([]);
    const { errors, data } = await devtools.send("Page.getAppManifest");
    expect(errors).toEqual([]);
    expect(JSON.parse(data!)).toMatchObject({ name: "Brimbook", display: "standalone" });
    expect(faults).toEqual([]);
  });

  test("opens, checks a log and opens a file without a network", async () => {
    const brimbook = await open();
    const { page, faults } = brimbook;
    await untilKept(page);
    await goAway();
    await page.reload();
    await brimbook.untilOpen("gannet-point.xlsx");
    const pane = await openFill(page);
    await pane.getByRole("tab", { name: "Check the log" }).click();
    await pane.getByText("Call the owner").first().waitFor();
    await brimbook.openFile("skerry-bay.xlsx", readFileSync("shared/samples/skerry-bay.xlsx"));
    await brimbook.untilOpen("skerry-bay.xlsx");
    await page.goto(`${address()}?from=home-screen`);
    await brimbook.untilOpen("gannet-point.xlsx");
    expect(faults).toEqual([]);
  });

  test("goes on with what it has until the person asks for the new build, and then has all of that", async () => {
    const first = await open();
    await untilKept(first.page);
    await first.page.reload();
    await first.untilOpen("gannet-point.xlsx");
    const loaded = await first.page.evaluate(() =>
      performance.getEntriesByType("resource").map(({ name }) => new URL(name).pathname.slice(1)),
    );
    nextBuild(folder, loaded);

    const second = await open();
    const isNew = ({ page }: BrimbookPage) => page.evaluate(() => document.title === "Brimbook, next build");
    expect(await isNew(second)).toBe(false);
    const reload = second.page.getByRole("button", { name: "Reload the page" });
    await reload.waitFor();
    expect(await isNew(second)).toBe(false);
    await Promise.all([second.page.waitForEvent("load"), reload.click()]);
    await second.untilOpen("gannet-point.xlsx");
    expect(await isNew(second)).toBe(true);
    expect(await second.page.getByRole("button", { name: "Reload the page" }).count()).toBe(0);

    /* The other window is still of the build before, whose code for saving is on no server any more. */
    expect(await isNew(first)).toBe(false);
    await first.page.getByRole("button", { name: "Reload the page" }).waitFor();
    const [sheet] = await first.page.evaluate(() => window.brimbook!.workbook.listSheets());
    await first.type(sheet!.name, "A6", "kept");
    const { content } = await openFile(await first.savedCopy(), "copy.xlsx");
    expect(content.sheets[0]!.rows[5]!.values[0]).toBe("kept");
    await goAway();
    await second.page.reload();
    await second.untilOpen("gannet-point.xlsx");
    expect(await isNew(second)).toBe(true);
    expect([...first.faults, ...second.faults]).toEqual([]);
  });
});

/** Puts another build in the place of the served one: another page, and without the files that were not loaded. */
function nextBuild(folder: string, loaded: readonly string[]): void {
  const page = join(folder, "index.html");
  writeFileSync(page, readFileSync(page, "utf8").replace("<title>Brimbook<", "<title>Brimbook, next build<"));
  const path = join(folder, "service-worker.js");
  const worker = readFileSync(path, "utf8");
  const listed = /\[\{"?url"?:.*?\}\]/.exec(worker)![0];
  const files = [...listed.matchAll(/\{"?url"?:"([^"]+)","?revision"?:(null|"\w+")\}/g)];
  const kept = files.filter(([, url]) => !/\.[0-9a-f]{8}\.js$/.test(url!) || loaded.includes(url!));
  expect(kept.length).toBeLessThan(files.length);
  for (const [, url] of files) if (!kept.some((each) => each[1] === url)) unlinkSync(join(folder, url!));
  const written = kept.map(([entry, url]) =>
    url === "index.html" ? '{"url":"index.html","revision":"next"}' : entry,
  );
  const version = /suffix:"(\w+)"/.exec(worker)![1]!;
  writeFileSync(
    path,
    worker.replace(listed, () => `[${written.join(",")}]`).replaceAll(version, "nextbuild"),
  );
}
