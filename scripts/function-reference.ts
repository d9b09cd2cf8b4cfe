import { COUNTRIES } from "../src/cylinders/countryRules";
import { isProblem, type Answer, type AnswerCell } from "../src/functions/answer";
import {
  formulaOf,
  FUNCTION_FAMILIES,
  NAMESPACE,
  type CatalogueEntry,
  type CatalogueParameter,
} from "../src/functions/catalogue";
import type { Argument } from "../src/typed/cells";
import { evaluate } from "../src/functions/evaluate";
import { plainDateOf, epochDayOfSerial } from "../src/sheet/serialDate";

/** docs/functions.md: every worksheet function with its arguments, and examples computed as this text is written. */
export function functionReference(): string {
  return [INTRODUCTION, contents(), ...FUNCTION_FAMILIES.flatMap(family)].join("\n\n") + "\n";
}

const INTRODUCTION = `<!-- Written by scripts/generate-function-docs.ts: do not edit. -->

# Worksheet functions

Type \`=${NAMESPACE}.\` in a cell and the functions appear. Figures are a plan, not a measurement: every cylinder is analysed by blender and diver, oxygen goes only into oxygen-clean equipment and is handled by a trained blender, and the cylinder's markings, local codes and licensed practice come first.

## What holds for all of them

- **Units.** Say \`"psi"\`, \`"ft"\` or \`"us"\` for psi, feet, °F and cubic feet; \`"bar"\`, \`"m"\` or \`"metric"\` for bar, metres, °C and litres. They are never guessed.
- **Mixes.** \`32\`, \`0.32\`, \`"EAN32"\`, \`"air"\`, \`"TX 18/45"\`, \`"heliox 21"\`, \`"oxygen"\`, \`"helium"\`. Only \`air\` is air (20.95 % oxygen); 21 is 21.0 %. A trimix typed as \`10/50\` becomes a date in a spreadsheet: type \`TX 10/50\`. Oxygen and helium in two columns: \`${NAMESPACE}.MIX(B2,C2)\`.
- **Pressures** are gauge readings, all settled at one temperature: 70 °F or 20 °C unless you give another. Text with its own unit, such as \`"200 bar"\`, is converted. A cylinder at 0 still holds one atmosphere of its last gas.
- **An empty cylinder** is \`"empty"\` as the start pressure, vented and full of air; then the start mix may be blank. Otherwise a blank start mix is refused, also at 0, because a rest of nitrox taken for air makes a hot mix.
- **Columns.** Any argument except a table may be a whole column, such as \`A2:A500\`: the answers spill, one for each row, and single values are repeated beside it. A row whose cells are all blank (or all 0) stays blank; a bad row shows its error in that row only. Inside Excel tables use single cells, as Excel allows no spilling there.
- **Rules** are a country's, by its code: ${COUNTRIES.map(({ code }) => code).join(", ")}. Others are not there because no source was found for them.
- **Left out.** Arguments in [brackets] may be left out; there a blank or 0 means left out too, except for a temperature.
- **Errors** carry a sentence: \`#VALUE!\` for what cannot be used or done, \`#N/A\` for what cannot be known. Where your Excel does not show it, wrap the call: \`=${NAMESPACE}.WHY("MOD",A2,"ft")\`.
- **Accuracy.** Gases are real (GERG-2008) unless you ask for \`"ideal"\`: good to about 0.1 % for air and nitrox, 0.1 to 0.3 % for trimix, about 1 % for helium with much oxygen. A gauge is rarely that good; \`WHY\` says how far its error moves the answer.
- Some places in Excel, such as conditional formats, do not take add-in functions: put the function in a helper column.`;

function contents(): string {
  return FUNCTION_FAMILIES.map(
    ({ title, entries }) =>
      `- ${title}: ${entries.map(({ id }) => `[${id}](#${id.toLowerCase()})`).join(", ")}`,
  ).join("\n");
}

function family({ title, entries }: (typeof FUNCTION_FAMILIES)[number]): readonly string[] {
  return [`## ${title}`, ...entries.map(section)];
}

function section(entry: CatalogueEntry): string {
  const { id, says, parameters, examples } = entry;
  return [
    `### ${id}`,
    says,
    `\`${NAMESPACE}.${id}(${parameters.map(signature).join(", ")})\``,
    table(
      ["Argument", "What to give"],
      parameters.map((parameter) => [`\`${signature(parameter)}\``, parameter.help]),
    ),
    ...examples.map((given) => example(entry, given)),
  ].join("\n\n");
}

function signature({ name, optional }: CatalogueParameter): string {
  return optional ? `[${name}]` : name;
}

function example({ id, quantity }: CatalogueEntry, given: readonly Argument[]): string {
  const answer = evaluate(id, given);
  const formula = `\`${formulaOf(id, given)}\``;
  const [[first = ""] = []] = answer;
  if (answer.length > 1) return `${formula} gives\n\n${answerTable(answer)}`;
  if (isProblem(first)) return `${formula} gives \`${first.error}\`: ${first.message}`;
  if (quantity === "date" && typeof first === "number") return `${formula} gives ${dayOf(first)}`;
  return `${formula} gives ${typeof first === "string" && first.length > 60 ? `\n\n> ${first}` : cellText(first)}`;
}

function answerTable([heading = [], ...rows]: Answer): string {
  return table(
    heading.map(cellText),
    rows.map((row) => row.map(cellText)),
  );
}

function table(heading: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) =>
    `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(heading), line(heading.map(() => "---")), ...rows.map(line)].join("\n");
}

function cellText(cell: AnswerCell): string {
  if (isProblem(cell)) return `\`${cell.error}\``;
  return typeof cell === "number" ? String(Number(cell.toPrecision(6))) : String(cell);
}

function dayOf(serial: number): string {
  return `${plainDateOf(epochDayOfSerial(serial, 1900)!).toString()} (as a spreadsheet date, ${serial})`;
}
