import type { LogColumns } from "../../audit/judge/logColumns";
import type { Fault, FilledCylinder, Rule } from "../../audit/judge/rule";
import { RULES } from "../../audit/rules/orderOfHarm";
import { aboveRating } from "../../audit/rules/oxygen/aboveRating";
import { cleaningPastDue } from "../../audit/rules/oxygen/cleaningPastDue";
import { cleanLost } from "../../audit/rules/oxygen/cleanLost";
import { notAnalysed } from "../../audit/rules/analysis/notAnalysed";
import { notOxygenClean } from "../../audit/rules/oxygen/notOxygenClean";
import { sourceNotProven } from "../../audit/rules/air/sourceNotProven";
import { suspectAir } from "../../audit/rules/air/suspectAir";
import type { Shop } from "../../audit/shop/shop";
import { madeBy } from "./waitingRows";

/** What has to be done about the gas inside before anything is added to it. */
export type First = "empty it" | "analyse it";

/** Why what is in a cylinder is not to be topped as it is. */
export interface Danger {
  readonly rule: Rule;
  readonly fault: Fault;
  readonly first: First;
  /** What to do, in words of the counter. */
  readonly todo: string;
}

const CLEAN_FIRST = {
  first: "empty it",
  todo: "Empty it, and have it cleaned for oxygen before oxygen goes into it again.",
} as const;

const TODO: ReadonlyMap<Rule, Pick<Danger, "first" | "todo">> = new Map([
  [suspectAir, { first: "empty it", todo: "Empty it, look inside, and fill it with tested air." }],
  [aboveRating, { first: "empty it", todo: "Empty it, and fill it only to its rating." }],
  [notOxygenClean, CLEAN_FIRST],
  [cleanLost, CLEAN_FIRST],
  [cleaningPastDue, CLEAN_FIRST],
  [sourceNotProven, CLEAN_FIRST],
  [notAnalysed, { first: "analyse it", todo: "Analyse what is in it before anything is added." }],
]);

const IN_DOUBT = {
  first: "analyse it",
  todo: "Analyse what is in it before anything is added; in doubt, empty it.",
} as const;

/**
 * What the audit's recall list has against the last fill of a cylinder, the vessel apart: that is judged for the next fill
 * by rules of its own.
 */
export function dangersInside(last: FilledCylinder, shop: Shop, columns: LogColumns): readonly Danger[] {
  return RULES.filter((rule) => isOfGas(rule) && isAble(rule, shop, columns)).flatMap((rule) => {
    const fault = rule.judge(last, shop);
    if (fault.kind !== "fault" || fault.severity !== "stop") return [];
    if (fault.blank !== undefined && !columns.has(fault.blank, last.fill)) return [];
    return [{ rule, fault, ...(TODO.get(rule) ?? IN_DOUBT) }];
  });
}

/** Why it is not known whether the air of a last fill passed its test; undefined where it is, or none was tested. */
export function airNotJudged(last: FilledCylinder, shop: Shop): string | undefined {
  if (!(shop.airTests ?? []).some(({ passed }) => !passed)) return undefined;
  const verdict = suspectAir.judge(last, shop);
  return verdict.kind === "not judged" ? (verdict.detail ?? verdict.why) : undefined;
}

/**
 * The fill before the one to be made; rows that still wait to be made left in it nothing. By shop number alone it may be
 * that of another's cylinder: a danger is told all the same.
 */
export function lastMade(
  walked: readonly FilledCylinder[],
  next: FilledCylinder,
): FilledCylinder | undefined {
  return walked
    .slice(0, walked.indexOf(next))
    .findLast(({ fill, serial }) => serial === next.serial && madeBy(fill.fields) !== undefined);
}

/** Ids that begin with V are of the vessel. */
function isOfGas({ id }: Rule): boolean {
  return !id.startsWith("V");
}

function isAble(rule: Rule, shop: Shop, columns: LogColumns): boolean {
  return rule.needs.every((fields) => columns.hasAny(fields)) && rule.unable?.(shop) === undefined;
}
