import type { Argument } from "../typed/cells";
import type { Quantity } from "../words/figures";
import type { WorksheetFunction } from "./define";
import { WHY } from "./evaluate";
import { EXAMPLES } from "./families/examples";
import { FAMILIES, FUNCTIONS } from "./families/families";

/** What a host needs to offer the functions: names, order, help. Shared by Excel's metadata, the grid and the docs. */
export interface CatalogueEntry {
  readonly id: string;
  /** What it does. */
  readonly says: string;
  /** The same for the formula helper, with an example. */
  readonly description: string;
  readonly quantity: Quantity;
  readonly parameters: readonly CatalogueParameter[];
  /** Formulas to show it with. */
  readonly examples: readonly (readonly Argument[])[];
}

export interface CatalogueParameter {
  readonly name: string;
  readonly help: string;
  readonly optional: boolean;
  /** Takes a whole range as a table; all others take a single value or a column of them. */
  readonly table: boolean;
}

/** The namespace in front of every name. */
export const NAMESPACE = "BRIM";

/** Each by itself: one that stands for any number has crashed builds of Excel. */
const MOST_ARGUMENTS = Math.max(...FUNCTIONS.map(({ parameters }) => parameters.length));

const WHY_ENTRY: CatalogueEntry = entryOf({
  id: WHY,
  says: "The sentence behind an error, or how an answer came about: what was assumed, the steps, and how far it can be off.",
  quantity: "plain",
  parameters: [
    {
      name: "function",
      help: 'Name of the function in quotation marks, such as "STOPAT".',
      optional: false,
      table: false,
    },
    ...Array.from({ length: MOST_ARGUMENTS }, (_, at) => ({
      name: `argument${at + 1}`,
      help: at === 0 ? "The first argument of that function." : "The next one, in its order.",
      optional: true,
      table: false,
    })),
  ],
});

/** The worksheet functions by family, in the order of the reference page. */
export const FUNCTION_FAMILIES: readonly {
  readonly title: string;
  readonly entries: readonly CatalogueEntry[];
}[] = [
  ...FAMILIES.map(({ title, functions }) => ({
    title,
    entries: functions.map((each) => entryOf({ ...each, parameters: parametersOf(each) })),
  })),
  { title: "Explanation", entries: [WHY_ENTRY] },
];

/** Every worksheet function. */
export const WORKSHEET_FUNCTIONS: readonly CatalogueEntry[] = FUNCTION_FAMILIES.flatMap(
  ({ entries }) => entries,
);

/** A call as it is typed: `=BRIM.MOD("EAN32","ft")`. */
export function formulaOf(id: string, given: readonly Argument[]): string {
  return `=${NAMESPACE}.${id}(${given.map(argumentText).join(",")})`;
}

function entryOf(from: Omit<CatalogueEntry, "description" | "examples">): CatalogueEntry {
  const { id, says, quantity, parameters } = from;
  const examples = EXAMPLES[id] ?? [];
  return {
    id,
    says,
    quantity,
    parameters,
    examples,
    description: `${says} Example: ${formulaOf(id, examples[0] ?? [])}`,
  };
}

function parametersOf({ parameters }: WorksheetFunction): readonly CatalogueParameter[] {
  return parameters.map(([name, reader]) => ({
    name,
    help: reader.help,
    optional: reader.optional,
    table: reader.shape === "table",
  }));
}

function argumentText(argument: Argument): string {
  if (Array.isArray(argument)) {
    return `{${argument.map((row: readonly Argument[]) => row.map(argumentText).join(",")).join(";")}}`;
  }
  if (typeof argument === "string") return `"${argument.replaceAll('"', '""')}"`;
  if (typeof argument === "boolean") return String(argument).toUpperCase();
  return argument === null || argument === undefined ? "" : String(argument);
}
