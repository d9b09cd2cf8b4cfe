import { contentAt, drained, filledTo } from "../gas/content";
import { ATMOSPHERE_BAR } from "../gas/units";
import type { Mixture } from "../gas/mixture";
import type { FillOrder, FillPlan, StepName } from "./planFill";

/** How far each reading of a fill may be off; every one of them either way. */
export interface ReadingErrors {
  /** Bar. */
  readonly gaugeBar: number;
  /** Kelvin: how far the gas may be from the temperature that the readings are meant for. */
  readonly temperatureK: number;
  /** Mole fraction, of the analysis of what was in the cylinder before. */
  readonly startMix: number;
}

/** What one reading that is off does to the mix, as mole fractions, never negative. */
export interface ErrorShare {
  readonly of: "gauge" | "temperature" | "start mix";
  readonly at: "start" | StepName;
  readonly oxygen: number;
  readonly helium: number;
}

export interface ErrorBudget {
  /** The greatest first. */
  readonly shares: readonly ErrorShare[];
  /** All together, as errors that know nothing of each other add up: the root of the sum of squares. */
  readonly oxygen: number;
  readonly helium: number;
}

/** What actually stood at one reading. */
interface TrueReading {
  readonly pressureBar: number;
  readonly temperatureK: number;
}

/**
 * How far the final mix may be off when every stop is read with these errors. Each reading is moved by its error, the
 * rest left as planned, and the mix worked out anew.
 */
export function errorBudget(order: FillOrder, plan: FillPlan, errors: ReadingErrors): ErrorBudget {
  const readings = plannedReadings(order, plan);
  const planned = mixMade(order, plan, order.startMix, readings);
  const moved = (change: (reading: TrueReading) => TrueReading, at: number) =>
    mixMade(
      order,
      plan,
      order.startMix,
      readings.map((reading, index) => (index === at ? change(reading) : reading)),
    );
  const shares = readings.flatMap((_, at): ErrorShare[] => [
    share("gauge", at, [1, -1].map((sign) => moved((reading) => offGauge(reading, sign * errors.gaugeBar), at))),
    share("temperature", at, [1, -1].map((sign) => moved((reading) => offHeat(reading, sign * errors.temperatureK), at))),
  ]); // prettier-ignore
  const startMixes = [1, -1].map((sign) => offMix(order.startMix, sign * errors.startMix));
  shares.push(share("start mix", 0, startMixes.map((mix) => mixMade(order, plan, mix, readings)))); // prettier-ignore

  function share(of: ErrorShare["of"], at: number, mixes: readonly Mixture[]): ErrorShare {
    const most = (part: keyof Mixture) =>
      Math.max(...mixes.map((mix) => Math.abs(mix[part] - planned[part])));
    return {
      of,
      at: at === 0 ? "start" : plan.steps[at - 1]!.step,
      oxygen: most("oxygen"),
      helium: most("helium"),
    };
  }
  const felt = shares.filter(({ oxygen, helium }) => oxygen + helium > 0);
  return {
    shares: felt.sort((one, other) => other.oxygen + other.helium - one.oxygen - one.helium),
    oxygen: rootOfSquares(felt, "oxygen"),
    helium: rootOfSquares(felt, "helium"),
  };
}

/**
 * The coarsest gauge (error in bar) with which the mix still comes within the tolerance (mole fraction, of oxygen and
 * of helium); undefined where temperature and start mix alone take it out of tolerance, whatever the gauge.
 */
export function coarsestGaugeBar(
  order: FillOrder,
  plan: FillPlan,
  errors: ReadingErrors,
  tolerance: number,
): number | undefined {
  const { shares } = errorBudget(order, plan, { ...errors, gaugeBar: TRIAL_GAUGE_BAR });
  const limits = (["oxygen", "helium"] as const).map((part) => {
    const gauge = rootOfSquares(shares.filter(({ of }) => of === "gauge"), part); // prettier-ignore
    const rest = rootOfSquares(shares.filter(({ of }) => of !== "gauge"), part); // prettier-ignore
    if (rest > tolerance) return undefined;
    return gauge === 0 ? Infinity : (Math.sqrt(tolerance ** 2 - rest ** 2) / gauge) * TRIAL_GAUGE_BAR;
  });
  return limits.includes(undefined) ? undefined : Math.min(...(limits as number[]));
}

/** Small enough that what it does grows in proportion. */
const TRIAL_GAUGE_BAR = 0.5;

function plannedReadings(order: FillOrder, { steps }: FillPlan): readonly TrueReading[] {
  const { temperatureK, startPressureBar } = order;
  return [startPressureBar, ...steps.map(({ stopBar }) => stopBar)].map((pressureBar) => ({
    pressureBar,
    temperatureK,
  }));
}

/** The mix that results when the readings truly were these. */
function mixMade(
  order: FillOrder,
  { steps }: FillPlan,
  startMix: Mixture,
  readings: readonly TrueReading[],
): Mixture {
  const { equation } = order;
  const [first, ...later] = readings;
  const start = contentAt(equation, startMix, first!.pressureBar, first!.temperatureK);
  return later.reduce((content, { pressureBar, temperatureK }, index) => {
    const { step, gas } = steps[index]!;
    return step === "drain"
      ? drained(content, equation.density(content.mix, pressureBar, temperatureK))
      : filledTo(equation, content, gas, pressureBar, temperatureK);
  }, start).mix;
}

/** A gauge at 0 is known to stand at 0: it is vented, not read. */
function offGauge({ pressureBar, temperatureK }: TrueReading, byBar: number): TrueReading {
  if (pressureBar <= ATMOSPHERE_BAR) return { pressureBar, temperatureK };
  return { pressureBar: Math.max(ATMOSPHERE_BAR, pressureBar + byBar), temperatureK };
}

function offHeat({ pressureBar, temperatureK }: TrueReading, byK: number): TrueReading {
  return { pressureBar, temperatureK: temperatureK + byK };
}

/** Helium as analysed, nitrogen making up for it. */
function offMix({ oxygen, helium }: Mixture, by: number): Mixture {
  return { oxygen: Math.min(1 - helium, Math.max(0, oxygen + by)), helium };
}

function rootOfSquares(shares: readonly ErrorShare[], part: keyof Mixture): number {
  return Math.sqrt(shares.reduce((sum, { [part]: off }) => sum + off * off, 0));
}
