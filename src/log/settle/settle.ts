import { Temporal } from "temporal-polyfill";
import { plainDateOf } from "../../sheet/serialDate";
import type { PressureUnit } from "../cells/pressure";
import type { StampColumn } from "../cells/stamp";
import type { ColumnProposal } from "../columns";
import type { DateOrder, LogContext } from "../context";
import { KINDS, UNSETTLED, type ColumnSettings, type Kind } from "../fieldKinds";
import type { ColumnQuestion, Field, LogColumn } from "../log";
import type { ColumnRange } from "../scan";
import type { SheetPlan, TablePlan } from "../sheetPlan";
import { dateEvidence, looksSwapped, LATEST_YEAR_UNKNOWN, orderIn, type DateEvidence } from "./dates";
import { holdsMonths, meansIn, stampEvidence, stampOrderIn } from "./stamps";
import { contradictsPsi, numberEvidence, unitByNumbers, type NumberEvidence } from "./units";

/** How a column's cells are to be read, and what has to be asked before they can be read for certain. */
export interface SettledColumn {
  readonly settings: ColumnSettings;
  readonly unit: LogColumn["unit"];
  readonly question: ColumnQuestion | undefined;
}

/** What the sheets of a workbook say together. */
export interface Knowledge {
  /** The day the log is read on: given, or the latest clear date of a fill. */
  readonly latest: Temporal.PlainDate | undefined;
  /** The order of dates that all fill sheets together show. */
  readonly dateOrder: DateOrder | undefined;
  readonly dates: ReadonlyMap<ColumnProposal, DateEvidence>;
  readonly context: LogContext;
}

/** Looks through the date columns of all sheets: one log is written by one shop. */
export function knowledgeOf(plans: readonly SheetPlan[], context: LogContext): Knowledge {
  const dates = new Map<ColumnProposal, DateEvidence>();
  for (const { range, proposal } of plans.flatMap(columnsOf)) {
    if (proposal.field === "date") dates.set(proposal, dateEvidence(range));
  }
  const evidence = [...dates.values()];
  const days = evidence.flatMap(({ latest }) => (latest === undefined ? [] : [latest]));
  const order = orderIn(evidence);
  return {
    latest: context.asOf ?? (days.length > 0 ? plainDateOf(Math.max(...days)) : undefined),
    dateOrder: order === "both" ? undefined : order,
    dates,
    context,
  };
}

function columnsOf(plan: SheetPlan): readonly { range: ColumnRange; proposal: ColumnProposal }[] {
  return plan.tables.flatMap(({ table, proposals }) =>
    proposals.map((proposal) => ({ range: { sheet: plan.sheet, table, column: proposal.column }, proposal })),
  );
}

/** Settles units and orders of a table's columns: by choice, heading, cells, neighbours, and what is known of the shop. */
export function settleTable(
  { sheet }: SheetPlan,
  { table, proposals }: TablePlan,
  knowledge: Knowledge,
): ReadonlyMap<number, SettledColumn> {
  const numbers = new Map<ColumnProposal, NumberEvidence>();
  for (const proposal of proposals) {
    const kind = proposal.field && KINDS[proposal.field];
    if (kind === "pressure" || kind === "temperature" || kind === "depth")
      numbers.set(proposal, numberEvidence({ sheet, table, column: proposal.column }));
  }
  const neighbours = unitOfNeighbours(numbers);
  const settled = new Map<number, SettledColumn>();
  for (const proposal of proposals) {
    if (proposal.field === undefined) continue;
    const range = { sheet, table, column: proposal.column };
    settled.set(
      proposal.column,
      SETTLE[KINDS[proposal.field]]({
        proposal,
        field: proposal.field,
        range,
        knowledge,
        numbers: numbers.get(proposal),
        neighbours,
      }),
    );
  }
  return settled;
}

interface Open {
  readonly proposal: ColumnProposal;
  readonly field: Field;
  readonly range: ColumnRange;
  readonly knowledge: Knowledge;
  readonly numbers: NumberEvidence | undefined;
  readonly neighbours: PressureUnit | undefined;
}

const asItIs = (): SettledColumn => ({ settings: UNSETTLED, unit: undefined, question: undefined });

const SETTLE: Readonly<Record<Kind, (open: Open) => SettledColumn>> = {
  label: asItIs,
  text: asItIs,
  remark: asItIs,
  presence: asItIs,
  serial: asItIs,
  time: asItIs,
  helium: asItIs,
  method: asItIs,
  size: asItIs,
  price: asItIs,
  date: settleDate,
  stamp: settleStamp,
  mix: ({ knowledge }) => ({
    settings: {
      ...UNSETTLED,
      date: { ...UNSETTLED.date, order: knowledge.dateOrder ?? knowledge.context.dateOrder },
    },
    unit: undefined,
    question: undefined,
  }),
  pressure: settlePressure,
  temperature: (open) =>
    settleQuantity(open, ["°F", "°C"], (unit) => ({ ...UNSETTLED, temperatureUnit: unit })),
  depth: (open) => settleQuantity(open, ["ft", "m"], (unit) => ({ ...UNSETTLED, depthUnit: unit })),
  "oxygen service": ({ proposal: { meaning } }) => ({
    settings: {
      ...UNSETTLED,
      oxygenService: {
        asks: meaning.concepts.has("clean")
          ? "oxygen clean"
          : meaning.concepts.has("nitrox")
            ? "nitrox"
            : "grade",
      },
    },
    unit: undefined,
    question: undefined,
  }),
};

function settleDate({ proposal, knowledge }: Open): SettledColumn {
  const evidence = knowledge.dates.get(proposal)!;
  const order =
    answered(proposal, "date order", ["day first", "month first"]) ??
    orderIn([evidence]) ??
    knowledge.dateOrder ??
    knowledge.context.dateOrder;
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
  return { settings: { ...UNSETTLED, date }, unit: undefined, question };
}

function settleStamp(open: Open): SettledColumn {
  const { proposal, field, range, knowledge } = open;
  const { context } = knowledge;
  // Registers are kept up to date when logs are long closed: retests after the last fill are ordinary.
  const latest = context.asOf ?? knowledge.latest?.add({ years: 1 });
  const evidence = stampEvidence(range, latest);
  const dates = dateEvidence(range);
  const stampOrder =
    answered(proposal, "stamp order", ["month first", "year first"]) ??
    stampOrderIn(evidence) ??
    context.stampOrder;
  const dateOrder =
    answered(proposal, "date order", ["day first", "month first"]) ??
    orderIn([dates]) ??
    knowledge.dateOrder ??
    context.dateOrder;
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

/** Columns in which a cylinder is full, or should be. */
const FULL: readonly Field[] = ["endPressure", "settledPressure", "servicePressure"];

function settlePressure(open: Open): SettledColumn {
  const { proposal, field, knowledge, numbers, neighbours } = open;
  const stated = answered(proposal, "unit", ["psi", "bar"]) ?? statedUnit(proposal);
  const shop =
    knowledge.context.units === "us" ? "psi" : knowledge.context.units === "metric" ? "bar" : undefined;
  const full = FULL.includes(field);
  const doubtful = shop === "psi" && full && numbers !== undefined && contradictsPsi(numbers);
  const unit = stated ?? unitByNumbers(numbers!) ?? neighbours ?? (doubtful ? undefined : shop);
  return {
    settings: {
      ...UNSETTLED,
      pressure: {
        unit,
        stated: stated !== undefined,
        pairs: field === "servicePressure" ? "service / test" : full ? "hot / cold" : undefined,
        full,
      },
    },
    unit,
    question:
      unit === undefined && numbers!.numbers > 0
        ? {
            about: "unit",
            sentence: `Are the pressures under ${nameOf(proposal)} in psi or in bar?`,
            choices: ["psi", "bar"],
          }
        : undefined,
  };
}

function statedUnit({ meaning: { unit } }: ColumnProposal): PressureUnit | undefined {
  return unit === "psi" || unit === "bar" ? unit : undefined;
}

/** The unit that the pressure columns of a table agree on, by their headings, numbers and texts. */
function unitOfNeighbours(numbers: ReadonlyMap<ColumnProposal, NumberEvidence>): PressureUnit | undefined {
  const units = new Set<PressureUnit>();
  for (const [proposal, evidence] of numbers) {
    if (KINDS[proposal.field!] !== "pressure") continue;
    const unit = statedUnit(proposal) ?? unitByNumbers(evidence);
    if (unit !== undefined) units.add(unit);
    else if (evidence.saying.psi > evidence.saying.bar) units.add("psi");
    else if (evidence.saying.bar > 0) units.add("bar");
  }
  return units.size === 1 ? [...units][0] : undefined;
}

/** No cylinder is filled as cold in °F, or labelled as shallow in ft, as these in °C and m. */
const MOST_CELSIUS = 45;

function settleQuantity<Unit extends "°F" | "°C" | "ft" | "m">(
  { proposal, knowledge: { context }, numbers }: Open,
  units: readonly [us: Unit, metric: Unit],
  settingsOf: (unit: Unit | undefined) => ColumnSettings,
): SettledColumn {
  const [us, metric] = units;
  const stated = answered(proposal, "unit", units) ?? units.find((each) => each === proposal.meaning.unit);
  const isTemperature = us === "°F";
  const tooHigh = isTemperature && numbers!.highest > 70 && numbers!.lowest >= MOST_CELSIUS;
  const tooLow =
    isTemperature && context.units === "us" && numbers!.numbers > 0 && numbers!.highest < MOST_CELSIUS;
  const shop = context.units === "us" ? us : context.units === "metric" ? metric : undefined;
  const unit = stated ?? (tooHigh ? us : tooLow ? undefined : shop);
  return {
    settings: settingsOf(unit),
    unit,
    question:
      unit === undefined && numbers!.numbers > 0
        ? {
            about: "unit",
            sentence: `Are the numbers under ${nameOf(proposal)} in ${us} or in ${metric}?`,
            choices: units,
          }
        : undefined,
  };
}

/** What the shop answered to a question about this column, if it is one of the choices. */
function answered<Choice extends string>(
  { answers }: ColumnProposal,
  about: ColumnQuestion["about"],
  choices: readonly Choice[],
): Choice | undefined {
  const answer = Object.hasOwn(answers, about) ? answers[about] : undefined;
  return choices.find((choice) => choice === answer);
}

function nameOf({ meaning, column }: ColumnProposal): string {
  return meaning.heading === "" ? `column ${column + 1}` : `“${meaning.heading}”`;
}
