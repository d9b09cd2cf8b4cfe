import { ownSheetOf, type OwnSheet } from "../sheet/ownSheet";
import type { Sheet } from "../sheet/sheet";
import { rememberedFor } from "./columns/choices";
import { draftColumns, proposeColumns, type ColumnProposal } from "./columns/columns";
import type { LogContext } from "./context";
import { isCylinderOnly, isFillOnly } from "./fieldKinds";
import type { Field, SheetKind } from "./log";
import { datedByHeadings } from "./tables/dayHeadings";
import { asItStands, type FilledSheet } from "./tables/filledCells";
import { filledDown } from "./tables/mergedCells";
import { tablesOf, type Table } from "./tables/table";

/** What a table was taken for, before its cells are read. */
export interface TablePlan {
  readonly table: Table;
  readonly proposals: readonly ColumnProposal[];
  readonly kind: SheetKind;
}

/** What a sheet was taken for, before its cells are read. */
export interface SheetPlan extends FilledSheet {
  readonly tables: readonly TablePlan[];
  readonly headingsChanged: boolean;
  /** What of ours it is, where Brimbook wrote it: then nothing in it is read. */
  readonly own?: OwnSheet;
}

/** Finds the tables of a sheet and what their columns mean, as far as one sheet alone can tell. */
export function planSheet(original: Sheet, context: LogContext, isChosen: boolean): SheetPlan {
  const own = isChosen ? undefined : ownSheetOf(original);
  if (own !== undefined) {
    const tables = tablesOf(original).map((table): TablePlan => ({ table, proposals: [], kind: "neither" }));
    return { ...asItStands(original), tables, headingsChanged: false, own };
  }
  const { filled, tables: found } = datedByHeadings(filledDown(original), tablesOf(original));
  const drafts = found.map((table) => ({
    table,
    columns: draftColumns(filled.sheet, table),
  }));
  const remembered = rememberedFor(
    original.name,
    drafts.flatMap(({ columns }) => columns),
    context,
  );
  const tables = drafts.map(({ table, columns }): TablePlan => {
    const proposals = proposeColumns(columns, remembered.choiceFor);
    return { table, proposals, kind: kindOf(proposals) };
  });
  return { ...filled, tables, headingsChanged: remembered.headingsChanged };
}

const SAYS_WHICH: readonly Field[] = ["date", "serial", "shopNumber", "number"];

/**
 * Beside sheets whose rows say which cylinder or which day, one whose rows do neither is the working out of a blend or
 * the like, and no part of the log; unless somebody said that it is.
 */
export function onlyTheLog(
  plans: readonly SheetPlan[],
  isChosen: (sheet: string) => boolean,
): readonly SheetPlan[] {
  if (!plans.some(saysWhich)) return plans;
  return plans.map((plan) =>
    saysWhich(plan) || isChosen(plan.sheet.name)
      ? plan
      : { ...plan, tables: plan.tables.map((table) => ({ ...table, kind: "neither" })) },
  );
}

function saysWhich({ tables }: SheetPlan): boolean {
  return tables.some(
    ({ kind, proposals }) =>
      kind !== "neither" && proposals.some(({ field }) => field !== undefined && SAYS_WHICH.includes(field)),
  );
}

/** Columns that a price list or a stock list may have as well. */
const SAYS_LITTLE: readonly Field[] = [
  "number",
  "price",
  "remarks",
  "source",
  "time",
  "gasTemperatureK",
  "plannedDepthM",
];
const GAS: readonly Field[] = [
  "startPressure",
  "endPressure",
  "settledPressure",
  "startMix",
  "orderedMix",
  "analysedMix",
  "method",
];
/** Headings of price lists and deliveries that a log without serials may have by chance. */
const MOST_OF_STOCK = 2;
const TESTS_AND_RATING: readonly Field[] = [
  "hydro",
  "visual",
  "oxygenService",
  "oxygenCleaned",
  "eddyCurrent",
];

function kindOf(proposals: readonly ColumnProposal[]): SheetKind {
  const fields = new Set(proposals.flatMap(({ field }) => field ?? []));
  const count = (of: (field: Field) => boolean): number => [...fields].filter(of).length;
  const named = fields.has("serial") || fields.has("shopNumber");
  const ofFill = count((field) => isFillOnly(field) && !SAYS_LITTLE.includes(field));
  const gas = count((field) => GAS.includes(field));
  const tests = count((field) => TESTS_AND_RATING.includes(field));
  const dated = fields.has("date");
  const ofStock = proposals.filter(({ meaning }) => meaning.concepts.has("stock")).length;
  if (!fields.has("serial") && ofStock >= MOST_OF_STOCK) return "neither";
  if (gas > 0 && (ofFill >= 2 || named) && (dated || gas >= 2 || tests === 0))
    return tests > 0 ? "flat" : "fills";
  if (named && count(isCylinderOnly) > 0) return "register";
  return named && dated && ofFill >= 2 ? "fills" : "neither";
}
