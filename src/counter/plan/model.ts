import type { Receipt } from "../receive/receipt";
import type { HouseFigures, HouseOverrides } from "../../audit/shop/shop";
import { shopFor } from "../../audit/shop/shopFor";
import {
  coarsestGaugeBar,
  errorBudget,
  type ErrorBudget,
  type ReadingErrors,
} from "../../blending/errorBudget";
import { topOffFound, warmStops, type TopOffFound } from "../../blending/coolAndTop";
import { leastEndByAdding } from "../../blending/leastEnd";
import { planFill } from "../../blending/planFill";
import type { Paper } from "../../sheet/draft/draft";
import { countryRules } from "../../cylinders/countryRules";
import type { Mixture } from "../../gas/mixture";
import { Refusal } from "../../gas/refusal";
import { ATMOSPHERE_BAR } from "../../gas/units";
import type { FillForm } from "../form";
import { depthsOf, type Depths } from "./depths";
import {
  analysisIn,
  FormReader,
  pressureErrorIn,
  pressureIn,
  stationIn,
  temperatureIn,
  volumeIn,
  wantedIn,
  type Problems,
  type Station,
  type Wanted,
} from "./reading";
import type { ListedPrices } from "./prices";
import { rankedWays, SAFETY, type RankedWay } from "./ways";
import { number } from "../../typed/readers";

/** What the form comes to: everything that the screens show, worked out in one place. */
export interface FillModel {
  readonly problems: Problems;
  readonly station: Station;
  readonly wanted: Wanted | undefined;
  readonly volumeL: number | undefined;
  readonly ways: readonly RankedWay[];
  readonly chosen: RankedWay | undefined;
  readonly depths: Depths | undefined;
  readonly heat: Heat | undefined;
  readonly exactness: Exactness | undefined;
  readonly analysis: Analysis | undefined;
  readonly limits: ShopLimits;
  /** What the shop prints on. */
  readonly paper: Paper;
}

/** Of the country and of the house. */
export interface ShopLimits {
  /** Gas above this needs an oxygen-clean cylinder. */
  readonly cleanAbovePercent: number;
  readonly tolerancePoints: number;
}

export interface Heat {
  readonly warmK: number;
  /** What the gauge shows at each stop of the chosen plan. */
  readonly warmStops: readonly number[];
  readonly found: TopOffFound | undefined;
}

export interface Exactness {
  readonly errors: ReadingErrors;
  readonly budget: ErrorBudget;
  readonly tolerancePoints: number;
  readonly isMet: boolean;
  readonly coarsestGaugeBar: number | undefined;
}

export interface Analysis {
  readonly mix: Mixture;
  readonly secondPost: Mixture | undefined;
  /** In points: how far the oxygen and helium are from the order. */
  readonly offOxygen: number;
  readonly offHelium: number;
  readonly isWithin: boolean;
  readonly postsDiffer: boolean;
  readonly depths: Depths;
  readonly pressureBar: number;
  /** Ways to put it right, where it is not as ordered. */
  readonly corrections: readonly Correction[];
}

export interface Correction {
  readonly title: string;
  readonly way: RankedWay;
  readonly endBar: number;
}

/** Two posts of a set that differ by more than this have a closed isolator between them. */
const POSTS_DIFFER_POINTS = 1;

export function fillModel(
  form: FillForm,
  receipt: Receipt | undefined,
  country: string,
  house?: HouseOverrides,
  listed?: ListedPrices,
): FillModel {
  const reader = new FormReader(form);
  const station = stationIn(reader, listed);
  const wanted = wantedIn(reader);
  const volumeL = volumeIn(reader) ?? receipt?.size?.waterVolumeL;
  const { rules, figures } = shopFor(countryRules(country), { house }).shop;
  const counter = {
    receipt,
    volumeL,
    units: form.units,
    cleanAbovePercent: rules.oxygen.cleanAbovePercent,
  };
  const ways =
    wanted === undefined ? [] : (reader.noting("endMix", () => rankedWays(wanted, station, counter)) ?? []);
  const chosen = ways.find(({ key, plan }) => key === form.way && plan) ?? ways.find(({ plan }) => plan);
  const tolerancePoints =
    reader.read("tolerance", number("", "points of oxygen such as 1")) ?? figures.mixTolerancePoints;
  const analysis = wanted && chosen && analysisOf(reader, wanted, chosen, station, tolerancePoints, counter);
  return {
    station,
    wanted,
    volumeL,
    ways,
    chosen,
    depths: wanted && depthsOf(wanted.endMix, form.units, station.maxPpO2),
    heat: chosen && heatOf(reader, chosen),
    exactness: chosen && exactnessOf(reader, chosen, tolerancePoints, figures),
    analysis,
    limits: { cleanAbovePercent: counter.cleanAbovePercent, tolerancePoints },
    paper: rules.habits.paper,
    problems: reader.problems,
  };
}

function heatOf(reader: FormReader, { order, plan }: RankedWay): Heat | undefined {
  if (!order || !plan) return undefined;
  const warmK = temperatureIn(reader, "gasTemperature");
  if (warmK === undefined) return undefined;
  const foundBar = pressureIn(reader, "foundPressure");
  const foundK = temperatureIn(reader, "foundTemperature") ?? order.temperatureK;
  return {
    warmK,
    warmStops: warmStops(order, plan, warmK),
    found:
      foundBar === undefined
        ? undefined
        : topOffFound(order, plan, { pressureBar: foundBar, temperatureK: foundK }),
  };
}

function exactnessOf(
  reader: FormReader,
  { order, plan }: RankedWay,
  tolerancePoints: number,
  figures: HouseFigures,
): Exactness | undefined {
  if (!order || !plan) return undefined;
  const errors: ReadingErrors = {
    gaugeBar:
      pressureErrorIn(reader, "gaugeError") ??
      ((order.endPressureBar - ATMOSPHERE_BAR) * figures.gaugeErrorPercent) / 100,
    temperatureK: figures.temperatureErrorC,
    startMix: figures.balanceAnalyserPoints / 100,
  };
  const budget = errorBudget(order, plan, errors);
  return {
    errors,
    budget,
    tolerancePoints,
    isMet: Math.max(budget.oxygen, budget.helium) * 100 <= tolerancePoints,
    coarsestGaugeBar: coarsestGaugeBar(order, plan, errors, tolerancePoints / 100),
  };
}

function analysisOf(
  reader: FormReader,
  wanted: Wanted,
  chosen: RankedWay,
  station: Station,
  tolerancePoints: number,
  counter: Parameters<typeof rankedWays>[2],
): Analysis | undefined {
  const mix = analysisIn(reader, "analysedOxygen", "analysedHelium");
  if (!mix) return undefined;
  const secondPost = analysisIn(reader, "secondPostOxygen", "secondPostHelium");
  const pressureBar = pressureIn(reader, "analysedPressure") ?? wanted.endBar;
  const offOxygen = 100 * (mix.oxygen - wanted.endMix.oxygen);
  const offHelium = 100 * (mix.helium - wanted.endMix.helium);
  const isWithin = Math.max(Math.abs(offOxygen), Math.abs(offHelium)) <= tolerancePoints + 1e-9;
  const found: Wanted = { ...wanted, startBar: pressureBar, startMix: mix };
  return {
    mix,
    secondPost,
    offOxygen,
    offHelium,
    isWithin,
    postsDiffer:
      secondPost !== undefined &&
      Math.max(Math.abs(secondPost.oxygen - mix.oxygen), Math.abs(secondPost.helium - mix.helium)) * 100 >
        POSTS_DIFFER_POINTS,
    depths: depthsOf(mix, reader.form.units, station.maxPpO2),
    pressureBar,
    corrections: isWithin || !chosen.order ? [] : correctionsOf(found, station, counter),
  };
}

/** By adding alone, up to a higher end where the limit lets it; and from what is there to the ordered end. */
function correctionsOf(
  found: Wanted,
  station: Station,
  counter: Parameters<typeof rankedWays>[2],
): readonly Correction[] {
  const toEnd = rankedWays(found, station, counter)
    .filter(({ plan }) => plan !== undefined)
    .map((way): Correction => ({ title: way.title, way, endBar: found.endBar }));
  const adding = byAdding(found, station, counter);
  const known = new Set<string>();
  return [...adding, ...toEnd]
    .filter(({ way }) => {
      const key = way.plan!.steps.map(({ step, stopBar }) => `${step}${stopBar.toFixed(3)}`).join();
      return !known.has(key) && known.add(key);
    })
    .sort((one, other) => SAFETY.indexOf(one.way.may) - SAFETY.indexOf(other.way.may));
}

function byAdding(
  found: Wanted,
  station: Station,
  counter: Parameters<typeof rankedWays>[2],
): readonly Correction[] {
  const [way] = rankedWays(found, station, counter).filter(({ order }) => order !== undefined);
  if (!way?.order) return [];
  const endBar = leastEndByAdding({ ...way.order, topMix: station.tops[0]!.mix });
  if (endBar === undefined || endBar <= found.endBar + 1e-6) return [];
  try {
    planFill({ ...way.order, topMix: station.tops[0]!.mix, endPressureBar: endBar });
    return rankedWays({ ...found, endBar }, { ...station, continuousMost: undefined }, counter)
      .filter(({ plan }) => plan !== undefined && plan.steps.every(({ step }) => step !== "drain"))
      .slice(0, 1)
      .map((added): Correction => ({ title: `${added.title}, letting nothing out`, way: added, endBar }));
  } catch (thrown) {
    if (thrown instanceof Refusal) return [];
    throw thrown;
  }
}
