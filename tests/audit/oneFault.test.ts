import { describe, expect, it } from "vitest";
import { faultsOf } from "../../src/audit/judge/oneFault";
import { acceptancesOf, countAccepted, identityOf, noLongerFound } from "../../src/audit/judge/acceptance";
import { runName } from "../../src/audit/judge/cellRuns";
import { acceptedRisks, openRisks } from "../../src/audit/lists/recall";
import { cellName } from "../../src/sheet/sheet";
import { auditOf, FULL, onDay, SHOP, type TestRow } from "./sheets";

const day = (date: string, change: TestRow = {}): TestRow => ({ ...FULL, Date: onDay(date), ...change });
const checked = (rows: readonly TestRow[]) => auditOf(rows, [], "US", SHOP);

describe("one fault of many rows", () => {
  it("is one, with every cell that has it, and each of its findings keeps its own fill", () => {
    const rows = [1, 2, 3, 4].map((of) =>
      day(`2026-11-0${of}`, { Serial: `AB120${of}`, "MOD (ft)": of === 2 ? 111 : null }),
    );
    const { findings } = checked(rows);
    const faults = faultsOf(findings.filter(({ rule }) => rule === "G11"));
    expect(faults).toHaveLength(1);
    expect(faults[0]!.cells.map(({ row }) => row)).toEqual([1, 3, 4]);
    expect(faults[0]!.findings.map(({ serial }) => serial)).toEqual(["AB1201", "AB1203", "AB1204"]);
  });

  it("is one for all fills that one cylinder had past its hydro, and another for another cylinder", () => {
    const late = { Hydro: "2020/10" };
    const { findings } = checked([
      day("2026-11-01", late),
      day("2026-11-03", late),
      day("2026-11-04", { ...late, Serial: "ZZ9999" }),
    ]);
    const [first, other, ...more] = faultsOf(findings.filter(({ rule }) => rule === "V01"));
    expect(more).toEqual([]);
    expect(first!.message).toBe("Hydro 2020-10 was due by 31 October 2025.");
    expect(first!.findings).toHaveLength(2);
    expect(other!.message).toBe("Hydro 2020-10 was due by 31 October 2025; filled 4 November 2026.");
  });

  it("keeps findings apart that weigh or say something else", () => {
    const { findings } = checked([
      day("2026-11-01", { "Analysed O2 %": 34 }),
      day("2026-11-02", { "Analysed O2 %": 36, Serial: "ZZ9999" }),
    ]);
    expect(faultsOf(findings.filter(({ rule }) => rule === "G03"))).toHaveLength(2);
  });
});

describe("what was not checked", () => {
  it("names every cell, as runs down a column", () => {
    const rows = Array.from({ length: 40 }, (_, at) =>
      day("2026-11-01", { Serial: `AB${1000 + at}`, Visual: at === 0 || at === 20 ? "2026/05" : "n/k" }),
    );
    const lack = checked(rows).notChecked.find(({ rule }) => rule === "V06")!;
    expect(lack.count).toBe(38);
    expect(lack.cells.length).toBeLessThan(38);
    const [column] = lack.runs.map((run) => cellName(run).replace(/\d+$/, ""));
    expect(lack.runs.map(runName)).toEqual([`${column}3:${column}21`, `${column}23:${column}41`]);
  });
});

describe("a finding that was accepted", () => {
  const fill = day("2026-11-01", { Hydro: "2020/10" });
  const { findings, recall } = checked([fill]);
  const hydro = findings.find(({ rule }) => rule === "V01")!;
  const kept = [{ ...identityOf(hydro), reason: "Certificate seen", by: "R.", on: "2026-11-30" }];
  const accepted = acceptancesOf(kept);

  it("is so as long as its cells say the same, whatever else changes", () => {
    expect(accepted.of(hydro)).toBe(kept[0]);
    const [same] = checked([{ ...fill, Remarks: "x" }]).findings.filter(({ rule }) => rule === "V01");
    expect(accepted.of(same!)).toBe(kept[0]);
  });

  it.each<[string, TestRow]>([
    ["hydro", { Hydro: "2019/10" }],
    ["hydro, by a word beside it", { Hydro: "2020/10 S" }],
  ])("is open again once its %s is another", (_, change) => {
    const changed = checked([{ ...fill, ...change }]).findings;
    expect(changed.some((each) => accepted.of(each) !== undefined)).toBe(false);
    expect(noLongerFound(kept, changed)).toEqual(kept);
  });

  it("keeps its cylinder in sight, as accepted and not to be called about", () => {
    expect(recall).toHaveLength(1);
    expect(openRisks(recall, accepted)).toEqual([]);
    expect(acceptedRisks(recall, accepted)).toMatchObject([{ serial: "AB1234", accepted: kept }]);
    expect(acceptedRisks(recall, acceptancesOf([]))).toEqual([]);
    expect(countAccepted(accepted, findings)).toEqual({ count: 1, by: ["R."] });
  });
});
