import standards from "#shared/cylinders/standards.json";
import { BAR_PER_PSI, absoluteBar, type Units } from "../gas/units";

export type Material = "aluminium" | "steel" | "composite";

/** What a cylinder's shoulder says of its kind, read by the grammar of such stamps. */
export interface ClassStamp {
  /**
   * What it was made to, as rules name it: `3AL`, `3ALM`, `SP9791` (exemption or special permit of the US), `SU5134`
   * (of Canada), `ISO9809`, `EN1964`, `UN`, `CE`. In the order of the stamp; a dual stamp has several.
   */
  readonly marks: readonly string[];
  /** What it is made of, where a mark says so. The terms of a permit are not in its number. */
  readonly material?: Material;
  /** The exemption or special permit, as `SP9791` or `SU5134`. */
  readonly permit?: string;
  /** Service (working) pressure, bar absolute; of a dual stamp's two the lower. */
  readonly servicePressureBar?: number;
  /** The two pressures of a dual stamp are further apart than rounding makes. */
  readonly pressuresDiffer?: true;
  /** Test pressure (PT, PH), bar absolute. */
  readonly testPressureBar?: number;
  /** `2015-06`, where the stamp holds a metric date. */
  readonly month?: string;
  /** The alloy stands in the stamp. */
  readonly alloy?: "6351";
  /** Marked UW: made to go under water. */
  readonly underWater?: true;
  /** Marked NLL: its life has no limit but its tests. */
  readonly unlimitedLife?: true;
}

/** Two statements of one pressure may differ by rounding: 1 bar, or 15 psi. */
export const ROUNDING_BAR = 15 * BAR_PER_PSI;

/**
 * Reads what is stamped on a cylinder to say what it is: `DOT-3AL3000`, `3AA2400+`, `TC-3ALM207/DOT-3AL3000`,
 * `E9791-3500`, `DOT-SP 14157`, `TC-SU5134-237`, `UN ISO 9809-1 PW232 PT348`, `EN 1964-1 2015/06`, `ISO 11119-2 UW`.
 *
 * Read, not looked up: any specification with any pressure, any permit number. `undefined` when anything in it is not
 * understood, as half a stamp may be another cylinder.
 */
export function readClassStamp(text: string): ClassStamp | undefined {
  if (text.length > LONGEST) return undefined;
  const reading: Reading = { marks: [], pressures: [] };
  let rest = text
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[‐-―−]/g, "-");
  for (rest = rest.replace(BETWEEN, ""); rest !== ""; rest = rest.replace(BETWEEN, "")) {
    const after = oneMark(rest, reading);
    if (after === undefined) return undefined;
    rest = after;
  }
  return reading.marks.length > 0 ? stampFrom(reading) : undefined;
}

const LONGEST = 120;
const BETWEEN = /^[\s\-/,;|&()·]+/;

interface Reading {
  readonly marks: string[];
  readonly pressures: number[];
  material?: Material;
  permit?: string;
  testPressureBar?: number;
  month?: string;
  alloy?: "6351";
  underWater?: true;
  unlimitedLife?: true;
}

/** One kind of mark at the beginning of what is left; `false` from `take` where it only looks like one. */
interface Production {
  readonly looks: RegExp;
  readonly take: (found: readonly (string | undefined)[], reading: Reading) => boolean | undefined;
}

const SPECIFICATIONS: ReadonlyMap<string, Material> = tableOf(standards.specifications);
const STANDARDS: ReadonlyMap<string, Material> = tableOf(standards.standards);

/** Tried in turn; the first that fits is taken. No mark runs on into a letter or digit that is not its own. */
const PRODUCTIONS: readonly Production[] = [
  // Who says so; the mark itself follows.
  { looks: /^(?:DOT|ICC|CTC|BTC|CRC|TC)(?![A-Z])/, take: () => undefined },
  {
    looks: /^(?:(UN|TPED)(?![A-Z\d])|(PI|CE)(?: ?\d{4})?(?![A-Z\d])|Π(?: ?\d{4})?(?![A-Z\d]))/,
    take: ([, un, other = "PI"], { marks }) => named(marks, un === "UN" ? un : other),
  },
  // Alloy and pressure behind a specification: 3AL-6351, 3AA2400+, 3ALM-207 BAR.
  {
    looks: /^(3[A-Z]{1,4})(?:[- ]*(6351)(?!\d))?(?:[- ]*(\d{3,4})(?!\d))?(?:[- ]?(PSIG?|BAR))?\+?(?![A-Z\d])/,
    take: ([, mark = "", alloy, pressure, unit], reading) => {
      const material = SPECIFICATIONS.get(mark);
      if (material === undefined) return false;
      reading.marks.push(mark);
      reading.material ??= material;
      if (alloy) reading.alloy = "6351";
      return servicePressure(reading, pressure, unit);
    },
  },
  // Exemptions and permits: E9791-3500, SP 14157, TC-SU5134-237.
  {
    looks: /^(E|EX|SP|SU)[- ]?(\d{4,5})(?!\d)(?:[- ]+(\d{3,4})(?!\d))?(?:[- ]?(PSIG?|BAR))?(?![A-Z\d])/,
    take: ([, who, number = "", pressure, unit], reading) => {
      const permit = `${who === "SU" ? "SU" : "SP"}${number}`;
      reading.marks.push(permit);
      reading.permit ??= permit;
      return servicePressure(reading, pressure, unit);
    },
  },
  // Standards with their part and year: ISO 9809-1:2019, BS EN 1964-1, EN ISO 7866, BS 5045/3, AS 1777.
  {
    looks: /^(?:BS[- ]?|DIN[- ]?|NF[- ]?)?(?:EN[- ]?)?ISO[- ]?(\d{4,5})(?:[-/]\d)?(?::\d{4})?(?![A-Z\d])/,
    take: ([, number], reading) => standard(reading, `ISO${number}`),
  },
  {
    looks: /^(?:BS[- ]?|DIN[- ]?|NF[- ]?)?EN[- ]?(\d{4,5})(?:[-/]\d)?(?::\d{4})?(?![A-Z\d])/,
    take: ([, number], reading) => named(reading.marks, "EN") ?? standard(reading, `EN${number}`),
  },
  {
    looks: /^(BS|AS)[- ]?(\d{4})(?:[-/.](?:PART )?(\d))?(?![A-Z\d])/,
    take: ([, who = "", number = "", part], reading) =>
      named(reading.marks, who) ??
      standard(reading, `${who}${number}${who === "BS" && part ? `/${part}` : ""}`),
  },
  {
    looks: /^(HOAL|HOS|HOT)(?: ?\d)?(?![A-Z\d])/,
    take: ([, mark = ""], reading) => named(reading.marks, "BS") ?? standard(reading, mark),
  },
  { looks: /^FRP[- ]?([12])(?![A-Z\d])/, take: ([, which], reading) => standard(reading, `FRP-${which}`) },
  { looks: /^(?:SP[- ])?(CFFC)(?![A-Z\d])/, take: ([, mark = ""], reading) => standard(reading, mark) },
  // Pressures by their letters: working, service and allowable; test.
  {
    looks: /^(?:PW|WP|PS|SP|FP)[ :=]*(\d{2,4}(?:[.,]\d)?)(?!\d) ?(PSIG?|BAR|MPA)?(?![A-Z])/,
    take: ([, pressure, unit], reading) => servicePressure(reading, pressure, unit),
  },
  {
    looks: /^(?:PT|TP|PH|PÜ)[ :=]*(\d{2,4}(?:[.,]\d)?)(?!\d) ?(PSIG?|BAR|MPA)?(?![A-Z])/,
    take: ([, pressure, unit], reading) => {
      const bar = pressureBar(pressure, unit);
      if (bar !== undefined) reading.testPressureBar = bar;
      return bar !== undefined;
    },
  },
  // Allowed temperatures: TS -50/+65 °C.
  {
    looks: /^TS[ :=]*[+-]?\d{1,3}(?: ?°?C)?(?: ?[/ +-]*\d{1,3})?(?: ?°?C)?(?![A-Z\d])/,
    take: () => undefined,
  },
  {
    looks: /^((?:19|20)\d{2})[-/](0[1-9]|1[0-2])(?:[-/]\d{2})?(?!\d)/,
    take: ([, year, month], reading) => void (reading.month ??= `${year}-${month}`),
  },
  { looks: /^UW(?![A-Z\d])/, take: (_, reading) => void (reading.underWater = true) },
  { looks: /^NLL(?![A-Z\d])/, take: (_, reading) => void (reading.unlimitedLife = true) },
  { looks: /^6351(?:-T6)?(?![A-Z\d])/, take: (_, reading) => void (reading.alloy = "6351") },
  { looks: /^6061(?:-T6)?(?![A-Z\d])/, take: () => undefined },
  // A pressure on its own says its unit; a plus may stand behind anything.
  {
    looks: /^(\d{3,4}) ?(PSIG?|BAR)(?![A-Z\d])/,
    take: ([, pressure, unit], reading) => servicePressure(reading, pressure, unit),
  },
  { looks: /^\+(?!\d)/, take: () => undefined },
  // What else is stamped, and says nothing of the kind: water volume, weight, neck thread.
  {
    looks: /^V?[ :=]*\d{1,2}(?:[.,]\d{1,2})? ?(?:L|LTR|LITRES?|LITERS?|KG|LBS?)(?![A-Z\d])/,
    take: () => undefined,
  },
  { looks: /^M(?:18|25) ?[X×] ?(?:1[.,]5|2)(?![A-Z\d])/, take: () => undefined },
];

function oneMark(rest: string, reading: Reading): string | undefined {
  for (const { looks, take } of PRODUCTIONS) {
    const found = looks.exec(rest);
    if (found && take(found, reading) !== false) return rest.slice(found[0].length);
  }
  return undefined;
}

function named(marks: string[], mark: string): undefined {
  if (!marks.includes(mark)) marks.push(mark);
}

/** Every number is a standard; the table says of some what they are made of. */
function standard(reading: Reading, mark: string): undefined {
  named(reading.marks, mark);
  const material = STANDARDS.get(mark);
  if (material !== undefined) reading.material ??= material;
}

function servicePressure(reading: Reading, pressure: string | undefined, unit: string | undefined): boolean {
  if (pressure === undefined) return unit === undefined;
  const bar = pressureBar(pressure, unit);
  if (bar !== undefined) reading.pressures.push(bar);
  return bar !== undefined;
}

/** What working and test pressures of diving cylinders can be. No figure is both, so none needs its unit. */
const RANGES: Readonly<Record<Units, readonly [least: number, most: number]>> = {
  metric: [100, 700],
  us: [1000, 10_000],
};

function pressureBar(written: string | undefined, unit: string | undefined): number | undefined {
  const figure = Number(written?.replace(",", ".")) * (unit === "MPA" ? 10 : 1);
  const units: Units =
    unit?.startsWith("PSI") || (unit === undefined && figure >= RANGES.us[0]) ? "us" : "metric";
  const [least, most] = RANGES[units];
  return figure >= least && figure <= most ? absoluteBar(figure, units) : undefined;
}

function stampFrom({ pressures, ...reading }: Reading): ClassStamp {
  const lowest = Math.min(...pressures);
  const differ = pressures.some((bar) => bar - lowest > ROUNDING_BAR);
  return {
    ...reading,
    ...(pressures.length > 0 && { servicePressureBar: lowest }),
    ...(differ && { pressuresDiffer: true }),
  };
}

function tableOf(
  entries: readonly { readonly mark: string; readonly material: string }[],
): ReadonlyMap<string, Material> {
  return new Map(entries.map(({ mark, material }) => [mark, material as Material]));
}
