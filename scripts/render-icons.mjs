/*
 * Renders assets/*.svg into the sizes that the manifest and Excel's ribbon ask for, with Chromium:
 *   node scripts/render-icons.mjs
 * The images are committed; run this after changing a drawing. CHROMIUM names another browser than /usr/bin/chromium.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";

const assets = join(dirname(fileURLToPath(import.meta.url)), "../assets");
const SIZES = { 16: "icon-small.svg", 32: "icon.svg", 64: "icon.svg", 80: "icon.svg" };

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox"],
});
for (const [size, drawing] of Object.entries(SIZES)) {
  const page = await browser.newPage({ viewport: { width: Number(size), height: Number(size) } });
  const svg = readFileSync(join(assets, drawing), "utf8");
  await page.setContent(`<style>body{margin:0}svg{display:block;width:100vw;height:100vh}</style>${svg}`);
  writeFileSync(join(assets, `icon-${size}.png`), await page.screenshot({ omitBackground: true }));
  await page.close();
}
await browser.close();
