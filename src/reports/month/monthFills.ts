import { isEnriched } from "../../audit/record/enriched";
import { LogColumns } from "../../audit/judge/logColumns";
import { filledMix } from "../../audit/record/oxygen";
import type { FilledCylinder } from "../../audit/judge/rule";
import type { Shop } from "../../audit/shop/shop";
import { walk } from "../../audit/walk/walk";
import type { Mixture } from "../../gas/mixture";
import type { Fill, Log } from "../../log/log";
import type { Steps } from "../../sheet/steps";
import type { CellAddress } from "../../sheet/sheet";
import type { Period } from "./period";

/** One cylinder filled in the month. */
export interface MonthFill {
  readonly filled: FilledCylinder;
  readonly day: number;
  /** Where the fill stands in the log. */
  readonly cell: CellAddress;
  /** As analysed, else as ordered; undefined where neither can be read. */
  readonly mix: Mixture | undefined;
}

/** The fills of a month, and what the log knows besides. */
export interface MonthOfFills {
  /** A twin set is filled as two; in the order of their day. */
  readonly cylinders: readonly MonthFill[];
  /** Each fill once. */
  readonly fills: readonly MonthFill[];
  /** Fills whose date cannot be read: they stand in no figure. */
  readonly undated: readonly Fill[];
}

export function* fillsOfMonth(log: Log, shop: Shop, { first, last }: Period): Steps<MonthOfFills> {
  const columns = new LogColumns(log);
  const cylinders: MonthFill[] = [];
  const fills: MonthFill[] = [];
  yield* walk(log, shop, ({ filled }) => {
    const { day, fill } = filled;
    if (day === undefined || day < first || day > last) return;
    const mix = filledMix(fill);
    const cell = columns.cell({ field: "serial" }, fill);
    const monthFill = { filled, day, cell, mix: "mix" in mix ? mix.mix : undefined };
    if (fills.at(-1)?.filled.fill !== fill) fills.push(monthFill);
    cylinders.push(monthFill);
  });
  const undated = log.fills.filter(({ fields }) => fields.date.kind !== "value");
  return { cylinders, fills, undated };
}

/** Kinds of mix that a shop counts apart; what cannot be read is a kind of its own. */
export const MIX_KINDS = [
  "Air",
  "Nitrox to 40 %",
  "Nitrox above 40 %",
  "Oxygen",
  "Trimix and heliox",
  "Other",
  "Not known",
] as const;
export type MixKind = (typeof MIX_KINDS)[number];

/** Pure oxygen comes as 99.5 % and better (common practice, no source). */
const OXYGEN_FROM = 0.99;

export function mixKind(mix: Mixture | undefined): MixKind {
  if (mix === undefined) return "Not known";
  if (mix.helium > 0) return "Trimix and heliox";
  if (!isEnriched(mix)) return "Air";
  if (mix.oxygen >= OXYGEN_FROM) return "Oxygen";
  if (mix.oxygen < 0.2) return "Other";
  return mix.oxygen > 0.4 + 1e-9 ? "Nitrox above 40 %" : "Nitrox to 40 %";
}
