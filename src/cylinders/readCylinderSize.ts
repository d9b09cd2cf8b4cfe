import sizes from "#shared/cylinders/sizes.json";
import { refuse, unknown } from "../gas/refusal";
import { absoluteBar } from "../gas/units";
import { ROUNDING_BAR } from "./classStamp";
import type { CylinderSize } from "./size";

/** The largest single cylinder holds about 20 litres; a twin set of them 40. */
export const LARGEST_SET_L = 40;
/** A bank of twenty cylinders of 50 litres. */
export const LARGEST_BANK_L = 1000;

/**
 * A cylinder's size: litres of water volume as a number (also as text), or a trade name of the size table, any case,
 * spaces and a final `bar` left out: `AL80`, `12L232`, `D12`; or the free gas it is named for, `80 cu ft`. A twin set
 * counts both its cylinders.
 *
 * @param mostL the largest water volume that can be meant
 * @throws Refusal `unknown` for a name that the table does not hold, or holds with two volumes; `unusable` for a number
 * that can be no water volume, and for cubic feet that several sizes hold.
 */
export function readCylinderSize(size: string | number, mostL = LARGEST_SET_L): CylinderSize {
  if (typeof size === "number") return ofLitres(size, String(size), mostL);
  const text = size.replace(/\s+/g, " ").trim();
  const key = keyOf(text);
  return (
    inLitres(key, text, mostL) ??
    named(key, text, mostL) ??
    ofCubicFeet(key, text) ??
    twin(key, text) ??
    noSuchSize(text)
  );
}

const LONGEST = 60;

/** `12`, `8,5`. */
function inLitres(key: string, text: string, mostL: number): CylinderSize | undefined {
  return /^-?\d+([.,]\d+)?$/.test(key) ? ofLitres(Number(key.replace(",", ".")), text, mostL) : undefined;
}

function ofLitres(litres: number, written: string, mostL: number): CylinderSize {
  if (!(litres > 0))
    return refuse(`A cylinder of ${written} L cannot be: write its water volume in litres, such as 12.`);
  if (litres > mostL) {
    return refuse(
      mostL > LARGEST_SET_L
        ? `${written} L is more than a bank of twenty cylinders: write the water volume in litres, not the gas in it.`
        : `${written} L is no scuba cylinder: write the water volume in litres, or name the size, such as AL80.`,
    );
  }
  return { waterVolumeL: litres, count: 1 };
}

function named(key: string, text: string, mostL: number): CylinderSize | undefined {
  const found = TABLE.get(key) ?? withStatedPressure(key, mostL);
  return found && { ...found, name: text };
}

/** `12l`, `12l/232`: the litres stand in the text, and the pressure in bar may stand behind them. */
function withStatedPressure(key: string, mostL: number): CylinderSize | undefined {
  const [, litres, bar] = /^(\d+(?:[.,]\d+)?)l(?:\/?(\d{3}))?$/.exec(key) ?? [];
  if (litres === undefined) return undefined;
  const size = ofLitres(Number(litres.replace(",", ".")), litres, mostL);
  return bar === undefined ? size : { ...size, servicePressureBar: absoluteBar(Number(bar), "metric") };
}

/**
 * `80 cu ft`: the sizes whose name has that number, or that hold it to within half a cubic foot. Several that differ in
 * water volume are refused, as the gas in them differs too.
 */
function ofCubicFeet(key: string, text: string): CylinderSize | undefined {
  const wanted = Number(
    /^(\d{1,3}(?:[.,]\d+)?)(?:cu\.?ft\.?|cuft|cf|cft|ft3|ft³|cubicf(?:eet|oot|t))$/
      .exec(key)?.[1]
      ?.replace(",", "."),
  );
  if (!(wanted > 0)) return undefined;
  const found = sizes.cylinders.filter(
    ({ names, capacityCuFt, count }) =>
      count === 1 &&
      capacityCuFt !== undefined &&
      (Math.abs(capacityCuFt - wanted) <= 0.5 ||
        names.some((name) => /^[A-Z]{2}(\d+)$/.exec(name)?.[1] === String(wanted))),
  );
  const [first] = found;
  if (first === undefined) {
    return unknown(
      `No size we know holds ${wanted} cu ft: write the litres of water volume, which WATERVOLUME works out.`,
    );
  }
  if (found.some(({ waterVolumeL }) => waterVolumeL !== first.waterVolumeL)) {
    const each = found.map(({ names, capacityCuFt }) => `${names[0]} holds ${capacityCuFt}`).join(", ");
    refuse(`"${text}" can be several sizes (${each} cu ft): name the one it is.`);
  }
  return { ...TABLE.get(keyOf(first.names[0]!))!, name: text };
}

/** `2x8`, `2xAL80`, `twin LP85`, `double HP100s`. */
function twin(key: string, text: string): CylinderSize | undefined {
  const half = /^(?:2x|twin|doubles?|d)(.+?)s?$/.exec(key)?.[1];
  const one =
    half === undefined
      ? undefined
      : (inLitres(half, text, LARGEST_SET_L) ?? named(half, text, LARGEST_SET_L));
  return one?.count === 1 ? { ...one, waterVolumeL: one.waterVolumeL * 2, count: 2, name: text } : undefined;
}

function noSuchSize(text: string): never {
  return unknown(
    text === ""
      ? "The size is blank: write the water volume in litres, or a size such as AL80."
      : `"${text.slice(0, LONGEST)}" is no size we know the volume of: write the water volume in litres, or a size such as AL80.`,
  );
}

function keyOf(name: string): string {
  return name.toLowerCase().replace(/ /g, "").replace(/bar$/, "").replace(/×/g, "x");
}

const TABLE: ReadonlyMap<string, CylinderSize> = tableOfSizes();

/** A name that sizes of several pressures go by says nothing of the pressure. */
function tableOfSizes(): ReadonlyMap<string, CylinderSize> {
  const table = new Map<string, CylinderSize>();
  for (const { names, waterVolumeL, count, servicePressure, unit, ...more } of sizes.cylinders) {
    const servicePressureBar = absoluteBar(servicePressure, unit === "psi" ? "us" : "metric");
    const plus = "plusPossible" in more && { plusPossible: true as const };
    for (const key of names.map(keyOf)) {
      const before = table.get(key);
      const other = before?.servicePressureBar ?? Number.NaN;
      const settled = before === undefined || Math.abs(other - servicePressureBar) <= ROUNDING_BAR;
      const lower = before === undefined ? servicePressureBar : Math.min(other, servicePressureBar);
      table.set(key, { waterVolumeL, count, ...(settled && { servicePressureBar: lower }), ...plus });
    }
  }
  return table;
}
