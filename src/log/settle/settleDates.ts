import { Temporal } from "temporal-polyfill";
import type { StampColumn } from "../cells/stamp";
import type { ColumnProposal } from "../columns/columns";
import type { DateOrder } from "../context";
import { UNSETTLED } from "../fieldKinds";
import type { ColumnQuestion } from "../log";
import { dateEvidence, looksSwapped, LATEST_YEAR_UNKNOWN, orderIn, type DateEvidence } from "./dates";
import { answered, assumedOf, nameOf, type Knowledge, type Open, type SettledColumn } from "./open";
import { holdsMonths, meansIn, stampEvidence, stampOrderIn } from "./stamps";

/** The days of fills. */
export function settleDate({ proposal, knowledge }: Open): SettledColumn {
  const evidence = knowledge.dates.get(proposal)!;
  const { order, isUsual } = dateOrderOf(proposal, evidence, knowledge);
  const question: ColumnQuestion | undefined =
    evidence.open !== undefined && (order === undefined || order === "both")
      ? {
          about: "date order",
          sentence: `“${evidence.open}” under ${nameOf(proposal)}: does the day or the month come first?`,
          choices: ["day first", "month first"],
        }
      : undefined;
  const latestYear = knowledge.latest?.year ?? LATEST_YEAR_UNKNOWN;
  const date = { order, swapped: looksSwapped(evidence), latestYear };
  return {
    settings: { ...UNSETTLED, date },
    unit: undefined,
    question,
    ...assumedOf(isUsual && readAsUsual(evidence.open, proposal, order)),
  };
}

/** The order of the dates in a column, and whether it is no more than the usual one where the rules hold. */
function dateOrderOf(
  proposal: ColumnProposal,
  evidence: DateEvidence,
  { dateOrder, context }: Knowledge,
): { readonly order: DateOrder | "both" | undefined; readonly isUsual: boolean } {
  const known =
    answered(proposal, "date order", ["day first", "month first"]) ??
    context.datesAre ??
    orderIn([evidence]) ??
    dateOrder;
  return { order: known ?? context.dateOrder, isUsual: known === undefined };
}

function readAsUsual(open: string | undefined, proposal: ColumnProposal, order: string | undefined): string {
  return open === undefined || order === undefined
    ? ""
    : `“${open}” under ${nameOf(proposal)}, and the like, was read ${order}, as is usual where the rules hold.`;
}

/** Tests: as days, or as the months that are stamped. */
export function settleStamp(open: Open): SettledColumn {
  const { proposal, field, range, knowledge } = open;
  const { context } = knowledge;
  // Registers are kept up to date when logs are long closed: retests after the last fill are ordinary.
  const latest = context.asOf ?? knowledge.latest?.add({ years: 1 });
  const evidence = stampEvidence(range, latest);
  const dates = dateEvidence(range);
  const knownOrder =
    answered(proposal, "stamp order", ["month first", "year first"]) ?? stampOrderIn(evidence);
  const stampOrder = knownOrder ?? context.stampOrder;
  const { order: dateOrder, isUsual } = dateOrderOf(proposal, dates, knowledge);
  const means = field === "made" ? "test" : stampMeans(open, meansIn(evidence));
  const ahead = means === "due" || means === "unknown" ? LONGEST_INTERVAL_YEARS : 0;
  const stamp: StampColumn = {
    means,
    stampOrder,
    dateOrder,
    holdsMonths: holdsMonths(evidence),
    latest: new Temporal.PlainYearMonth((latest?.year ?? LATEST_YEAR_UNKNOWN) + ahead, latest?.month ?? 12),
  };
  return {
    settings: { ...UNSETTLED, stamp },
    unit: undefined,
    question: stampQuestion(proposal, stamp, evidence.open, dates.open),
    ...assumedOf(
      knownOrder === undefined && readAsUsual(evidence.open, proposal, stampOrder),
      isUsual && readAsUsual(dates.open, proposal, dateOrder),
      means === "due" &&
        isDueByCountry(open, meansIn(evidence)) &&
        `What stands under ${nameOf(proposal)} was taken for the next test due, as is usual where the rules hold.`,
    ),
  };
}

/** No test holds longer. */
const LONGEST_INTERVAL_YEARS = 10;

function stampMeans(
  { proposal, knowledge }: Open,
  byDates: "test" | "due" | undefined,
): StampColumn["means"] {
  const { concepts } = proposal.meaning;
  const said = answered(proposal, "stamp means", ["last test", "next due"]);
  if (said !== undefined) return said === "next due" ? "due" : "test";
  if (concepts.has("due")) return "due";
  if (concepts.has("last") || concepts.has("clean")) return "test";
  const usual = concepts.has("next by custom") ? "due" : (knowledge.context.stampMeans ?? "test");
  if (usual === "test") return byDates === "due" ? "due" : "test";
  // Where stamps usually show the next test, dates that all lie behind may be done tests after all: that is asked.
  return byDates === "test" ? "unknown" : "due";
}

/** Whether nothing but the country says that stamps show the next test. */
function isDueByCountry({ proposal, knowledge }: Open, byDates: "test" | "due" | undefined): boolean {
  const { concepts } = proposal.meaning;
  const saysSo = byDates === "due" || concepts.has("due") || concepts.has("next by custom");
  return (
    !saysSo &&
    answered(proposal, "stamp means", ["last test", "next due"]) === undefined &&
    knowledge.context.stampMeans === "due"
  );
}

function stampQuestion(
  proposal: ColumnProposal,
  { means, stampOrder, dateOrder }: StampColumn,
  openStamp: string | undefined,
  openDate: string | undefined,
): ColumnQuestion | undefined {
  const name = nameOf(proposal);
  if (means === "unknown")
    return {
      about: "stamp means",
      sentence: `Do the dates under ${name} show the last test, or the next one due?`,
      choices: ["last test", "next due"],
    };
  if (openStamp !== undefined && (stampOrder === undefined || stampOrder === "both"))
    return {
      about: "stamp order",
      sentence: `“${openStamp}” under ${name}: does the month or the year come first?`,
      choices: ["month first", "year first"],
    };
  if (openDate !== undefined && (dateOrder === undefined || dateOrder === "both"))
    return {
      about: "date order",
      sentence: `“${openDate}” under ${name}: does the day or the month come first?`,
      choices: ["day first", "month first"],
    };
  return undefined;
}
