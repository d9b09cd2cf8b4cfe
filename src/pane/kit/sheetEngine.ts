import { Refusal } from "../../gas/refusal";
import type { Sheet, SheetRow } from "../../sheet/sheet";
import { pacer, type Watch } from "../check/pace";

/** Where the work stands, between two steps. */
export interface WorkStep {
  readonly doing: string;
  readonly share: number;
}

/** Answers orders about the sheets it was made with. Orders and answers are plain values: they travel to a worker. */
export interface SheetDesk<Order, Answer> {
  answer(order: Order): AsyncGenerator<WorkStep, Answer, undefined>;
}

/** Asks a desk without holding the screen. */
export interface SheetEngine<Order, Answer> {
  /** The same sheets are sent once. Throws Refusal with a sentence, and the signal's reason when called off. */
  ask(sheets: readonly Sheet[], order: Order, watch: Watch): Promise<Answer>;
  close(): void;
}

type ToDesk<Order> =
  | { readonly kind: "clear" }
  | { readonly kind: "sheet"; readonly sheet: Omit<Sheet, "rows"> }
  | { readonly kind: "rows"; readonly rows: readonly SheetRow[] }
  | { readonly kind: "ask"; readonly order: Order };

type FromDesk<Answer> =
  | { readonly kind: "ready" }
  | ({ readonly kind: "progress" } & WorkStep)
  | { readonly kind: "answer"; readonly answer: Answer }
  | {
      readonly kind: "failed";
      readonly sentence: string;
      readonly refused: boolean;
      readonly details: string;
    };

/** Sheets travel in blocks of rows, since copying a big sheet at once would hold the screen. */
const ROWS_PER_MESSAGE = 500;
/** A worker that does not say "ready" within this time is taken for one that cannot start. */
const READY_WITHIN_MS = 4000;

/** Works in a worker; where none can start, as in some Excel windows, in slices on the page. */
export function sheetEngine<Order, Answer>(
  makeWorker: () => Worker,
  deskFor: (sheets: readonly Sheet[]) => SheetDesk<Order, Answer>,
): SheetEngine<Order, Answer> {
  let started: Promise<Worker | undefined> | undefined;
  let held: { readonly sheets: readonly Sheet[]; readonly desk?: SheetDesk<Order, Answer> } | undefined;
  const close = () => {
    void started?.then((worker) => worker?.terminate());
    started = undefined;
    held = undefined;
  };
  return {
    close,
    async ask(sheets, order, watch) {
      started ??= startWorker(makeWorker);
      const mine = started;
      const worker = await mine;
      watch.signal.throwIfAborted();
      if (!worker) {
        if (held?.sheets !== sheets) held = { sheets, desk: deskFor(sheets) };
        return inSlices(held.desk!, order, watch);
      }
      // A worker that was called off or failed is not asked again: the next order starts a fresh one.
      const giveUp = () => {
        if (started === mine) close();
      };
      watch.signal.addEventListener("abort", giveUp, { once: true });
      try {
        if (held?.sheets !== sheets) await send(worker, sheets, watch);
        held = { sheets };
        return await inWorker<Order, Answer>(worker, order, watch);
      } catch (thrown) {
        giveUp();
        throw thrown;
      } finally {
        watch.signal.removeEventListener("abort", giveUp);
      }
    },
  };
}

async function inSlices<Order, Answer>(
  desk: SheetDesk<Order, Answer>,
  order: Order,
  { progress, signal }: Watch,
): Promise<Answer> {
  const pace = pacer(signal);
  const steps = desk.answer(order);
  for (;;) {
    const step = await steps.next();
    if (step.done) return step.value;
    progress(step.value.doing, step.value.share);
    await pace();
  }
}

async function startWorker(makeWorker: () => Worker): Promise<Worker | undefined> {
  if (typeof Worker === "undefined") return undefined;
  let worker: Worker | undefined;
  try {
    worker = makeWorker();
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
  const tell = (message: ToDesk<never>) => {
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

function inWorker<Order, Answer>(worker: Worker, order: Order, { progress, signal }: Watch): Promise<Answer> {
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
    worker.onmessage = ({ data }: MessageEvent<FromDesk<Answer>>) => {
      if (data.kind === "progress") progress(data.doing, data.share);
      else if (data.kind === "answer") resolve(data.answer);
      else if (data.kind === "failed") reject(failure(data));
    };
    worker.postMessage({ kind: "ask", order } satisfies ToDesk<Order>);
  });
}

function failure({ sentence, refused, details }: Extract<FromDesk<never>, { kind: "failed" }>): Error {
  if (refused) return new Refusal("unusable", sentence);
  const error = new Error(sentence);
  error.stack = details;
  return error;
}

/** The worker's side: gathers the sheets as they come, and answers orders about them. */
export function serveSheets<Order, Answer>(
  deskFor: (sheets: readonly Sheet[]) => SheetDesk<Order, Answer>,
): void {
  let sheets: (Omit<Sheet, "rows"> & { rows: SheetRow[] })[] = [];
  let desk: SheetDesk<Order, Answer> | undefined;
  const tell = (message: FromDesk<Answer>) => {
    self.postMessage(message);
  };
  const answer = async (order: Order) => {
    try {
      desk ??= deskFor(sheets);
      const steps = desk.answer(order);
      for (;;) {
        const step = await steps.next();
        if (step.done) return tell({ kind: "answer", answer: step.value });
        tell({ kind: "progress", ...step.value });
      }
    } catch (thrown) {
      const error = thrown instanceof Error ? thrown : new Error(String(thrown));
      const { message, stack = "" } = error;
      tell({ kind: "failed", sentence: message, refused: error instanceof Refusal, details: stack });
    }
  };
  self.onmessage = ({ data }: MessageEvent<ToDesk<Order>>) => {
    if (data.kind === "clear") {
      sheets = [];
      desk = undefined;
    } else if (data.kind === "sheet") sheets.push({ ...data.sheet, rows: [] });
    else if (data.kind === "rows") sheets.at(-1)?.rows.push(...data.rows);
    else void answer(data.order);
  };
  tell({ kind: "ready" });
}
