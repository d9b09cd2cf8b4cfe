import { chargeFor, type Charge } from "./charge";
import { costOfFill, type FillExpense } from "./costOfFill";
import type { MeteredFill, NotCosted } from "./metered";
import type { MeteredLog } from "./meterLog";
import type { PriceList } from "./prices/priceList";

/** A fill, what it cost and what was charged for it. */
export interface CostedFill {
  readonly metered: MeteredFill;
  readonly expense: FillExpense;
  readonly charge: Charge;
}

export interface CostedLog {
  readonly costed: readonly CostedFill[];
  /** Every other fill, with the reason. */
  readonly notCosted: readonly NotCosted[];
  /** Kinds of cost that the price list says nothing of, so that no fill has them. */
  readonly leftOut: readonly string[];
}

/** What every metered fill costs by a price list; fills it has no price for join those not costed. */
export function costLog({ metered, notCosted, has }: MeteredLog, prices: PriceList): CostedLog {
  const costed: CostedFill[] = [];
  const without: NotCosted[] = [...notCosted];
  for (const each of metered) {
    const expense = costOfFill(each, prices);
    if ("why" in expense)
      without.push({ fill: each.fill, why: expense.why, field: "orderedMix", month: each.month });
    else costed.push({ metered: each, expense, charge: chargeFor(each, prices, has) });
  }
  return { costed, notCosted: without, leftOut: leftOut(prices) };
}

function leftOut({ labour, booster, compressor, air }: PriceList): readonly string[] {
  const runs = air ? undefined : compressor;
  return [
    ...(labour ? [] : ["labour"]),
    ...(booster ? [] : ["booster"]),
    ...(runs && runs.energy === undefined ? ["compressor energy"] : []),
    ...(runs && !runs.filter ? ["filter"] : []),
    ...(runs && runs.service === undefined ? ["compressor service"] : []),
  ];
}

/** Why fills were not costed, the most frequent reason first. */
export interface Lack {
  readonly why: string;
  readonly fills: readonly NotCosted[];
}

export function lacksOf(notCosted: readonly NotCosted[]): readonly Lack[] {
  const byWhy = new Map<string, NotCosted[]>();
  for (const each of notCosted) {
    const fills = byWhy.get(each.why);
    if (fills) fills.push(each);
    else byWhy.set(each.why, [each]);
  }
  return [...byWhy]
    .map(([why, fills]) => ({ why, fills }))
    .sort((one, other) => other.fills.length - one.fills.length);
}
