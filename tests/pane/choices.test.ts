import { describe, expect, it } from "vitest";
import type { LogColumn } from "../../src/log/log";
import { chooseSheet, forgetGone, goneHeadings, saidOf, sayOfColumn } from "../../src/pane/check/choices";
import type { SheetReading } from "../../src/pane/check/report";
import { NO_SETTINGS } from "../../src/workbook/settings";

const ROWS = { total: 9, fills: 8, cylinders: 0, blank: 0, headings: 1, totals: 0, unreadable: 0 };

function reading(...headings: string[]): SheetReading {
  const columns = headings.map((heading, column): LogColumn => ({
    column,
    heading,
    field: undefined,
    unit: undefined,
    confidence: 0,
    examples: [],
  }));
  return {
    name: "October",
    kind: "fills",
    why: undefined,
    columns,
    rows: ROWS,
    hiddenRows: 0,
    headingsChanged: false,
  };
}

describe("what the shop says of columns", () => {
  it("tells columns with the same heading apart by their order", () => {
    const sheet = reading("psi", "Serial", "psi");
    const settings = sayOfColumn(NO_SETTINGS, sheet, sheet.columns[2]!, { field: "endPressure" });
    expect(saidOf(settings, sheet, sheet.columns[2]!)?.field).toBe("endPressure");
    expect(saidOf(settings, sheet, sheet.columns[0]!)).toBeUndefined();
    expect(settings.sheets).toEqual([
      { sheet: "October", columns: [{ heading: "psi", nth: 1, field: "endPressure", answers: {} }] },
    ]);
  });

  it("stays with the heading when the column moves", () => {
    const before = reading("Serial", "Out");
    const settings = sayOfColumn(NO_SETTINGS, before, before.columns[1]!, { answers: { unit: "bar" } });
    const after = reading("Date", "Out", "Serial");
    expect(saidOf(settings, after, after.columns[1]!)?.answers).toEqual({ unit: "bar" });
  });

  it("adds an answer to what was said before, and takes back only what it is told to", () => {
    const sheet = reading("Out");
    const column = sheet.columns[0]!;
    let settings = sayOfColumn(NO_SETTINGS, sheet, column, { field: "endPressure" });
    settings = sayOfColumn(settings, sheet, column, { answers: { unit: "psi" } });
    expect(saidOf(settings, sheet, column)).toMatchObject({ field: "endPressure", answers: { unit: "psi" } });
    settings = sayOfColumn(settings, sheet, column, { answers: { unit: undefined } });
    expect(saidOf(settings, sheet, column)).toMatchObject({ field: "endPressure", answers: {} });
    settings = sayOfColumn(settings, sheet, column, { field: undefined });
    expect(saidOf(settings, sheet, column)).toBeUndefined();
  });

  it("keeps `not read` apart from `nothing said`", () => {
    const sheet = reading("Locker");
    const settings = sayOfColumn(NO_SETTINGS, sheet, sheet.columns[0]!, { field: null });
    expect(saidOf(settings, sheet, sheet.columns[0]!)?.field).toBeNull();
  });

  it("leaves a sheet's tick alone, and the tick the columns", () => {
    const sheet = reading("Out");
    let settings = chooseSheet(NO_SETTINGS, "October", false);
    settings = sayOfColumn(settings, sheet, sheet.columns[0]!, { field: "endPressure" });
    settings = chooseSheet(settings, "October", true);
    expect(settings.sheets).toMatchObject([{ use: true, columns: [{ heading: "Out" }] }]);
  });

  it("is offered again when its heading is gone, and forgotten only on request", () => {
    const before = reading("Out", "In");
    let settings = sayOfColumn(NO_SETTINGS, before, before.columns[0]!, { field: "endPressure" });
    settings = sayOfColumn(settings, before, before.columns[1]!, { field: "startPressure" });
    const after = reading("Pressure out", "In");
    expect(goneHeadings(settings, after)).toMatchObject([{ heading: "Out", field: "endPressure" }]);
    settings = forgetGone(settings, after);
    expect(goneHeadings(settings, after)).toEqual([]);
    expect(saidOf(settings, after, after.columns[1]!)?.field).toBe("startPressure");
  });

  it("never changes the settings it is given", () => {
    const sheet = reading("Out");
    const before = JSON.stringify(NO_SETTINGS);
    sayOfColumn(NO_SETTINGS, sheet, sheet.columns[0]!, { field: "endPressure" });
    chooseSheet(NO_SETTINGS, "October", true);
    expect(JSON.stringify(NO_SETTINGS)).toBe(before);
  });
});
