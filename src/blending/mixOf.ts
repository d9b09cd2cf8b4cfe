import { contentAt, drained, filledTo, pressureOf, type Content } from "../gas/content";
import type { EquationOfState } from "../gas/equationOfState";
import { checkedPressure, checkedTemperature } from "../gas/limits";
import type { Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";
import { ATMOSPHERE_BAR, gaugeInWords } from "../gas/units";

/** A gas that went in, or gas let out, and the pressure (bar absolute) and temperature read after it. */
export interface MixOfStep {
  readonly gas: Mixture | "drain";
  readonly pressureBar: number;
  readonly temperatureK: number;
}

/** A reading that moved less than this, relative to itself, did not move. */
const NOISE = 1e-9;

/**
 * The mix after any sequence. The first step is what is in the cylinder before anything is added; each reading counts
 * at its own temperature, so a gauge read hot shows what that does to the mix.
 * @throws Refusal naming the row, for a reading that falls without a drain or rises with one.
 */
export function mixOf(equation: EquationOfState, steps: readonly MixOfStep[]): Mixture {
  const [first, ...rest] = steps;
  if (!first)
    return refuse("There are no steps: the first row is what is in the cylinder before anything is added.");
  check(first, 1);
  if (first.gas === "drain")
    return refuse("Row 1 is what is in the cylinder before anything is added: write its mix, not drain.");
  if (rest.length > 0 && isPure(first.gas) && first.pressureBar > ATMOSPHERE_BAR * (1 + NOISE))
    return refuse(
      `Row 1 is what is in the cylinder before anything is added: ${nameMix(first.gas)} there would stand for a cylinder full of it. Start with air at 0 for a vented cylinder.`,
    );
  const start = contentAt(equation, first.gas, first.pressureBar, first.temperatureK);
  return rest.reduce((content, step, index) => after(equation, content, step, index + 2), start).mix;
}

function after(equation: EquationOfState, content: Content, step: MixOfStep, row: number): Content {
  check(step, row);
  const { gas, pressureBar, temperatureK } = step;
  const before = pressureOf(equation, content, temperatureK);
  if (gas === "drain") {
    if (pressureBar > before * (1 + NOISE))
      refuse(
        `Row ${row}: drain, yet the reading is above the ${gaugeInWords(before)} that were there at that temperature. Name the gas that went in.`,
      );
    return drained(content, equation.density(content.mix, pressureBar, temperatureK));
  }
  if (pressureBar < before * (1 - NOISE))
    refuse(
      `Row ${row}: the reading is below the ${gaugeInWords(before)} that were there at that temperature. Write drain as the gas where gas was let out.`,
    );
  return filledTo(equation, content, gas, pressureBar, temperatureK);
}

function check({ pressureBar, temperatureK }: MixOfStep, row: number): void {
  if (!Number.isFinite(pressureBar)) refuse(`Row ${row}: the reading is not a number.`);
  checkedPressure(pressureBar);
  checkedTemperature(temperatureK);
}

function isPure({ oxygen, helium }: Mixture): boolean {
  return oxygen === 1 || helium === 1;
}
