import { Pane } from "../pane/Pane";
import type { ExcelWorkbook } from "../workbook/excel/excelWorkbook";
import { FunctionsNote } from "./FunctionsNote";
import { useAppearance } from "./useAppearance";

/** The task pane on the workbook that is open in Excel. */
export function ExcelPane({ workbook }: { readonly workbook: ExcelWorkbook }) {
  return (
    <Pane
      workbook={workbook}
      appearance={useAppearance()}
      formulas={workbook}
      hostNote={<FunctionsNote workbook={workbook} />}
    />
  );
}
