import { contentAt, filledTo, type Content } from "../../gas/content";
import { realGas } from "../../gas/equationOfState";
import type { Mixture } from "../../gas/mixture";
import type { HouseFigures } from "../shop";
import type { Workings } from "./workings";

/*
 * Amounts add up, pressures do not: what a fill must have become is worked out from the gas that each reading stands
 * for at its own temperature (GERG-2008).
 */

/** Oxygen that the cylinder must hold, as a mole fraction; between two where the gas on top is not known exactly. */
export interface OxygenRange {
  readonly least: number;
  readonly most: number;
}

/** Mixes this close, by mole fraction, are one. */
const SAME_MIX = 1e-6;

/** What the cylinder holds after a fill with this gas on top. */
export function contentAfter({ start, pure, end }: Workings, top: Mixture): Content {
  let content = contentAt(realGas, start.mix, start.bar, start.temperatureK);
  for (const { gas, bar, temperatureK } of pure) content = filledTo(realGas, content, gas, bar, temperatureK);
  return filledTo(realGas, content, top, end.bar, end.temperatureK);
}

/** The oxygen that a fill must have come to. */
export function oxygenAfter(workings: Workings): OxygenRange {
  const { leanest, richest } = workings.top;
  const least = mixAfterFill(workings, leanest).oxygen;
  return { least, most: leanest === richest ? least : mixAfterFill(workings, richest).oxygen };
}

/** The mix after a fill with this gas on top; like on like needs no working out. */
export function mixAfterFill(workings: Workings, top: Mixture): Mixture {
  const { start, pure } = workings;
  const isLike = Math.abs(start.mix.oxygen - top.oxygen) + Math.abs(start.mix.helium - top.helium) < SAME_MIX;
  return pure.length === 0 && isLike ? start.mix : contentAfter(workings, top).mix;
}

/** By how much an analysis lies outside of what the readings allow, as a mole fraction; 0 within. */
export function outsideBy({ least, most }: OxygenRange, oxygen: number): number {
  return oxygen < least ? least - oxygen : Math.max(0, oxygen - most);
}

/**
 * How far the analysis and the mix by the readings may lie apart by the errors of gauge, temperature and analyser, each
 * on its own and combined as independent; as a mole fraction.
 */
export function uncertaintyOf(workings: Workings, figures: HouseFigures): number {
  const analyser = figures.balanceAnalyserPoints / 100;
  const base = oxygenAfter(workings).least;
  let sum = analyser ** 2;
  for (const changed of eachReadingWrong(workings, figures)) {
    sum += (oxygenAfter(changed).least - base) ** 2;
  }
  return Math.sqrt(sum);
}

/** The fill with one reading at a time off by its error. */
function* eachReadingWrong(workings: Workings, figures: HouseFigures): Generator<Workings> {
  const { start, pure, end } = workings;
  const gauge = 1 + figures.gaugeErrorPercent / 100;
  const warmth = figures.temperatureErrorC;
  yield { ...workings, start: { ...start, bar: start.bar * gauge } };
  yield { ...workings, start: { ...start, temperatureK: start.temperatureK + warmth } };
  const oxygen = Math.min(1 - start.mix.helium, start.mix.oxygen + figures.balanceAnalyserPoints / 100);
  yield { ...workings, start: { ...start, mix: { ...start.mix, oxygen } } };
  for (const [at, addition] of pure.entries()) {
    yield { ...workings, pure: pure.with(at, { ...addition, bar: addition.bar * gauge }) };
    yield { ...workings, pure: pure.with(at, { ...addition, temperatureK: addition.temperatureK + warmth }) };
  }
  yield { ...workings, end: { ...end, bar: end.bar * gauge } };
  yield { ...workings, end: { ...end, temperatureK: end.temperatureK + warmth } };
}
