import type { Sheet } from "../../sheet/sheet";
import { asked, SheetWorker, startedWorker } from "../kit/sheetWorker";
import { seldom } from "../kit/told";
import { checkSteps, type CheckOrder } from "./checkJob";
import { pacer, type Watch } from "./pace";
import type { CheckReport } from "./report";
import type { FromWorker } from "./workerMessages";

/** Reads and judges sheets without holding the screen. */
export interface CheckEngine {
  /**
   * Reads the sheets as one log and judges it as ordered.
   *
   * @throws Refusal with a sentence; the signal's reason when called off.
   */
  run(sheets: readonly Sheet[], order: CheckOrder, watch: Watch): Promise<CheckReport>;
  close(): void;
}

/** Works in a worker; where none can start, in slices on the page. */
export function checkEngine(startWorker = startCheckWorker): CheckEngine {
  const sheetWorker = new SheetWorker(startWorker);
  return {
    run: (sheets, order, watch) =>
      sheetWorker.run(
        sheets,
        watch,
        (worker) => runInWorker(worker, order, watch),
        () => runInSlices(sheets, order, watch),
      ),
    close: () => {
      sheetWorker.close();
    },
  };
}

async function runInSlices(
  sheets: readonly Sheet[],
  order: CheckOrder,
  { progress, signal }: Watch,
): Promise<CheckReport> {
  const pace = pacer(signal);
  const steps = checkSteps(sheets, order);
  const tell = seldom(({ doing, share }) => {
    progress(doing, share);
  });
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    tell(step.value);
    await pace();
  }
}

export function startCheckWorker(): Promise<Worker | undefined> {
  return startedWorker(() => new Worker(new URL("./checkWorker.ts", import.meta.url)));
}

function runInWorker(worker: Worker, order: CheckOrder, { progress, signal }: Watch): Promise<CheckReport> {
  return asked<FromWorker, CheckReport>(worker, { kind: "run", order }, signal, (message) => {
    if (message.kind === "progress") progress(message.doing, message.share);
    return message.kind === "answer" ? message.answer : undefined;
  });
}
