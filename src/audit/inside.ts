import type { LogColumns } from "./logColumns";
import type { Fault, FilledCylinder, Rule } from "./rule";
import { RULES } from "./rules";
import { aboveRating } from "./rules/aboveRating";
import { cleaningPastDue } from "./rules/cleaningPastDue";
import { cleanLost } from "./rules/cleanLost";
import { notAnalysed } from "./rules/notAnalysed";
import { notOxygenClean } from "./rules/notOxygenClean";
import { sourceNotProven } from "./rules/sourceNotProven";
import { suspectAir } from "./rules/suspectAir";
import type { Shop } from "./shop";
import { madeBy } from "./waiting";

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
