import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import type { LogColumn } from "../../../src/log/log";
import { logPlace } from "../../../src/counter/write/logPlace";
import type { CellValue } from "../../../src/sheet/sheet";
import { sheet } from "../fakeWorkbook";

const COLUMNS = (["number", "date", "serial"] as const).map((field, column): LogColumn => ({
  column, field, heading: field, unit: undefined, confidence: 1, examples: [],
})); // prettier-ignore

const TODAY = Temporal.PlainDate.from("2026-11-26");

function place(rows: readonly (readonly CellValue[])[], name = "Log", today = TODAY) {
  return logPlace(sheet(name, [["No.", "Date", "Serial"], ...rows]), COLUMNS, today);
}

describe("the number of the next fill", () => {
  const numbered = (...numbers: readonly CellValue[]) =>
    place(numbers.map((number) => [number, "2026-11-02", "GP1001"])).nextNumber;
  it("follows the last where they run on", () => {
    expect(numbered(229, 230, 231)).toBe(232);
    expect(numbered(229, 231, 232)).toBe(233);
  });
  it("is left open where they do not run on, or are no plain numbers", () => {
    expect(numbered("2026-229", "2026-230")).toBeUndefined();
    expect(numbered(229, 240)).toBeUndefined();
    expect(numbered(229, 230, null)).toBeUndefined();
    expect(numbered(500, 229, 230)).toBeUndefined();
    expect(numbered(1.5, 2.5)).toBeUndefined();
    expect(numbered(230)).toBeUndefined();
    expect(numbered()).toBeUndefined();
  });
  it("takes no row for a fill that has no date, such as totals", () => {
    const rows = [[1, "2026-11-02", "GP1001"], [2, "2026-11-02", "GP1002"], [2, "Total", null]] as const; // prettier-ignore
    expect(place(rows).nextNumber).toBe(3);
  });
});

describe("a sheet of another month", () => {
  const OCTOBER = [[1, "2026-10-30", "GP1001"]] as const;
  const NOVEMBER = [[1, "2026-11-02", "GP1001"]] as const;
  it.each(["October 2026", "Fills Okt 26", "2026-10", "10-2026", "Oct", "November 2025", "Log 2025"])(
    "is told by its name: %s",
    (name) => {
      expect(place(OCTOBER, name).otherMonth).toBe(
        `The sheet is named “${name}”, and this fill is of November 2026.`,
      );
    },
  );
  it.each(["November 2026", "Nov", "2026-11", "Log 2026", "Fills", "Bench 4"])("is not %s", (name) => {
    expect(place(NOVEMBER, name).otherMonth).toBeUndefined();
  });
  it("is told by its fills where the name says no month, but not of a log of several", () => {
    expect(place(OCTOBER).otherMonth).toBe(
      "The sheet holds fills of October 2026 alone, and this fill is of November 2026.",
    );
    expect(place([[1, "2026-09-30", "GP1001"], ...OCTOBER]).otherMonth).toBeUndefined();
    expect(place([]).otherMonth).toBeUndefined();
  });
});
