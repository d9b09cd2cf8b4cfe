import { failedWith, ReceivedSheets } from "../kit/sheetWorker";
import { MonthDesk, type MonthOrder } from "./monthDesk";
import type { FromMonthWorker, ToMonthWorker } from "./workerMessages";

const received = new ReceivedSheets();
let desk: MonthDesk | undefined;

function tell(message: FromMonthWorker): void {
  self.postMessage(message);
}

self.onmessage = ({ data }: MessageEvent<ToMonthWorker>) => {
  if (data.kind === "answer") {
    void answer(data.order);
    return;
  }
  desk = undefined;
  received.take(data);
};

async function answer(order: MonthOrder): Promise<void> {
  try {
    desk ??= new MonthDesk(received.sheets);
    const steps = desk.answer(order);
    let step = await steps.next();
    for (; !step.done; step = await steps.next()) tell({ kind: "progress", ...step.value });
    tell({ kind: "answer", answer: step.value });
  } catch (thrown) {
    tell(failedWith(thrown));
  }
}

tell({ kind: "ready" });
