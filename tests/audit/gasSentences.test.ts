import { describe, expect, it } from "vitest";
import { auditOf, FULL, SHOP, type TestRow } from "./sheets";

/* What findings about the gas say of what was not measured; every sentence stands in tests/sentences. */

const TRIMIX: TestRow = { "Ordered mix": "21/35", "Analysed O2 %": 21, "Analysed He %": 35, "MOD (ft)": 180 };

function said(rule: string, change: TestRow) {
  const { findings } = auditOf(
    [
      { ...FULL, ...change },
      { ...FULL, Serial: "ZZ9999" },
    ],
    [],
    "US",
    SHOP,
  );
  const found = findings.find((finding) => finding.rule === rule && finding.cell.row === 1);
  return found && `${found.severity}, ${found.basis}: ${found.message} ${found.todo}`;
}

describe("a finding about the gas says", () => {
  it("nothing of helium where the helium was not measured", () => {
    const unmeasured = { ...TRIMIX, "Analysed He %": null };
    expect(said("G03", { ...unmeasured, "Analysed O2 %": 21 })).toBeUndefined();
    expect(said("G06", unmeasured)).toMatch(/^\w+, practice: /);
    expect(said("G06", TRIMIX)).toBeUndefined();
  });
});
