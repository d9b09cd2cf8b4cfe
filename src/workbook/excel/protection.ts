import { WorkbookProblem } from "../workbook";
import { sheetNamed } from "./outline";

/** Refuses before anything is written where the sheet is protected: nobody's protection is taken off. */
export async function mustBeOpen(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  name: string,
): Promise<void> {
  if (!(await isProtected(context, sheet))) return;
  throw new WorkbookProblem(
    `Nothing was changed in ${sheetNamed(name)}, as it is protected. Unprotect it on the Review tab, then try again.`,
  );
}

export async function isProtected(context: Excel.RequestContext, sheet: Excel.Worksheet): Promise<boolean> {
  const { protection } = sheet;
  protection.load("protected");
  await context.sync();
  return protection.protected;
}
