import { WorkbookProblem } from "../workbook";

/** What Excel's error codes mean to the user, and what to do. `about` is what was being read or done. */
const SENTENCES: Readonly<Record<string, (about: string) => string>> = {
  InvalidOperationInCellEditMode: () =>
    "A cell is being edited, and Excel does nothing else meanwhile. Press Enter or Esc in the sheet, then try again.",
  AccessDenied: (about) =>
    `Excel does not allow access to ${about}: it may be protected or open for reading only. ` +
    "Unprotect it, or work in a copy, then try again.",
  ItemNotFound: (about) =>
    `Excel no longer finds ${about}. It may have been renamed or deleted: read the log again.`,
  InvalidArgument: (about) => `Excel does not accept the place asked for in ${about}. Read the log again.`,
  RequestPayloadSizeLimitExceeded: (about) =>
    `There is more to write to ${about} than Excel takes at once. Delete what is no longer needed, then try again.`,
  ResponsePayloadSizeLimitExceeded: (about) =>
    `A single row of ${about} is more than Excel hands over at once. Look for cells with very long text and shorten them.`,
  RangeExceedsLimit: (about) =>
    `A single row of ${about} is more than Excel hands over at once. Delete columns that are not needed, then try again.`,
  InactiveWorkbook: () => "Another workbook is in front. Click into this workbook, then try again.",
  UnsupportedSheet: (about) => `Excel cannot do this with ${about}. Pick an ordinary worksheet.`,
  InvalidSelection: () => "Something other than cells is selected. Select cells, then try again.",
  MergedRangeConflict: (about) => `Merged cells are in the way in ${about}. Unmerge them, then try again.`,
  FilteredRangeConflict: (about) => `A filter is in the way in ${about}. Clear the filter, then try again.`,
  UndoNotSupported: (about) =>
    `This Excel cannot take back all of it in one step, so nothing was done to ${about}. Report it with the details.`,
  RequestAborted: (about) => `Excel gave up on ${about} before it was done. Try again.`,
  ActivityLimitReached: () => "Excel is busy with too many requests. Wait a few seconds, then try again.",
  ServiceNotAvailable: () => "Excel's service does not answer. Check the connection, then try again.",
  ApiNotFound: () => "This Excel is too old for what was asked. Update Office, or use the local workbook.",
};

const UNKNOWN = (about: string) =>
  `Excel reported an error with ${about} and did not say what to do about it. Try again; ` +
  "if it comes back, save the workbook, close it and open it again.";

/** The code by which Excel says what went wrong; its texts come in every language. */
export function errorCode(error: unknown): string | undefined {
  const code = typeof error === "object" && error !== null && "code" in error ? error.code : undefined;
  return typeof code === "string" ? code : undefined;
}

/** Excel's error as a sentence of ours. What is no error of Excel's own (a refusal, an abort) passes unchanged. */
export function problemOf(error: unknown, about: string): unknown {
  const code = errorCode(error);
  if (code === undefined) return error;
  return new WorkbookProblem((SENTENCES[code] ?? UNKNOWN)(about), detailsOf(error as Error, code));
}

function detailsOf(error: Error, code: string): string {
  const location =
    "debugInfo" in error
      ? (error.debugInfo as { errorLocation?: string } | undefined)?.errorLocation
      : undefined;
  return [`Excel: ${code}`, location, error.message].filter(Boolean).join(" | ");
}
