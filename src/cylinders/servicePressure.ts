import { ATMOSPHERE_BAR } from "../gas/units";
import { ROUNDING_BAR, type ClassStamp } from "./classStamp";
import type { CylinderSize } from "./size";

/** 49 CFR 173.302a(b): 110 % while a `+` follows the date of the latest test. */
export const PLUS_FACTOR = 1.1;

/** Who says what a cylinder is stamped for. */
export type PressureSource = "figure" | "stamp" | "size";

/** What is known of a cylinder's service pressure, each in bar absolute; absent where nothing is. */
export interface PressuresKnown {
  /** As written in a column or an argument of its own. */
  readonly figureBar?: number | undefined;
  readonly stamp?: ClassStamp | undefined;
  readonly size?: CylinderSize | undefined;
}

export interface ServicePressure {
  /** The lowest of what is known, bar absolute: the one to fill by. */
  readonly bar: number;
  readonly from: PressureSource;
  /** What says otherwise, by more than 1 bar or 15 psi. Empty where all agree. */
  readonly contradicted: readonly { readonly from: PressureSource; readonly bar: number }[];
}

/**
 * The service pressure of a cylinder: the lowest of what figure, stamp and size say; `undefined` where none says any.
 * Steel that may have a plus is often written down with the 10 % in it, which contradicts nothing.
 */
export function servicePressure({ figureBar, stamp, size }: PressuresKnown): ServicePressure | undefined {
  const known = (
    [
      ["stamp", stamp?.servicePressureBar],
      ["figure", figureBar],
      ["size", size?.servicePressureBar],
    ] as const
  ).flatMap(([from, bar]) => (bar === undefined ? [] : [{ from, bar }]));
  if (known.length === 0) return undefined;
  const lowest = known.reduce((low, each) => (each.bar < low.bar - ROUNDING_BAR ? each : low));
  const least = Math.min(...known.map(({ bar }) => bar));
  const withPlus = (least - ATMOSPHERE_BAR) * PLUS_FACTOR + ATMOSPHERE_BAR;
  const most = size?.plusPossible && lowest.from === "size" ? Math.max(least, withPlus) : least;
  return {
    bar: least,
    from: lowest.from,
    contradicted: known.filter(({ bar }) => bar > most + ROUNDING_BAR),
  };
}
