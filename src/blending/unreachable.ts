import type { Content } from "../gas/content";
import { HELIUM, type Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";
import { ATMOSPHERE_BAR } from "../gas/units";
import { keptShare, NEGLIGIBLE, worthOf, type FillGases } from "./fillGases";
import type { FillOrder } from "./planFill";

/** Refuses an order that no step can reach: why, what comes nearest, and what to do. */
export function refuseUnreachable(order: FillOrder, start: Content, gases: FillGases): never {
  const best = nearestReachable(order, start);
  const reached =
    best.helium > 0.00005
      ? `${percent(best.oxygen)} oxygen and ${percent(best.helium)} helium`
      : `${percent(best.oxygen)} oxygen`;
  return refuse(
    `${nameMix(order.endMix)} cannot be reached: ${causeOf(order, gases)}. The best that can be reached is ${reached}.`,
  );
}

/** Two decimals, cut not rounded up to what cannot be reached. */
function percent(fraction: number): string {
  return `${(fraction * 100).toFixed(2)} %`;
}

/** Whether an evacuated cylinder would do settles whether it is the residue or the gases that stand in the way. */
function causeOf(order: FillOrder, gases: FillGases): string {
  const wanted = worthOf({ mix: order.endMix, molPerLitre: 1 }, gases);
  const evacuated = keptShare(wanted, { helium: 0, oxygen: 0, top: 0 }, gases, NEGLIGIBLE);
  const top = nameMix(order.topMix);
  const supply = `the oxygen supply (${percent(order.oxygenSupply.oxygen)})`;
  if (evacuated.most >= 0) {
    const residue = nameMix(order.startMix);
    return order.startPressureBar > ATMOSPHERE_BAR
      ? `even drained to 0 the cylinder holds an atmosphere of ${residue}`
      : `at 0 the cylinder still holds an atmosphere of ${residue}`;
  }
  if (!gases.topIsOwnGas)
    return wanted.top > 0
      ? `${top} on top and ${supply} bring too little nitrogen; top with air`
      : `${supply} brings too much nitrogen`;
  // Of the two, the one with more oxygen to its nitrogen is the rich one.
  const supplyIsRich = gases.determinant > 0;
  if (supplyIsRich ? wanted.top < 0 : wanted.oxygen < 0)
    return supplyIsRich ? `${supply} is not rich enough` : `${top} on top is not rich enough`;
  if (supplyIsRich ? wanted.oxygen < 0 : wanted.top < 0)
    return supplyIsRich
      ? `${top} on top is richer in oxygen; use a leaner top gas`
      : `${supply} is richer in oxygen`;
  return `${top} on top brings more helium than ordered`;
}

/**
 * The mix at the end pressure that comes nearest to the order, in per cent points of oxygen and helium.
 *
 * All of the start content, or what stays at 0 gauge, filled up with one of the gases: those are the corners of what
 * can be reached, everything reachable lies between them, and the nearest lies between two of them. How many moles the
 * end pressure stands for depends on the mix found, so it is found a few times over.
 */
export function nearestReachable(order: FillOrder, start: Content): Mixture {
  const { equation, endPressureBar, temperatureK, startMix } = order;
  const vented = Math.min(start.molPerLitre, equation.density(startMix, ATMOSPHERE_BAR, temperatureK));
  const fillers = [HELIUM, order.oxygenSupply, order.topMix];
  let best = order.endMix;
  for (let round = 0; round < 4; round++) {
    const total = equation.density(best, endPressureBar, temperatureK);
    const corners = [vented, Math.min(start.molPerLitre, total)].flatMap((kept) =>
      fillers.map((gas) => between(gas, startMix, kept / total)),
    );
    best = corners
      .flatMap((corner) => corners.map((other) => nearestBetween(corner, other, order.endMix)))
      .reduce((nearest, mix) =>
        distance(mix, order.endMix) < distance(nearest, order.endMix) ? mix : nearest,
      );
  }
  return best;
}

function between(from: Mixture, to: Mixture, share: number): Mixture {
  return {
    oxygen: from.oxygen + (to.oxygen - from.oxygen) * share,
    helium: from.helium + (to.helium - from.helium) * share,
  };
}

function nearestBetween(from: Mixture, to: Mixture, order: Mixture): Mixture {
  const oxygen = to.oxygen - from.oxygen;
  const helium = to.helium - from.helium;
  const length = oxygen * oxygen + helium * helium;
  if (length === 0) return from;
  const along = ((order.oxygen - from.oxygen) * oxygen + (order.helium - from.helium) * helium) / length;
  return between(from, to, Math.min(1, Math.max(0, along)));
}

function distance(mix: Mixture, order: Mixture): number {
  return Math.hypot(mix.oxygen - order.oxygen, mix.helium - order.helium);
}
