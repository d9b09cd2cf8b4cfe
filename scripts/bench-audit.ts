/* npx tsx scripts/bench-audit.ts: the audit of large logs, and LibreOffice working out plain formulas on the same rows. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { audit } from "../src/audit/audit";
import type { AuditOptions } from "../src/audit/shop/shop";
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

/** What one process measured: seconds of the audit the first time and at best, and the most memory up to the first. */
interface Measured {
  readonly first: number;
  readonly best: number;
  readonly findings: number;
  readonly logMB: number;
  readonly processMB: number;
}

export function benchAudit(print: (line: string) => void): void {
  print(
    "Audit (every rule, with physics; Node, one thread, after reading; each size in a process of its own)",
  );
  const small = measuredApart(100_000, print);
  const large = measuredApart(1_000_000, print);
  const times = (of: "first" | "best") => (large[of] / small[of]).toFixed(1);
  print(
    `  ten times the fills take ${times("first")} times as long the first time, ${times("best")} times at best (goal: within 11); 100,000 of them ${seconds(small.first)} the first time (goal: under 1 s)`,
  );
  benchFormulas(100_000, small.first, print);
}

/** In a process that has done nothing before, as a shop's has not. */
function measuredApart(fills: number, print: (line: string) => void): Measured {
  const script = fileURLToPath(import.meta.url);
  const output = execFileSync(process.execPath, ["--expose-gc", "--import", "tsx", script, String(fills)], {
    encoding: "utf8",
  });
  const measured = JSON.parse(output) as Measured;
  const { first, best, findings, logMB, processMB } = measured;
  print(
    `  ${fills.toLocaleString("en-US").padStart(9)} fills: ${seconds(first)} the first time, ${seconds(best)} at best; ${findings.toLocaleString("en-US")} findings; the log takes ${logMB.toFixed(0)} MB, the process ${processMB.toFixed(0)} MB`,
  );
  return measured;
}

const RUNS = 3;

function measure(fills: number): Measured {
  const before = heapMB();
  const log = logOf(fills);
  const logMB = heapMB() - before;
  let findings = 0;
  let processMB = 0;
  const times = Array.from({ length: RUNS }, (_, run) => {
    const start = performance.now();
    findings = audit(log, RULES, SHOP).findings.length;
    const time = (performance.now() - start) / 1000;
    // Later runs let what the earlier ones left lie about.
    if (run === 0) processMB = (process.resourceUsage().maxRSS * 1024) / 1e6;
    return time;
  });
  return { first: times[0]!, best: Math.min(...times), findings, logMB, processMB };
}

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

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  const fills = Number(process.argv[2]);
  if (fills > 0) console.log(JSON.stringify(measure(fills)));
  else benchAudit((line) => console.log(line));
}
