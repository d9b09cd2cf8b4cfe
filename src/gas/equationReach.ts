import { nitrogenOf, type Mixture } from "./mixture";

/** The edge of GERG-2008's normal range (Kunz & Wagner 2012, from memory). */
export const NORMAL_RANGE_BAR = 350;

/**
 * How far the real-gas model can be trusted for this mix at this pressure (bar absolute), as a sentence.
 *
 * The figures are what GERG-2008 differs by from the reference equations of the pure gases and from a second mixture
 * model (docs/accuracy.md). The pair oxygen and helium is not fitted to data, so helium with much oxygen and little
 * nitrogen is the weak corner. Between -20 and 70 °C temperature makes no difference to that.
 */
export function equationReach(mix: Mixture, pressureBar: number): string {
  const reach = `GERG-2008 is good to ${uncertainty(mix)} for this mix.`;
  return pressureBar > NORMAL_RANGE_BAR
    ? `${reach} Above ${NORMAL_RANGE_BAR} bar absolute it is in its extended range, where less is known.`
    : reach;
}

function uncertainty(mix: Mixture): string {
  const nitrogen = nitrogenOf(mix);
  if (mix.helium === 0) return "about 0.1 %";
  if (mix.oxygen > nitrogen) return "about 1 % (oxygen with helium has hardly been measured)";
  return "0.1 to 0.3 %";
}
