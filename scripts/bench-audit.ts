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
import type { Sheet, SheetRow } from "../src/sheet/sheet";

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

/** A log of so many fills, an eightieth as many cylinders, as a busy shop would have it; every number is made up. */
function logOf(fills: number): Log {
  return readLog([fillSheet(fills), registerSheet(cylinderCount(fills))], {
    units: "us",
    dateOrder: "month first",
    stampOrder: "month first",
  });
}

const cylinderCount = (fills: number): number => Math.max(50, Math.round(fills / 80));
/** 1 January 2025, as spreadsheets count. */
const FIRST_DAY = 45_658;

const FILL_HEADINGS = [
  "No.", "Date", "Time", "Serial", "Start psi", "Start mix", "Ordered mix", "Method", "Source", "O2 added psi",
  "End psi", "Gas temp F", "Analysed O2 %", "Analysed by", "MOD (ft)", "Filled by", "Signature",
]; // prettier-ignore
const FILL_FORMATS = [undefined, "yyyy-mm-dd", "h:mm"];

interface Recipe {
  readonly mix: string;
  readonly method: string;
  readonly source: string;
  /** Oxygen to let in, for each psi from start to end. */
  readonly oxygen: number | null;
  readonly analysed: number | null;
}

/** Eleven air fills, four from a bank of 32, five blends by partial pressure in twenty. */
const RECIPES: readonly Recipe[] = [
  ...Array.from({ length: 11 }, (_, at): Recipe => ({ mix: "air", method: "air", source: at < 6 ? "Bank A" : "Compressor", oxygen: null, analysed: null })),
  ...Array.from({ length: 4 }, (): Recipe => ({ mix: "EAN32", method: "premix", source: "Bank 32", oxygen: null, analysed: 32 })),
  ...Array.from({ length: 4 }, (): Recipe => ({ mix: "EAN32", method: "partial pressure", source: "Bank A", oxygen: 0.1365, analysed: 32 })),
  { mix: "EAN36", method: "partial pressure", source: "Bank A", oxygen: 0.184, analysed: 36 },
]; // prettier-ignore

const BANKED = RECIPES.find(({ method }) => method === "premix")!;

function sourceOf(method: string, { source }: Recipe): string {
  return method === "premix" ? BANKED.source : source;
}

function fillSheet(fills: number): Sheet {
  const cylinders = cylinderCount(fills);
  const rows: SheetRow[] = [{ values: FILL_HEADINGS }];
  for (let at = 0; at < fills; at++) {
    const chance = (at * 2_654_435_761) % 4_294_967_296;
    const cylinder = (at * 7919) % cylinders;
    const recipe = RECIPES[chance % RECIPES.length]!;
    // Two cylinders in three are clean for oxygen; a hundredth of what goes into the others should not.
    const { mix, method, oxygen, analysed } =
      recipe.oxygen !== null && cylinder % 3 === 0 && at % 100 > 0 ? BANKED : recipe;
    const source = recipe.mix === "air" && at % 500 === 0 ? "Old compressor" : sourceOf(method, recipe);
    const start = 100 + ((chance >>> 4) % 16) * 50;
    const end = 2900 + ((chance >>> 12) % 10) * 10;
    const off = ((chance >>> 8) % 9) / 10 - 0.4;
    const measured =
      analysed === null ? null : Number((analysed + off + (at % 997 === 0 ? 5 : 0)).toFixed(1));
    rows.push({
      values: [
        4100 + at,
        FIRST_DAY + Math.floor((at * 300) / fills),
        (9 + ((at * 8) / fills) * 300 - Math.floor((at * 300) / fills) * 8) / 24,
        serialOf(cylinder),
        start,
        mix,
        mix,
        method,
        source,
        oxygen === null ? null : Math.round(oxygen * (end - start)),
        end,
        70,
        measured,
        measured === null ? null : "R.",
        measured === null ? null : Math.floor(33 * (140 / measured - 1)),
        at % 3 === 0 ? "T." : "R.",
        measured === null ? null : "signed",
      ],
      formats: FILL_FORMATS,
    });
  }
  return sheetOf("Fills", rows);
}

function registerSheet(cylinders: number): Sheet {
  const rows: SheetRow[] = [
    {
      values: [
        "Serial",
        "Owner",
        "Class",
        "Made",
        "Service psi",
        "Hydro",
        "Visual",
        "O2 rating",
        "O2 cleaned",
      ],
    },
  ];
  for (let at = 0; at < cylinders; at++) {
    rows.push({
      values: [
        serialOf(at), `C-${at % 400}`, "3AL", "2014/03", 3000, `202${at % 50 === 0 ? 0 : 1 + (at % 4)}/${1 + (at % 12)}`,
        `2025/${1 + (at % 3)}`, at % 3 === 0 ? "40" : "O2 clean", "2025/01",
      ],
    }); // prettier-ignore
  }
  return sheetOf("Cylinders", rows);
}

function serialOf(cylinder: number): string {
  return `GP${String(10_000 + cylinder)}`;
}

function sheetOf(name: string, rows: readonly SheetRow[]): Sheet {
  return { name, hidden: false, dateSystem: 1900, merges: [], rows };
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
