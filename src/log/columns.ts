import { showsDate } from "../sheet/numberFormat";
import { isBlank, type Sheet } from "../sheet/sheet";
import { plain, type Cell } from "./cells/cell";
import { KINDS, TEST_FIELDS } from "./fieldKinds";
import { roleOf, type Role } from "./headingFields";
import type { HeadingMeaning } from "./headingText";
import type { Field, TestField } from "./log";
import { sampleOf, shareOf, shareRead, type ColumnSample } from "./sample";
import type { TableHead } from "./table";

/** What a column is taken for, before its units and orders are settled. */
export interface ColumnProposal {
  readonly column: number;
  readonly meaning: HeadingMeaning;
  readonly sample: ColumnSample;
  field: Field | undefined;
  confidence: number;
  /** A further column of a test whose first column is another. */
  further: boolean;
}

interface Draft extends ColumnProposal {
  role: Role | undefined;
}

const MIX_AT_MOMENT = ["startMix", "orderedMix", "analysedMix"] as const;
const PRESSURE_AT_MOMENT = ["startPressure", "endPressure", "settledPressure"] as const;

/** Proposes what each column of a table stands for: by its heading, its cells, and its neighbours. */
export function proposeColumns(sheet: Sheet, head: TableHead): readonly ColumnProposal[] {
  const drafts = head.meanings.map((meaning, column): Draft => {
    const found = meaning.heading === "" ? undefined : roleOf(meaning);
    return {
      column,
      meaning,
      sample: sampleOf(sheet, column, head.lastRow + 1),
      role: found?.role,
      field: undefined,
      confidence: found?.confidence ?? 0,
      further: false,
    };
  });
  for (const draft of drafts) draft.role = asCellsSay(draft);
  settleMoments(drafts);
  settleDueDates(drafts);
  for (const draft of drafts) draft.field = fieldOf(draft.role);
  oneColumnPerField(drafts);
  return drafts;
}

/** What a role of several meanings is, going by the cells below. */
function asCellsSay(draft: Draft): Role | undefined {
  const { role, sample, meaning } = draft;
  const holdsPressures =
    meaning.unit === "psi" || meaning.unit === "bar" || shareOf(sample, isAboveHundred) > 0.3;
  switch (role) {
    case "oxygen clean":
      return shareOf(sample, looksLikeDate) >= 0.5 ? "oxygenCleaned" : "oxygenService";
    case "some oxygen":
      return holdsPressures ? "oxygenAdded" : "some mix";
    case "some helium":
      return holdsPressures ? "heliumAdded" : role;
    case "start of something":
      return holdsPressures ? "startPressure" : shareRead(sample, "mix") > 0.5 ? "startMix" : undefined;
    case "end of something":
      return holdsPressures ? "endPressure" : shareRead(sample, "mix") > 0.5 ? "analysedMix" : undefined;
    case "size":
      return shareOf(sample, isClass) > 0.5
        ? "cylinderClass"
        : shareOf(sample, isMaterial) > 0.5
          ? "material"
          : role;
    case "shopNumber":
      return !meaning.concepts.has("number") &&
        shareOf(sample, isText) > 0.5 &&
        shareRead(sample, "size") > 0.5
        ? "size"
        : role;
    case "oxygenService":
      return shareOf(sample, looksLikeDate) > 0.5 ? "oxygenCleaned" : role;
    default:
      return role;
  }
}

/** Tells pressures and mixes apart that name no moment: by the pressure before them, else by their order. */
function settleMoments(drafts: readonly Draft[]): void {
  const pressures = drafts.filter((draft) => draft.role === "some pressure");
  assign(
    pressures,
    pressures.length === 1 ? [free(drafts, ["endPressure", "startPressure"])] : PRESSURE_AT_MOMENT,
  );

  const mixes = drafts.filter((draft) => draft.role === "some mix");
  if (mixes.length === 1) {
    const [mix] = mixes as [Draft];
    const analysed = drafts.some((draft) => draft.role === "analysedMix");
    const decimals = shareOf(mix.sample, hasDecimals) > 0.3 || mix.meaning.concepts.has("oxygen");
    assign(mixes, [analysed || !decimals ? "orderedMix" : "analysedMix"]);
  } else {
    for (const mix of mixes) {
      const before = drafts[mix.column - 1]?.role;
      if (before === "startPressure") assign([mix], ["startMix"]);
      if (before === "endPressure" || before === "settledPressure") assign([mix], ["analysedMix"]);
    }
    const rest = drafts.filter((draft) => draft.role === "some mix");
    const open = MIX_AT_MOMENT.filter((role) => !drafts.some((draft) => draft.role === role));
    assign(rest, rest.length === 2 && open.length === 3 ? ["startMix", "analysedMix"] : open);
  }

  const helium = drafts.filter((draft) => draft.role === "some helium");
  for (const draft of helium) {
    const before = drafts[draft.column - 1]?.role;
    const beside =
      before === "startMix" ? "startHelium" : before === "orderedMix" ? "orderedHelium" : "analysedHelium";
    assign([draft], [beside]);
  }
}

function free(drafts: readonly Draft[], roles: readonly Field[]): Field {
  return roles.find((role) => !drafts.some((draft) => draft.role === role)) ?? roles[0]!;
}

function assign(drafts: readonly Draft[], roles: readonly Role[]): void {
  drafts.forEach((draft, index) => {
    draft.role = roles[index];
  });
}

/** `Exp` beside a hydro column is the hydro's. */
function settleDueDates(drafts: readonly Draft[]): void {
  for (const draft of drafts) {
    if (draft.role !== "some due date") continue;
    const before = drafts[draft.column - 1]?.role;
    draft.role = TEST_FIELDS.find((field) => field === before) ?? draft.role;
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

function sureness(draft: Draft): number {
  return (
    draft.confidence -
    (draft.meaning.concepts.has("due") ? 0.2 : 0) -
    (draft.sample.cells.length === 0 ? 0.3 : 0)
  );
}

function isAboveHundred(cell: Cell): boolean {
  return typeof cell.value === "number"
    ? cell.value > 100 && !showsDate(cell.format)
    : typeof cell.value === "string" &&
        (/^\d{3,4}$/.test(cell.value.trim()) || /\b(?:psi|bar)\b/i.test(cell.value));
}

function looksLikeDate(cell: Cell): boolean {
  if (typeof cell.value === "number") return showsDate(cell.format) || cell.value > 20000;
  return (
    typeof cell.value === "string" &&
    /\d[-/. ]\s*\d|[a-z]{3,}[-. ]*\d{2}|^\d{4}[-/]/i.test(cell.value) &&
    !/%/.test(cell.value)
  );
}

function isClass(cell: Cell): boolean {
  return (
    typeof cell.value === "string" &&
    /^(?:dot|tc|icc|ctc)?[-/ ]*(?:3al?m?|3aam?|3ht|e ?\d{4,5}|sp ?\d{4,5})\b/i.test(cell.value.trim())
  );
}

function isMaterial(cell: Cell): boolean {
  return (
    typeof cell.value === "string" &&
    /^(?:alu|alumin|steel|stahl|acier|acero|comp|carbon|st$|al$)/.test(plain(cell.value))
  );
}

function isText(cell: Cell): boolean {
  return typeof cell.value === "string" && /[a-z]/i.test(cell.value);
}

function hasDecimals(cell: Cell): boolean {
  return typeof cell.value === "number"
    ? !Number.isInteger(Number((cell.value < 1 ? cell.value * 100 : cell.value).toFixed(6)))
    : typeof cell.value === "string" && /\d[.,]\d/.test(cell.value) && !isBlank(cell.value);
}
