import type { CountryRules } from "../../cylinders/countryRules";
import { realGas } from "../../gas/equationOfState";
import { AIR } from "../../gas/mixture";
import { dateOf } from "../../cylinders/calendar";
import type { Fill, Log, RowPlace } from "../../log/log";
import { allAtOnce, type Steps } from "../../sheet/steps";
import { dayOfTest, testsFor } from "../shop/airTests";
import { nameOf } from "../record/nameOf";
import { roomTemperatureK } from "../physics/workings";
import { ownerOf } from "./recall";
import type { FilledCylinder } from "../judge/rule";
import type { AirTest, AuditOptions, Shop } from "../shop/shop";
import { shopFor } from "../shop/shopFor";
import { isSameSource } from "../shop/gasSources";
import { isFilledElsewhere } from "../walk/filledElsewhere";
import { leftBy } from "../walk/leftIn";
import type { CylinderLife } from "../walk/cylinderLife";
import { walk } from "../walk/walk";

/** A share between two bounds; equal where the log lets it be known. */
export interface Share {
  readonly least: number;
  readonly most: number;
}

/** A fill that took, or may have taken, gas that failed its test. */
export interface SuspectFill extends RowPlace {
  /** ISO date; empty where it could not be read. */
  readonly date: string;
  /** The log does not say from which source, or on which day, it was filled. */
  readonly isCertain: boolean;
}

/** A cylinder to call about. */
export interface SuspectCylinder {
  readonly serial: string;
  readonly owner: string | undefined;
  readonly suspectFills: readonly SuspectFill[];
  /** How much of what it was last filled with is suspect, by amount of gas. */
  readonly share: Share;
  /** ISO date of its last fill of any kind; empty where it could not be read. */
  readonly lastFillDate: string;
}

const NONE: Share = { least: 0, most: 0 };
const ALL: Share = { least: 1, most: 1 };
const OPEN: Share = { least: 0, most: 1 };

/** Shares below this have been topped off to nothing. */
const NOTHING_LEFT = 1e-6;

/**
 * After a bad air test: every cylinder that was filled since the last good one, with the share of suspect gas that it
 * holds after its later top-offs (amounts balance), the largest first: a list to call by. All gas of a suspect fill
 * counts as suspect. What the log leaves open makes the share a range, never a smaller figure. A cylinder without a
 * serial is listed for each of its fills, as nothing shows which are of the same.
 */
export function suspectCylinders(
  log: Log,
  rules: CountryRules,
  failed: AirTest,
  options: AuditOptions = {},
): readonly SuspectCylinder[] {
  return allAtOnce(suspectSteps(log, rules, failed, options));
}

/** The same, a few fills at a time. */
export function* suspectSteps(
  log: Log,
  rules: CountryRules,
  failed: AirTest,
  options: AuditOptions = {},
): Steps<readonly SuspectCylinder[]> {
  const { shop } = shopFor(rules, { ...options, airTests: [...(options.airTests ?? []), failed] });
  const found = new Map<CylinderLife | Fill, SuspectCylinder>();
  yield* walk(log, shop, ({ filled, life }) => {
    const key = life ?? filled.fill;
    const before = found.get(key);
    const inflow = suspectInflow(filled, failed, shop);
    if (before === undefined && inflow.most === 0) return;
    const { fill, day } = filled;
    const date = day === undefined ? "" : dateOf(day).toString();
    const fills = before?.suspectFills ?? [];
    found.set(key, {
      serial: nameOf(filled) || "no serial",
      owner: ownerOf(filled),
      suspectFills:
        inflow.most === 0
          ? fills
          : [...fills, { sheet: fill.sheet, row: fill.row, date, isCertain: inflow.least === 1 }],
      share: mixed(before?.share ?? NONE, inflow, remainingShare(filled, shop)),
      lastFillDate: date,
    });
  });
  return [...found.values()]
    .filter(({ share }) => share.most > NOTHING_LEFT)
    .sort((one, other) => other.share.most - one.share.most || other.share.least - one.share.least);
}

/** The share of a mixture of what remains and what flows in, both with shares of their own. */
export function mixed(before: Share, inflow: Share, remaining: Share): Share {
  const at = (part: Share["least"], old: number, fresh: number) => part * old + (1 - part) * fresh;
  const least = [remaining.least, remaining.most].map((part) => at(part, before.least, inflow.least));
  const most = [remaining.least, remaining.most].map((part) => at(part, before.most, inflow.most));
  return { least: Math.min(...least), most: Math.max(...most) };
}

function suspectInflow({ fill, day }: FilledCylinder, failed: AirTest, shop: Shop): Share {
  const { source } = fill.fields;
  const name = source.kind === "value" ? source.value : failed.source;
  const isOther = failed.source !== undefined && name !== undefined && !isSameSource(failed.source, name);
  if (isOther) return NONE;
  if (day === undefined) return OPEN;
  const ofAll = (shop.airTests ?? []).filter((test) => test.source === undefined);
  if (!isBetweenGood(day, failed, name === undefined ? ofAll : testsFor(name, shop))) return NONE;
  return failed.source !== undefined && source.kind !== "value" ? OPEN : ALL;
}

/**
 * Whether a day lies between the good tests around a failed one, whichever other tests failed besides. Air filled on the
 * day of a good test came after it; on the day of the failed one, nobody knows.
 */
function isBetweenGood(day: number, failed: AirTest, tests: readonly AirTest[]): boolean {
  const badDay = dayOfTest(failed);
  const good = tests.filter(({ passed }) => passed).map(dayOfTest);
  const last = good.findLast((goodDay) => goodDay < badDay);
  const next = good.find((goodDay) => goodDay >= badDay);
  return (last === undefined || day >= last) && (next === undefined || day < next || day === badDay);
}

/** How much of the gas after a fill was there before it, by amount. */
function remainingShare(filled: FilledCylinder, shop: Shop): Share {
  const { startPressure, startMix } = filled.fill.fields;
  const left = leftBy(filled, shop);
  if (startPressure.kind !== "value" || left.pressureBar === undefined) return OPEN;
  const roomK = roomTemperatureK(shop);
  const before = startMix.kind === "value" ? startMix.value : (filled.past.last?.mix ?? AIR);
  const start = realGas.density(before, startPressure.value.bar, roomK);
  const end = realGas.density(left.mix ?? AIR, left.pressureBar, roomK);
  const share = end > 0 ? Math.min(1, start / end) : 1;
  // Somebody else's gas came in between: how much of the old is left, nobody knows.
  return isFilledElsewhere(filled, shop.figures) === true
    ? { least: 0, most: share }
    : { least: share, most: share };
}
