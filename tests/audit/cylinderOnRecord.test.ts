import { describe, expect, it } from "vitest";
import { CylinderOnRecord } from "../../src/audit/record/cylinderOnRecord";
import { ratingText } from "../../src/words/inSentences";
import { countryRules } from "../../src/cylinders/countryRules";
import { logOf, onDay, type TestRow } from "./sheets";

/** What two rows of a register say of one cylinder. */
function onRecord(...rows: readonly TestRow[]): CylinderOnRecord {
  const fill = { Date: onDay("2026-10-05"), Serial: "S1", "End psi": 3000 };
  const register = rows.map((row) => ({ Serial: "S1", Owner: "C-014", "O2 rating": null, ...row }));
  return new CylinderOnRecord(logOf([fill], register).cylinders, countryRules("US"));
}

describe("two ratings on record", () => {
  const rating = (...written: readonly (string | null)[]): string => {
    const { reading, at } = onRecord(...written.map((each) => ({ "O2 rating": each }))).oxygenService;
    const row = at.record?.row;
    return `${reading.kind === "value" ? ratingText(reading.value) : reading.kind} of row ${row}`;
  };

  it.each([
    [["40", null], "40 % of row 1"],
    [[null, "40"], "40 % of row 2"],
    [["smudged", "40"], "40 % of row 2"],
    [["40", "smudged"], "40 % of row 1"],
    [[null, "smudged"], "unknown word of row 2"],
    [["smudged", null], "unknown word of row 1"],
    // the stricter, whichever stands first
    [["40", "O2 clean"], "40 % of row 1"],
    [["O2 clean", "40"], "40 % of row 2"],
    [["50", "40"], "40 % of row 2"],
    [["40", "50"], "40 % of row 1"],
    [["air", "40"], "air only of row 1"],
    [["40", "air"], "air only of row 2"],
  ])("%j: %s", (written, expected) => {
    expect(rating(...written)).toBe(expected);
  });
});

describe("two rows of a register are of one cylinder", () => {
  const isOther = (one: TestRow, other: TestRow): boolean => onRecord(one, other).other !== undefined;

  it.each<[string, TestRow, TestRow, boolean]>([
    ["whose tests differ", { Hydro: "2019/05" }, { Hydro: "2024/05" }, false],
    ["whose class is written otherwise", { Class: "DOT-3AL" }, { Class: "dot 3al" }, false],
    ["of which one says no class", { Class: "3AL", Made: null }, { Class: null, Made: "2014/03" }, false],
    ["of another class", { Class: "3AL" }, { Class: "3AA" }, true],
    ["made otherwise", { Made: "2014/03" }, { Made: "2003/03" }, true],
    ["of another size", { Size: "AL80" }, { Size: "LP85" }, true],
    ["of another pressure", { "Service psi": 3000 }, { "Service psi": 2400 }, true],
  ])("%s: other %s %s is %s", (_what, one, other, expected) => {
    expect(isOther(one, other)).toBe(expected);
  });

  it("or of a row of the log and one of the register, which may say it otherwise", () => {
    const log = logOf(
      [{ Date: onDay("2026-10-05"), Serial: "S1", Class: "3AL", Hydro: "2024/05", "End psi": 3000 }],
      [{ Serial: "S1", Class: "3AA", Hydro: "2024/05" }],
    );
    const records = [log.fills[0]!.cylinderInRow!, ...log.cylinders];
    expect(new CylinderOnRecord(records, countryRules("US")).other).toBeUndefined();
  });
});

describe("a cylinder of unknown kind", () => {
  it("is one of which neither class nor material nor alloy is written", () => {
    expect(onRecord({ Hydro: "2024/05" }).isOfUnknownKind).toBe(true);
    for (const said of [{ Class: "3AL" }, { Material: "steel" }, { Alloy: "6351" }] as TestRow[])
      expect(onRecord({ Hydro: "2024/05", ...said }).isOfUnknownKind).toBe(false);
  });

  it("has no hydro history where none is asked for", () => {
    expect(onRecord({ Class: "SMALL-2IN", Hydro: "2024/05" }).hydros).toBeUndefined();
    expect(onRecord({ Class: "3AL", Hydro: "2024/05" }).hydros).toBeDefined();
  });
});
