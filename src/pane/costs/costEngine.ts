import { Refusal } from "../../gas/refusal";
import type { Sheet } from "../../sheet/sheet";
import { pacer, type Watch } from "../check/pace";
import { CostDesk, type CostAnswer, type CostOrder } from "./costDesk";
import { ROWS_PER_MESSAGE, type FromCostWorker, type ToCostWorker } from "./workerMessages";

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

const READY_WITHIN_MS = 4000;

/** Works in a worker; where none can start, as in some Excel windows, in slices on the page. */
export function costEngine(startWorker = startCostWorker): CostEngine {
  let started: Promise<Worker | undefined> | undefined;
  let held: { readonly sheets: readonly Sheet[]; readonly desk?: CostDesk } | undefined;
  const stop = () => {
    void started?.then((worker) => worker?.terminate());
    started = undefined;
    held = undefined;
  };
  return {
    async answer(sheets, order, watch) {
      started ??= startWorker();
      const mine = started;
      const worker = await mine;
      watch.signal.throwIfAborted();
      if (!worker) {
        if (held?.sheets !== sheets) held = { sheets, desk: new CostDesk(sheets) };
        return inSlices(held.desk!, order, watch);
      }
      // A worker that was called off or failed is not asked again: the next order starts a fresh one.
      const giveUp = () => {
        if (started === mine) stop();
      };
      watch.signal.addEventListener("abort", giveUp, { once: true });
      try {
        if (held?.sheets !== sheets) await send(worker, sheets, watch);
        held = { sheets };
        return await inWorker(worker, order, watch);
      } catch (thrown) {
        giveUp();
        throw thrown;
      } finally {
        watch.signal.removeEventListener("abort", giveUp);
      }
    },
    close: stop,
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

/** A worker that answered, or undefined where none can start. */
export async function startCostWorker(): Promise<Worker | undefined> {
  if (typeof Worker === "undefined") return undefined;
  let worker: Worker | undefined;
  try {
    worker = new Worker(new URL("./costWorker.ts", import.meta.url));
    await firstWord(worker);
    return worker;
  } catch {
    worker?.terminate();
    return undefined;
  }
}

function firstWord(worker: Worker): Promise<void> {
  return new Promise((resolve, reject) => {
    const late = setTimeout(() => {
      reject(new Error("The worker did not start."));
    }, READY_WITHIN_MS);
    worker.onmessage = () => {
      clearTimeout(late);
      resolve();
    };
    worker.onerror = (event) => {
      clearTimeout(late);
      event.preventDefault();
      reject(new Error("The worker cannot start."));
    };
  });
}

async function send(worker: Worker, sheets: readonly Sheet[], { signal }: Watch): Promise<void> {
  const tell = (message: ToCostWorker) => {
    worker.postMessage(message);
  };
  const pace = pacer(signal);
  tell({ kind: "clear" });
  for (const { rows, ...sheet } of sheets) {
    tell({ kind: "sheet", sheet });
    for (let at = 0; at < rows.length; at += ROWS_PER_MESSAGE) {
      tell({ kind: "rows", rows: rows.slice(at, at + ROWS_PER_MESSAGE) });
      await pace();
    }
  }
}

function inWorker(worker: Worker, order: CostOrder, { progress, signal }: Watch): Promise<CostAnswer> {
  return new Promise((resolve, reject) => {
    signal.addEventListener(
      "abort",
      () => {
        reject(signal.reason as Error);
      },
      { once: true },
    );
    worker.onerror = (event) => {
      event.preventDefault();
      reject(new Error(event.message));
    };
    worker.onmessage = ({ data }: MessageEvent<FromCostWorker>) => {
      if (data.kind === "progress") progress(data.doing, data.share);
      else if (data.kind === "answer") resolve(data.answer);
      else if (data.kind === "failed") reject(failure(data));
    };
    worker.postMessage({ kind: "answer", order } satisfies ToCostWorker);
  });
}

function failure({ sentence, refused, details }: Extract<FromCostWorker, { kind: "failed" }>): Error {
  if (refused) return new Refusal("unusable", sentence);
  const error = new Error(sentence);
  error.stack = details;
  return error;
}
