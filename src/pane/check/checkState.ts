import type { SheetChoice } from "../../log/context";
import type { Problem } from "../kit/problem";
import type { Answer } from "./questions";
import type { CheckReport, LogReading, SheetReading } from "./report";

/** A sheet the host could not hand over, and why. */
export interface UnreachableSheet {
  readonly name: string;
  readonly sentence: string;
}

/** Work under way: looking for logs in the workbook, reading again after a correction, the check, or a question. */
export interface Busy {
  readonly with: "looking" | "reading" | "checking" | Answer["kind"];
  readonly doing: string;
  readonly share: number;
}

export interface CheckState {
  readonly busy: Busy | undefined;
  /** How every sheet was understood; absent until the workbook was looked through. */
  readonly reading: LogReading | undefined;
  readonly unreachable: readonly UnreachableSheet[];
  readonly report: CheckReport | undefined;
  /** What the report was ordered under; another order makes it out of date. */
  readonly reportOrder: string;
  /** Answers to what was asked of the log of the report. */
  readonly answers: Answers;
  /** The user changed cells since the sheets were last read. */
  readonly changed: boolean;
  readonly problem: Problem | undefined;
}

/** The last answer of each kind. */
export type Answers = { readonly [Kind in Answer["kind"]]?: Extract<Answer, { kind: Kind }> };

export const NOTHING_YET: CheckState = {
  busy: undefined,
  reading: undefined,
  unreachable: [],
  report: undefined,
  reportOrder: "",
  answers: {},
  changed: false,
  problem: undefined,
};

export type CheckEvent =
  | { readonly kind: "began"; readonly with: Busy["with"]; readonly doing: string }
  | { readonly kind: "progressed"; readonly doing: string; readonly share: number }
  | {
      readonly kind: "looked";
      readonly reading: LogReading;
      readonly unreachable: readonly UnreachableSheet[];
    }
  | { readonly kind: "read again"; readonly reading: LogReading }
  | { readonly kind: "checked"; readonly report: CheckReport; readonly order: string }
  | { readonly kind: "answered"; readonly answer: Answer }
  | { readonly kind: "stopped" }
  | { readonly kind: "failed"; readonly problem: Problem }
  | { readonly kind: "log changed" };

export function checkReducer(state: CheckState, event: CheckEvent): CheckState {
  switch (event.kind) {
    case "began":
      return {
        ...state,
        busy: { with: event.with, doing: event.doing, share: 0 },
        problem: undefined,
        // All else works on the sheets as they were handed over; what changed since stays changed.
        changed: event.with !== "looking" && event.with !== "checking" && state.changed,
      };
    case "progressed":
      return state.busy
        ? { ...state, busy: { ...state.busy, doing: event.doing, share: event.share } }
        : state;
    case "looked":
      return { ...state, busy: undefined, reading: event.reading, unreachable: event.unreachable };
    case "read again":
      return { ...state, busy: undefined, reading: event.reading };
    case "checked":
      return {
        ...state,
        busy: undefined,
        report: event.report,
        reportOrder: event.order,
        answers: {},
        reading: state.reading && withNewer(state.reading, event.report),
      };
    case "answered":
      return { ...state, busy: undefined, answers: { ...state.answers, [event.answer.kind]: event.answer } };
    case "stopped":
      return { ...state, busy: undefined };
    case "failed":
      return { ...state, busy: undefined, problem: event.problem };
    case "log changed":
      return state.changed ? state : { ...state, changed: true };
  }
}

/** The reading of all sheets, with those that were just checked as they are now. */
function withNewer(reading: LogReading, newer: LogReading): LogReading {
  const names = new Set(newer.sheets.map(({ name }) => name));
  return {
    sheets: reading.sheets.map((sheet) => newer.sheets.find(({ name }) => name === sheet.name) ?? sheet),
    unreadable: [...reading.unreadable.filter(({ sheet }) => !names.has(sheet)), ...newer.unreadable],
  };
}

/** Whether a sheet is checked: as the shop said, else by what was found in it. */
export function isChosen(sheet: SheetReading, choices: readonly SheetChoice[]): boolean {
  return choices.find((choice) => choice.sheet === sheet.name)?.use ?? sheet.kind !== "neither";
}

/** The part of a reading that concerns the sheets to be checked. */
export function chosenPart(reading: LogReading, choices: readonly SheetChoice[]): LogReading {
  const sheets = reading.sheets.filter((sheet) => isChosen(sheet, choices));
  const names = new Set(sheets.map(({ name }) => name));
  return { sheets, unreadable: reading.unreadable.filter(({ sheet }) => names.has(sheet)) };
}
