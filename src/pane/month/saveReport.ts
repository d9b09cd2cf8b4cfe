import { download } from "../kit/download";
import type { SheetDraft } from "../../sheet/draft/draft";
import { FileWorkbook } from "../../workbook/file/fileWorkbook";
import { writeXlsx } from "../../workbook/file/writeXlsx";

/** Hands the report to the user's downloads as a workbook of its own. */
export async function saveReport(
  drafts: readonly SheetDraft[],
  fileName: string,
  signal: AbortSignal,
): Promise<void> {
  const workbook = new FileWorkbook({ sheets: [], settings: new Map(), leftOut: [] });
  await workbook.addSheets(drafts, undefined, signal);
  download(await writeXlsx(workbook.content, { signal }), fileName);
}
