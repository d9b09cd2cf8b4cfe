import type { Units } from "../gas/units";
import type { Paper } from "../sheet/draft/draft";
import type { CostedLog } from "./costLog";
import type { GasBook } from "./gasBook/gasBook";
import type { PriceList } from "./prices/priceList";

/** Everything that is told of fill costs, on screen and on paper. */
export interface CostReport {
  readonly units: Units;
  readonly paper: Paper;
  /** `2026-10`; absent for all fills of the log. */
  readonly month?: string;
  readonly log: CostedLog;
  readonly prices: PriceList;
  readonly book?: GasBook;
}

/** The months of the fills of a log, costed or not, latest first. */
export function monthsOf({ costed, notCosted }: CostedLog): readonly string[] {
  const months = new Set([
    ...costed.map(({ metered }) => metered.month),
    ...notCosted.map(({ month }) => month),
  ]);
  months.delete("");
  return [...months].sort().reverse();
}

/** The fills of one month. Those without a readable date may be of any: they stay, among those not costed. */
export function ofMonth(log: CostedLog, month: string | undefined): CostedLog {
  if (month === undefined) return log;
  const undated = log.costed
    .filter(({ metered }) => metered.month === "")
    .map(
      ({ metered }) =>
        ({ fill: metered.fill, why: "no readable date, so no month", field: "date", month: "" }) as const,
    );
  return {
    ...log,
    costed: log.costed.filter(({ metered }) => metered.month === month),
    notCosted: [...log.notCosted.filter((each) => each.month === month || each.month === ""), ...undated],
  };
}
