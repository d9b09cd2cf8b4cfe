import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { receive, type Receipt } from "../../src/counter/receive/receipt";
import { shopFor } from "../../src/audit/shop/shopFor";
import { countryRules } from "../../src/cylinders/countryRules";
import { logOf, onDay, type TestRow } from "./sheets";

/* Who the cylinder on the counter is: by serial, by shop number, by its own row, or nobody here. */

const TODAY = Temporal.PlainDate.from("2026-10-31");
const { shop } = shopFor(countryRules("US"), { asOf: "2026-10-31" });

const TESTS: TestRow = {
  "Shop number": "C-014",
  Owner: "Robin",
  Size: "AL80",
  Class: "3AL",
  "Service pressure psi": 3000,
  Hydro: onDay("2024-03-14"),
  Visual: onDay("2026-03-20"),
  "Oxygen rating": "40",
};
const FILL: TestRow = {
  Date: onDay("2026-10-02"),
  Serial: "GP1001",
  "Start psi": 500,
  "End psi": 3000,
  "Ordered mix": "EAN32",
  "Analysed O2": 31.6,
  Method: "premix",
};

function received(asked: string, fills: readonly TestRow[], register: readonly TestRow[] = []): Receipt {
  return receive(logOf(fills, register), shop, asked, TODAY);
}

describe("a receipt", () => {
  const register = [
    { Serial: "GP1001", ...TESTS },
    { Serial: "GP1002", ...TESTS, "Shop number": "C-015", Owner: null, Size: "??", "Oxygen rating": null },
  ];

  it("by serial: who it is, of what size, rated for what, and where it stands", () => {
    expect(received("  gp1001 ", [FILL], register)).toMatchObject({
      asked: "gp1001",
      found: "serial",
      serial: "GP1001",
      shopNumber: "C-014",
      owner: "Robin",
      size: { count: 1 },
      at: { sheet: "Cylinders", row: 1, column: 0 },
      rating: "40 %",
      verdict: "fill",
      unknowns: [],
    });
  });

  it("by shop number: the same cylinder, and the warning that it was found so", () => {
    expect(received("c-015", [FILL], register)).toMatchObject({
      found: "shop number",
      serial: "GP1002",
      shopNumber: "C-015",
      owner: undefined,
      size: undefined,
      at: { sheet: "Cylinders", row: 2, column: 0 },
      rating: "not known",
    });
  });

  it("by its own row, where the log is flat", () => {
    const flat = { ...FILL, ...TESTS };
    expect(received("GP1001", [flat])).toMatchObject({
      found: "own row",
      serial: "GP1001",
      owner: "Robin",
      at: { sheet: "Fills", row: 1, column: 1 },
      verdict: "fill",
    });
    const numbered = { ...flat, Serial: null };
    expect(received("C-014", [numbered])).toMatchObject({
      found: "own row",
      serial: "C-014",
      owner: "Robin",
    });
  });

  it("by shop number alone still says what is wrong with what was last put in", () => {
    const row = { ...FILL, ...TESTS, Serial: null, "Oxygen rating": "air only" };
    const found = received("C-014", [row]);
    expect(found).toMatchObject({ found: "own row", verdict: "empty it first" });
    expect(found.wrongInside[0]!.says).toContain('above the 23.5 % that "air only" allows');
  });

  it("of a cylinder that nobody here knows says so, and is never to fill", () => {
    const unknown = received("XX9", [FILL], register);
    expect(unknown).toMatchObject({ found: "nothing", serial: "XX9", at: undefined, verdict: "not known" });
    expect(unknown.unknowns[0]).toBe("no such cylinder in this workbook");
  });

  it("of one that may be a slip says of which", () => {
    expect(received("GP1OO1", [FILL], [register[0]!]).suggestion).toBe("GP1001");
  });
});
