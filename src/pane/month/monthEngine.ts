import type { Sheet } from "../../sheet/sheet";
import { pacer, type Watch } from "../check/pace";
import { asked, SheetWorker, startedWorker } from "../kit/sheetWorker";
import { MonthDesk, type MonthAnswer, type MonthOrder } from "./monthDesk";
import type { FromMonthWorker } from "./workerMessages";

/** Makes month reports without holding the screen. */
export interface MonthEngine {
  /**
   * What was ordered of these sheets, which are read once.
   *
   * @throws Refusal with a sentence; the signal's reason when called off.
   */
  answer(sheets: readonly Sheet[], order: MonthOrder, watch: Watch): Promise<MonthAnswer>;
  close(): void;
}

/** Works in a worker; where none can start, in slices on the page. */
export function monthEngine(startWorker = startMonthWorker): MonthEngine {
  const sheetWorker = new SheetWorker(startWorker);
  let onPage: { readonly sheets: readonly Sheet[]; readonly desk: MonthDesk } | undefined;
  return {
    answer: (sheets, order, watch) =>
      sheetWorker.run(
        sheets,
        watch,
        (worker) => inWorker(worker, order, watch),
        () => {
          if (onPage?.sheets !== sheets) onPage = { sheets, desk: new MonthDesk(sheets) };
          return inSlices(onPage.desk, order, watch);
        },
      ),
    close: () => {
      sheetWorker.close();
    },
  };
}

async function inSlices(
  desk: MonthDesk,
  order: MonthOrder,
  { progress, signal }: Watch,
): Promise<MonthAnswer> {
  const pace = pacer(signal);
  const steps = desk.answer(order);
  for (;;) {
    const step = await steps.next();
    if (step.done) return step.value;
    progress(step.value.doing, step.value.share);
    await pace();
  }
}

function inWorker(worker: Worker, order: MonthOrder, { progress, signal }: Watch): Promise<MonthAnswer> {
  return asked<FromMonthWorker, MonthAnswer>(worker, { kind: "answer", order }, signal, (message) => {
    if (message.kind === "progress") progress(message.doing, message.share);
    return message.kind === "answer" ? message.answer : undefined;
  });
}

function startMonthWorker(): Promise<Worker | undefined> {
  return startedWorker(() => new Worker(new URL("./monthWorker.ts", import.meta.url)));
}
