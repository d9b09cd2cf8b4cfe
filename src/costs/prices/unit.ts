import { numbersIn } from "../../log/cells/numbers";
import { LITRES_PER_CUBIC_FOOT } from "../../gas/units";
import { wordsOf } from "../../log/headings/headingWords";

/** What an amount in a price list is for, or in. */
export type UnitKind =
  "volume" | "mass" | "bottle" | "time" | "fill" | "energy" | "power" | "flow" | "temperature" | "minutes";

/**
 * A unit of a price list: how many of the unit kept inside it stands for. Inside: litres, kilograms, bottles, hours,
 * fills, kWh, kW, litres an hour, and minutes for the time a fill takes. A temperature says its scale by `fahrenheit`.
 */
export interface ListUnit {
  readonly kind: UnitKind;
  readonly size: number;
  readonly fahrenheit?: boolean;
  /** A charge by what the full cylinder holds of the gas, not by what went in. */
  readonly inTheMix?: boolean;
}

const CUBIC_METRE_L = 1000;
const POUND_KG = 0.45359237;
/** Mechanical horsepower. */
const HORSEPOWER_KW = 0.745699872;

const UNITS: readonly (readonly [ListUnit, string])[] = [
  [{ kind: "volume", size: LITRES_PER_CUBIC_FOOT }, "cu ft|cuft|cf|ft3|scf|cubic foot|cubic feet"],
  [{ kind: "volume", size: 1 }, "l|litre|litres|liter|liters|free litre"],
  [{ kind: "volume", size: CUBIC_METRE_L }, "m3|cbm|cubic metre|cubic meter|cubic metres|cubic meters"],
  [{ kind: "mass", size: 1 }, "kg|kilo|kilogram"],
  [{ kind: "mass", size: POUND_KG }, "lb|lbs|pound|pounds"],
  [{ kind: "bottle", size: 1 }, "bottle|bottles|cylinder|cylinders|cyl|tank|flasche|bouteille|botella"],
  [{ kind: "time", size: 1 }, "hour|hours|h|hr|hrs|stunde|stunden|heure|heures|hora|horas"],
  [{ kind: "fill", size: 1 }, "fill|fills|fullung|gonflage|recarga"],
  [{ kind: "minutes", size: 1 }, "min|mins|minute|minutes|min fill|minutes fill|min per fill|minutes per fill"],
  [{ kind: "minutes", size: 60 }, "h fill|hours per fill"],
  [{ kind: "energy", size: 1 }, "kwh|kilowatt hour"],
  [{ kind: "power", size: 1 }, "kw|kilowatt|kilowatts"],
  [{ kind: "power", size: HORSEPOWER_KW }, "hp|horsepower"],
  [{ kind: "flow", size: 60 * LITRES_PER_CUBIC_FOOT }, "cu ft min|cuft min|cfm|scfm|ft3 min|cu ft per min|cubic feet per minute"],
  [{ kind: "flow", size: 60 }, "l min|lpm|litres min|l per min|litres per minute|liters per minute"],
  [{ kind: "flow", size: CUBIC_METRE_L }, "m3 h|m3 per h|m3 per hour|cubic metres per hour"],
  [{ kind: "temperature", size: 1, fahrenheit: true }, "f|deg f|degf|fahrenheit"],
  [{ kind: "temperature", size: 1, fahrenheit: false }, "c|deg c|degc|celsius"],
]; // prettier-ignore

const BY_WORDS = new Map(
  UNITS.flatMap(([unit, words]) => words.split("|").map((each) => [each, unit] as const)),
);

/** What people write behind a volume that is billed by the final percentage. */
const IN_THE_MIX = / (?:in the mix|in mix|of the mix|of the final mix|final)$/;

/** Reads “cu ft”, “per 1000 L”, “40 hours”, “L in the mix”; undefined for what is no unit of a price list. */
export function unitOf(text: string): ListUnit | undefined {
  const words = wordsOf(text.toLowerCase().replace(/³/g, "3"))
    .join(" ")
    .replace(/^(?:per|for|each|a|an|one|je|pro|par|por) /, "")
    .replace(/ (?:added|used)$/, "");
  const inTheMix = IN_THE_MIX.test(words);
  const plain = words.replace(IN_THE_MIX, "");
  const whole = BY_WORDS.get(plain);
  const [, number, rest] = /^([\d ]*\d) (.+)$/.exec(plain) ?? [];
  const unit = whole ?? (rest === undefined ? undefined : BY_WORDS.get(rest));
  if (!unit) return undefined;
  const [times = 1] = whole ? [] : numbersIn(/\d[\d.,' ]*/.exec(text)?.[0].trim() ?? number ?? "");
  if (!(times > 0)) return undefined;
  return { ...unit, size: unit.size * times, ...(inTheMix && { inTheMix }) };
}
