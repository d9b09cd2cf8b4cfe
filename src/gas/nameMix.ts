import type { Mixture } from "./mixture";
import { nitrogenOf } from "./mixture";

/**
 * The one text for a mix: "air", "oxygen", "helium", "EAN32", "TX 18/45", "heliox 21"; one decimal where it is not 0.
 * Oxygen of 20.9 to 21.0 % without helium is "air".
 */
export function nameMix(mix: Mixture): string {
  const oxygen = percent(mix.oxygen);
  const helium = percent(mix.helium);
  const nitrogen = percent(nitrogenOf(mix));
  if (oxygen === 100) return "oxygen";
  if (helium === 100) return "helium";
  if (nitrogen === 100) return "nitrogen";
  if (helium === 0) return oxygen === 20.9 || oxygen === 21 ? "air" : `EAN${oxygen}`;
  return nitrogen === 0 ? `heliox ${oxygen}` : `TX ${oxygen}/${helium}`;
}

function percent(fraction: number): number {
  return Number((fraction * 100).toFixed(1));
}
