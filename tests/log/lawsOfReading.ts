import { deepStrictEqual, ok, strictEqual } from "node:assert/strict";
import type { LogContext } from "../../src/log/context";
import { describeLog } from "../../src/log/describeLog";
import type { Log } from "../../src/log/log";
import type { Reading } from "../../src/log/reading";
import { readLog } from "../../src/log/readLog";
import { cylindersOf, joinRegister } from "../../src/log/register";
import { isBlank, type Sheet } from "../../src/sheet/sheet";

/** What holds for every log that is read, whatever stands in its sheets. Throws where it does not. */
export function checkLaws(sheets: readonly Sheet[], context: LogContext): void {
  const log = readLog(sheets, context);
  rowsReconcile(log, sheets);
  for (const { fields, cylinderInRow } of log.fills) {
    for (const reading of Object.values(fields)) readingIsWhole(reading as Reading<unknown>);
    for (const reading of Object.values(cylinderInRow?.fields ?? {}))
      readingIsWhole(reading as Reading<unknown>);
    gasIsPossible(fields.analysedMix);
    pressureIsPossible(fields.endPressure);
  }
  for (const { fields } of log.cylinders)
    for (const reading of Object.values(fields)) readingIsWhole(reading as Reading<unknown>);
  const described = describeLog(log);
  deepStrictEqual(
    JSON.parse(JSON.stringify(described)),
    JSON.parse(JSON.stringify(describeLog(readLog(sheets, context)))),
  );
  const index = joinRegister(log);
  for (const fill of log.fills) ok(cylindersOf(fill, index).length >= 1);
}

/** No row vanishes: every one is of one kind, and every kind adds up to what was read. */
export function rowsReconcile(log: Log, sheets: readonly Sheet[]): void {
  for (const sheet of log.sheets) {
    strictEqual(sheet.rowKinds.length, sheet.source.rows.length);
    sheet.source.rows.forEach((row, at) => {
      if (row.values.every((value) => isBlank(value))) strictEqual(sheet.rowKinds[at], "blank");
    });
  }
  const counted = log.sheets.filter((sheet) => !sheet.leftOut);
  const { total, fills, cylinders, notFilled = 0, blank, headings, totals, unreadable } = log.rows;
  strictEqual(
    total,
    counted.reduce((sum, sheet) => sum + sheet.source.rows.length, 0),
  );
  strictEqual(total, fills + cylinders + notFilled + blank + headings + totals + unreadable);
  strictEqual(log.fills.length, fills);
  strictEqual(log.cylinders.length, cylinders);
  strictEqual(log.unreadable.length, unreadable);
  const places = [...log.fills, ...log.cylinders, ...log.unreadable];
  if (new Set(sheets.map(({ name }) => name)).size === sheets.length)
    strictEqual(new Set(places.map(({ sheet, row }) => `${sheet} ${row}`)).size, places.length);
  for (const { why } of log.unreadable) ok(/[.?]$/.test(why), why);
}

function readingIsWhole(reading: Reading<unknown>): void {
  if (reading.kind === "value") ok(reading.value !== undefined && reading.value !== null);
  if (reading.kind === "ambiguous") ok(reading.choices.length > 0 && /[.?]$/.test(reading.why), reading.why);
  if (reading.kind === "unreadable") ok(/[.?)]$/.test(reading.why), reading.why);
}

function gasIsPossible(reading: Log["fills"][number]["fields"]["analysedMix"]): void {
  const mixes =
    reading.kind === "value" ? [reading.value] : reading.kind === "ambiguous" ? reading.choices : [];
  for (const { oxygen, helium } of mixes) ok(oxygen >= 0 && helium >= 0 && oxygen + helium <= 1 + 1e-9);
}

function pressureIsPossible(reading: Log["fills"][number]["fields"]["endPressure"]): void {
  const pressures =
    reading.kind === "value" ? [reading.value] : reading.kind === "ambiguous" ? reading.choices : [];
  for (const { bar } of pressures) ok(bar >= 1.01324 && bar < 452, String(bar));
}

/** A reading does not depend on the order of the rows, but for ditto marks, totals and merged cells. */
export function checkRowOrder(sheet: Sheet, order: readonly number[]): void {
  const [head, ...rows] = sheet.rows;
  const shuffled = { ...sheet, rows: [head!, ...order.map((at) => rows[at]!)] };
  const byRow = (of: Sheet) => {
    const { columns, rows: described } = describeLog(readLog([of])).sheets[0]!;
    const told = columns.map(({ field, unit, question }) => [field, unit, question?.about]);
    const read = described
      .slice(1)
      .map(({ kind, fields }, at) => [String(of.rows[at + 1]!.values[0]), { kind, fields }] as const);
    return { told, read: Object.fromEntries(read) };
  };
  deepStrictEqual(JSON.parse(JSON.stringify(byRow(shuffled))), JSON.parse(JSON.stringify(byRow(sheet))));
}
