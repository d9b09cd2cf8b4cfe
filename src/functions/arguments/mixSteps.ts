import type { MixOfStep } from "../../blending/mixOf";
import { AIR } from "../../gas/mixture";
import { Refusal, refuse } from "../../gas/refusal";
import { ATMOSPHERE_BAR, DEFAULT_TEMPERATURE_K, type Units } from "../../gas/units";
import type { CellValue } from "../../sheet/sheet";
import { isBlankCell, type FilledCell } from "../../typed/cells";
import { TableReader } from "../../typed/reader";
import { mix, pressure, temperature } from "../../typed/readers";

/** The `steps` of MIXOF: rows of gas, gauge reading after it, and the temperature of that reading. */
export function mixSteps() {
  return new TableReader(
    "Rows in the order of work: gas (or drain), gauge reading after it, and if you like the temperature of that reading. Row 1 is what is in the cylinder before.",
    (rows, units) =>
      withoutBlankEnd(rows).map((row, index) => inRow(index + 1, () => stepFrom(row, index, units))),
  );
}

function stepFrom(row: readonly CellValue[], index: number, units: Units): MixOfStep {
  if (row.length < 2 || row.length > 3) {
    refuse("give two or three columns: gas, gauge reading after it, and if you like its temperature.");
  }
  const [gas = null, reading = null, degrees = null] = row;
  const temperatureK = temperatureFrom(degrees, units);
  if (index === 0 && (isEmptyWord(gas) || isEmptyWord(reading))) {
    const other = isEmptyWord(gas) ? reading : gas;
    if (isNothing(other) || isEmptyWord(other) || (isEmptyWord(reading) && isWord(other, "air"))) {
      return { gas: AIR, pressureBar: ATMOSPHERE_BAR, temperatureK };
    }
    refuse(
      '"empty" means vented and full of air: leave the other cell blank, or name the gas and its reading.',
    );
  }
  if (isBlankCell(gas)) refuse("the gas is blank: write which gas went in, or drain.");
  if (isBlankCell(reading)) refuse("the gauge reading is blank: write what the gauge showed after this gas.");
  return {
    gas: isWord(gas, "drain") ? "drain" : mix().read(gas as FilledCell, units),
    pressureBar: pressure("").read(reading as FilledCell, units),
    temperatureK,
  };
}

/** A blank cell between others arrives as 0, and a reading taken for 0° instead of room temperature is far off. */
function temperatureFrom(cell: CellValue, units: Units): number {
  if (isBlankCell(cell)) return DEFAULT_TEMPERATURE_K[units];
  if (cell === 0) refuse('a temperature of 0 may be a blank cell: fill it in, or write "0" as text.');
  return temperature("").read(cell as FilledCell, units);
}

/** Ranges are often drawn longer than what stands in them. */
function withoutBlankEnd(rows: readonly (readonly CellValue[])[]): readonly (readonly CellValue[])[] {
  const last = rows.findLastIndex((row) => !row.every(isNothing));
  return rows.slice(0, last + 1);
}

/** Sentences from inside a row begin with its number. */
function inRow<T>(number: number, read: () => T): T {
  try {
    return read();
  } catch (thrown) {
    throw thrown instanceof Refusal ? new Refusal(thrown.kind, `row ${number}: ${thrown.message}`) : thrown;
  }
}

function isNothing(cell: CellValue): boolean {
  return cell === 0 || isBlankCell(cell);
}

function isEmptyWord(cell: CellValue): boolean {
  return isWord(cell, "empty");
}

function isWord(cell: CellValue, word: string): boolean {
  return typeof cell === "string" && cell.trim().toLowerCase() === word;
}
