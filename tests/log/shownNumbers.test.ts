import { describe, expect, test } from "vitest";
import { readLog } from "../../src/log/readLog";
import type { Sheet } from "../../src/sheet/sheet";
import { sheetOf } from "./sheets";

const day = { v: 46266, f: "yyyy-mm-dd" };
const fillsOf = (headings: readonly string[], ...rows: Parameters<typeof sheetOf>[0]) =>
  readLog([sheetOf([headings, ...rows])], {}).fills.map(({ fields }) => fields);

describe("a number is read as its format shows it", () => {
  test("with the unit that the format writes, where the heading has none", () => {
    const [fill] = fillsOf(
      ["Date", "Serial", "Start pressure", "End pressure"],
      [day, "HK1", { v: 50, f: '0" bar"' }, { v: 200, f: '0" bar"' }],
    );
    expect(fill!.endPressure).toMatchObject({
      kind: "value",
      value: { written: { value: 200, unit: "bar" } },
    });
  });

  test("in doubt, where the format writes another unit than the heading", () => {
    const [fill] = fillsOf(
      ["Date", "Serial", "Start psi", "End psi"],
      [day, "HK1", { v: 50, f: '0" bar"' }, { v: 200, f: '0" bar"' }],
    );
    expect(fill!.endPressure).toMatchObject({
      kind: "ambiguous",
      why: "The number format shows “200 bar”, and the heading says psi. Say in which unit the column is.",
    });
  });

  test("with the letters of a serial, so that HK1001 and AL1001 stay two cylinders", () => {
    const fills = fillsOf(
      ["Date", "Serial", "Start psi", "End psi"],
      [day, { v: 1001, f: '"HK"0000' }, 500, 3000],
      [day, { v: 1001, f: '"AL"0000' }, 500, 3000],
      [day, { v: 17, f: "00-0000" }, 500, 3000],
      [day, { v: 700021, f: 'General" psi"' }, 500, 3000],
    );
    expect(fills.map(({ serial }) => serial.kind === "value" && serial.value)).toEqual([
      ["HK1001"],
      ["AL1001"],
      ["000017"],
      ["700021"],
    ]);
  });
});

test("rows that are struck out are counted as struck out, and are no fills", () => {
  const sheet = sheetOf([
    ["Date", "Serial", "Start psi", "End psi"],
    [day, "HK1", 500, 3000],
    [day, "HK2", 500, 3000],
  ]);
  const struck: Sheet = {
    ...sheet,
    rows: sheet.rows.map((row, at) => (at === 2 ? { ...row, struckOut: true } : row)),
  };
  const { fills, rows } = readLog([struck], {});
  expect(fills).toHaveLength(1);
  expect(rows).toMatchObject({ total: 3, fills: 1, struckOut: 1, headings: 1 });
});
