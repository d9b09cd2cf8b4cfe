import type { EquationOfState } from "../gas/equationOfState";
import { AIR, OXYGEN, type Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { Refusal, refuse } from "../gas/refusal";
import type { RowCylinder } from "./cascade";
import { inject } from "./inject";
import { mixAfter } from "./mixAfter";
import { topWith } from "./topWith";

/** A row of cylinders topped on their residues from a compressor that oxygen is injected into. */
export interface StreamRowOrder {
  readonly equation: EquationOfState;
  readonly temperatureK: number;
  readonly wanted: Mixture;
  /** Settled pressure (bar absolute) that every cylinder is filled to. */
  readonly targetBar: number;
  readonly cylinders: readonly RowCylinder[];
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
  readonly cylinder: RowCylinder;
  /** The stream that makes the order on top of this residue; absent where none does. */
  readonly stream: Mixture | undefined;
  /** Why there is none; a sentence. */
  readonly refused: string | undefined;
  /** What comes of the common stream; absent where there is none or nothing can be added. */
  readonly byCommon: Mixture | undefined;
  readonly isRight: boolean;
}

export interface StreamRow {
  readonly common: Mixture | undefined;
  readonly fills: readonly StreamFill[];
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
  const tries = (order.common ? [order.common] : candidates(order, needs)).map((common) => ({
    common,
    fills: needs.map((need) => filledBy(order, need, common)),
  }));
  const right = ({ fills }: StreamRow) => fills.filter(({ isRight }) => isRight).length;
  const [first, ...others] = tries;
  if (!first)
    return {
      common: undefined,
      fills: needs.map((need) => ({ ...need, byCommon: undefined, isRight: false })),
    };
  return others.reduce((best, tried) => (right(tried) > right(best) ? tried : best), first);
}

type Need = Pick<StreamFill, "cylinder" | "stream" | "refused">;

function needOf(order: StreamRowOrder, cylinder: RowCylinder): Need {
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
function candidates(order: StreamRowOrder, needs: readonly Need[]): readonly Mixture[] {
  const ranges = needs.flatMap(({ cylinder, stream }) => {
    if (!stream) return [];
    // The stream makes up only part of the mix, so it may be off by more than the mix.
    const share = Math.max(NOISE, 1 - cylinder.pressureBar / order.targetBar);
    const room = order.tolerance / share;
    return [
      {
        least: Math.max(Math.min(AIR.oxygen, stream.oxygen), stream.oxygen - room),
        most: Math.min(order.maxOxygen, stream.oxygen + room),
      },
    ];
  });
  return ranges.map(({ least }) => {
    const fitting = ranges.filter((range) => range.least <= least && least <= range.most);
    const most = Math.min(...fitting.map((range) => range.most));
    return { oxygen: (least + most) / 2, helium: 0 };
  });
}

function filledBy(order: StreamRowOrder, need: Need, common: Mixture): StreamFill {
  const { temperatureK, wanted, tolerance } = order;
  try {
    const byCommon = mixAfter({
      ...topping(order, need.cylinder),
      topMix: common,
      startTemperatureK: temperatureK,
      endTemperatureK: temperatureK,
    });
    const off = Math.max(Math.abs(byCommon.oxygen - wanted.oxygen), byCommon.helium);
    return { ...need, byCommon, isRight: off <= tolerance + NOISE };
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return { ...need, byCommon: undefined, isRight: false };
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
