import { freeVolumeL } from "../gas/freeGas";
import { contentAt } from "../gas/content";
import { realGas } from "../gas/equationOfState";
import { AIR, type Mixture } from "../gas/mixture";
import type { FillState } from "./gasIn";
import type { MeteredFill, MeteredLogColumns } from "./metered";
import type { Charges, PriceList } from "./prices/priceList";

/** What a customer was charged for a fill, and by which of the two the shop says so. */
export type Charge =
  | { readonly kind: "charged"; readonly amount: number; readonly by: "log" | "price list" }
  /** Nothing stands in the log, or it says 0; or it was filled for nobody. */
  | { readonly kind: "unbilled" }
  | { readonly kind: "not known"; readonly why: string };

/** Owners that stand for the shop itself (common practice, no source). */
const OWN = /^(?:the )?(?:shop|house|club|store|rentals?|hire|own|staff)$/i;

/** The log's price where it has a column for it; else what the price list charges for such a fill. */
export function chargeFor(metered: MeteredFill, prices: PriceList, has: MeteredLogColumns): Charge {
  const { price } = metered.fill.fields;
  if (has.price) {
    if (price.kind === "blank" || (price.kind === "value" && price.value === 0)) return { kind: "unbilled" };
    if (price.kind === "value") return { kind: "charged", amount: price.value, by: "log" };
    return { kind: "not known", why: "price in the log is unreadable" };
  }
  if (OWN.test(metered.customer) || (has.customer && metered.customer === "")) return { kind: "unbilled" };
  const amount = listCharge(metered, prices.charges);
  return amount === undefined
    ? { kind: "not known", why: "no charge in the price list" }
    : { kind: "charged", amount, by: "price list" };
}

/** What the list charges: the mix's price or its kind's, what comes on top of every fill, and gas by volume. */
export function listCharge({ mix, kind, state, gas }: MeteredFill, charges: Charges): number | undefined {
  const perFill = charges.byMix.find((row) => isSame(row.mix, mix))?.perFill ?? charges.byKind[kind];
  const { byGas, everyFill } = charges;
  const parts: number[] = [];
  if (perFill !== undefined) parts.push(perFill);
  if (everyFill !== undefined) parts.push(everyFill);
  const wentIn = { oxygen: gas.oxygenL, helium: gas.heliumL, air: gas.airL };
  // Ready-made nitrox is charged for the oxygen beyond air's that is in it.
  if (gas.readyMade) {
    const { mix: ready, volumeL } = gas.readyMade;
    const pure = pureIn(ready);
    wentIn.oxygen += pure.oxygen * volumeL;
    wentIn.helium += ready.helium * volumeL;
    wentIn.air += pure.air * volumeL;
  }
  for (const name of ["oxygen", "helium", "air"] as const) {
    const charge = byGas[name];
    if (!charge) continue;
    // Air's own oxygen is nobody's bill.
    if (charge.inTheMix && name === "oxygen" && kind === "air") continue;
    const volumeL = charge.inTheMix && name !== "air" ? heldL(name, state) : wentIn[name];
    if (volumeL > 0) parts.push(charge.perL * volumeL);
  }
  return parts.length === 0 ? undefined : parts.reduce((sum, part) => sum + part, 0);
}

/** What a litre of a mix is made of, in oxygen from bottles and air. */
export function pureIn({ oxygen, helium }: Mixture): { readonly oxygen: number; readonly air: number } {
  const air = Math.max(0, (1 - oxygen - helium) / (1 - AIR.oxygen));
  return { oxygen: Math.max(0, oxygen - air * AIR.oxygen), air };
}

/** Litres of one gas in the full cylinder. */
function heldL(part: "oxygen" | "helium", { endMix, waterVolumeL, endBar, temperatureK }: FillState): number {
  const mol = contentAt(realGas, endMix, endBar, temperatureK).molPerLitre * waterVolumeL;
  return endMix[part] * freeVolumeL(realGas, endMix, mol, temperatureK);
}

/** Mixes that customers call by the same name. */
function isSame(one: Mixture, other: Mixture): boolean {
  return Math.abs(one.oxygen - other.oxygen) < 0.005 && Math.abs(one.helium - other.helium) < 0.005;
}
