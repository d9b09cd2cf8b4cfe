import { AIR, type Mixture } from "../gas/mixture";
import { Refusal } from "../gas/refusal";
import { continuousFill } from "./continuousFill";
import { drainTo } from "./drainTo";
import { drainFirst } from "./drainFirst";
import type { FillOrder } from "./fillOrder";
import { planFill, type FillPlan, type StepName } from "./planFill";

/** What a cylinder can be topped from: a compressor, or a bank that ends where its pressure does. */
export interface TopSource {
  readonly name: string;
  readonly mix: Mixture;
  /** Bar absolute; absent for a compressor, which reaches any fill. */
  readonly pressureBar?: number | undefined;
}

/** A bank of pure gas; its pressure (bar absolute) is absent where nobody read it. */
export interface PureGasBank {
  readonly pressureBar?: number | undefined;
}

/** What the station has to fill with; what it has not is absent. */
export interface Supplies {
  readonly tops: readonly TopSource[];
  readonly oxygen?: PureGasBank | undefined;
  readonly helium?: PureGasBank | undefined;
  /** A compressor that oxygen can be injected into, up to this mole fraction. */
  readonly continuous?: { readonly name: string; readonly maxOxygen: number } | undefined;
}

export const WAYS = [
  "top off",
  "drain and top",
  "continuous",
  "drain and continuous",
  "partial pressure",
  "drain and partial pressure",
] as const;
export type WayName = (typeof WAYS)[number];

/** A bank that ends before its step does. */
export interface Shortfall {
  readonly step: Exclude<StepName, "drain">;
  readonly bankBar: number | "none";
  readonly stopBar: number;
}

/** One way to make the order, or why it cannot be made that way. */
export interface Way {
  readonly name: WayName;
  /** What goes in last: a source of the supplies, or the compressor that oxygen is injected into. */
  readonly source: TopSource;
  /** The order as this way makes it: with this top gas. Absent where the way is refused. */
  readonly order?: FillOrder;
  readonly plan?: FillPlan;
  readonly shortfalls: readonly Shortfall[];
  /** Why it cannot be done. */
  readonly refused?: string;
}

/**
 * Every way the station has to make an order: each top gas alone or with pure gases, continuous blending, and draining
 * further where the oxygen bank is low. Nothing is ranked here, and nothing is known of the cylinder's rating.
 */
export function waysToFill(order: FillOrder, supplies: Supplies): readonly Way[] {
  const ways = supplies.tops.flatMap((source) => withTop({ ...order, topMix: source.mix }, source, supplies));
  return supplies.continuous ? [...ways, continuously(order, supplies.continuous, supplies)] : ways;
}

function withTop(order: FillOrder, source: TopSource, supplies: Supplies): readonly Way[] {
  const way = wayOf(order, source, supplies, () => planFill(order));
  const lowOxygen = way.shortfalls.find(({ step, bankBar }) => step === "oxygen" && bankBar !== "none");
  if (!lowOxygen) return [way];
  // Helium first and pure oxygen, as the drain is worked out for: another order of gases would stop elsewhere.
  const heliumFirst: FillOrder = { ...order, order: "helium first" };
  const drained = wayOf(heliumFirst, source, supplies, () =>
    drainFirst(heliumFirst, drainTo(heliumFirst, supplies.oxygen?.pressureBar)),
  );
  return [way, drained];
}

function continuously(
  order: FillOrder,
  { name, maxOxygen }: NonNullable<Supplies["continuous"]>,
  supplies: Supplies,
): Way {
  const source: TopSource = { name, mix: AIR };
  try {
    const fill = continuousFill(order, maxOxygen);
    const made = { ...order, topMix: fill.gas };
    return wayOf(made, { name, mix: fill.gas }, supplies, () => fill.plan, true);
  } catch (thrown) {
    return { name: "continuous", source, shortfalls: [], refused: sentenceOf(thrown) };
  }
}

function wayOf(
  order: FillOrder,
  source: TopSource,
  supplies: Supplies,
  planned: () => FillPlan,
  injected = false,
): Way {
  try {
    const plan = planned();
    const name = nameOf(plan, injected);
    return { name, source, order, plan, shortfalls: shortfallsOf(plan, source, supplies) };
  } catch (thrown) {
    return { name: "partial pressure", source, shortfalls: [], refused: sentenceOf(thrown) };
  }
}

function nameOf({ steps }: FillPlan, injected: boolean): WayName {
  const has = (step: StepName) => steps.some((done) => done.step === step);
  const drains = has("drain");
  if (injected) return drains ? "drain and continuous" : "continuous";
  if (has("oxygen") || has("helium")) return drains ? "drain and partial pressure" : "partial pressure";
  return drains ? "drain and top" : "top off";
}

function shortfallsOf({ steps }: FillPlan, source: TopSource, supplies: Supplies): readonly Shortfall[] {
  return steps.flatMap(({ step, stopBar }): Shortfall[] => {
    if (step === "drain") return [];
    const bank = step === "top" ? source : supplies[step];
    if (!bank) return [{ step, bankBar: "none", stopBar }];
    return bank.pressureBar !== undefined && bank.pressureBar < stopBar
      ? [{ step, bankBar: bank.pressureBar, stopBar }]
      : [];
  });
}

function sentenceOf(thrown: unknown): string {
  if (thrown instanceof Refusal) return thrown.message;
  throw thrown;
}
