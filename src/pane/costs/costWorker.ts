import { Refusal } from "../../gas/refusal";
import type { Sheet, SheetRow } from "../../sheet/sheet";
import { CostDesk, type CostOrder } from "./costDesk";
import type { FromCostWorker, ToCostWorker } from "./workerMessages";

let sheets: (Omit<Sheet, "rows"> & { rows: SheetRow[] })[] = [];
let desk: CostDesk | undefined;

function tell(message: FromCostWorker): void {
  self.postMessage(message);
}

self.onmessage = ({ data }: MessageEvent<ToCostWorker>) => {
  switch (data.kind) {
    case "clear":
      sheets = [];
      desk = undefined;
      return;
    case "sheet":
      sheets.push({ ...data.sheet, rows: [] });
      return;
    case "rows":
      for (const row of data.rows) sheets.at(-1)!.rows.push(row);
      return;
    case "answer":
      answer(data.order);
  }
};

function answer(order: CostOrder): void {
  try {
    desk ??= new CostDesk(sheets);
    const steps = desk.answer(order);
    let step = steps.next();
    for (; !step.done; step = steps.next()) tell({ kind: "progress", ...step.value });
    tell({ kind: "answer", answer: step.value });
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
