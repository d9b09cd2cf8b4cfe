import type { Sheet } from "../../sheet/sheet";
import { pacer, type Watch } from "../check/pace";
import { asked, SheetWorker, startedWorker } from "../kit/sheetWorker";
import { CostDesk, type CostAnswer, type CostOrder } from "./costDesk";
import type { FromCostWorker } from "./workerMessages";

/** Works out costs without holding the screen. */
export interface CostEngine {
  /**
   * What the sheets come to, as ordered. The same sheets are read once.
   *
   * @throws Refusal with a sentence; the signal's reason when called off.
   */
  answer(sheets: readonly Sheet[], order: CostOrder, watch: Watch): Promise<CostAnswer>;
  close(): void;
}

/** Works in a worker; where none can start, in slices on the page. */
export function costEngine(startWorker = startCostWorker): CostEngine {
  const sheetWorker = new SheetWorker(startWorker);
  let onPage: { readonly sheets: readonly Sheet[]; readonly desk: CostDesk } | undefined;
  return {
    answer: (sheets, order, watch) =>
      sheetWorker.run(
        sheets,
        watch,
        (worker) => inWorker(worker, order, watch),
        () => {
          if (onPage?.sheets !== sheets) onPage = { sheets, desk: new CostDesk(sheets) };
          return inSlices(onPage.desk, order, watch);
        },
      ),
    close: () => {
      sheetWorker.close();
    },
  };
}

async function inSlices(desk: CostDesk, order: CostOrder, { progress, signal }: Watch): Promise<CostAnswer> {
  const pace = pacer(signal);
  const steps = desk.answer(order);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    progress(step.value.doing, step.value.share);
    await pace();
  }
}

function inWorker(worker: Worker, order: CostOrder, { progress, signal }: Watch): Promise<CostAnswer> {
  return asked<FromCostWorker, CostAnswer>(worker, { kind: "answer", order }, signal, (message) => {
    if (message.kind === "progress") progress(message.doing, message.share);
    return message.kind === "answer" ? message.answer : undefined;
  });
}

function startCostWorker(): Promise<Worker | undefined> {
  return startedWorker(() => new Worker(new URL("./costWorker.ts", import.meta.url)));
}
