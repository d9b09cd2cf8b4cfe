import sizes from "#shared/cylinders/sizes.json";
import { refuse, unknown } from "../gas/refusal";
import { absoluteBar } from "../gas/units";
import { ROUNDING_BAR } from "./classStamp";
import type { CylinderSize } from "./size";

/**
 * A cylinder's size: litres of water volume as a number (also as text), or a trade name of the size table, any case,
 * spaces and a final `bar` left out: `AL80`, `12L232`, `D12`. A twin set counts both its cylinders.
 *
 * @throws Refusal `unknown` for a name that the table does not hold, or holds with two volumes; `unusable` for a number
 * that can be no water volume.
 */
export function readCylinderSize(size: string | number): CylinderSize {
  if (typeof size === "number") return ofLitres(size, String(size));
  const text = size.replace(/\s+/g, " ").trim();
  const key = keyOf(text);
  return inLitres(key, text) ?? named(key, text) ?? twin(key, text) ?? noSuchSize(text);
}

/** The largest single cylinder holds about 20 litres; a twin set of them 40. */
const LARGEST_SET_L = 40;
const LONGEST = 60;

/** `12`, `8,5`. */
function inLitres(key: string, text: string): CylinderSize | undefined {
  return /^-?\d+([.,]\d+)?$/.test(key) ? ofLitres(Number(key.replace(",", ".")), text) : undefined;
}

function ofLitres(litres: number, written: string): CylinderSize {
  if (!(litres > 0))
    return refuse(`A cylinder of ${written} L cannot be: write its water volume in litres, such as 12.`);
  if (litres > LARGEST_SET_L) {
    return refuse(
      `${written} L is no scuba cylinder: write the water volume in litres, or name the size, such as AL80.`,
    );
  }
  return { waterVolumeL: litres, count: 1 };
}

function named(key: string, text: string): CylinderSize | undefined {
  const found = TABLE.get(key) ?? withStatedPressure(key);
  return found && { ...found, name: text };
}

/** `12l`, `12l/232`: the litres stand in the text, and the pressure in bar may stand behind them. */
function withStatedPressure(key: string): CylinderSize | undefined {
  const [, litres, bar] = /^(\d+(?:[.,]\d+)?)l(?:\/?(\d{3}))?$/.exec(key) ?? [];
  if (litres === undefined) return undefined;
  const size = ofLitres(Number(litres.replace(",", ".")), litres);
  return bar === undefined ? size : { ...size, servicePressureBar: absoluteBar(Number(bar), "metric") };
}

/** `2x8`, `2xAL80`, `twin LP85`, `double HP100s`. */
function twin(key: string, text: string): CylinderSize | undefined {
  const half = /^(?:2x|twin|doubles?|d)(.+?)s?$/.exec(key)?.[1];
  const one = half === undefined ? undefined : (inLitres(half, text) ?? named(half, text));
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
