import { nameMix } from "../gas/nameMix";
import { COST_PARTS, type CostPart } from "./costOfFill";
import type { CostedFill } from "./costLog";

/** What several fills come to. */
export interface CostSum {
  readonly fills: number;
  readonly oxygenL: number;
  readonly heliumL: number;
  readonly airL: number;
  readonly readyMadeL: number;
  readonly compressorHours: number;
  readonly parts: Readonly<Record<CostPart, number>>;
  readonly cost: number;
  readonly charged: number;
  /** Fills that were charged for, or known not to be: those the margin is about. */
  readonly settled: number;
  /** Charged less cost, of these fills. */
  readonly margin: number;
  readonly unbilled: number;
  readonly unbilledCost: number;
  /** Fills of which nobody knows what was charged. */
  readonly chargeNotKnown: number;
}

export interface CostGroup extends CostSum {
  readonly name: string;
}

export function sumOf(fills: readonly CostedFill[]): CostSum {
  const parts = Object.fromEntries(COST_PARTS.map((part) => [part, 0])) as Record<CostPart, number>;
  const sum = {
    fills: fills.length,
    oxygenL: 0,
    heliumL: 0,
    airL: 0,
    readyMadeL: 0,
    compressorHours: 0,
    parts,
    cost: 0,
    charged: 0,
    settled: 0,
    margin: 0,
    unbilled: 0,
    unbilledCost: 0,
    chargeNotKnown: 0,
  };
  for (const { expense, charge } of fills) {
    const { quantities, total } = expense;
    sum.oxygenL += quantities.oxygenL;
    sum.heliumL += quantities.heliumL;
    sum.airL += quantities.airL;
    sum.readyMadeL += quantities.readyMadeL;
    sum.compressorHours += quantities.compressorHours;
    for (const part of COST_PARTS) parts[part] += expense.parts[part];
    sum.cost += total;
    if (charge.kind === "not known") {
      sum.chargeNotKnown++;
      continue;
    }
    const amount = charge.kind === "charged" ? charge.amount : 0;
    sum.settled++;
    sum.charged += amount;
    sum.margin += amount - total;
    if (charge.kind === "unbilled") {
      sum.unbilled++;
      sum.unbilledCost += total;
    }
  }
  return sum;
}

/** Ways in which a manager looks at costs. */
export const GROUPINGS = {
  month: ({ metered }: CostedFill) => metered.month || "no readable date",
  mix: ({ metered }: CostedFill) => nameMix(metered.mix),
  customer: ({ metered }: CostedFill) => metered.customer || "no customer named",
  size: ({ metered }: CostedFill) => metered.size,
} as const;
export type Grouping = keyof typeof GROUPINGS;

/** The fills by one of these, months in their order, everything else by what it costs. */
export function groupedBy(grouping: Grouping, fills: readonly CostedFill[]): readonly CostGroup[] {
  const groups = new Map<string, CostedFill[]>();
  for (const fill of fills) {
    const name = GROUPINGS[grouping](fill);
    const group = groups.get(name);
    if (group) group.push(fill);
    else groups.set(name, [fill]);
  }
  const sums = [...groups].map(([name, group]) => ({ name, ...sumOf(group) }));
  return grouping === "month"
    ? sums.sort((one, other) => (one.name < other.name ? -1 : 1))
    : sums.sort((one, other) => other.cost - one.cost);
}
