import type { Sheet } from "../sheet/sheet";
import type { ColumnChoice } from "./context";
import { isField, KINDS, TEST_FIELDS } from "./fieldKinds";
import { roleOf, type Role } from "./headingFields";
import type { HeadingMeaning } from "./headingText";
import type { Field, TestField } from "./log";
import { roleByCells, roleByCellsAlone } from "./roleByCells";
import { sampleOf, shareOf, hasDecimals, type ColumnSample } from "./sample";
import type { Table } from "./table";

/** A column before anybody said what it is. */
export interface ColumnDraft {
  readonly column: number;
  readonly heading: string;
  readonly meaning: HeadingMeaning;
  readonly sample: ColumnSample;
}

/** What a column is taken for, before its units and orders are settled. */
export interface ColumnProposal extends ColumnDraft {
  readonly field: Field | undefined;
  readonly confidence: number;
  /** A further column of a test whose first column is another. */
  readonly further: boolean;
  /** A test that falls due here, and nobody knows which. */
  readonly dueOfSomething: boolean;
  /** What the shop answered to the questions about this column. */
  readonly answers: ColumnChoice["answers"];
}

interface Draft extends ColumnDraft {
  readonly choice: ColumnChoice | undefined;
  role: Role | undefined;
  confidence: number;
  field: Field | undefined;
  further: boolean;
}

const MIX_AT_MOMENT = ["startMix", "orderedMix", "analysedMix"] as const;
const PRESSURE_AT_MOMENT = ["startPressure", "endPressure", "settledPressure"] as const;
/** How sure a column is that was taken for something by its cells alone. */
const BY_CELLS_ALONE = 0.45;

/** The columns of a table that have a heading or hold anything. */
export function draftColumns(sheet: Sheet, table: Table): readonly ColumnDraft[] {
  return table.meanings
    .map((meaning, column) => ({
      column,
      heading: meaning.heading,
      meaning,
      sample: sampleOf(sheet, table, column),
    }))
    .filter(({ heading, sample }) => heading !== "" || sample.cells.length > 0);
}

/** Proposes what each column of a table stands for: by choice, by its heading, its cells, and its neighbours. */
export function proposeColumns(
  columns: readonly ColumnDraft[],
  choiceFor: (column: ColumnDraft) => ColumnChoice | undefined,
): readonly ColumnProposal[] {
  const drafts = columns.map((column): Draft => {
    const byHeading = column.heading === "" ? undefined : roleOf(column.meaning);
    const choice = choiceFor(column);
    const chosen =
      choice?.field !== undefined && choice.field !== null && isField(choice.field)
        ? choice.field
        : undefined;
    return {
      ...column,
      choice,
      role: chosen ?? (choice?.field === null ? undefined : roleByCells(byHeading?.role, column)),
      confidence: chosen !== undefined || choice?.field === null ? 1 : (byHeading?.confidence ?? 0),
      field: undefined,
      further: false,
    };
  });
  settleMoments(drafts);
  settleDueDates(drafts);
  findByCellsAlone(drafts);
  for (const draft of drafts) draft.field = fieldOf(draft.role);
  oneColumnPerField(drafts);
  return drafts.map(({ choice, role, ...draft }) => ({
    ...draft,
    dueOfSomething: role === "some due date",
    answers: choice?.answers ?? {},
  }));
}

/** Tells pressures and mixes apart that name no moment: by the pressure before them, else by their order. */
function settleMoments(drafts: readonly Draft[]): void {
  const pressures = withRole(drafts, "some pressure");
  const openPressures = PRESSURE_AT_MOMENT.filter((role) => withRole(drafts, role).length === 0);
  if (pressures.length === 1)
    assign(pressures, openPressures.includes("endPressure") ? ["endPressure"] : openPressures);
  else assign(pressures, openPressures);

  const mixes = withRole(drafts, "some mix");
  if (mixes.length === 1) assign(mixes, [onlyMix(mixes[0]!, drafts)]);
  else {
    for (const mix of mixes) {
      const before = drafts[drafts.indexOf(mix) - 1]?.role;
      if (before === "startPressure") mix.role = "startMix";
      if (before === "endPressure" || before === "settledPressure") mix.role = "analysedMix";
    }
    const rest = withRole(drafts, "some mix");
    const open = MIX_AT_MOMENT.filter((role) => withRole(drafts, role).length === 0);
    assign(rest, rest.length === 2 && open.length === 3 ? ["startMix", "analysedMix"] : open);
  }

  for (const helium of withRole(drafts, "some helium")) {
    const before = drafts[drafts.indexOf(helium) - 1]?.role;
    helium.role =
      before === "startMix" ? "startHelium" : before === "orderedMix" ? "orderedHelium" : "analysedHelium";
  }
}

/** A mix alone is the order, as whole numbers are; analyses have decimals, and stand under “O2”. */
function onlyMix(mix: Draft, drafts: readonly Draft[]): Role {
  if (withRole(drafts, "analysedMix").length > 0) return "orderedMix";
  const analysed = mix.meaning.concepts.has("oxygen") || shareOf(mix.sample, hasDecimals) > 0.3;
  return analysed || withRole(drafts, "orderedMix").length > 0 ? "analysedMix" : "orderedMix";
}

/** `Exp` beside a hydro column is the hydro's; else the shop is asked. */
function settleDueDates(drafts: readonly Draft[]): void {
  for (const draft of withRole(drafts, "some due date")) {
    const before = drafts[drafts.indexOf(draft) - 1]?.role;
    const answer = draft.choice?.answers["field"];
    const field = DUE_CHOICES.find(([choice]) => choice === answer)?.[1];
    draft.role = field ?? TEST_FIELDS.find((test) => test === before) ?? draft.role;
  }
}

/** What may fall due, as it is asked. */
export const DUE_CHOICES: readonly (readonly [choice: string, field: TestField])[] = [
  ["hydro", "hydro"],
  ["visual", "visual"],
  ["oxygen cleaning", "oxygenCleaned"],
];

/** Columns whose headings say nothing, in the light of those that do. */
function findByCellsAlone(drafts: readonly Draft[]): void {
  for (const draft of drafts) {
    if (draft.role !== undefined || draft.choice?.field === null) continue;
    const taken = (role: Role): boolean => withRole(drafts, role).length > 0;
    draft.role = roleByCellsAlone(draft, taken);
    if (draft.role !== undefined) draft.confidence = BY_CELLS_ALONE;
  }
}

function fieldOf(role: Role | undefined): Field | undefined {
  return role !== undefined && Object.hasOwn(KINDS, role) ? (role as Field) : undefined;
}

/** The surest column has the field; a test may have several, and the last test done comes before the next one due. */
function oneColumnPerField(drafts: readonly Draft[]): void {
  const bySureness = [...drafts].sort(
    (one, other) => sureness(other) - sureness(one) || one.column - other.column,
  );
  const taken = new Set<Field>();
  for (const draft of bySureness) {
    if (draft.field === undefined) continue;
    if (!taken.has(draft.field)) taken.add(draft.field);
    else if (TEST_FIELDS.includes(draft.field as TestField)) draft.further = true;
    else draft.field = undefined;
  }
}

function sureness({ confidence, meaning, sample }: Draft): number {
  const { concepts } = meaning;
  return (
    confidence -
    (concepts.has("due") ? 0.2 : 0) -
    (concepts.has("earlier") ? 0.1 : 0) +
    (concepts.has("last") ? 0.1 : 0) -
    (sample.cells.length === 0 ? 0.3 : 0)
  );
}

function withRole(drafts: readonly Draft[], role: Role): readonly Draft[] {
  return drafts.filter((draft) => draft.role === role);
}

function assign(drafts: readonly Draft[], roles: readonly Role[]): void {
  drafts.forEach((draft, index) => {
    draft.role = roles[index];
  });
}
