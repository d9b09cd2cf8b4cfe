import type { DateSystem } from "../../typed/dateSystem";

/** What the registered functions leave for the pane in the same runtime; another script brought them. */
const runtime = globalThis as {
  brimbookFunctions?: string;
  brimbookDates?: (system: DateSystem) => boolean;
};

/**
 * Called once, by the script that registers the functions.
 * @param hearDateSystem answers whether cells were refused before, and so have to be calculated again
 */
export function leaveWord(version: string, hearDateSystem: (system: DateSystem) => boolean): void {
  runtime.brimbookFunctions = version;
  runtime.brimbookDates = hearDateSystem;
}

/** The version of the functions that Excel has: it may keep their script for a day longer than the pane's. */
export function registeredVersion(): string | undefined {
  return runtime.brimbookFunctions;
}

/** Tells the registered functions what the workbook counts its dates from; answers whether to calculate again. */
export function tellDateSystem(system: DateSystem): boolean {
  return runtime.brimbookDates?.(system) ?? false;
}
