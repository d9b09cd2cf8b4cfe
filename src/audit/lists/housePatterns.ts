import type { Fill, Log } from "../../log/log";
import { allAtOnce, inSteps, type Steps } from "../../sheet/steps";
import { isAir } from "../record/enriched";

/** By what blends are put together to look for a bias. */
export type PatternBy = "filledBy" | "method" | "source";

/** How far the blends of one person, method or bank lie from what was ordered, as a rule. */
export interface HousePattern {
  readonly by: PatternBy;
  readonly name: string;
  readonly gas: "oxygen" | "helium";
  readonly fills: number;
  /** Analysed less ordered, in points. */
  readonly meanPoints: number;
  /** Between these the true mean lies, with 95 % confidence. */
  readonly leastPoints: number;
  readonly mostPoints: number;
  /** Zero lies outside of them: a bias, and not chance. */
  readonly isBias: boolean;
}

export interface HousePatterns {
  readonly patterns: readonly HousePattern[];
  /** Further off than any bias, so that they are no part of it: faults of their own. */
  readonly leftOut: number;
  /** Blends that were ordered and analysed. */
  readonly blends: number;
}

/** Fewer blends than this tell nothing of a habit. */
const FEWEST = 5;
/** A blend this far off is a mistake, not a habit (the stop of G03), in points. */
const NO_HABIT = 3;

/**
 * Learns a station's own bias from ordered against analysed mixes: for each person, method and bank the mean error with
 * its confidence interval (Student's t, 95 %), the surest first. Air is no blend.
 */
export function housePatterns(log: Pick<Log, "fills">): HousePatterns {
  return allAtOnce(housePatternSteps(log));
}

/** The same, a few fills at a time. */
export function* housePatternSteps({ fills }: Pick<Log, "fills">): Steps<HousePatterns> {
  const groups = new Map<
    string,
    { by: PatternBy; name: string; gas: HousePattern["gas"]; errors: number[] }
  >();
  let leftOut = 0;
  let blends = 0;
  yield* inSteps(fills, fills.length, (fill) => {
    const errors = errorsOf(fill);
    if (errors === undefined) return;
    blends++;
    if (errors.some(({ points }) => Math.abs(points) > NO_HABIT)) {
      leftOut++;
      return;
    }
    for (const { by, name } of groupsOf(fill)) {
      for (const { gas, points } of errors) {
        const key = `${by} ${gas} ${name.toLowerCase()}`;
        const group = groups.get(key) ?? { by, name, gas, errors: [] };
        group.errors.push(points);
        groups.set(key, group);
      }
    }
  });
  const patterns = [...groups.values()]
    .filter(({ errors }) => errors.length >= FEWEST)
    .map(({ by, name, gas, errors }) => ({ by, name, gas, ...meanOf(errors) }));
  return { patterns: patterns.sort(bySureness), leftOut, blends };
}

type Mean = Pick<HousePattern, "fills" | "meanPoints" | "leastPoints" | "mostPoints" | "isBias">;

/** The mean of some errors, with its 95 % confidence interval. */
export function meanOf(errors: readonly number[]): Mean {
  const fills = errors.length;
  const meanPoints = errors.reduce((sum, error) => sum + error, 0) / fills;
  const squares = errors.reduce((sum, error) => sum + (error - meanPoints) ** 2, 0);
  const half = (studentT95(fills - 1) * Math.sqrt(squares / (fills - 1))) / Math.sqrt(fills);
  const leastPoints = meanPoints - half;
  const mostPoints = meanPoints + half;
  return { fills, meanPoints, leastPoints, mostPoints, isBias: leastPoints > 0 || mostPoints < 0 };
}

/** Two-sided 95 % points of Student's t for 1 to 4 degrees of freedom, where the series below is not good enough. */
const T95_OF_FEW = [12.706, 4.303, 3.182, 2.776];
const Z95 = 1.959964;

/**
 * Two-sided 95 % point of Student's t, by the Cornish-Fisher series around the normal distribution (Abramowitz & Stegun
 * 26.7.5): good to three decimals from 5 degrees of freedom on.
 */
export function studentT95(degrees: number): number {
  const few = T95_OF_FEW[degrees - 1];
  if (few !== undefined) return few;
  const z = Z95;
  return (
    z +
    (z ** 3 + z) / (4 * degrees) +
    (5 * z ** 5 + 16 * z ** 3 + 3 * z) / (96 * degrees ** 2) +
    (3 * z ** 7 + 19 * z ** 5 + 17 * z ** 3 - 15 * z) / (384 * degrees ** 3)
  );
}

interface BlendError {
  readonly gas: HousePattern["gas"];
  readonly points: number;
}

function errorsOf({ fields }: Fill): readonly BlendError[] | undefined {
  const { orderedMix, analysedMix, method } = fields;
  if (orderedMix.kind !== "value" || analysedMix.kind !== "value") return undefined;
  const ordered = orderedMix.value;
  const analysed = analysedMix.value;
  if ((method.kind === "value" && method.value === "air") || isAir(ordered)) return undefined;
  const oxygen: BlendError = { gas: "oxygen", points: (analysed.oxygen - ordered.oxygen) * 100 };
  const hasHelium = ordered.helium > 0 && analysed.helium > 0;
  return hasHelium ? [oxygen, { gas: "helium", points: (analysed.helium - ordered.helium) * 100 }] : [oxygen];
}

function groupsOf({ fields }: Fill): readonly { readonly by: PatternBy; readonly name: string }[] {
  return (["filledBy", "method", "source"] as const).flatMap((by) => {
    const reading = fields[by];
    return reading.kind === "value" && reading.value.trim() !== ""
      ? [{ by, name: reading.value.trim() }]
      : [];
  });
}

/** What is most surely a bias first: how many half-widths of its interval the mean lies from zero. */
function bySureness(one: HousePattern, other: HousePattern): number {
  return sureness(other) - sureness(one);
}

function sureness({ meanPoints, leastPoints, mostPoints }: HousePattern): number {
  const half = (mostPoints - leastPoints) / 2;
  return half === 0 ? (meanPoints === 0 ? 0 : Number.MAX_VALUE) : Math.abs(meanPoints) / half;
}
