import { failedWith, ReceivedSheets, tellAnswer } from "../kit/sheetWorker";
import { seldom } from "../kit/told";
import { checkSteps, type CheckOrder } from "./checkJob";
import type { FromWorker, ToWorker } from "./workerMessages";

const received = new ReceivedSheets();

function tell(message: FromWorker): void {
  self.postMessage(message);
}

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if (data.kind === "run") run(data.order);
  else received.take(data);
};

function run(order: CheckOrder): void {
  try {
    const steps = checkSteps(received.sheets, order);
    const progress = seldom((told) => {
      tell({ kind: "progress", ...told });
    });
    let step = steps.next();
    for (; !step.done; step = steps.next()) progress(step.value);
    tellAnswer(step.value, tell);
  } catch (thrown) {
    tell(failedWith(thrown));
  }
}

tell({ kind: "ready" });
