import { deskEngine } from "../kit/deskEngine";
import { startedWorker } from "../kit/sheetWorker";
import { MonthDesk } from "./monthDesk";

/** Makes month reports without holding the screen. */
export const monthEngine = (startWorker = startMonthWorker) =>
  deskEngine(startWorker, (sheets) => new MonthDesk(sheets));

export type MonthEngine = ReturnType<typeof monthEngine>;

function startMonthWorker(): Promise<Worker | undefined> {
  return startedWorker(() => new Worker(new URL("./monthWorker.ts", import.meta.url)));
}
