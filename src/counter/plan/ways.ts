import type { MayBe, Receipt } from "../receive/receipt";
import { gasUsed } from "../../blending/gasUsed";
import type { FillOrder, FillPlan, StepName } from "../../blending/planFill";
import { waysToFill, type Shortfall, type Way } from "../../blending/waysToFill";
import { fillCost, type FillCost } from "../../costs/fillCost";
import { freeVolumeL } from "../../gas/freeGas";
import type { Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { Refusal } from "../../gas/refusal";
import { ATMOSPHERE_BAR, gaugeReading, type Units } from "../../gas/units";
import { pricesFor } from "./prices";
import type { Station, Wanted } from "./reading";
import { pressureText } from "../words";
import { realGas } from "../../gas/equationOfState";

/** What has to be known to judge a way, besides the gas: the cylinder as received, its volume, the country's limit. */
export interface Counter {
  readonly receipt: Receipt | undefined;
  readonly volumeL: number | undefined;
  readonly units: Units;
  /** Gas above this needs an oxygen-clean cylinder. */
  readonly cleanAbovePercent: number;
}

/** A way to make the fill, judged for this cylinder, with what it takes. */
export interface RankedWay {
  readonly key: string;
  readonly title: string;
  readonly may: MayBe;
  /** Why not, or what is not known; sentences. */
  readonly why: readonly string[];
  readonly order: FillOrder | undefined;
  readonly plan: FillPlan | undefined;
  readonly used: readonly { readonly gas: Exclude<StepName, "drain">; readonly volumeL: number }[];
  /** Let out, litres. */
  readonly lostL: number;
  readonly cost: FillCost | undefined;
  readonly costProblem: string | undefined;
  readonly minutes: number | undefined;
}

/** The cheapest safe way first, then what is not known to be safe, then what cannot be done, with the reason. */
export function rankedWays(wanted: Wanted, station: Station, counter: Counter): readonly RankedWay[] {
  const order: FillOrder = {
    startPressureBar: wanted.startBar,
    startMix: wanted.startMix,
    endPressureBar: wanted.endBar,
    endMix: wanted.endMix,
    topMix: station.tops[0]!.mix,
    oxygenSupply: station.oxygenSupply,
    temperatureK: station.temperatureK,
    order: station.order,
    equation: realGas,
  };
  const ways = waysToFill(order, {
    tops: station.tops,
    oxygen: { pressureBar: station.oxygenBankBar },
    helium: { pressureBar: station.heliumBankBar },
    continuous:
      station.continuousMost === undefined
        ? undefined
        : { name: "compressor", maxOxygen: station.continuousMost },
  });
  const seen = new Set<string>();
  return ways
    .map((way) => ranked(way, station, counter))
    .filter(({ key }) => !seen.has(key) && seen.add(key))
    .sort(bySafetyThenCost);
}

function ranked(way: Way, station: Station, counter: Counter): RankedWay {
  const { order, plan } = way;
  const { may, why } = judged(way, counter);
  const { volumeL } = counter;
  const cost = costOf(way, station, volumeL);
  const used =
    order && plan && volumeL !== undefined
      ? (["helium", "oxygen", "top"] as const)
          .map((gas) => ({ gas, volumeL: gasUsed(plan, order, gas, volumeL) }))
          .filter(({ volumeL: of }) => of > 0)
      : [];
  const drain = plan?.steps.find(({ step }) => step === "drain");
  return {
    key: `${way.name}, ${way.source.name} ${nameMix(way.source.mix)}`,
    title: titleOf(way),
    may,
    why,
    order,
    plan,
    used,
    lostL:
      drain && order && volumeL !== undefined
        ? freeVolumeL(order.equation, drain.gas, -drain.molPerLitre * volumeL, order.temperatureK)
        : 0,
    cost: cost.cost,
    costProblem: cost.problem,
    minutes: minutesOf(used, station),
  };
}

function titleOf({ name, source, plan }: Way): string {
  const gas = `${nameMix(source.mix)} from the ${source.name}`;
  const pure = (["helium", "oxygen"] as const).filter((gas) => plan?.steps.some(({ step }) => step === gas));
  const then = plan?.steps.some(({ step }) => step === "top") ? `, then ${gas}` : "";
  switch (name) {
    case "top off":
      return `Top off with ${gas}`;
    case "drain and top":
      return `Drain, then top with ${gas}`;
    case "continuous":
      return `Continuous: ${gas}`;
    case "drain and continuous":
      return `Drain, then continuous: ${gas}`;
    case "partial pressure":
      return plan ? `Partial pressure: ${pure.join(" and ")}${then}` : `Partial pressure with ${gas} on top`;
    case "drain and partial pressure":
      return `Drain, then ${pure.join(" and ")}${then}`;
  }
}

/** What a fill asks of its cylinder: from where to where it goes, and what flows in. */
export interface Demand {
  readonly startPressureBar: number;
  readonly endPressureBar: number;
  readonly endMix: Mixture;
  readonly flowing: readonly Mixture[];
}

interface Judgement {
  readonly may: MayBe;
  readonly why: readonly string[];
}

function judged(way: Way, counter: Counter): Judgement {
  const { order, plan } = way;
  if (way.refused !== undefined || !plan || !order) return { may: "no", why: [way.refused ?? ""] };
  const flowing = plan.steps.flatMap(({ step, gas }) => (step === "drain" ? [] : [gas]));
  const short = way.shortfalls.map((shortfall) => shortInWords(shortfall, counter.units));
  const { may, why } = judgedDemand({ ...order, flowing }, counter);
  if (short.length === 0) return { may, why };
  return { may: "no", why: may === "no" ? [...short, ...why] : short };
}

/** The worst that stands against a fill decides; unknown is never a yes. */
export function judgedDemand(demand: Demand, counter: Omit<Counter, "volumeL">): Judgement {
  const { receipt } = counter;
  if (!receipt)
    return { may: "not known", why: ["No cylinder was received: its tests and rating are not known."] };
  const no = forbidden(demand, receipt, counter);
  if (no.length > 0) return { may: "no", why: no };
  const unknowns = notKnown(demand, receipt, counter);
  return unknowns.length > 0 ? { may: "not known", why: unknowns } : { may: "yes", why: [] };
}

function shortInWords({ step, bankBar, stopBar }: Shortfall, units: Units): string {
  const bank = step === "top" ? "bank" : `${step} bank`;
  if (bankBar === "none") return `There is no ${bank}.`;
  return `The ${bank} is too low: it stands at ${pressureText(bankBar, units)}, the ${step} stops at ${pressureText(stopBar, units)}.`;
}

type Rules = Pick<Counter, "units" | "cleanAbovePercent">;

function forbidden(demand: Demand, receipt: Receipt, rules: Rules): readonly string[] {
  const { endPressureBar, endMix } = demand;
  const { limit, maxOxygen, pureOxygen } = receipt;
  const { units } = rules;
  return [
    ...(receipt.verdict === "do not fill" ? receipt.reasons.map(({ says }) => says) : []),
    ...(receipt.first === "empty it" && !isEmpty(demand) ? insideFirst(receipt) : []),
    ...(limit && above(endPressureBar, limit.limitBar)
      ? [
          `${pressureText(endPressureBar, units)} is above its limit of ${pressureText(limit.limitBar, units)}.`,
        ]
      : []),
    ...(maxOxygen !== undefined && endMix.oxygen > maxOxygen + NOISE
      ? [`${nameMix(endMix)} is above its oxygen rating (${receipt.rating}).`]
      : []),
    ...(needsCleaning(demand, rules) && pureOxygen.may === "no" ? [pureOxygen.why] : []),
  ];
}

function notKnown(demand: Demand, receipt: Receipt, rules: Rules): readonly string[] {
  return [
    ...(receipt.verdict === "not known" ? [`Not known: ${receipt.unknowns.join("; ")}.`] : []),
    ...(receipt.first === "analyse it" && !isEmpty(demand) ? insideFirst(receipt) : []),
    ...(receipt.limit ? [] : ["Its pressure limit is not known: read the shoulder."]),
    ...(receipt.maxOxygen === undefined && receipt.verdict !== "not known"
      ? ["Its oxygen rating is not known."]
      : []),
    ...(needsCleaning(demand, rules) && receipt.pureOxygen.may === "not known"
      ? [`Whether it is oxygen clean is not known: ${receipt.pureOxygen.why}.`]
      : []),
  ];
}

/** What stands against the gas inside goes with that gas. */
function isEmpty({ startPressureBar }: Demand): boolean {
  return !above(startPressureBar, ATMOSPHERE_BAR);
}

function insideFirst({ wrongInside }: Receipt): readonly string[] {
  return wrongInside.map(({ says, todo }) => `${says} ${todo}`);
}

/** What flows in decides over oxygen service, not the final mix. */
function needsCleaning({ flowing }: Demand, { cleanAbovePercent }: Rules): boolean {
  return flowing.some(({ oxygen }) => oxygen > cleanAbovePercent / 100 + NOISE);
}

const NOISE = 1e-9;

/** Within a tenth of a unit of the limit a reading is at the limit. */
function above(pressureBar: number, limitBar: number): boolean {
  return gaugeReading(pressureBar, "metric") > gaugeReading(limitBar, "metric") + 0.05;
}

function costOf(
  way: Way,
  { prices }: Station,
  volumeL: number | undefined,
): { readonly cost?: FillCost; readonly problem?: string } {
  const { order, plan } = way;
  if (!order || !plan || !prices || volumeL === undefined) return {};
  try {
    return { cost: fillCost(plan, order, volumeL, pricesFor(way, prices)) };
  } catch (thrown) {
    if (thrown instanceof Refusal) return { problem: thrown.message };
    throw thrown;
  }
}

/** How long the compressor runs, where its flow is known; gas from banks flows in no time by comparison. */
function minutesOf(used: RankedWay["used"], { compressorLPerMinute }: Station): number | undefined {
  const top = used.find(({ gas }) => gas === "top");
  return compressorLPerMinute === undefined || !top ? undefined : top.volumeL / compressorLPerMinute;
}

export const SAFETY: readonly MayBe[] = ["yes", "not known", "no"];

function bySafetyThenCost(one: RankedWay, other: RankedWay): number {
  return (
    SAFETY.indexOf(one.may) - SAFETY.indexOf(other.may) ||
    Number(one.plan === undefined) - Number(other.plan === undefined) ||
    (one.cost && other.cost ? one.cost.total - other.cost.total : 0) ||
    one.lostL - other.lostL ||
    (one.plan?.steps.length ?? 0) - (other.plan?.steps.length ?? 0)
  );
}
