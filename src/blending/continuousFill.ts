import { contentAt, drained, pressureOf, type Content } from "../gas/content";
import { AIR, type Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";
import { drainFirst } from "./drainFirst";
import { checkOrder, shareAtZeroGauge, type FillOrder } from "./fillOrder";
import type { FillPlan } from "./planFill";

/** A fill whose last gas comes from a compressor that oxygen is injected into. */
export interface ContinuousFill {
  /** What the compressor has to deliver. */
  readonly gas: Mixture;
  readonly plan: FillPlan;
}

const NOISE = 1e-9;
const HALVINGS = 60;

/**
 * The one nitrox that a compressor has to deliver on top of what is in the cylinder (and of helium, where the order
 * holds more), so that no pure oxygen goes into it. Drains only if it must, to the highest pressure from which the
 * nitrox is neither leaner than air nor above `maxOxygen` (mole fraction).
 * @throws Refusal where no such nitrox makes the order.
 */
export function continuousFill(order: FillOrder, maxOxygen: number): ContinuousFill {
  checkOrder(order);
  const { equation, temperatureK } = order;
  const start = contentAt(equation, order.startMix, order.startPressureBar, temperatureK);
  const target = contentAt(equation, order.endMix, order.endPressureBar, temperatureK);
  const deliverable = (share: number) => {
    const oxygen = nitroxNeeded(start, target, share);
    return oxygen !== undefined && oxygen >= AIR.oxygen - NOISE && oxygen <= maxOxygen + NOISE;
  };
  let keeps = 1;
  if (!deliverable(1)) {
    let fits = shareAtZeroGauge(order, start);
    if (!deliverable(fits)) refuseNitrox(order, nitroxNeeded(start, target, fits), maxOxygen);
    let tooMuch = 1;
    for (let halving = 0; halving < HALVINGS; halving++) {
      const middle = (fits + tooMuch) / 2;
      if (deliverable(middle)) fits = middle;
      else tooMuch = middle;
    }
    keeps = fits;
  }
  const gas = { oxygen: nitroxNeeded(start, target, keeps) ?? AIR.oxygen, helium: 0 };
  const from =
    keeps === 1
      ? order.startPressureBar
      : pressureOf(equation, drained(start, start.molPerLitre * keeps), temperatureK);
  return { gas, plan: drainFirst({ ...order, topMix: gas }, from) };
}

/** Oxygen (mole fraction) of what goes on top of this share of the start content; undefined where none can. */
function nitroxNeeded(start: Content, target: Content, share: number): number | undefined {
  const there = share * start.molPerLitre;
  const helium = target.mix.helium * target.molPerLitre - start.mix.helium * there;
  const nitrox = target.molPerLitre - there - helium;
  if (helium < -NOISE * target.molPerLitre || nitrox <= NOISE * target.molPerLitre) return undefined;
  return (target.mix.oxygen * target.molPerLitre - start.mix.oxygen * there) / nitrox;
}

function refuseNitrox({ endMix }: FillOrder, oxygen: number | undefined, maxOxygen: number): never {
  const most = Number((maxOxygen * 100).toFixed(1));
  const wanted = nameMix(endMix);
  if (oxygen === undefined)
    return refuse(
      `${wanted} cannot be made on top of what is in the cylinder. Drain it, or order otherwise.`,
    );
  if (oxygen > maxOxygen)
    return refuse(
      `${wanted} would take nitrox of ${(oxygen * 100).toFixed(1)} % from the compressor, above its limit of ${most} %. Make it by partial pressure.`,
    );
  return refuse(`${wanted} would take a gas leaner than air, which injecting oxygen cannot make.`);
}
