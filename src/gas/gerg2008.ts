import parameters from "#shared/gas/gerg2008.json";
import type { Composition } from "./mixture";

/*
 * GERG-2008 for nitrogen, oxygen, argon and helium: Kunz & Wagner, J. Chem. Eng. Data 57, 3032 (2012); ISO 20765-2.
 * The equation gives pressure from density, so a pressure is evaluated directly and a density is solved for.
 *
 * Every term is n * delta^d * tau^t * exp(-delta^c). With composition and temperature fixed, terms of equal d and c
 * fold into one coefficient, which leaves five short polynomials in delta, one for each c. The exponents t are
 * multiples of 1/8, so powers of tau come from three square roots. That is what makes it fast; nothing is kept
 * from call to call but scratch space.
 */

const { components, pairs } = parameters;
type Component = keyof typeof components;
const COMPONENTS = Object.keys(components) as Component[];

/** mol/l x J/(mol K) x K is kPa; a hundredth of it is bar. */
const GAS_CONSTANT_BAR = parameters.gasConstant.value / 100;

/** Below this the density would underflow, and its logarithm with it. */
const VACUUM_BAR = 1e-100;

/** The terms of all four gases, and the few distinct pairs of d and c among them, each with one coefficient. */
const terms = COMPONENTS.flatMap((component, index) =>
  components[component].terms.map(([n, d, t, c]) => ({ component: index, n: n!, d: d!, t: t!, c: c! })),
);
const shapes = [...new Map(terms.map(({ d, c }) => [`${d},${c}`, { d, c }])).values()];
const shapeD = Uint8Array.from(shapes, (shape) => shape.d);
const shapeC = Uint8Array.from(shapes, (shape) => shape.c);
const coefficients = new Float64Array(shapes.length);

/** Terms of one gas stand together: where those of each end. */
const termsEnd = Uint8Array.from(
  COMPONENTS,
  (_, index) => terms.findLastIndex(({ component }) => component === index) + 1,
);
const termN = Float64Array.from(terms, (term) => term.n);
const termShape = Uint8Array.from(terms, ({ d, c }) => shapes.findIndex((s) => s.d === d && s.c === c));
const exponents = [...new Set(terms.map(({ t }) => t))];
const termExponent = Uint8Array.from(terms, ({ t }) => exponents.indexOf(t));
const exponentWhole = Uint8Array.from(exponents, Math.floor);
const exponentEighths = Uint8Array.from(exponents, (t) => (t % 1) * 8);

/** beta is directional: the order of the pair is that of the file. */
const combinations = pairs.map((pair) => {
  const first = components[pair.first as Component];
  const second = components[pair.second as Component];
  const meanCubeRoot =
    first.criticalDensityMolPerLitre ** (-1 / 3) + second.criticalDensityMolPerLitre ** (-1 / 3);
  return {
    first: COMPONENTS.indexOf(pair.first as Component),
    second: COMPONENTS.indexOf(pair.second as Component),
    betaVolumeSquared: pair.betaVolume ** 2,
    volume: (2 * pair.betaVolume * pair.gammaVolume * meanCubeRoot ** 3) / 8,
    betaTemperatureSquared: pair.betaTemperature ** 2,
    temperature:
      2 *
      pair.betaTemperature *
      pair.gammaTemperature *
      Math.sqrt(first.criticalTemperatureK * second.criticalTemperatureK),
  };
});
const criticalVolume = Float64Array.from(COMPONENTS, (c) => 1 / components[c].criticalDensityMolPerLitre);
const criticalTemperature = Float64Array.from(COMPONENTS, (c) => components[c].criticalTemperatureK);

const fraction = new Float64Array(COMPONENTS.length);
const tauPowers = new Float64Array(exponents.length);
const wholePowers = new Float64Array(Math.max(...exponentWhole) + 1);
const eighthPowers = new Float64Array(8);
const deltaPowers = new Float64Array(Math.max(...shapeD) + 1);
const damping = new Float64Array(Math.max(...shapeC) + 1);

/** What `evaluate` leaves: delta * d(alpha_r)/d(delta), which is Z - 1, and its derivative by ln(delta). */
const residual = { value: 0, slope: 0 };

/**
 * Pressure (bar absolute) of a gas of this density (mol/l) at this temperature (K).
 * Normal range of the equation: 90 to 450 K, up to 350 bar; extended to 60 to 700 K, 700 bar.
 */
export function gerg2008Pressure(
  composition: Composition,
  densityMolPerLitre: number,
  temperatureK: number,
): number {
  const reducingDensity = prepare(composition, temperatureK);
  evaluate(densityMolPerLitre / reducingDensity);
  return densityMolPerLitre * GAS_CONSTANT_BAR * temperatureK * (1 + residual.value);
}

/**
 * Density (mol/l) of a gas at this pressure (bar absolute) and temperature (K).
 *
 * Newton's method on ln(density) from the ideal gas. Between 243 and 373 K these gases have one root, as pressure
 * rises with density all the way, so nothing has to be bracketed. The step that ends the search is below 1e-7 and
 * quadratic, which leaves an error near 1e-14.
 */
export function gerg2008Density(composition: Composition, pressureBar: number, temperatureK: number): number {
  if (pressureBar <= VACUUM_BAR) return 0;
  const reducingDensity = prepare(composition, temperatureK);
  const rt = GAS_CONSTANT_BAR * temperatureK;
  let density = pressureBar / rt;
  for (let iteration = 0; iteration < 30; iteration++) {
    evaluate(density / reducingDensity);
    const z = 1 + residual.value;
    const step = Math.log(pressureBar / (density * rt * z)) / (1 + residual.slope / z);
    density *= Math.exp(step);
    if (Math.abs(step) < 1e-7) return density;
  }
  return Number.NaN;
}

/** Folds the coefficients for this composition and temperature; answers the reducing density (mol/l). */
function prepare(composition: Composition, temperatureK: number): number {
  fraction[0] = composition.nitrogen;
  fraction[1] = composition.oxygen;
  fraction[2] = composition.argon;
  fraction[3] = composition.helium;

  let reducingVolume = 0;
  let reducingTemperature = 0;
  for (let i = 0; i < fraction.length; i++) {
    const x = fraction[i]!;
    reducingVolume += x * x * criticalVolume[i]!;
    reducingTemperature += x * x * criticalTemperature[i]!;
  }
  for (const pair of combinations) {
    const x = fraction[pair.first]!;
    const y = fraction[pair.second]!;
    if (x === 0 || y === 0) continue;
    const product = x * y * (x + y);
    reducingVolume += (product * pair.volume) / (pair.betaVolumeSquared * x + y);
    reducingTemperature += (product * pair.temperature) / (pair.betaTemperatureSquared * x + y);
  }
  powersOf(reducingTemperature / temperatureK);
  coefficients.fill(0);
  for (let component = 0, k = 0; component < fraction.length; component++) {
    const x = fraction[component]!;
    const end = termsEnd[component]!;
    if (x === 0) k = end; // No such gas.
    for (; k < end; k++) coefficients[termShape[k]!]! += x * termN[k]! * tauPowers[termExponent[k]!]!;
  }
  return 1 / reducingVolume;
}

function powersOf(tau: number): void {
  const half = Math.sqrt(tau);
  const quarter = Math.sqrt(half);
  const eighth = Math.sqrt(quarter);
  eighthPowers[0] = 1;
  eighthPowers[1] = eighth;
  eighthPowers[2] = quarter;
  eighthPowers[3] = quarter * eighth;
  eighthPowers[4] = half;
  eighthPowers[5] = half * eighth;
  eighthPowers[6] = half * quarter;
  eighthPowers[7] = half * quarter * eighth;
  let power = 1;
  for (let i = 0; i < wholePowers.length; i++) {
    wholePowers[i] = power;
    power *= tau;
  }
  for (let k = 0; k < tauPowers.length; k++)
    tauPowers[k] = wholePowers[exponentWhole[k]!]! * eighthPowers[exponentEighths[k]!]!;
}

/**
 * Sets `residual`. For a term of weight A = n tau^t, with w = c delta^c:
 * delta d/d(delta) gives A (d - w) delta^d exp(-delta^c); once more gives A ((d - w)^2 - c w) delta^d exp(-delta^c).
 */
function evaluate(delta: number): void {
  let power = 1;
  for (let d = 0; d < deltaPowers.length; d++) {
    deltaPowers[d] = power;
    power *= delta;
  }
  damping[0] = 1;
  damping[1] = Math.exp(-delta);
  damping[2] = Math.exp(-deltaPowers[2]!);
  damping[3] = Math.exp(-deltaPowers[3]!);
  damping[6] = Math.exp(-deltaPowers[6]!);

  let value = 0;
  let slope = 0;
  for (let k = 0; k < coefficients.length; k++) {
    const d = shapeD[k]!;
    const c = shapeC[k]!;
    const w = c * deltaPowers[c]!;
    const term = coefficients[k]! * deltaPowers[d]! * damping[c]!;
    value += term * (d - w);
    slope += term * ((d - w) * (d - w) - c * w);
  }
  residual.value = value;
  residual.slope = slope;
}
