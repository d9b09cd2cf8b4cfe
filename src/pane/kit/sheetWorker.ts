import { Refusal } from "../../gas/refusal";
import type { Sheet, SheetRow } from "../../sheet/sheet";
import { pacer, type Watch } from "../check/pace";
import { Pieces, takenApart } from "./pieces";

/** How sheets travel to a worker: in blocks of rows, since copying a big sheet at once would hold the screen. */
export type SheetMessage =
  | { readonly kind: "clear" }
  | { readonly kind: "sheet"; readonly sheet: Omit<Sheet, "rows"> }
  | { readonly kind: "rows"; readonly rows: readonly SheetRow[] };

/** What a worker says when it is there, and when it failed. */
export type WorkerMessage =
  | { readonly kind: "ready" }
  /** Items of long lists in the answer that follows. */
  | { readonly kind: "items"; readonly items: readonly unknown[] }
  | {
      readonly kind: "failed";
      readonly sentence: string;
      readonly refused: boolean;
      readonly details: string;
    };

const ROWS_PER_MESSAGE = 500;
/** A worker that does not say "ready" within this time is taken for one that cannot start. */
const READY_WITHIN_MS = 4000;

/** A worker and the sheets it was given; where none can start, as in some Excel windows, the page does the work. */
export class SheetWorker {
  private started: Promise<Worker | undefined> | undefined;
  private sent: readonly Sheet[] | undefined;

  constructor(private readonly start: () => Promise<Worker | undefined>) {}

  /** Does a job in the worker, with these sheets at hand there; or on the page. Rejects with the signal's reason. */
  async run<T>(
    sheets: readonly Sheet[],
    watch: Watch,
    inWorker: (worker: Worker) => Promise<T>,
    onPage: () => Promise<T>,
  ): Promise<T> {
    this.started ??= this.start();
    const mine = this.started;
    const worker = await mine;
    watch.signal.throwIfAborted();
    if (!worker) return onPage();
    // A worker that was called off or failed is not asked again: the next run starts a fresh one.
    const giveUp = () => {
      if (this.started === mine) this.close();
    };
    watch.signal.addEventListener("abort", giveUp, { once: true });
    try {
      if (this.sent !== sheets) await send(worker, sheets, watch);
      this.sent = sheets;
      return await inWorker(worker);
    } catch (thrown) {
      giveUp();
      throw thrown;
    } finally {
      watch.signal.removeEventListener("abort", giveUp);
    }
  }

  close(): void {
    void this.started?.then((worker) => worker?.terminate());
    this.started = undefined;
    this.sent = undefined;
  }
}

/** A worker that answered, or undefined where none can start. */
export async function startedWorker(make: () => Worker): Promise<Worker | undefined> {
  if (typeof Worker === "undefined") return undefined;
  let worker: Worker | undefined;
  try {
    worker = make();
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
  const tell = (message: SheetMessage) => {
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

/** Asks a worker, hears it out, and resolves with what `hear` makes of its messages: undefined until the last one. */
export function asked<From extends { readonly kind: string }, T>(
  worker: Worker,
  question: unknown,
  signal: AbortSignal,
  hear: (message: From) => T | undefined,
): Promise<T> {
  const pieces = new Pieces();
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
    worker.onmessage = ({ data }: MessageEvent<From | WorkerMessage>) => {
      if (isFailure(data)) {
        reject(failure(data));
        return;
      }
      if (data.kind === "ready") return;
      if (isItems(data)) {
        pieces.add(data.items);
        return;
      }
      const answer = hear(data as From);
      if (answer !== undefined) resolve(pieces.joined(answer) as T);
    };
    worker.postMessage(question);
  });
}

type Failed = Extract<WorkerMessage, { kind: "failed" }>;

function isItems(message: { readonly kind: string }): message is Extract<WorkerMessage, { kind: "items" }> {
  return message.kind === "items";
}

function isFailure(message: { readonly kind: string }): message is Failed {
  return message.kind === "failed";
}

function failure({ sentence, refused, details }: Failed): Error {
  if (refused) return new Refusal("unusable", sentence);
  const error = new Error(sentence);
  error.stack = details;
  return error;
}

/** What a worker answers: its long lists ahead of it. */
export function tellAnswer<Answer>(
  answer: Answer,
  tell: (message: WorkerMessage | { readonly kind: "answer"; readonly answer: Answer }) => void,
): void {
  const rest = takenApart(answer, (items) => {
    tell({ kind: "items", items });
  });
  tell({ kind: "answer", answer: rest as Answer });
}

/** What a worker says of something thrown. */
export function failedWith(thrown: unknown): Failed {
  const error = thrown instanceof Error ? thrown : new Error(String(thrown));
  return {
    kind: "failed",
    sentence: error.message,
    refused: error instanceof Refusal,
    details: error.stack ?? "",
  };
}

/** The sheets inside a worker, as they come. */
export class ReceivedSheets {
  readonly sheets: (Omit<Sheet, "rows"> & { rows: SheetRow[] })[] = [];

  take(message: SheetMessage): void {
    switch (message.kind) {
      case "clear":
        this.sheets.length = 0;
        return;
      case "sheet":
        this.sheets.push({ ...message.sheet, rows: [] });
        return;
      case "rows":
        for (const row of message.rows) this.sheets.at(-1)!.rows.push(row);
    }
  }
}
