import { Refusal } from "../../gas/refusal";
import type { Sheet, SheetRow } from "../../sheet/sheet";
import { checkSteps } from "./checkJob";
import { FINDINGS_PER_MESSAGE, type FromWorker, type ToWorker } from "./workerMessages";

let sheets: (Omit<Sheet, "rows"> & { rows: SheetRow[] })[] = [];

function tell(message: FromWorker): void {
  self.postMessage(message);
}

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  switch (data.kind) {
    case "clear":
      sheets = [];
      return;
    case "sheet":
      sheets.push({ ...data.sheet, rows: [] });
      return;
    case "rows":
      for (const row of data.rows) sheets.at(-1)!.rows.push(row);
      return;
    case "run":
      run(data.order);
  }
};

function run(order: Extract<ToWorker, { kind: "run" }>["order"]): void {
  try {
    const steps = checkSteps(sheets, order);
    let step = steps.next();
    for (; !step.done; step = steps.next()) tell({ kind: "progress", ...step.value });
    const { findings, facts, ...report } = step.value;
    for (let at = 0; at < findings.length; at += FINDINGS_PER_MESSAGE) {
      const to = at + FINDINGS_PER_MESSAGE;
      tell({ kind: "findings", findings: findings.slice(at, to), facts: facts.slice(at, to) });
    }
    tell({ kind: "report", report });
  } catch (thrown) {
    const error = thrown instanceof Error ? thrown : new Error(String(thrown));
    tell({
      kind: "failed",
      sentence: error.message,
      refused: error instanceof Refusal,
      details: error.stack ?? "",
    });
  }
}

tell({ kind: "ready" });
