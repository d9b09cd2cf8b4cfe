import type { Finding } from "../../audit/finding";
import { Refusal } from "../../gas/refusal";
import type { Sheet } from "../../sheet/sheet";
import { checkSteps, type CheckOrder } from "./checkJob";
import { pacer, type Watch } from "./pace";
import type { CheckReport, FindingFacts } from "./report";
import { ROWS_PER_MESSAGE, type FromWorker, type ToWorker } from "./workerMessages";

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

/** A worker that does not say "ready" within this time is taken for one that cannot start. */
const READY_WITHIN_MS = 4000;

/** Works in a worker; where none can start, as in some Excel windows, in slices on the page. */
export function checkEngine(startWorker = startCheckWorker): CheckEngine {
  let started: Promise<Worker | undefined> | undefined;
  /** The sheets that worker has. */
  let sent: readonly Sheet[] | undefined;
  const stop = () => {
    void started?.then((worker) => worker?.terminate());
    started = undefined;
    sent = undefined;
  };
  return {
    async run(sheets, order, watch) {
      started ??= startWorker();
      const mine = started;
      const worker = await mine;
      watch.signal.throwIfAborted();
      if (!worker) return runInSlices(sheets, order, watch);
      // A worker that was called off or failed is not asked again: the next run starts a fresh one.
      const giveUp = () => {
        if (started === mine) stop();
      };
      watch.signal.addEventListener("abort", giveUp, { once: true });
      try {
        if (sent !== sheets) await send(worker, sheets, watch);
        sent = sheets;
        return await runInWorker(worker, order, watch);
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

async function runInSlices(
  sheets: readonly Sheet[],
  order: CheckOrder,
  { progress, signal }: Watch,
): Promise<CheckReport> {
  const pace = pacer(signal);
  const steps = checkSteps(sheets, order);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    progress(step.value.doing, step.value.share);
    await pace();
  }
}

/** A worker that answered, or undefined where none can start. */
export async function startCheckWorker(): Promise<Worker | undefined> {
  if (typeof Worker === "undefined") return undefined;
  let worker: Worker | undefined;
  try {
    worker = new Worker(new URL("./checkWorker.ts", import.meta.url));
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
  const tell = (message: ToWorker) => {
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

function runInWorker(worker: Worker, order: CheckOrder, { progress, signal }: Watch): Promise<CheckReport> {
  return new Promise((resolve, reject) => {
    const findings: Finding[] = [];
    const facts: FindingFacts[] = [];
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
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
      switch (data.kind) {
        case "ready":
          return;
        case "progress":
          progress(data.doing, data.share);
          return;
        case "findings":
          findings.push(...data.findings);
          facts.push(...data.facts);
          return;
        case "report":
          resolve({ ...data.report, findings, facts });
          return;
        case "failed":
          reject(failure(data));
      }
    };
    worker.postMessage({ kind: "run", order } satisfies ToWorker);
  });
}

function failure({ sentence, refused, details }: Extract<FromWorker, { kind: "failed" }>): Error {
  if (refused) return new Refusal("unusable", sentence);
  const error = new Error(sentence);
  error.stack = details;
  return error;
}
