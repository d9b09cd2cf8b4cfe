import { mixOf, type MixOfStep } from "../../blending/mixOf";
import type { EquationOfState } from "../../gas/equationOfState";
import type { Mixture } from "../../gas/mixture";
import { Refusal } from "../../gas/refusal";
import { FIVE_DEGREES, gaugeOnePerCentHigher, warmer } from "../../typed/nudges";
import { partsInWords } from "../../words/figures";

/** What becomes of the mix when one reading of a sequence is 1 % high, or taken on gas 5 °C warmer than meant. */
export function slipInWords(equation: EquationOfState, steps: readonly MixOfStep[], slipped: number): string {
  const step = steps[slipped]!;
  const high = mixWith(equation, steps, slipped, {
    ...step,
    pressureBar: gaugeOnePerCentHigher(step.pressureBar),
  });
  const warm = mixWith(equation, steps, slipped, { ...step, temperatureK: warmer(step.temperatureK) });
  return [
    ...(high ? [`1 % higher: ${partsInWords(high)}`] : []),
    ...(warm ? [`with the gas ${FIVE_DEGREES} warmer: ${partsInWords(warm)}`] : []),
  ].join("; ");
}

/** Undefined where such a slip leaves no room for what follows, or is beyond the limits. */
function mixWith(
  equation: EquationOfState,
  steps: readonly MixOfStep[],
  slipped: number,
  instead: MixOfStep,
): Mixture | undefined {
  try {
    return mixOf(equation, steps.with(slipped, instead));
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}
