import type { CountryRules } from "../../src/cylinders/countryRules";
import { dateOf } from "../../src/cylinders/calendar";
import type { Mixture } from "../../src/gas/mixture";
import type { Log, RowPlace } from "../../src/log/log";
import { allAtOnce } from "../../src/sheet/steps";
import { ownerOf } from "../../src/audit/lists/recall";
import type { AuditOptions } from "../../src/audit/shop/shop";
import { shopFor } from "../../src/audit/shop/shopFor";
import { leftBy } from "../../src/audit/walk/leftIn";
import type { PastFill } from "../../src/audit/walk/past";
import { walk } from "../../src/audit/walk/walk";

/** What a cylinder that is out there probably holds: what its last fill in the log left in it. */
export interface PredictedContent {
  readonly serial: string;
  readonly owner: string | undefined;
  /** Undefined where the log does not let it be known. */
  readonly mix: Mixture | undefined;
  readonly mixBy: PastFill["mixBy"];
  /** Bar absolute, as it left: what was breathed since, nobody here knows. */
  readonly leftWithBar: number | undefined;
  /** ISO date of the last fill; empty where it could not be read. */
  readonly fillDate: string;
  readonly lastFill: RowPlace;
  /** What is not known of it, in sentences. */
  readonly notKnown: readonly string[];
}

/** The probable content of every cylinder that the log has a fill of, by serial as the log writes it. */
export function predictedContents(
  log: Log,
  rules: CountryRules,
  options: AuditOptions = {},
): ReadonlyMap<string, PredictedContent> {
  const { shop } = shopFor(rules, options);
  const contents = new Map<string, PredictedContent>();
  const walked = walk(log, shop, ({ filled }) => {
    const { serial, fill, day } = filled;
    if (serial === "") return;
    const left = leftBy(filled, shop);
    contents.set(serial, {
      serial,
      owner: ownerOf(filled),
      mix: left.mix,
      mixBy: left.mixBy,
      leftWithBar: left.pressureBar,
      fillDate: day === undefined ? "" : dateOf(day).toString(),
      lastFill: { sheet: fill.sheet, row: fill.row },
      notKnown: notKnown(left, filled.past.orderOnTrust),
    });
  });
  allAtOnce(walked);
  return contents;
}

function notKnown(
  { mix, mixBy, pressureBar }: PastFill,
  orderOnTrust: string | undefined,
): readonly string[] {
  return [
    ...(mix === undefined ? ["Its last fill was not analysed in a way that can be read."] : []),
    ...(mixBy === "order" ? ["Its last fill was not analysed: the mix is the one ordered."] : []),
    ...(mixBy === "mass balance" ? ["Its last fill was not analysed: the mix is worked out."] : []),
    ...(pressureBar === undefined ? ["The pressure it left with is not on record."] : []),
    ...(orderOnTrust === undefined ? [] : [`Which fill was its last is taken on trust: ${orderOnTrust}.`]),
  ];
}
