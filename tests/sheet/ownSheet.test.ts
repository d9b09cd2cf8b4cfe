import { expect, test } from "vitest";
import { ownLine, ownSheetOf } from "../../src/sheet/ownSheet";
import { sheetOf } from "../log/sheets";

test("a sheet of ours is known by the line at its foot, also where columns and rows were put before it", () => {
  for (const what of ["month report", "fill costs", "findings", "fill plan", "fill card"] as const) {
    expect(ownSheetOf(sheetOf([["Date", "Serial"], [], [ownLine(what)]]))).toBe(what);
    expect(
      ownSheetOf(
        sheetOf([
          [null, "", ` ${ownLine(what)} `, null],
          ["Sorted here", 1],
        ]),
      ),
    ).toBe(what);
  }
});

test("a log that speaks of us, even in the words of that line, stays a log", () => {
  for (const row of [
    ["2026-10-14", "GP-101", 500, 3000, ownLine("month report")],
    [ownLine("month report"), "GP-101"],
    ["Written by Brimbook"],
    ["Written by Brimbook: a log."],
    ["Brimbook"],
  ])
    expect(ownSheetOf(sheetOf([["Date", "Serial", "Start psi", "End psi", "Remarks"], row]))).toBeUndefined();
});
