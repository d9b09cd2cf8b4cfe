import { contentAt, filledTo, SAME_AMOUNT, type Content } from "../../gas/content";
import { realGas } from "../../gas/equationOfState";
import type { Mixture } from "../../gas/mixture";
import type { HouseFigures } from "../shop/shop";
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

/** Amounts this close, relative to the larger, tell what is well within all errors from what may not be. */
const ROUGH_AMOUNT = 1e-3;

/** What the cylinder holds after a fill with this gas on top. */
export function contentAfter(workings: Workings, top: Mixture): Content {
  return contentIn(workings, top, SAME_AMOUNT);
}

/**
 * The oxygen that a fill must have come to, at half the cost: within half a point, to tell at once what is well within
 * all errors.
 */
export function oxygenRoughly(workings: Workings): OxygenRange {
  return oxygenIn(workings, ROUGH_AMOUNT);
}

/** How far `oxygenRoughly` may be off, as a mole fraction. */
export const ROUGHLY = 0.005;

/** The oxygen that a fill must have come to. */
export function oxygenAfter(workings: Workings): OxygenRange {
  return oxygenIn(workings, SAME_AMOUNT);
}

/** The mix after a fill with this gas on top. */
export function mixAfterFill(workings: Workings, top: Mixture): Mixture {
  return mixIn(workings, top, SAME_AMOUNT);
}

function oxygenIn(workings: Workings, closeEnough: number): OxygenRange {
  const { leanest, richest } = workings.top;
  const least = mixIn(workings, leanest, closeEnough).oxygen;
  return { least, most: leanest === richest ? least : mixIn(workings, richest, closeEnough).oxygen };
}

/** Like on like needs no working out. */
function mixIn(workings: Workings, top: Mixture, closeEnough: number): Mixture {
  const { mix } = workings.start;
  const isLike = Math.abs(mix.oxygen - top.oxygen) + Math.abs(mix.helium - top.helium) < SAME_MIX;
  return workings.pure.length === 0 && isLike ? mix : contentIn(workings, top, closeEnough).mix;
}

function contentIn({ start, pure, end }: Workings, top: Mixture, closeEnough: number): Content {
  let content = contentAt(realGas, start.mix, start.bar, start.temperatureK);
  for (const { gas, bar, temperatureK } of pure)
    content = filledTo(realGas, content, gas, bar, temperatureK, closeEnough);
  return filledTo(realGas, content, top, end.bar, end.temperatureK, closeEnough);
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
