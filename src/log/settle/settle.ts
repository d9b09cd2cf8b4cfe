import { plainDateOf } from "../../sheet/serialDate";
import type { PressureUnit } from "../cells/pressure";
import type { ColumnProposal } from "../columns/columns";
import type { LogContext } from "../context";
import { KINDS, UNSETTLED, type ColumnSettings, type Kind } from "../fieldKinds";
import type { Field } from "../log";
import type { ColumnRange } from "../tables/scan";
import type { SheetPlan, TablePlan } from "../sheetPlan";
import { dateEvidence, orderIn, type DateEvidence } from "./dates";
import { LANGUAGES, type Language } from "../vocabularies/languages";
import { wordsIn } from "../vocabularies/logWords";
import { answered, assumedOf, nameOf, type Knowledge, type Open, type SettledColumn } from "./open";
import { settleDate, settleStamp } from "./settleDates";
import { contradictsPsi, numberEvidence, unitByNumbers, type NumberEvidence } from "./units";

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
    words: wordsIn(languagesOf(plans, context), context.words),
    context,
  };
}

/**
 * The languages of a log: English, as its words stand in logs everywhere; those of the country; and of the headings the
 * language that says most of them, then those that say one that is said in none before.
 */
function languagesOf(plans: readonly SheetPlan[], { languages = [] }: LogContext): readonly Language[] {
  const spoken = new Set<Language>(["en", ...languages]);
  const headings = new Map(
    plans.flatMap(({ tables }) =>
      tables.flatMap(({ proposals }) =>
        proposals.map(({ meaning }) => [meaning.heading.toLowerCase(), meaning.languages] as const),
      ),
    ),
  );
  let open = [...headings.values()].filter((said) => said.length > 0 && !said.includes("en"));
  while (open.length > 0) {
    const count = (language: Language): number => open.filter((said) => said.includes(language)).length;
    const [most] = [...LANGUAGES].sort((one, other) => count(other) - count(one));
    spoken.add(most!);
    open = open.filter((said) => !said.includes(most!));
  }
  return LANGUAGES.filter((language) => spoken.has(language));
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
  const usualUnits = usualUnitsIn(numbers, knowledge.context);
  const settled = new Map<number, SettledColumn>();
  for (const proposal of proposals) {
    if (proposal.field === undefined) continue;
    const range = { sheet, table, column: proposal.column };
    const column = SETTLE[KINDS[proposal.field]]({
      proposal,
      field: proposal.field,
      range,
      knowledge,
      numbers: numbers.get(proposal),
      neighbours,
      usualUnits,
    });
    settled.set(proposal.column, { ...column, settings: { ...column.settings, words: knowledge.words } });
  }
  return settled;
}

const asItIs = (): SettledColumn => ({ settings: UNSETTLED, unit: undefined, question: undefined });

const SETTLE: Readonly<Record<Kind, (open: Open) => SettledColumn>> = {
  label: asItIs,
  text: asItIs,
  remark: asItIs,
  "external check": asItIs,
  signature: asItIs,
  card: asItIs,
  consent: asItIs,
  status: asItIs,
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
      date: {
        ...UNSETTLED.date,
        order: knowledge.context.datesAre ?? knowledge.dateOrder ?? knowledge.context.dateOrder,
      },
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

/** Columns in which a cylinder is full, or should be. */
const FULL: readonly Field[] = ["endPressure", "settledPressure", "servicePressure"];

function settlePressure(open: Open): SettledColumn {
  const { proposal, field, knowledge, numbers, neighbours, usualUnits } = open;
  const stated = answered(proposal, "unit", ["psi", "bar"]) ?? statedUnit(proposal);
  const shop =
    knowledge.context.units === "us" ? "psi" : knowledge.context.units === "metric" ? "bar" : undefined;
  const full = FULL.includes(field);
  const doubtful = shop === "psi" && full && numbers !== undefined && contradictsPsi(numbers);
  const known = stated ?? unitByNumbers(numbers!) ?? neighbours ?? (doubtful ? undefined : shop);
  const unit = known ?? (shop === undefined ? usualOf(usualUnits, ["psi", "bar"]) : undefined);
  return {
    ...assumedOf(known === undefined && takenAsUsual("pressures", numbers!, proposal, unit)),
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

/**
 * The units usual where the shop is, unless a pressure of this table speaks against them: a heading, a text, a number
 * that is too high for bar, or cylinders that would be nearly empty in psi.
 */
function usualUnitsIn(
  numbers: ReadonlyMap<ColumnProposal, NumberEvidence>,
  { usualUnits }: LogContext,
): LogContext["usualUnits"] {
  if (usualUnits === undefined) return undefined;
  const [usual, other] = usualUnits === "us" ? (["psi", "bar"] as const) : (["bar", "psi"] as const);
  for (const [proposal, evidence] of numbers) {
    if (KINDS[proposal.field!] !== "pressure") continue;
    const stated = answered(proposal, "unit", ["psi", "bar"]) ?? statedUnit(proposal);
    if (stated === other || evidence.saying[other] > 0) return undefined;
    if (stated !== undefined) continue;
    if (usual === "bar" ? evidence.tooHighForBar > 0 : isFull(proposal) && contradictsPsi(evidence))
      return undefined;
  }
  return usualUnits;
}

function usualOf<Unit>(
  usual: LogContext["usualUnits"],
  [us, metric]: readonly [us: Unit, metric: Unit],
): Unit | undefined {
  return usual === undefined ? undefined : usual === "us" ? us : metric;
}

function isFull({ field }: ColumnProposal): boolean {
  return field !== undefined && FULL.includes(field);
}

function takenAsUsual(
  what: string,
  { numbers }: NumberEvidence,
  proposal: ColumnProposal,
  unit: string | undefined,
): string {
  return unit === undefined || numbers === 0
    ? ""
    : `The ${what} under ${nameOf(proposal)} were taken for ${unit}, as is usual where the rules hold.`;
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
/** Warmer in °C, or deeper in m, is hardly met at a fill station. */
const MOST_METRIC = { "°C": 70, m: 100 };

function settleQuantity<Unit extends "°F" | "°C" | "ft" | "m">(
  { proposal, knowledge: { context }, numbers, usualUnits }: Open,
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
  const known = stated ?? (tooHigh ? us : tooLow ? undefined : shop);
  const isUnusual =
    usualUnits === "us"
      ? numbers!.highest < MOST_CELSIUS
      : numbers!.highest > MOST_METRIC[isTemperature ? "°C" : "m"];
  const usual = shop === undefined && !isUnusual ? usualOf(usualUnits, units) : undefined;
  const unit = known ?? usual;
  return {
    ...assumedOf(
      known === undefined &&
        takenAsUsual(isTemperature ? "temperatures" : "depths", numbers!, proposal, unit),
    ),
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
