import { readdirSync, readFileSync } from "node:fs";
import { Temporal } from "temporal-polyfill";
import { beforeAll, describe, expect, it } from "vitest";
import { gannetPoint } from "../../scripts/samples/gannetPoint";
import type { KeyCell, SampleKey } from "../../scripts/samples/key";
import { finished } from "../../scripts/samples/storedXlsx";
import { audit } from "../../src/audit/audit";
import type { AuditResult } from "../../src/audit/judge/finding";
import { countryRules } from "../../src/cylinders/countryRules";
import { countryContext } from "../../src/log/countryContext";
import type { Log } from "../../src/log/log";
import { readLog } from "../../src/log/readLog";
import { cellName, type CellAddress, type Sheet } from "../../src/sheet/sheet";
import { readShopSettings } from "../../src/workbook/settings";
import { openFile } from "../../src/workbook/file/openFile";

const SAMPLES = new URL("../../shared/samples/", import.meta.url);
const key = JSON.parse(readFileSync(new URL("gannet-point.key.json", SAMPLES), "utf8")) as SampleKey;
const bytes = new Uint8Array(readFileSync(new URL(key.file, SAMPLES)));

let sheets: readonly Sheet[];
let log: Log;
let result: AuditResult;

beforeAll(async () => {
  const workbook = await openFile(bytes, key.file);
  sheets = await Promise.all((await workbook.listSheets()).map(({ name }) => workbook.readSheet(name)));
  const rules = countryRules(key.country);
  const context = { ...countryContext(rules), units: key.units, asOf: Temporal.PlainDate.from(key.asOf) };
  log = readLog(
    sheets.filter(({ name }) => key.sheets.includes(name)),
    context,
  );
  const { settings } = await readShopSettings(workbook);
  const { airTests, sources } = settings;
  result = audit(log, rules, { airTests, sources, asOf: key.asOf });
});

describe("the sample log of Gannet Point", () => {
  it("is read row by row as it was written", () => {
    expect(log.rows).toEqual(key.rows);
    expect(log.unreadable).toEqual([]);
    expect([log.rows.fills, log.rows.cylinders]).toEqual([600, 140]);
  });

  it("the check finds what was planted, nothing more and nothing less", () => {
    const found = result.findings.map(
      ({ rule, severity, cell, serial, fillDate }) => `${rule} ${severity} ${at(cell)} ${serial} ${fillDate}`,
    );
    const planted = key.findings.map(
      ({ rule, severity, sheet, cell, serial, fillDate }) =>
        `${rule} ${severity} ${sheet}!${cell} ${serial} ${fillDate}`,
    );
    expect([...found].sort()).toEqual([...planted].sort());
  });

  it("the check says of the same fills, for the same reasons, that it could not judge them", () => {
    const said = result.notChecked.map(
      ({ rule, count, why, cells }) => `${rule} ${count} ${why}: ${cells.map(at).sort().join(", ")}`,
    );
    const planted = key.notChecked.map(
      ({ rule, fills, why, cells }) => `${rule} ${fills} ${why}: ${cells.map(of).sort().join(", ")}`,
    );
    expect([...said].sort()).toEqual([...planted].sort());
    expect(result.fullyJudged).toBe(false);
  });

  it("says of each finding what is wrong, what to do and by whose rule, in whole sentences", () => {
    for (const { rule, message, todo, source, basis } of result.findings) {
      expect([rule, message]).toEqual([rule, expect.stringMatching(/^\S.{15,}[.?]$/)]);
      expect([rule, todo]).toEqual([rule, expect.stringMatching(/^[A-Z].{8,}\.$/)]);
      expect([rule, source.length > 3, basis]).toEqual([
        rule,
        true,
        expect.stringMatching(/^(law|practice)$/),
      ]);
    }
  });

  it("holds every kind of finding at least twice", () => {
    const kinds = new Map<string, number>();
    for (const { rule, severity } of key.findings) {
      kinds.set(`${rule} ${severity}`, (kinds.get(`${rule} ${severity}`) ?? 0) + 1);
    }
    expect([...kinds.keys()].sort()).toEqual([
      "A01 breach",
      "A02 stop",
      "A03 stop",
      "G01 stop",
      "G02 stop",
      "G02 warn",
      "G03 breach",
      "G03 stop",
      "G04 stop",
      "G05 breach",
      "G05 stop",
      "G06 breach",
      "G09 breach",
      "G10 breach",
      "G11 warn",
      "G12 warn",
      "O01 stop",
      "O02 stop",
      "O02 warn",
      "O03 stop",
      "O03 warn",
      "O04 stop",
      "O05 breach",
      "O07 stop",
      "O08 breach",
      "O09 breach",
      "O10 breach",
      "O11 warn",
      "P01 breach",
      "R01 breach",
      "R03 breach",
      "R04 breach",
      "R06 warn",
      "R07 warn",
      "R11 note",
      "V01 stop",
      "V02 stop",
      "V03 stop",
      "V03 warn",
      "V04 stop",
      "V05 breach",
      "V05 stop",
      "V06 breach",
      "V07 stop",
      "V08 stop",
      "V09 breach",
      "V10 stop",
      "V11 stop",
      "V12 stop",
      "V13 breach",
      "V17 warn",
      "V18 warn",
    ]);
    for (const [kind, times] of kinds) expect([kind, times >= 2]).toEqual([kind, true]);
  });

  it("has the usual mess in it, read for what it means", () => {
    const notes = log.fills.flatMap(({ fields }) =>
      Object.values(fields).flatMap((reading) =>
        reading.kind === "value" && reading.note ? [reading.note] : [],
      ),
    );
    expect(notes.length).toBeGreaterThan(50);
    const trimix = log.fills.filter(
      ({ fields: { orderedMix } }) => orderedMix.kind === "value" && orderedMix.value.helium >= 0.5,
    );
    expect(trimix.length).toBeGreaterThan(2);
    const doubts = log.fills.flatMap(({ fields }) =>
      Object.values(fields).filter(({ kind }) => kind === "ambiguous" || kind === "unreadable"),
    );
    // the impossible date and the "??" of the key
    expect(doubts).toHaveLength(2);
  });

  it("its blend board is not taken for a log", () => {
    const [board] = readLog(sheets.filter(({ name }) => name === "Blend board")).sheets;
    expect(board?.kind).toBe("neither");
  });

  it("is what the script makes, to the byte", async () => {
    const made = gannetPoint();
    expect(made.key).toEqual(key);
    const again = finished(new Uint8Array(await made.workbook.xlsx.writeBuffer()), made.settings);
    expect(Buffer.from(again).equals(Buffer.from(bytes))).toBe(true);
  });
});

it("the scripts that make samples know nothing of how logs are read and checked", () => {
  const folder = new URL("../../scripts/samples/", import.meta.url);
  for (const file of readdirSync(folder)) {
    expect(readFileSync(new URL(file, folder), "utf8")).not.toMatch(/from "[^"]*\/src\//);
  }
});

function at(cell: CellAddress): string {
  return `${cell.sheet}!${cellName(cell)}`;
}

function of({ sheet, cell }: KeyCell): string {
  return `${sheet}!${cell}`;
}
