/*
 * Renders assets/*.svg into the sizes that the manifests, Excel's ribbon and home screens ask for, with Chromium:
 *   node scripts/render-icons.mjs
 * The images are committed; run this after changing a drawing. CHROMIUM names another browser than /usr/bin/chromium.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const assets = join(dirname(fileURLToPath(import.meta.url)), "../assets");
const IMAGES = {
  "icon-16": [16, "icon-small.svg"],
  "icon-32": [32, "icon.svg"],
  "icon-64": [64, "icon.svg"],
  "icon-80": [80, "icon.svg"],
  "app/icon-192": [192, "icon.svg"],
  "app/icon-512": [512, "icon.svg"],
  "app/icon-full-180": [180, "icon-full.svg"],
  "app/icon-full-512": [512, "icon-full.svg"],
};

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox"],
});
for (const [name, [size, drawing]] of Object.entries(IMAGES)) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  const svg = readFileSync(join(assets, drawing), "utf8");
  await page.setContent(`<style>body{margin:0}svg{display:block;width:100vw;height:100vh}</style>${svg}`);
  writeFileSync(join(assets, `${name}.png`), await page.screenshot({ omitBackground: true }));
  await page.close();
}
await browser.close();
