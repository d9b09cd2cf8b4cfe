import { kelvin } from "../../gas/units";
import { showsDate } from "../../sheet/numberFormat";
import { ambiguous, unreadable, value, type Reading } from "../reading";
import { ofNoUse, plain, sayingNothing, shown, type Cell } from "./cell";
import { numbersIn } from "./numbers";

const METRES_PER_FOOT = 0.3048;

/** A quantity that comes in two units. */
interface Quantity<Unit extends string> {
  readonly wanted: string;
  readonly units: readonly [Unit, Unit];
  readonly words: Readonly<Record<string, Unit>>;
  /** In the unit kept inside. */
  readonly inside: (number: number, unit: Unit) => number;
  readonly reach: readonly [number, number];
}

export type TemperatureUnit = "°F" | "°C";
export type DepthUnit = "ft" | "m";

const TEMPERATURE: Quantity<TemperatureUnit> = {
  wanted: "a temperature",
  units: ["°F", "°C"],
  words: {
    f: "°F",
    "°f": "°F",
    degf: "°F",
    "deg f": "°F",
    fahrenheit: "°F",
    c: "°C",
    "°c": "°C",
    degc: "°C",
    "deg c": "°C",
    celsius: "°C",
    grad: "°C",
  },
  inside: (number, unit) => kelvin(number, unit === "°F" ? "us" : "metric"),
  reach: [233, 373],
};

const DEPTH: Quantity<DepthUnit> = {
  wanted: "a depth",
  units: ["ft", "m"],
  words: {
    ft: "ft",
    "'": "ft",
    feet: "ft",
    fsw: "ft",
    foot: "ft",
    m: "m",
    mtr: "m",
    msw: "m",
    metres: "m",
    meters: "m",
    metre: "m",
    meter: "m",
  },
  inside: (number, unit) => (unit === "ft" ? number * METRES_PER_FOOT : number),
  reach: [0, 400],
};

/** Reads a temperature, in kelvin. */
export function readTemperature(cell: Cell, unit: TemperatureUnit | undefined): Reading<number> {
  return readQuantity(cell, unit, TEMPERATURE);
}

/** Reads a depth, in metres. */
export function readDepth(cell: Cell, unit: DepthUnit | undefined): Reading<number> {
  return readQuantity(cell, unit, DEPTH);
}

function readQuantity<Unit extends string>(
  cell: Cell,
  columnUnit: Unit | undefined,
  of: Quantity<Unit>,
): Reading<number> {
  if (typeof cell.value === "number")
    return showsDate(cell.format)
      ? unreadable(`A date stands where ${of.wanted} belongs. Write the number.`)
      : inUnit([cell.value], columnUnit, of, cell);
  if (typeof cell.value !== "string") return ofNoUse(cell, of.wanted);
  const text = plain(cell.value);
  const nothing = sayingNothing(text);
  if (nothing) return nothing;
  const [, number = "", word = ""] = /^([+-]?[\d.,]+) ?([^\d]*)$/.exec(text) ?? [];
  const unit = word === "" ? columnUnit : of.words[word.replace(/\.$/, "")];
  const numbers = numbersIn(number);
  return numbers.length === 0 || (word !== "" && unit === undefined)
    ? ofNoUse(cell, of.wanted)
    : inUnit(numbers, unit, of, cell);
}

function inUnit<Unit extends string>(
  numbers: readonly number[],
  unit: Unit | undefined,
  of: Quantity<Unit>,
  cell: Cell,
): Reading<number> {
  const inside = numbers
    .flatMap((number) => (unit === undefined ? of.units : [unit]).map((each) => of.inside(number, each)))
    .filter((number) => number >= of.reach[0] && number <= of.reach[1]);
  const [first, second] = inside;
  if (first === undefined)
    return unreadable(`“${shown(cell)}” cannot be ${of.wanted}. Check the number and the unit.`);
  return second === undefined
    ? value(first)
    : ambiguous(
        inside,
        `“${shown(cell)}”: ${of.units[0]} or ${of.units[1]}? Nothing here says which.`,
        "unit",
      );
}
