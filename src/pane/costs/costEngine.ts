import { deskEngine } from "../kit/deskEngine";
import { startedWorker } from "../kit/sheetWorker";
import { CostDesk } from "./costDesk";

/** Works out costs without holding the screen. */
export const costEngine = (startWorker = startCostWorker) =>
  deskEngine(startWorker, (sheets) => new CostDesk(sheets));

export type CostEngine = ReturnType<typeof costEngine>;

function startCostWorker(): Promise<Worker | undefined> {
  return startedWorker(() => new Worker(new URL("./costWorker.ts", import.meta.url)));
}
