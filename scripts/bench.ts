/* Seconds and ratios from one run: gases, functions, reading, audit, reports, the local workbook, how long the screen is held, bundles. */
import { existsSync, readFileSync } from "node:fs";
import { gzipSync } from "node:zlib";
import { benchAudit } from "./bench-audit";
import { benchFunctions } from "./bench-functions";
import { benchLog } from "./bench-log";
import { benchGrid } from "./bench-grid";
import { benchHold } from "./bench-hold";
import { benchPane } from "./bench-pane";
import { benchReports } from "./bench-reports";

const print = (line: string) => {
  console.log(line);
};

benchFunctions(print);
await benchLog(print);
benchAudit(print);
await benchReports(print);
await benchGrid(print);
await benchPane(print);
await benchHold(print);
bundles();

/** What Excel loads at once, as it travels. */
function bundles(): void {
  print("Bundles of the add-in, gzip");
  for (const [file, budget] of [
    ["functions.js", 60],
    ["taskpane.js", 400],
  ] as const) {
    const path = new URL(`../dist/excel/${file}`, import.meta.url);
    const size = existsSync(path)
      ? `${(gzipSync(readFileSync(path)).length / 1000).toFixed(1)} kB (budget ${budget} kB)`
      : "not built: npm run build";
    print(`  ${file.padEnd(66)} ${size}`);
  }
}
