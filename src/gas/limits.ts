import { refuse } from "./refusal";
import { absoluteBar, gaugeInWords } from "./units";

/**
 * Where the functions stop. Above 450 bar no diving cylinder is filled, so the reading is wrong; between -20 and 70 °C
 * the equation of state has been checked, and a cylinder outside of that should not be under a fill whip.
 */
export const MAX_GAUGE = { us: 6527, metric: 450 } as const;
export const MIN_TEMPERATURE_K = 253.15;
export const MAX_TEMPERATURE_K = 343.15;

/** The higher of the two limits: 450 bar, and the whole number of psi nearest to it. */
const MAX_PRESSURE_BAR = Math.max(absoluteBar(MAX_GAUGE.us, "us"), absoluteBar(MAX_GAUGE.metric, "metric"));
const NOISE = 1e-9;

/**
 * A pressure (bar absolute) that a cylinder can have.
 * @throws Refusal below vacuum, above 450 bar (6527 psi) gauge, and for what is no number.
 */
export function checkedPressure(pressureBar: number): number {
  if (pressureBar >= 0 && pressureBar <= MAX_PRESSURE_BAR + NOISE) return pressureBar;
  if (!Number.isFinite(pressureBar)) refuse("The pressure is not a number: write a gauge reading.");
  if (pressureBar < 0) refuse(`A gauge cannot read ${gaugeInWords(pressureBar)}: write 0 or more.`);
  return refuse(
    `${gaugeInWords(pressureBar)} is above ${MAX_GAUGE.metric} bar (${MAX_GAUGE.us} psi), more than any cylinder takes: check the reading and the units.`,
  );
}

/**
 * A temperature (K) at which cylinders are filled.
 * @throws Refusal outside -20 to 70 °C (-4 to 158 °F), and for what is no number.
 */
export function checkedTemperature(temperatureK: number): number {
  if (temperatureK >= MIN_TEMPERATURE_K - NOISE && temperatureK <= MAX_TEMPERATURE_K + NOISE)
    return temperatureK;
  if (!Number.isFinite(temperatureK)) refuse("The temperature is not a number: write degrees.");
  const celsius = Number((temperatureK - 273.15).toFixed(1));
  const fahrenheit = Number(((temperatureK - 273.15) * 1.8 + 32).toFixed(1));
  return refuse(
    `${celsius} °C (${fahrenheit} °F) is outside -20 to 70 °C (-4 to 158 °F): check the temperature and the units.`,
  );
}
