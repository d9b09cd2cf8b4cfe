/**
 * Why a file cannot be read: the middle of the sentence for the user, which `openFile` completes with the
 * file's name. `todo` is a whole sentence.
 */
export class FileFault extends Error {
  constructor(
    readonly reason: string,
    readonly todo = "Open it in a spreadsheet program, save it again as .xlsx, and open that.",
  ) {
    super(reason);
    this.name = "FileFault";
  }
}

/** A file that goes beyond what is taken; `what` says how far it goes. */
export function tooLarge(what: string): FileFault {
  return new FileFault(
    `it has ${what}, beyond what Brimbook takes`,
    "If it is a log, split it by year and open one of the parts.",
  );
}

export function megabytes(bytes: number): string {
  return `${Math.round(bytes / 1e6).toLocaleString("en-US")} MB`;
}

/** Says where in the file the fault lies. */
export async function within<T>(place: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    throw error instanceof FileFault ? new FileFault(`in ${place}, ${error.reason}`, error.todo) : error;
  }
}
