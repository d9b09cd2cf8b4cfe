import type { Sheet } from "../../sheet/sheet";
import type { ColumnSaid } from "../context";
import { plain } from "../cells/cell";
import { isField, KINDS, TEST_FIELDS } from "../fieldKinds";
import { roleOf, type Role } from "../headings/headingFields";
import type { Field, TestField } from "../log";
import { roleByCells, roleByCellsAlone, showsWorkingPressures } from "./roleByCells";
import type { ColumnDraft, ColumnInRole } from "./draft";
import { settleMoments, withRole } from "./moments";
import { sampleOf, shareRead } from "./sample";
import type { Table } from "../tables/table";

/** What a column is taken for, before its units and orders are settled. */
export interface ColumnProposal extends ColumnDraft {
  readonly field: Field | undefined;
  readonly confidence: number;
  /** A further column of a test whose first column is another. */
  readonly further: boolean;
  /** What its heading leaves open, and nobody has said. */
  readonly open: OpenHeading | undefined;
  /** What the shop answered to the questions about this column. */
  readonly answers: ColumnSaid["answers"];
}

/** A test that falls due and nobody knows which; a pressure that was reached, or is the most there may be. */
export type OpenHeading = "some due date" | "some full pressure";

interface Draft extends ColumnInRole {
  readonly choice: ColumnSaid | undefined;
  confidence: number;
  field: Field | undefined;
  further: boolean;
}

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
  choiceFor: (column: ColumnDraft) => ColumnSaid | undefined,
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
  settleFullPressures(drafts);
  settleMoments(drafts);
  settleOrder(drafts);
  settleDueDates(drafts);
  findByCellsAlone(drafts);
  for (const draft of drafts) draft.field = fieldOf(draft.role);
  oneColumnPerField(drafts);
  for (const draft of drafts) if (draft.choice?.field === undefined) draft.confidence *= agreement(draft);
  return drafts.map(({ choice, role, ...draft }) => ({
    ...draft,
    open: role === "some due date" || role === "some full pressure" ? role : undefined,
    answers: choice?.answers ?? {},
  }));
}

/** `Mix %` alone is the analysis; beside `Analyzed` it is what was ordered. */
function settleOrder(drafts: readonly Draft[]): void {
  const mixes = withRole(drafts, "analysedMix");
  const [order, ...others] = mixes.filter(
    ({ heading, choice }) => choice?.field === undefined && !SAYS_ANALYSED.test(plain(heading)),
  );
  if (mixes.length !== 2 || order === undefined || others.length > 0) return;
  if (withRole(drafts, "orderedMix").length > 0) return;
  order.role = "orderedMix";
  order.confidence = Math.min(order.confidence, BY_NEIGHBOUR);
}

const SAYS_ANALYSED = /\b(?:anal|measured|gemessen|ist\b|mesure|medid|actual|real\b|tested|verified)/;
/** How sure a column is that was taken for something by what stands beside it. */
const BY_NEIGHBOUR = 0.7;

/**
 * `Fülldruck` is the pressure reached; beside `Enddruck` it is the working pressure, if it can be. Where its cells and
 * what stands beside it do not agree on that, the shop is asked.
 */
function settleFullPressures(drafts: readonly Draft[]): void {
  const taken = (role: Role): boolean => withRole(drafts, role).length > 0;
  for (const draft of withRole(drafts, "some full pressure")) {
    const answer = draft.choice?.answers["field"];
    const said = FULL_PRESSURE_CHOICES.find(([choice]) => choice === answer)?.[1];
    const beside = taken("endPressure") ? "servicePressure" : "endPressure";
    const byCells = showsWorkingPressures(draft) ? "servicePressure" : "endPressure";
    if (said !== undefined) draft.role = said;
    else if (beside === byCells) draft.role = taken(beside) ? undefined : beside;
  }
}

/** What a full pressure may be, as it is asked. */
export const FULL_PRESSURE_CHOICES: readonly (readonly [choice: string, field: Field])[] = [
  ["pressure reached", "endPressure"],
  ["working pressure", "servicePressure"],
];

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

/** How far the cells bear out what their column was taken for. */
function agreement({ field, sample }: Draft): number {
  if (field === undefined || sample.cells.length === 0) return 1;
  return LEAST_AGREEMENT + (1 - LEAST_AGREEMENT) * shareRead(sample, KINDS[field]);
}

const LEAST_AGREEMENT = 0.4;

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
