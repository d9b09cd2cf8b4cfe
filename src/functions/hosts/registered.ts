/** Where the registered functions leave word of their version, for the pane in the same runtime. */
const runtime = globalThis as { brimbookFunctions?: string };

/** Called once, by the script that registers the functions. */
export function leaveVersion(version: string): void {
  runtime.brimbookFunctions = version;
}

/** The version of the functions that Excel has: it may keep their script for a day longer than the pane's. */
export function registeredVersion(): string | undefined {
  return runtime.brimbookFunctions;
}
