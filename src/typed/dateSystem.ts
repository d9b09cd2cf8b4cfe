import { unknown } from "../gas/refusal";

/** The day from which a workbook counts its dates: 1900 (usual) or 1904 (old Mac workbooks). */
export type DateSystem = 1900 | 1904;

/*
 * All functions of a runtime belong to one workbook. A function sees the number of a date and not what it is counted
 * from, and four years make an old hydro a new one: where the host does not know yet, a date is refused.
 */
let known: DateSystem | undefined = 1900;
let missed = false;

/** Tells the functions of this runtime what their workbook counts its dates from; `undefined` while that is open. */
export function setDateSystem(system: DateSystem | undefined): void {
  known = system;
}

/**
 * What the workbook counts its dates from.
 * @throws Refusal while that is not known.
 */
export function dateSystem(): DateSystem {
  if (known !== undefined) return known;
  missed = true;
  return unknown(
    'Excel has not said yet whether this workbook counts its dates from 1900 or from 1904. Open Brimbook\'s pane, or write the date as text, such as "2026-10-31".',
  );
}

/** Whether a date was refused for that reason since the last time this was asked. */
export function dateWasRefused(): boolean {
  const was = missed;
  missed = false;
  return was;
}
