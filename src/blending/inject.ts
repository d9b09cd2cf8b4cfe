import { AIR, OXYGEN, type Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";

/** Common practice, no source: above this an oil-lubricated compressor is a fire, so continuous blending stops here. */
const MOST_OXYGEN = 0.4;
/** What the trade calls air: 20.9 % is a way to write it, not a leaner gas. */
const LEAST_OXYGEN = 0.209;
const NOISE = 1e-9;

/**
 * Oxygen flow to add to the intake of a compressor (continuous blending), in the unit of the flow. The intake flow is
 * all that the compressor draws in, oxygen included: flow x (mix - air) / (supply - air).
 * @throws Refusal above 40 %, below air, with helium, and for a supply that is not richer than the mix.
 */
export function inject(mix: Mixture, intakeFlow: number, oxygenSupply: Mixture = OXYGEN): number {
  if (!(Number.isFinite(intakeFlow) && intakeFlow > 0))
    refuse("The intake flow must be a number above 0: write what the compressor draws in, in any unit.");
  if (mix.helium > 0 || oxygenSupply.helium > 0)
    refuse("Only oxygen is injected here: mixes with helium are not made by this function.");
  if (mix.oxygen > MOST_OXYGEN + NOISE)
    refuse(
      `${nameMix(mix)} is above 40 %: a compressor must not draw in more oxygen than that (fire in its oil and heat). Make it by partial pressure.`,
    );
  if (mix.oxygen < LEAST_OXYGEN - NOISE)
    refuse(`${nameMix(mix)} is leaner than air: adding oxygen cannot make it.`);
  if (oxygenSupply.oxygen <= AIR.oxygen || oxygenSupply.oxygen < mix.oxygen)
    refuse(`An oxygen supply of ${nameMix(oxygenSupply)} is not rich enough for ${nameMix(mix)}.`);
  return (intakeFlow * Math.max(0, mix.oxygen - AIR.oxygen)) / (oxygenSupply.oxygen - AIR.oxygen);
}
