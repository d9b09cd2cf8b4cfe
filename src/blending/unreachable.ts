import type { Content } from "../gas/content";
import { HELIUM, mixBetween, type Mixture } from "../gas/mixture";
import { nameMix } from "../gas/nameMix";
import { refuse } from "../gas/refusal";
import { ATMOSPHERE_BAR } from "../gas/units";
import { NEGLIGIBLE, type Balance } from "./balance";
import type { FillOrder } from "./fillOrder";

/** Refuses an order that no step can reach: why, what comes nearest, and what to do. */
export function refuseUnreachable(order: FillOrder, start: Content, balance: Balance): never {
  const best = nearestReachable(order, start);
  const oxygen = `${percentShortOf(best.oxygen, order.endMix.oxygen)} oxygen`;
  const helium = `${percentShortOf(best.helium, order.endMix.helium)} helium`;
  const reached = best.helium < 0.00005 ? oxygen : `${oxygen} with ${helium}`;
  const { cause, todo } = whatStandsInTheWay(order, balance);
  return refuse(
    `${nameMix(order.endMix)} cannot be reached: ${cause}. The best that can be reached is ${reached}. ${todo}`,
  );
}

/** Two decimals, rounded away from the order, so that what is offered can be reached when it is ordered. */
function percentShortOf(fraction: number, ordered: number): string {
  const hundredths = fraction * 10_000;
  const rounded = fraction < ordered ? Math.floor(hundredths + 1e-6) : Math.ceil(hundredths - 1e-6);
  return `${(rounded / 100).toFixed(2)} %`;
}

/** The gases, where even an evacuated cylinder would not do; else what is in the cylinder. */
function whatStandsInTheWay(
  order: FillOrder,
  { gases, wanted }: Balance,
): { readonly cause: string; readonly todo: string } {
  const top = `${nameMix(order.topMix)} on top`;
  const supply = `the oxygen supply (${nameMix(order.oxygenSupply)})`;
  const none = NEGLIGIBLE * (Math.abs(wanted.oxygen) + Math.abs(wanted.top) + Math.abs(wanted.helium));

  if (!gases.topIsOwnGas) {
    if (wanted.top > none)
      return { cause: `${top} and ${supply} bring too little nitrogen`, todo: "Top with air." };
    if (wanted.top < -none) return { cause: `${supply} is not rich enough`, todo: "Use a richer supply." };
  } else {
    const supplyIsRicher = gases.determinant > 0;
    const [richer, leaner] = supplyIsRicher ? [supply, top] : [top, supply];
    const [fromRicher, fromLeaner] = supplyIsRicher
      ? [wanted.oxygen, wanted.top]
      : [wanted.top, wanted.oxygen];
    if (fromLeaner < -none) return { cause: `${richer} is not rich enough`, todo: "Use a richer supply." };
    if (fromRicher < -none)
      return { cause: `${leaner} is richer in oxygen than ordered`, todo: "Use a leaner gas on top." };
    if (wanted.helium < -none)
      return { cause: `${top} brings more helium than ordered`, todo: "Use a top gas with less helium." };
  }
  const residue = `an atmosphere of ${nameMix(order.startMix)}`;
  return {
    cause:
      order.startPressureBar > ATMOSPHERE_BAR
        ? `even drained to 0 the cylinder holds ${residue}`
        : `at 0 the cylinder still holds ${residue}`,
    todo: "Order that, or flush the cylinder and analyse what is then in it.",
  };
}

/**
 * The mix at the end pressure that comes nearest to the order, in per cent points of oxygen and helium.
 *
 * All of the start content, or what stays of it at 0 gauge, filled up with one of the gases: those are the corners of
 * what can be reached, everything reachable lies between them, and the nearest lies between two of them. How many moles
 * the end pressure stands for depends on the mix found, so it is found a few times over. Helium is not offered to an
 * order without it.
 */
function nearestReachable(order: FillOrder, start: Content): Mixture {
  const { equation, endPressureBar, temperatureK, startMix, endMix } = order;
  const vented = Math.min(start.molPerLitre, equation.density(startMix, ATMOSPHERE_BAR, temperatureK));
  const fillers = [order.oxygenSupply, order.topMix, ...(endMix.helium > 0 ? [HELIUM] : [])];
  let best = endMix;
  for (let round = 0; round < 4; round++) {
    const total = equation.density(best, endPressureBar, temperatureK);
    const corners = [vented, Math.min(start.molPerLitre, total)].flatMap((kept) =>
      fillers.map((gas) => mixBetween(gas, startMix, kept / total)),
    );
    best = corners
      .flatMap((corner) => corners.map((other) => nearestBetween(corner, other, endMix)))
      .reduce((nearest, mix) => (distance(mix, endMix) < distance(nearest, endMix) ? mix : nearest));
  }
  return best;
}

function nearestBetween(from: Mixture, to: Mixture, order: Mixture): Mixture {
  const oxygen = to.oxygen - from.oxygen;
  const helium = to.helium - from.helium;
  const length = oxygen * oxygen + helium * helium;
  if (length === 0) return from;
  const along = ((order.oxygen - from.oxygen) * oxygen + (order.helium - from.helium) * helium) / length;
  return mixBetween(from, to, Math.min(1, Math.max(0, along)));
}

function distance(mix: Mixture, order: Mixture): number {
  return Math.hypot(mix.oxygen - order.oxygen, mix.helium - order.helium);
}
