import type { EquationOfState } from "./equationOfState";
import { mixBetween, type Mixture } from "./mixture";

/** What a cylinder holds, for each litre of its water volume. */
export interface Content {
  readonly mix: Mixture;
  readonly molPerLitre: number;
}

/** Amounts this close, relative to the larger, are the same amount. */
export const SAME_AMOUNT = 1e-12;

/** What is in a cylinder of this mix at this pressure (bar absolute) and temperature (K). */
export function contentAt(
  equation: EquationOfState,
  mix: Mixture,
  pressureBar: number,
  temperatureK: number,
): Content {
  return { mix, molPerLitre: equation.density(mix, pressureBar, temperatureK) };
}

/** Pressure (bar absolute) of what a cylinder holds. */
export function pressureOf(equation: EquationOfState, content: Content, temperatureK: number): number {
  return equation.pressure(content.mix, content.molPerLitre, temperatureK);
}

/** The content after this much gas (mol per litre of water volume) was let in. */
export function added(content: Content, gas: Mixture, molPerLitre: number): Content {
  const total = content.molPerLitre + molPerLitre;
  if (molPerLitre === 0 || total === 0) return content;
  return { mix: mixBetween(content.mix, gas, molPerLitre / total), molPerLitre: total };
}

/** The content after gas was let out until this much is left. */
export function drained(content: Content, molPerLitre: number): Content {
  return { mix: content.mix, molPerLitre };
}

/**
 * The content after this gas was let in up to a pressure (bar absolute): what is there when the cylinder holds
 * that pressure or more already.
 *
 * The amount wanted depends on the mix it makes. Each density solve gives a better amount; the secant through the
 * last two takes out what is left, so four or five solves reach the end of double precision. Where less will do,
 * `closeEnough` is how far the last two amounts may lie apart, relative to the amount.
 */
export function filledTo(
  equation: EquationOfState,
  content: Content,
  gas: Mixture,
  pressureBar: number,
  temperatureK: number,
  closeEnough = SAME_AMOUNT,
): Content {
  if (content.molPerLitre === 0) return contentAt(equation, gas, pressureBar, temperatureK);
  const wanted = (total: number) => {
    const shareOfGas = Math.max(0, 1 - content.molPerLitre / total);
    return equation.density(mixBetween(content.mix, gas, shareOfGas), pressureBar, temperatureK);
  };
  let total = wanted(content.molPerLitre);
  if (total <= content.molPerLitre * (1 + SAME_AMOUNT)) return content;
  let before = content.molPerLitre;
  let gapBefore = total - before;
  for (let iteration = 0; iteration < 50; iteration++) {
    const gap = wanted(total) - total;
    if (Math.abs(gap) <= closeEnough * total || gap === gapBefore) break;
    const next = total - (gap * (total - before)) / (gap - gapBefore);
    before = total;
    gapBefore = gap;
    total = next;
  }
  return added(content, gas, total - content.molPerLitre);
}
