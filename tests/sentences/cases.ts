import { audit } from "../../src/audit/audit";
import type { AuditOptions } from "../../src/audit/shop/shop";
import { countryRules } from "../../src/cylinders/countryRules";
import type { LogContext } from "../../src/log/context";
import type { CellAddress } from "../../src/sheet/sheet";
import { expectWellMade } from "../audit/wellMade";
import { FULL, logOf, onDay, SHOP, without, type TestRow } from "../audit/sheets";

/** Under which rules, and how the log is read; the US as the log shows it where nothing is said. */
export interface Setting {
  readonly country?: string;
  readonly options?: AuditOptions;
  readonly context?: LogContext;
  readonly row?: TestRow;
}

/** A rule, and what is changed in a fill that is as it should be. */
export type Case = readonly [rule: string, change: TestRow, setting: Setting];

/** What the audit says of the rule in the first of two fills, and of which cells. */
export function saidOf([rule, change, setting]: Case): readonly Said[] {
  const { country = "US", options = SHOP, context, row = FULL } = setting;
  const rows = [
    { ...row, ...change },
    { ...row, Serial: "ZZ9999" },
  ];
  const log = logOf(rows, [], context);
  const result = audit(log, countryRules(country), options);
  expectWellMade(log, result);
  const heading = ({ sheet, column }: CellAddress) =>
    String(log.sheets.find(({ name }) => name === sheet)?.source.rows[0]?.values[column]);
  const isFirst = (cell: CellAddress) => cell.row === 1;
  return [
    ...result.findings
      .filter((finding) => finding.rule === rule && isFirst(finding.cell))
      .map(({ severity, basis, source, cell, message, todo }) => ({
        about: `${severity}, ${basis} (${source}), ${heading(cell)}`,
        sentence: `${message} ${todo}`,
      })),
    ...result.notChecked
      .filter((lack) => lack.rule === rule && lack.cells.some(isFirst))
      .map(({ why, cells }) => ({
        about: `not checked, ${cells.filter(isFirst).map(heading).join(", ")}`,
        sentence: why,
      })),
  ];
}

export interface Said {
  readonly about: string;
  readonly sentence: string;
}

const US: LogContext = { units: "us", stampOrder: "month first", dateOrder: "month first" };
/** Nothing says in which order a stamp is written. */
const OPEN: LogContext = { units: "us" };
const LAST_TEST = { ...SHOP, airTests: [{ date: "2025-01-01", passed: true }] };
const TRIMIX: TestRow = { "Ordered mix": "21/35", "Analysed O2 %": 21, "Analysed He %": 35, "MOD (ft)": 180 };
const STEEL: TestRow = { Class: "3AA", Material: "steel", Alloy: null, "Service psi": 2400 };
/** Steel, filled to its plus. */
const PLUS: TestRow = { ...STEEL, "End psi": 2640, Hydro: "10/24+" };
const BAR: TestRow = { ...without(FULL, "Start psi", "End psi", "Service psi"), "Service bar": 232, "Start bar": 50, "End bar": 230 }; // prettier-ignore

const GAS: readonly Case[] = [
  ["G01", { "Analysed O2 %": null }, {}],
  ["G02", { "MOD (m)": 45 }, { country: "GB", row: without(FULL, "MOD (ft)") }],
  ["G02", { "MOD (ft)": 130, "Analysed O2 %": null }, {}],
  ["G03", { "Analysed O2 %": 36.2 }, {}],
  ["G03", { ...TRIMIX, "Analysed O2 %": 19, "Analysed He %": 29.5 }, {}],
  [
    "G05",
    { ...TRIMIX, Certification: null, "Ordered mix": "10/70", "Analysed O2 %": 10, "Analysed He %": 70 },
    {},
  ],
  ["G05", { Certification: null, "Ordered mix": "EAN80", "Analysed O2 %": 80 }, {}],
  ["G09", { Signature: null }, {}],
  ["G09", { "Analysed by": null }, {}],
  ["G13", { "Planned depth (ft)": 140 }, {}],
  ["G13", { "Planned depth (ft)": 140 }, { country: "FR" }],
  ["G13", { "Planned depth (ft)": 120 }, { country: "FR" }],
  ["A01", {}, { options: LAST_TEST }],
  ["A01", {}, { country: "GB", options: LAST_TEST }],
];

const VESSEL: readonly Case[] = [
  ["V01", { Hydro: "2019/10" }, {}],
  ["V01", { Hydro: "exp 10/24" }, {}],
  ["V01", { Hydro: null, Made: "2014/03" }, {}],
  ["V01", { Alloy: "6351" }, { country: "NZ" }],
  // six years only while the yearly visuals are unbroken
  ["V01", { Hydro: "2022/01", Visual: "2024/01", Class: "TIV" }, { country: "FR" }],
  ["V02", { Status: "condemned" }, {}],
  ["V03", { "End psi": 3500 }, {}],
  ["V03", { "End psi": 3500, "Gas temp F": null }, {}],
  ["V03", { "End psi": 3500, "Settled psi": 3400 }, {}],
  ["V03", { "End psi": 3060 }, {}],
  ["V03", { ...STEEL, Hydro: "10/24+", "End psi": 2800 }, {}],
  ["V04", { Class: "SP12479", Material: "composite", Alloy: null, Made: "2008/03" }, {}],
  ["V05", { Alloy: "6351-T6" }, {}],
  ["V05", { Alloy: "6351-T6", "Eddy current": "2020/05" }, {}],
  ["V05", { Alloy: null, Made: "1980/03" }, {}],
  ["V06", { Visual: "2025/03" }, {}],
  ["V06", { Visual: "2024/03", Hydro: "2025/10" }, {}],
  ["V06", { Visual: "exp 3/26" }, {}],
  ["V07", { "End psi": 3300 }, {}],
  ["V07", { ...STEEL, Hydro: "10/24", "End psi": 2640 }, {}],
  ["V09", { Hydro: null, Visual: null, Made: null }, {}],
  ["V10", { Hydro: "10/19*" }, {}],
  ["V10", { Hydro: "10/19*" }, { country: "CA" }],
  ["V11", { Hydro: "10/24 E", Made: "2014/03" }, {}],
  ["V12", { Class: "UN-ISO11119", Material: "composite", Alloy: null }, {}],
  ["V12", { Class: "FRP-1", Material: "composite", Alloy: null }, {}],
  ["V13", { Class: "3HT", Material: "steel", Alloy: null }, {}],
  ["V13", { Class: "CE", Alloy: null }, {}],
  ["V14", { "Neck thread": "M25x2", "Valve thread": "3/4 NPSM" }, {}],
  ["V17", { "Start psi": 20, Visual: "2025/12" }, {}],
  ["V18", { "External check": null }, {}],
]; // prettier-ignore

const RECORDS: readonly Case[] = [
    // made in March 2014; the audit is of 30 November 2026
    ["R03", { Hydro: "2014/02" }, {}],
    ["R03", { "O2 cleaned": "2014/02" }, {}],
    ["R03", { "Eddy current": "2014/02" }, {}],
    ["R03", { "Previous hydro": "2013/01" }, {}],
    ["R03", { Hydro: "2026/12" }, {}],
    // of several the latest; of two in one month the first
    ["R03", { Hydro: "2026/12", Visual: "2027/01" }, {}],
    ["R03", { Hydro: "2026/12", Visual: "2026/12" }, {}],
    // the stamp 12/02 would be older than the cylinder, so a day it is
    ["R03", { Visual: onDay("2026-12-02") }, {}],
    // the next one due is no test that was made; one that cannot be read may have been made any day
    ["R03", { Hydro: "exp 12/27" }, {}],
    ["R03", { Hydro: "exp 12/13" }, {}],
    ["R03", { Hydro: "see sticker", Visual: null, "O2 cleaned": null }, {}],
    ["R03", { Made: "smudged", Hydro: "2013/01" }, {}],
    ["R04", { Hydro: onDay("2026-10-19") }, {}],
    ["R04", { Visual: onDay("2026-05-20") }, {}],
    ["R04", { Hydro: "19-Oct" }, {}],
    ["R04", { "Previous hydro": "19-Oct" }, {}],
    // each for itself, though a hydro counts as a visual here
    ["R04", { Hydro: "19-Oct", Visual: "20-May" }, {}],
    // beside another doubt, and other doubts alone
    ["R04", { Hydro: "06/09", Visual: "19-Oct" }, { context: OPEN }],
    ["R04", { Hydro: "06/09" }, { context: OPEN }],
    ["R04", { Hydro: "see sticker", Visual: "smudged" }, {}],
    // 2012 is before it was made, so a day in October 2026 it is
    ["R04", { Hydro: onDay("2026-10-12") }, {}],
    // no visual is asked for in Italy, but a hydro is
    ["R04", { Hydro: "19-Oct" }, { country: "IT" }],
    ["R04", { Visual: "19-Oct" }, { country: "IT" }],
    ["R05", { Hydro: "06/09" }, { country: "GB", context: OPEN }],
    ["R05", { Visual: "06/09" }, { country: "DE", context: OPEN }],
    ["R05", { Hydro: "19-Oct", Visual: "06/09" }, { country: "GB", context: OPEN }],
    ["R05", { Hydro: "19-Oct", Visual: "see sticker" }, { country: "GB", context: OPEN }],
    ["R05", { Hydro: "06/24" }, { country: "GB", context: OPEN }],
    ["R06", { "End psi": 207 }, {}],
    ["R06", { "Settled psi": 207 }, {}],
    ["R06", { "End bar": 3000 }, { country: "GB", row: BAR }],
    ["R06", { "Start bar": 700 }, { country: "GB", row: BAR }],
    // a cylinder of 1500 psi is full there, one below may hold so little
    ["R06", { "End psi": 207, "Service psi": 1500 }, {}],
    ["R06", { "End psi": 207, "Service psi": 1499 }, {}],
    // other doubts of a pressure are told where it is needed
    ["R06", { "End psi": "3000?" }, {}],
    ["R06", { "End psi": "3000-3100" }, {}],
    ["R07", { "End psi": "3000-3100" }, {}],
    ["R07", { "Start psi": "207 bar", "End psi": 3000 }, {}],
    ["R07", { "Start psi": "3000?" }, {}],
    ["R09", { Consent: null }, {}],
    ["R09", { Consent: "no" }, { country: "GB" }],
    ["R09", { Consent: { error: "#REF!" } }, {}],
    ["R09", { Consent: { error: "#REF!" }, Owner: "Rental" }, {}],
    // 10 % above 2400 psi is right while a test with a plus holds, and so a matter of the day
    ["V03", PLUS, {}],
    ["V03", { ...PLUS, Date: null }, {}],
    ["V03", { ...PLUS, Date: "see book" }, {}],
    ["V03", { ...PLUS, Date: "01/07/2026" }, { context: OPEN }],
]; // prettier-ignore

export const CASES: readonly Case[] = [
  ...GAS,
  ...VESSEL,
  ...RECORDS.map(([rule, change, setting]): Case => [rule, change, { context: US, ...setting }]),
];
