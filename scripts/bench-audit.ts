/* npx tsx scripts/bench-audit.ts: the audit of large logs, and LibreOffice working out plain formulas on the same rows. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { audit } from "../src/audit/audit";
import type { AuditOptions } from "../src/audit/shop";
import { countryRules } from "../src/cylinders/countryRules";
import type { Log } from "../src/log/log";
import { readLog } from "../src/log/readLog";
import { FIRST_DAY, madeUpSheets } from "./bench-sheets";

const RULES = countryRules("US");
const SHOP: AuditOptions = {
  airTests: [
    { date: "2024-12-01", passed: true },
    { date: "2025-06-01", passed: true },
  ],
  sources: [
    { name: "Bank A", oxygenCompatible: true },
    { name: "Compressor", oxygenCompatible: true },
    { name: "Old compressor", oxygenCompatible: false },
    { name: "Bank 32", oxygenCompatible: true, mix: { oxygen: 0.32, helium: 0 } },
  ],
};

export function benchAudit(print: (line: string) => void): void {
  print("Audit (every rule, with physics; Node, one thread, after reading)");
  const small = benchOf(100_000, 3, print);
  const large = benchOf(1_000_000, 2, print);
  print(
    `  ten times the fills take ${(large / small).toFixed(1)} times as long (goal: within 11), 100,000 of them ${seconds(small)} (goal: under 1 s)`,
  );
  benchFormulas(100_000, small, print);
}

/** Seconds of the audit at best. */
function benchOf(fills: number, runs: number, print: (line: string) => void): number {
  const before = heapMB();
  let log = logOf(fills);
  const afterReading = heapMB();
  let findings = 0;
  let peak = 0;
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    const result = audit(log, RULES, SHOP);
    const time = (performance.now() - start) / 1000;
    peak = Math.max(peak, process.memoryUsage().rss / 1e6);
    findings = result.findings.length;
    return time;
  });
  print(
    `  ${fills.toLocaleString("en-US").padStart(9)} fills: ${seconds(Math.min(...times))} (first ${seconds(times[0]!)}), ${findings.toLocaleString("en-US")} findings; the log takes ${(afterReading - before).toFixed(0)} MB, the process ${peak.toFixed(0)} MB`,
  );
  log = EMPTY;
  return Math.min(...times);
}

const EMPTY: Log = {
  sheets: [],
  fills: [],
  cylinders: [],
  unreadable: [],
  rows: { total: 0, fills: 0, cylinders: 0, blank: 0, headings: 0, totals: 0, unreadable: 0 },
};

function logOf(fills: number): Log {
  return readLog(madeUpSheets(fills), {
    units: "us",
    dateOrder: "month first",
    stampOrder: "month first",
  });
}

/**
 * What people use instead: three formulas beside each row, for hydro, visual and rating, with the dates already in the
 * row. LibreOffice opens the file without their results and works them out; what opening alone takes is taken off.
 */
function benchFormulas(fills: number, ours: number, print: (line: string) => void): void {
  if (spawnSync("soffice", ["--version"]).status !== 0) {
    print("  soffice is not installed: the plain formulas were not timed.");
    return;
  }
  const folder = mkdtempSync(join(tmpdir(), "brimbook-bench-"));
  try {
    const bare = timeOfConversion(folder, "bare", flatRows(fills, false));
    const full = timeOfConversion(folder, "formulas", flatRows(fills, true));
    const theirs = Math.max(0, full - bare);
    print(
      `  LibreOffice, three plain formulas (hydro, visual, rating) on ${fills.toLocaleString("en-US")} rows: ${seconds(theirs)} above the ${seconds(bare)} that opening and saving take; every rule of ours takes ${(ours / theirs).toFixed(2)} of that`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function timeOfConversion(folder: string, name: string, text: string): number {
  const file = join(folder, `${name}.fods`);
  writeFileSync(file, text);
  const profile = `-env:UserInstallation=${pathToFileURL(join(folder, "profile")).href}`;
  const convert = () =>
    execFileSync("soffice", [profile, "--headless", "--convert-to", "csv", "--outdir", folder, file], {
      stdio: "ignore",
    });
  const start = performance.now();
  convert();
  const time = (performance.now() - start) / 1000;
  const answers = readFileSync(join(folder, `${name}.csv`), "utf8");
  if (name === "formulas" && !answers.includes("LATE"))
    throw new Error("LibreOffice did not work out the formulas.");
  return time;
}

/** A flat OpenDocument sheet: day of the fill, of the hydro and visual, rating and oxygen; then the three formulas. */
function flatRows(fills: number, withFormulas: boolean): string {
  const rows = Array.from({ length: fills }, (_, at) => {
    const numbers = [
      FIRST_DAY + (at % 300),
      43_000 + (at % 2500),
      45_200 + (at % 400),
      at % 3 === 0 ? 40 : 100,
      21 + (at % 20),
    ];
    const cells = numbers.map(
      (number) => `<table:table-cell office:value-type="float" office:value="${number}"/>`,
    );
    const row = at + 1;
    const formulas = [
      `IF([.A${row}]&gt;EOMONTH([.B${row}];60);&quot;LATE&quot;;&quot;ok&quot;)`,
      `IF([.A${row}]&gt;EOMONTH(MAX([.B${row}];[.C${row}]);12);&quot;LATE&quot;;&quot;ok&quot;)`,
      `IF([.E${row}]&gt;[.D${row}];&quot;RICH&quot;;&quot;ok&quot;)`,
    ].map((formula) => `<table:table-cell table:formula="of:=${formula}"/>`);
    return `<table:table-row>${[...cells, ...(withFormulas ? formulas : [])].join("")}</table:table-row>`;
  });
  return `<?xml version="1.0" encoding="UTF-8"?><office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0" xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.2" office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:body><office:spreadsheet><table:table table:name="Log">${rows.join("")}</table:table></office:spreadsheet></office:body></office:document>`;
}

function heapMB(): number {
  globalThis.gc?.();
  return process.memoryUsage().heapUsed / 1e6;
}

const seconds = (time: number) => `${time.toFixed(2)} s`;

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) benchAudit((line) => console.log(line));
