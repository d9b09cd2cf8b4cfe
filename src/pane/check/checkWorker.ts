import { failedWith, ReceivedSheets } from "../kit/sheetWorker";
import { checkSteps, type CheckOrder } from "./checkJob";
import { FINDINGS_PER_MESSAGE, type FromWorker, type ToWorker } from "./workerMessages";

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
    let step = steps.next();
    for (; !step.done; step = steps.next()) tell({ kind: "progress", ...step.value });
    const { findings, facts, ...report } = step.value;
    for (let at = 0; at < findings.length; at += FINDINGS_PER_MESSAGE) {
      const to = at + FINDINGS_PER_MESSAGE;
      tell({ kind: "findings", findings: findings.slice(at, to), facts: facts.slice(at, to) });
    }
    tell({ kind: "report", report });
  } catch (thrown) {
    tell(failedWith(thrown));
  }
}

tell({ kind: "ready" });
