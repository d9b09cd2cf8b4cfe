import { showsDate, showsTimeOnly } from "../../sheet/numberFormat";
import { epochDayOfSerial, plainDateOf, timeOfSerial } from "../../sheet/serialDate";
import type { Cell } from "../cells/cell";
import { DUE_CHOICES, FULL_PRESSURE_CHOICES, type ColumnProposal } from "./columns";
import type { ColumnQuestion, LogColumn } from "../log";
import type { SettledColumn } from "../settle/open";

const EXAMPLES_SHOWN = 3;

/** How a column was understood, for people. `rows` where it does not hold for the whole sheet. */
export function logColumnOf(
  proposal: ColumnProposal,
  settled: SettledColumn | undefined,
  rows: LogColumn["rows"],
): LogColumn {
  const { column, heading, field, confidence, further, sample } = proposal;
  const question = settled?.question ?? fieldQuestion(proposal);
  const adds = addsAs(proposal);
  return {
    column,
    heading,
    field,
    unit: settled?.unit,
    // A column that was said to be of no use is surely of none.
    confidence: field === undefined && confidence < 1 ? 0 : Number(confidence.toFixed(2)),
    examples: sample.cells.slice(0, EXAMPLES_SHOWN).map(exampleOf),
    ...(rows ? { rows } : {}),
    ...(further ? { further } : {}),
    ...(adds ? { adds } : {}),
    ...(question ? { question } : {}),
    ...(settled?.assumed === undefined ? {} : { assumed: settled.assumed }),
  };
}

/** A cell as people see it: a date is no number to them. */
function exampleOf({ value, format, dateSystem }: Cell): string {
  if (typeof value === "object") return value.error;
  if (typeof value !== "number") return String(value).trim();
  const day = showsDate(format) ? epochDayOfSerial(value, dateSystem) : undefined;
  if (day !== undefined) return plainDateOf(day).toString();
  const time = showsTimeOnly(format) ? timeOfSerial(value) : undefined;
  return time?.toString({ smallestUnit: "minute" }) ?? String(value);
}

function fieldQuestion({ open, heading }: ColumnProposal): ColumnQuestion | undefined {
  if (open === undefined) return undefined;
  const [sentence, choices] =
    open === "some due date"
      ? [`What falls due under “${heading}”?`, DUE_CHOICES]
      : [
          `Does “${heading}” show the pressure reached in the fill, or the working pressure?`,
          FULL_PRESSURE_CHOICES,
        ];
  return { about: "field", sentence, choices: choices.map(([choice]) => choice) };
}

function addsAs({ field, heading }: ColumnProposal): LogColumn["adds"] {
  if (field !== "oxygenAdded" && field !== "heliumAdded") return undefined;
  if (/\b(?:to|stop|bis|until)\b/i.test(heading)) return "stop";
  return /add|\+|zugab|zugegeb|ajout|anad|añad/i.test(heading) ? "increment" : undefined;
}
