import { describe, expect, test } from "vitest";
import type { CellValue } from "../../src/sheet/sheet";
import { placeOfNewRow, takingIn, type EndRow } from "../../src/workbook/newRow";

const row = (values: readonly CellValue[], ...formulas: (string | undefined)[]): EndRow => ({
  values,
  formulas,
});
const fill = row(["2026-10-02", "GP1001", 500, 3000]);
const blank = row([]);
const named = ({ values }: { values: readonly CellValue[] }) => values[0] === "Total";
const place = (rows: readonly EndRow[], first = 0) => placeOfNewRow(rows, first, named);

describe("a new row stands", () => {
  test("below the last row that holds anything", () => {
    expect(place([fill, fill, blank])).toBe(2);
    expect(place([fill, blank, fill, blank], 40)).toBe(43);
    expect(place([])).toBe(0);
  });

  test("above a row that is named a total, and above what stands between", () => {
    expect(place([fill, fill, row(["Total", null, 1000])])).toBe(2);
    expect(place([fill, blank, row(["Total", null, 1000]), blank, row(["Total", null, 9])])).toBe(1);
  });

  test("above a row whose formulas look at the rows above it, named or not", () => {
    expect(
      place([fill, fill, row([null, null, null, 6000], undefined, undefined, undefined, "SUM(D1:D2)")]),
    ).toBe(2);
    expect(place([fill, fill, row(["Fills", 2], undefined, "COUNTA($B$1:$B$2)")])).toBe(2);
  });

  test("below a row whose formulas look at itself, at another sheet, or only up to itself", () => {
    for (const formula of [
      "BRIM.MOD(C2)",
      "VLOOKUP(B2,Cylinders!A1:B1,2)",
      "VLOOKUP(B2,'Fill log 2'!A1:B1,2)",
      "COUNTIF(B$1:B2,B2)",
      '"A1:A2"',
    ])
      expect(place([fill, row([...fill.values], formula)])).toBe(2);
  });

  test("at the end where all is totals", () => {
    expect(place([row(["Total"]), row(["Total"])], 5)).toBe(7);
  });
});

describe("a sum that ended above the new row", () => {
  test.each([
    ["SUM(D2:D20)", "SUM(D2:D21)"],
    ["SUM($D$2:$D$20)/COUNT(D$2:D$20)", "SUM($D$2:$D$21)/COUNT(D$2:D$21)"],
    ['SUMIF(A2:A20,"A2:A20",D2:D20)', 'SUMIF(A2:A21,"A2:A20",D2:D21)'],
    ["sum(d2:d20)", "sum(d2:d21)"],
  ])("takes it in: %s", (formula, stretched) => {
    expect(takingIn(formula, 20)).toBe(stretched);
  });

  test.each([
    "SUM(D2:D19)",
    "D20",
    "SUM(D20:D20)",
    "SUM(Prices!D2:D20)",
    "SUM('Fill log 2'!D2:D20)",
    "SUM(D2:D200)",
    "SUM(Fills[End psi])",
    '"D2:D20"',
    "LOG10(D2)",
  ])("every other formula stays: %s", (formula) => {
    expect(takingIn(formula, 20)).toBeUndefined();
  });
});
