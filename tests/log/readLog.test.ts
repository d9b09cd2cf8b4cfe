import { describe, expect, it } from "vitest";
import { readLog } from "../../src/log/readLog";
import type { Sheet } from "../../src/sheet/sheet";

const sheet = (rows: unknown[][], name = "Fills"): Sheet => ({
  name,
  hidden: false,
  dateSystem: 1900,
  merges: [],
  rows: rows.map((values) => ({ values: values as Sheet["rows"][number]["values"] })),
});

describe("a clean log with a register", () => {
  const log = readLog([
    sheet([
      ["Gannet Point fills"],
      [],
      ["Date", "Serial", "Start PSI", "End PSI", "Ordered mix", "O2 %", "Method", "Filled by"],
      ["2026-10-03", "A10001", 500, 3000, "EAN32", 31.8, "PP", "R."],
      ["2026-10-03", "A10002", 200, 2950, "air", null, "air", "T."],
      ["Total", null, null, 5950],
    ]),
    sheet(
      [
        ["Serial", "Hydro", "Visual", "O2 rating"],
        ["A10001", "10/23", "04/26", "O2 clean"],
        ["A10002", "9 A1 32 22", "2026-01", "AIR"],
      ],
      "Register",
    ),
  ]);
  it("counts every row", () => {
    expect(log.rows).toEqual({
      total: 9,
      fills: 2,
      cylinders: 2,
      blank: 1,
      headings: 3,
      totals: 1,
      unreadable: 0,
    });
  });
  it("reads the fields", () => {
    const fields = log.fills[0]!.fields;
    expect(fields.date.kind === "value" && fields.date.value.toString()).toBe("2026-10-03");
    expect(fields.serial).toEqual({ kind: "value", value: ["A10001"] });
    expect(fields.endPressure).toMatchObject({
      kind: "value",
      value: { written: { value: 3000, unit: "psi" } },
    });
    expect(fields.method).toEqual({ kind: "value", value: "partial pressure" });
    expect(fields.analysedMix).toMatchObject({ kind: "value", value: { oxygen: 0.318 } });
    expect(
      log.cylinders.map(
        (each) => each.fields.hydro.kind === "value" && each.fields.hydro.value.month.toString(),
      ),
    ).toEqual(["2023-10", "2022-09"]);
  });
});
