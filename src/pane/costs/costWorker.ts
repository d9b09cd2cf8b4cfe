import { failedWith, ReceivedSheets } from "../kit/sheetWorker";
import { CostDesk, type CostOrder } from "./costDesk";
import type { FromCostWorker, ToCostWorker } from "./workerMessages";

const received = new ReceivedSheets();
let desk: CostDesk | undefined;

function tell(message: FromCostWorker): void {
  self.postMessage(message);
}

self.onmessage = ({ data }: MessageEvent<ToCostWorker>) => {
  if (data.kind === "answer") return answer(data.order);
  desk = undefined;
  received.take(data);
};

function answer(order: CostOrder): void {
  try {
    desk ??= new CostDesk(received.sheets);
    const steps = desk.answer(order);
    let step = steps.next();
    for (; !step.done; step = steps.next()) tell({ kind: "progress", ...step.value });
    tell({ kind: "answer", answer: step.value });
  } catch (thrown) {
    tell(failedWith(thrown));
  }
}

tell({ kind: "ready" });
