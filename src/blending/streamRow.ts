import type { EquationOfState } from "../gas/equationOfState";
import { AIR, OXYGEN, type Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { Refusal, refuse } from "../gas/refusal";
import type { RowCylinder } from "./cascade";
import { inject } from "./inject";
import { mixAfter } from "./mixAfter";
import { topWith } from "./topWith";

/** A cylinder of the row, and the richest gas that it may take in or hold, mole fraction; absent where any. */
export interface StreamCylinder extends RowCylinder {
  readonly mostStream?: number | undefined;
  readonly mostMix?: number | undefined;
}

/** A row of cylinders topped on their residues from a compressor that oxygen is injected into. */
export interface StreamRowOrder {
  readonly equation: EquationOfState;
  readonly temperatureK: number;
  readonly wanted: Mixture;
  /** Settled pressure (bar absolute) that every cylinder is filled to. */
  readonly targetBar: number;
  readonly cylinders: readonly StreamCylinder[];
  /** What the compressor may draw in and deliver, mole fraction. */
  readonly maxOxygen: number;
  /** How far the oxygen may be from the order, mole fraction. */
  readonly tolerance: number;
  /** What oxygen comes from. */
  readonly oxygenSupply?: Mixture;
  /** The one stream for all; absent for the one by which most come out right. */
  readonly common?: Mixture | undefined;
}

export interface StreamFill {
  readonly cylinder: StreamCylinder;
  /** The stream that makes the order on top of this residue; absent where none does. */
  readonly stream: Mixture | undefined;
  /** Why there is none; a sentence. */
  readonly refused: string | undefined;
  /** What comes of the common stream; absent where there is none or nothing can be added. */
  readonly byCommon: Mixture | undefined;
  /** The common stream makes a mix richer than the cylinder may hold. */
  readonly isTooRich: boolean;
  /** Within tolerance, and no richer than the cylinder may hold. */
  readonly isRight: boolean;
}

export interface StreamRow {
  readonly common: Mixture | undefined;
  readonly fills: readonly StreamFill[];
  /** A richer common stream would make more of them right, but these may not take it in. */
  readonly heldBack: { readonly mostOxygen: number; readonly by: readonly string[] } | undefined;
}

const NOISE = 1e-9;

/**
 * The stream that each cylinder needs on top of its own residue, as TOPWITH has it, and what a common stream makes of
 * every one. All readings settled.
 * @throws Refusal where the order or the common stream is above the compressor's limit, leaner than air or has helium.
 */
export function streamRow(order: StreamRowOrder): StreamRow {
  checkStream(order, order.wanted);
  if (order.common) checkStream(order, order.common);
  const needs = order.cylinders.map((cylinder) => needOf(order, cylinder));
  if (order.common) return { ...rowBy(order, needs, order.common), heldBack: undefined };
  const free = bestOf(order, needs, order.maxOxygen);
  // Whose own stream is too rich for it is not filled so, and holds nobody back.
  const careful = needs.filter(({ cylinder, stream }) => (stream?.oxygen ?? 0) <= mostInto(cylinder) + NOISE);
  const mostOxygen = Math.min(...careful.map(({ cylinder }) => mostInto(cylinder)));
  if ((free.common?.oxygen ?? 0) <= mostOxygen + NOISE) return { ...free, heldBack: undefined };
  const held = bestOf(order, needs, mostOxygen);
  if (rightOnes(held) >= rightOnes(free)) return { ...held, heldBack: undefined };
  const by = careful.filter(({ cylinder }) => mostInto(cylinder) === mostOxygen);
  return { ...held, heldBack: { mostOxygen, by: by.map(({ cylinder }) => cylinder.name) } };
}

function mostInto({ mostStream = Infinity }: StreamCylinder): number {
  return mostStream;
}

type ByOne = Pick<StreamRow, "common" | "fills">;

/** By the common stream, no richer than this, that makes most of them right. */
function bestOf(order: StreamRowOrder, needs: readonly Need[], mostOxygen: number): ByOne {
  const tries = candidates(order, needs, mostOxygen).map((common) => rowBy(order, needs, common));
  const [first = rowBy(order, needs, undefined), ...others] = tries;
  return others.reduce((best, tried) => (rightOnes(tried) > rightOnes(best) ? tried : best), first);
}

function rightOnes({ fills }: ByOne): number {
  return fills.filter(({ isRight }) => isRight).length;
}

function rowBy(order: StreamRowOrder, needs: readonly Need[], common: Mixture | undefined): ByOne {
  return { common, fills: needs.map((need) => filledBy(order, need, common)) };
}

type Need = Pick<StreamFill, "cylinder" | "stream" | "refused">;

function needOf(order: StreamRowOrder, cylinder: StreamCylinder): Need {
  try {
    const stream = topWith({ ...topping(order, cylinder), endMix: order.wanted });
    checkStream(order, stream);
    return { cylinder, stream, refused: undefined };
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return { cylinder, stream: undefined, refused: thrown.message };
  }
}

/** What the compressor can deliver without drawing in more oxygen than it may. */
function checkStream({ maxOxygen, oxygenSupply = OXYGEN }: StreamRowOrder, stream: Mixture): void {
  if (stream.oxygen > maxOxygen + NOISE)
    refuse(
      `${nameMix(stream)} is above the compressor's limit of ${Number((maxOxygen * 100).toFixed(1))} %. Make it by partial pressure.`,
    );
  inject(stream, 1, oxygenSupply);
}

/** In the middle of what suits as many as possible: where the ranges of streams that come out right overlap. */
function candidates(order: StreamRowOrder, needs: readonly Need[], mostOxygen: number): readonly Mixture[] {
  const ranges = needs.flatMap(({ cylinder, stream }) => {
    if (!stream) return [];
    // The stream makes up only part of the mix, so it may be off by more than the mix.
    const share = Math.max(NOISE, 1 - cylinder.pressureBar / order.targetBar);
    const room = order.tolerance / share;
    const richer = Math.min(order.tolerance, (cylinder.mostMix ?? 1) - order.wanted.oxygen) / share;
    const least = Math.max(Math.min(AIR.oxygen, stream.oxygen), stream.oxygen - room);
    const most = Math.min(mostOxygen, stream.oxygen + richer);
    return least <= most ? [{ least, most }] : [];
  });
  return ranges.map(({ least }) => {
    const fitting = ranges.filter((range) => range.least <= least && least <= range.most);
    const most = Math.min(...fitting.map((range) => range.most));
    return { oxygen: (least + most) / 2, helium: 0 };
  });
}

function filledBy(order: StreamRowOrder, need: Need, common: Mixture | undefined): StreamFill {
  const { temperatureK, wanted, tolerance } = order;
  const none = { ...need, byCommon: undefined, isTooRich: false, isRight: false };
  if (!common) return none;
  try {
    const byCommon = mixAfter({
      ...topping(order, need.cylinder),
      topMix: common,
      startTemperatureK: temperatureK,
      endTemperatureK: temperatureK,
    });
    const off = Math.max(Math.abs(byCommon.oxygen - wanted.oxygen), byCommon.helium);
    const isTooRich = byCommon.oxygen > (need.cylinder.mostMix ?? 1) + NOISE;
    return { ...need, byCommon, isTooRich, isRight: off <= tolerance + NOISE && !isTooRich };
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return none;
  }
}

function topping({ equation, temperatureK, targetBar }: StreamRowOrder, { pressureBar, mix }: RowCylinder) {
  return {
    equation,
    temperatureK,
    startPressureBar: pressureBar,
    startMix: mix,
    endPressureBar: targetBar,
  };
}
