import type { SheetChoice } from "../log/context";
import type { Sheet } from "../sheet/sheet";
import type { Given } from "./command";
import { CommandProblem } from "./problem";

/**
 * What the workbook remembers of its sheets, with what `--sheet` and `--not-sheet` say of them.
 * Throws CommandProblem where there is no such sheet, or both were said of one.
 */
export function withSheetsSaid(
  remembered: readonly SheetChoice[],
  given: Given,
  sheets: readonly Sheet[],
): readonly SheetChoice[] {
  const [use, leave] = [given.all("sheet"), given.all("not-sheet")];
  for (const name of [...use, ...leave])
    if (!sheets.some((sheet) => sheet.name === name))
      throw new CommandProblem(
        `No sheet is called "${name}". The sheets: ${sheets
          .slice(0, 40)
          .map((sheet) => sheet.name)
          .join(", ")}.`,
      );
  const both = use.find((name) => leave.includes(name));
  if (both !== undefined) throw new CommandProblem(`"${both}" is both to be read and to be left out.`);
  const said = [...use, ...leave].map((sheet): SheetChoice => {
    const columns = remembered.find((choice) => choice.sheet === sheet)?.columns ?? [];
    return { sheet, use: use.includes(sheet), columns };
  });
  return [...remembered.filter(({ sheet }) => !said.some((each) => each.sheet === sheet)), ...said];
}
