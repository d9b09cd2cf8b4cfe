import { planFill, type FillOrder } from "../blending/planFill";
import { filledTo, contentAt } from "../gas/content";
import { realGas } from "../gas/equationOfState";
import { freeVolumeL } from "../gas/freeGas";
import { AIR, OXYGEN, type Mixture } from "../gas/mixture";
import { refuse } from "../gas/refusal";
import type { FillMethod } from "../log/log";

/** A fill as physics sees it: what was there, what is there now, both settled at one temperature. Bar absolute. */
export interface FillState {
  readonly waterVolumeL: number;
  readonly startBar: number;
  readonly startMix: Mixture;
  readonly endBar: number;
  readonly endMix: Mixture;
  /** What the bank or membrane gave, where the method is one of these. */
  readonly bankMix: Mixture;
  readonly temperatureK: number;
}

/** The gas that went into a cylinder, litres at 1 atm and the fill's temperature. */
export interface GasIn {
  /** From oxygen bottles, decanted or let into the compressor's intake. */
  readonly oxygenL: number;
  readonly heliumL: number;
  /** Air drawn in by the compressor. */
  readonly airL: number;
  /** One gas ready made: from the bank, or from a membrane. */
  readonly readyMade?: {
    readonly from: "bank" | "membrane";
    readonly mix: Mixture;
    readonly volumeL: number;
  };
  /** What went through the compressor on the way in. */
  readonly compressedL: number;
  /** The mix can only have come about if gas was let out first. */
  readonly drained: boolean;
}

/**
 * What went in, by real gas: the content now less the content before, as far as it stayed in.
 *
 * - Air, bank and membrane put one gas on top of what was there.
 * - Partial pressure and continuous blending make the mix of helium, oxygen and air: the same amounts of each, but
 *   only continuous blending sends the oxygen through the compressor.
 *
 * @throws Refusal where what was there and what is there now cannot both be true.
 */
export function gasIn(state: FillState, method: FillMethod): GasIn {
  switch (method) {
    case "air": {
      const airL = toppedL(state, AIR);
      return { oxygenL: 0, heliumL: 0, airL, compressedL: airL, drained: false };
    }
    case "premix":
    case "membrane": {
      const volumeL = toppedL(state, state.bankMix);
      const readyMade = {
        from: method === "premix" ? "bank" : "membrane",
        mix: state.bankMix,
        volumeL,
      } as const;
      return { oxygenL: 0, heliumL: 0, airL: 0, readyMade, compressedL: volumeL, drained: false };
    }
    case "partial pressure":
    case "continuous":
      return blended(state, method);
  }
}

function blended(state: FillState, method: "partial pressure" | "continuous"): GasIn {
  const order = orderOf(state);
  const { steps } = planFill(order);
  const volumeOf = (name: "oxygen" | "helium" | "top"): number => {
    const step = steps.find(({ step }) => step === name);
    return step
      ? freeVolumeL(realGas, step.gas, step.molPerLitre * state.waterVolumeL, state.temperatureK)
      : 0;
  };
  const [oxygenL, heliumL, airL] = [volumeOf("oxygen"), volumeOf("helium"), volumeOf("top")];
  return {
    oxygenL,
    heliumL,
    airL,
    compressedL: method === "continuous" ? airL + oxygenL + heliumL : airL,
    drained: steps.some(({ step }) => step === "drain"),
  };
}

function orderOf({ startBar, startMix, endBar, endMix, temperatureK }: FillState): FillOrder {
  return {
    startPressureBar: startBar,
    startMix,
    endPressureBar: endBar,
    endMix,
    topMix: AIR,
    oxygenSupply: OXYGEN,
    temperatureK,
    order: "helium first",
    equation: realGas,
  };
}

/** Litres of one gas that bring what was there to the pressure of now. */
function toppedL(
  { waterVolumeL, startBar, startMix, endBar, temperatureK }: FillState,
  gas: Mixture,
): number {
  if (endBar <= startBar)
    refuse("The end pressure is not above the start pressure: nothing can have gone in.");
  const start = contentAt(realGas, startMix, startBar, temperatureK);
  const end = filledTo(realGas, start, gas, endBar, temperatureK);
  return freeVolumeL(realGas, gas, (end.molPerLitre - start.molPerLitre) * waterVolumeL, temperatureK);
}
