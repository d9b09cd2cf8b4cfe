import { describe, expect, it } from "vitest";
import {
  acceptancesOf,
  identityOf,
  noLongerFound,
  withAcceptance,
  withoutAcceptance,
} from "../../src/audit/judge/acceptance";
import type { Finding } from "../../src/audit/judge/finding";

const FINDING: Finding = {
  rule: "V01",
  severity: "stop",
  basis: "law",
  source: "49 CFR 180.205(c)",
  cell: { sheet: "October", row: 6, column: 1 },
  serial: "GP1002",
  fillDate: "2026-10-05",
  message: "Filled past hydro.",
  todo: "Call the owner.",
  evidence: "a1",
};

const ACCEPTED = { ...identityOf(FINDING), reason: "Certificate seen", by: "R.", on: "2026-10-31" };

describe("an accepted finding", () => {
  it("is known again by rule, cylinder, day and cell", () => {
    expect(identityOf(FINDING)).toEqual({
      rule: "V01",
      serial: "GP1002",
      fillDate: "2026-10-05",
      sheet: "October",
      cell: "B7",
      evidence: "a1",
    });
    expect(acceptancesOf([ACCEPTED]).of({ ...FINDING, message: "Said in other words." })).toBe(ACCEPTED);
  });

  it.each<[string, Partial<Finding>]>([
    ["another rule", { rule: "V06" }],
    ["another cylinder", { serial: "GP1003" }],
    ["another day", { fillDate: "2026-10-06" }],
    ["another cell", { cell: { ...FINDING.cell, row: 7 } }],
    ["another sheet", { cell: { ...FINDING.cell, sheet: "September" } }],
  ])("is not taken for one of %s", (_, change) => {
    expect(acceptancesOf([ACCEPTED]).of({ ...FINDING, ...change })).toBeUndefined();
  });

  it("has one reason, the latest, and none once it is taken back", () => {
    const again = { ...ACCEPTED, reason: "Retest certificate on file" };
    const list = withAcceptance([ACCEPTED], again);
    expect(list).toEqual([again]);
    expect(withoutAcceptance(list, identityOf(FINDING))).toEqual([]);
  });

  it("is no longer found once the log says otherwise, and is found again when it is as it was", () => {
    const moved = { ...FINDING, cell: { ...FINDING.cell, row: 7 } };
    expect(noLongerFound([ACCEPTED], [FINDING, moved])).toEqual([]);
    expect(noLongerFound([ACCEPTED], [moved])).toEqual([ACCEPTED]);
    expect(noLongerFound([ACCEPTED], [])).toEqual([ACCEPTED]);
    expect(noLongerFound(undefined, [FINDING])).toEqual([]);
  });

  it("is found in no empty list", () => {
    expect(acceptancesOf(undefined).of(FINDING)).toBeUndefined();
  });
});
