import { readWater } from "../depth/waterColumn";
import { idealGas, realGas } from "../gas/equationOfState";
import { checkedPressure, checkedTemperature, MAX_GAUGE } from "../gas/limits";
import { AIR, OXYGEN, type Mixture } from "../gas/mixture";
import { LARGEST_BANK_L, LARGEST_SET_L, readCylinderSize } from "../cylinders/readCylinderSize";
import { readMix } from "../gas/readMix";
import { refuse } from "../gas/refusal";
import {
  absoluteBar,
  ATMOSPHERE_BAR,
  DEFAULT_TEMPERATURE_K,
  kelvin,
  litres,
  readUnits,
  UNIT_NAMES,
  type Units,
} from "../gas/units";
import { numberIn, type FilledCell } from "./cells";
import { gaugeOnePerCentHigher, HIGHER_GAUGE, WARMER } from "./nudges";
import { CellReader } from "./reader";
import { dayIn, theValue } from "./testDates";

/*
 * One reader for each kind of argument: what a cell may hold, and what the formula helper says of it. Sentences need
 * not name the argument; whoever reads arguments puts its name in front.
 */

/** A gauge reading of the start, and whether it was written as "empty": vented, and breathing air. */
export interface StartPressure {
  readonly bar: number;
  readonly empty: boolean;
}

export function units() {
  return new CellReader('"psi", "ft" or "us"; or "bar", "m" or "metric".', (cell) => readUnits(String(cell)));
}

export function mix(meaning = "The gas: 32, 0.32, EAN32, air, TX 18/45, heliox 21.") {
  return new CellReader(meaning, mixIn);
}

/** Beside "empty" the start mix may be blank, so whether a blank is refused shows only with the start pressure. */
export function startMix() {
  return mix('The gas in it: EAN32, air, TX 18/45. Blank only beside "empty".').mayBeBlank();
}

export function topMix() {
  return mix("The gas on top, from the compressor or a bank.").orElse(() => AIR, '"air"');
}

export function oxygenSupply() {
  return mix("What the oxygen supply delivers: 93, 99.5.").orElse(() => OXYGEN, "100");
}

export function pressure(meaning: string) {
  return new CellReader(meaning, gaugeIn, HIGHER_GAUGE);
}

export function startPressure() {
  return new CellReader<StartPressure>(
    'What the gauge shows before the fill, or "empty" for a vented cylinder.',
    (cell, unit) => {
      const empty = typeof cell === "string" && cell.trim().toLowerCase() === "empty";
      return { bar: empty ? ATMOSPHERE_BAR : gaugeIn(cell, unit), empty };
    },
    { inWords: HIGHER_GAUGE.inWords, of: ({ bar, empty }) => ({ bar: gaugeOnePerCentHigher(bar), empty }) },
  );
}

/** Below this a plain number is more likely bar than psi. */
const LEAST_END_PRESSURE_PSI = 350;

export function endPressure() {
  return new CellReader(
    "What the gauge shall show when the fill is done and cold.",
    (cell, unit) => {
      const { reading, unit: written } = gaugeTextIn(cell);
      if (reading === 0) refuse("blank (or 0): write the gauge reading of the full cylinder.");
      if (unit === "us" && written === undefined && reading > 0 && reading < LEAST_END_PRESSURE_PSI) {
        refuse(
          `${reading} psi? For bar write "bar" as the units, or "${reading} bar" here; for psi write "${reading} psi".`,
        );
      }
      return gaugeIn(cell, unit);
    },
    HIGHER_GAUGE,
  );
}

/** Degrees in, kelvin out. Text may carry its own unit. A bare 0 may be a blank cell, and either reading could hurt. */
export function temperature(meaning: string) {
  return new CellReader(
    meaning,
    (cell, unit) => {
      if (cell === 0) refuse('0 may be a blank cell. Write "0 °C" or "32 °F"; from a cell, D2&" °C".');
      return checkedTemperature(degreesIn(cell, unit));
    },
    WARMER,
  );
}

function degreesIn(cell: FilledCell, unit: Units): number {
  const expected = "a temperature in degrees";
  const [, figure, scale] =
    typeof cell === "string" ? (/^(.*?)\s*(?:°|deg(?:rees)?)?\s*([CF])\.?$/i.exec(cell.trim()) ?? []) : [];
  if (figure === undefined || scale === undefined) return kelvin(numberFrom(cell, expected), unit);
  return kelvin(
    numberFrom(figure.replace("−", "-"), expected),
    scale.toUpperCase() === "F" ? "us" : "metric",
  );
}

/** The temperature of all readings. */
export function settledTemperature() {
  return temperature("Temperature of all readings, settled.").orElseButZeroCounts(
    (unit) => DEFAULT_TEMPERATURE_K[unit],
    "70 °F or 20 °C",
  );
}

/** Water volume in litres. */
export function cylinder(
  meaning = "The cylinder: a size such as AL80, 80 cu ft or 12L232, or litres of water volume.",
) {
  return new CellReader(meaning, (cell, unit) => waterVolumeIn(cell, unit, LARGEST_SET_L));
}

/** Water volume in litres of a donor, which may be a bank of any size. */
export function bank(meaning: string) {
  return new CellReader(meaning, (cell, unit) => waterVolumeIn(cell, unit, LARGEST_BANK_L));
}

/** Whole numbers below this name no cylinder by its cubic feet: the smallest in the table holds six. */
const SMALLEST_CU_FT = 6;

function waterVolumeIn(cell: FilledCell, unit: Units, mostL: number): number {
  if (typeof cell === "boolean")
    refuse(`${quoted(cell)} isn't a cylinder: write a size such as AL80, or litres of water volume.`);
  const figure = typeof cell === "number" ? cell : numberIn(cell);
  if (unit === "us" && figure !== undefined && Number.isInteger(figure) && figure >= SMALLEST_CU_FT) {
    refuse(
      `${figure} what? Name the size (AL${figure}), or write "${figure} cu ft" or "${figure} L" of water volume.`,
    );
  }
  return readCylinderSize(cell, mostL).waterVolumeL;
}

export function depth() {
  return new CellReader("Depth, in feet or metres.", (cell) => {
    const number = numberFrom(cell, "a depth, feet or metres, as a number");
    return number >= 0 ? number : refuse(`Depth ${number} is above the surface: write 0 or more.`);
  });
}

export function partialPressure(meaning: string) {
  return new CellReader(meaning, (cell) => {
    const number = numberFrom(cell, "a partial pressure such as 1.4");
    if (number > 0 && number <= 3) return number;
    return refuse(
      `${number} is not a partial pressure to breathe: write a figure above 0, at most 3, such as 1.4.`,
    );
  });
}

export function water() {
  return new CellReader('"salt" or "fresh".', (cell) => readWater(String(cell))).or("salt");
}

/** Free gas in litres, from cubic feet or litres; text may carry its own unit. */
export function freeGasVolume(meaning: string) {
  return new CellReader(meaning, (cell, unit) => {
    const expected = "the cubic feet or litres it is named for";
    const [, figure, named] =
      typeof cell === "string"
        ? (/^(.*?)\s*(cu\.? ?ft\.?|cuft|cf|ft3|ft³|l|litres?|liters?)$/i.exec(cell.trim()) ?? [])
        : [];
    if (figure === undefined || named === undefined) return litres(numberFrom(cell, expected), unit);
    return litres(numberFrom(figure, expected), /^l/i.test(named) ? "metric" : "us");
  });
}

export function number(meaning: string, expected: string) {
  return new CellReader(meaning, (cell) => numberFrom(cell, expected));
}

/** Words, or a number that stands for some. 0 is a blank cell. */
export function text(meaning: string) {
  return new CellReader(meaning, (cell) => (cell === 0 ? refuse(`blank. ${meaning}`) : String(cell).trim()));
}

/** A day: a spreadsheet date, or text that can be read in one way. */
export function date(meaning: string) {
  return new CellReader(meaning, (cell) => theValue(dayIn(cell)));
}

/** A cell as it stands, for functions that read it together with others. */
export function asWritten(meaning: string) {
  return new CellReader<FilledCell>(meaning, (cell) => cell);
}

export function yesOrNo(meaning: string) {
  return new CellReader(meaning, (cell) => {
    if (cell === 0) refuse("0 may be a blank cell: write TRUE or FALSE.");
    const word = String(cell).trim().toLowerCase();
    if (["true", "yes", "1"].includes(word)) return true;
    if (["false", "no"].includes(word)) return false;
    return refuse(`${quoted(cell)} is neither: write TRUE or FALSE.`);
  });
}

/** One of a few words, in any case. */
export function oneOf<const W extends string>(meaning: string, words: readonly W[]) {
  return new CellReader(meaning, (cell) => {
    const written = String(cell).trim().toLowerCase();
    const found = words.find((word) => word === written);
    return found ?? refuse(`${quoted(cell)} isn't one of these: write ${orList(words)}.`);
  });
}

const GAS_MODELS = { real: realGas, ideal: idealGas };

export function gasModel() {
  const word = oneOf("", ["real", "ideal"]);
  return new CellReader(
    '"real" (GERG-2008), or "ideal" for teaching and comparison.',
    (cell, unit) => GAS_MODELS[word.read(cell, unit)],
  ).orElse(() => realGas, '"real"');
}

function mixIn(cell: FilledCell): Mixture {
  if (typeof cell === "boolean")
    refuse(`${quoted(cell)} is not a gas: write air, EAN32, TX 18/45 or the like.`);
  return readMix(cell);
}

/** Absolute pressure behind a gauge reading, of which text may name its own unit. */
function gaugeIn(cell: FilledCell, unit: Units): number {
  const { reading, unit: written = unit } = gaugeTextIn(cell);
  const name = UNIT_NAMES[written].pressure;
  if (reading < 0) refuse(`A gauge cannot read ${reading} ${name}: write 0 or more.`);
  if (reading > MAX_GAUGE[written]) {
    refuse(
      `${reading} ${name} is above ${MAX_GAUGE.metric} bar (${MAX_GAUGE.us} psi), more than any cylinder takes: check the reading and the units.`,
    );
  }
  return checkedPressure(absoluteBar(reading, written));
}

function gaugeTextIn(cell: FilledCell): { reading: number; unit?: Units } {
  if (typeof cell === "number") return { reading: cell };
  if (typeof cell === "boolean")
    return refuse(`${quoted(cell)} is not a pressure: write what the gauge shows.`);
  const unit = /(?:psi|bar)$/i.exec(cell.trim())?.[0];
  const reading = numberIn(cell.trim().slice(0, unit === undefined ? undefined : -unit.length));
  if (reading === undefined) {
    refuse(
      `${quoted(cell)} is not a pressure: write what the gauge shows, such as 3000, "3000 psi" or "207 bar".`,
    );
  }
  return unit ? { reading, unit: readUnits(unit) } : { reading };
}

function numberFrom(cell: FilledCell, expected: string): number {
  const number = typeof cell === "string" ? numberIn(cell) : cell;
  return typeof number === "number" ? number : refuse(`${quoted(cell)} is not a number: write ${expected}.`);
}

export function quoted(cell: FilledCell): string {
  return typeof cell === "string" ? `"${cell.trim()}"` : String(cell).toUpperCase();
}

export function orList(words: readonly string[]): string {
  const all = words.map((word) => `"${word}"`);
  return all.length === 1 ? all[0]! : `${all.slice(0, -1).join(", ")} or ${all.at(-1)}`;
}
