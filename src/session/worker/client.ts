import { Refusal } from "../../gas/refusal";
import type { SheetRow } from "../../sheet/sheet";
import type { AnswerTo, ArgumentsOf, QuestionName } from "../questions";
import type { SheetHead } from "../snapshot";
import type { Terms } from "../terms";
import type { FromHost, ToHost } from "./messages";
import { PAGE_SLICE_MS, pacer, type Watch } from "./pace";
import { Pieces } from "./pieces";

/** An answer, and the version of the workbook that it is true of. */
export interface Answered<Answer> {
  readonly answer: Answer;
  readonly version: number;
}

/** The worker is gone, whatever it was doing: another one can take the work up again. */
export class WorkerLost extends Error {}

/** Starts a worker; undefined where none can start. */
export type StartWorker = () => Promise<Worker | undefined>;

const ROWS_PER_MESSAGE = 500;
/** A worker that does not say "ready" within this time is taken for one that cannot start. */
const READY_WITHIN_MS = 4000;

interface Waiting {
  readonly pieces: Pieces;
  readonly progress: Watch["progress"];
  readonly resolve: (answered: Answered<unknown>) => void;
  readonly reject: (why: Error) => void;
}

/** The way to the keeper of a workbook: in a worker, or where none can start, as in some Excel windows, on the page. */
export class Client {
  readonly #waiting = new Map<number, Waiting>();
  readonly #commits: { resolve: (isNew: boolean) => void; reject: (why: Error) => void }[] = [];
  #asked = 0;
  #lost: Error | undefined;

  private constructor(
    private readonly tell: (message: ToHost) => void,
    private readonly terminate: () => void,
  ) {}

  static async start(startWorker: StartWorker): Promise<Client> {
    const worker = await startWorker();
    if (!worker) {
      // Only who has no worker fetches what the worker does.
      const { Host } = await import("./host");
      const host = new Host((message) => {
        here.#hear(message);
      }, PAGE_SLICE_MS);
      const here = new Client(host.hear, () => undefined);
      return here;
    }
    const client = new Client(
      (message) => {
        worker.postMessage(message);
      },
      () => {
        worker.terminate();
      },
    );
    worker.onmessage = ({ data }: MessageEvent<FromHost>) => {
      client.#hear(data);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      client.#lose(new WorkerLost(event.message));
    };
    return client;
  }

  list(names: readonly string[]): void {
    this.tell({ kind: "list", names });
  }

  async replace(head: SheetHead, rows: readonly SheetRow[], signal: AbortSignal): Promise<void> {
    await this.#sendRows(rows, signal);
    this.tell({ kind: "sheet", head });
  }

  async splice(
    sheet: string,
    firstRow: number,
    rows: readonly SheetRow[],
    signal: AbortSignal,
  ): Promise<void> {
    await this.#sendRows(rows, signal);
    this.tell({ kind: "splice", sheet, firstRow });
  }

  /** Whether the sheets or the terms are other ones by it. */
  commit(version: number, terms: Terms | undefined): Promise<boolean> {
    return new Promise((resolve, reject) => {
      if (this.#lost) throw this.#lost;
      this.#commits.push({ resolve, reject });
      this.tell({ kind: "commit", version, terms });
    });
  }

  /** Rejects with the signal's reason when called off, Refusal with a sentence, WorkerLost. */
  ask<Name extends QuestionName>(
    name: Name,
    wanted: ArgumentsOf<Name>,
    { progress, signal }: Watch,
  ): Promise<Answered<AnswerTo<Name>>> {
    const id = ++this.#asked;
    return new Promise((resolve, reject) => {
      signal.throwIfAborted();
      if (this.#lost) throw this.#lost;
      const callOff = () => {
        this.#waiting.delete(id);
        this.tell({ kind: "cancel", id });
        reject(signal.reason as Error);
      };
      signal.addEventListener("abort", callOff, { once: true });
      this.#waiting.set(id, {
        pieces: new Pieces(),
        progress,
        resolve: (answered) => {
          signal.removeEventListener("abort", callOff);
          resolve(answered as Answered<AnswerTo<Name>>);
        },
        reject: (why) => {
          signal.removeEventListener("abort", callOff);
          reject(why);
        },
      });
      this.tell({ kind: "ask", id, name, wanted });
    });
  }

  close(): void {
    this.terminate();
    this.#lose(new DOMException("The workbook was closed.", "AbortError"));
  }

  #lose(why: Error): void {
    this.#lost = why;
    for (const { reject } of [...this.#waiting.values(), ...this.#commits]) reject(why);
    this.#waiting.clear();
    this.#commits.length = 0;
  }

  async #sendRows(rows: readonly SheetRow[], signal: AbortSignal): Promise<void> {
    const pace = pacer(signal);
    let at = 0;
    do {
      this.tell({ kind: "rows", isFirst: at === 0, rows: rows.slice(at, at + ROWS_PER_MESSAGE) });
      await pace();
      at += ROWS_PER_MESSAGE;
    } while (at < rows.length);
  }

  #hear(message: FromHost): void {
    if (message.kind === "ready") return;
    if (message.kind === "committed") {
      this.#commits.shift()?.resolve(message.isNew);
      return;
    }
    const waiting = this.#waiting.get(message.id);
    if (!waiting) return;
    switch (message.kind) {
      case "progress":
        waiting.progress(message.doing, message.share);
        return;
      case "items":
        waiting.pieces.add(message.items);
        return;
      case "answer":
        this.#waiting.delete(message.id);
        waiting.resolve({ answer: waiting.pieces.joined(message.answer), version: message.version });
        return;
      case "failed":
        this.#waiting.delete(message.id);
        waiting.reject(failure(message));
    }
  }
}

function failure({ sentence, refused, details }: Extract<FromHost, { kind: "failed" }>): Error {
  if (refused) return new Refusal("unusable", sentence);
  const error = new Error(sentence);
  error.stack = details;
  return error;
}

/** A worker that answered, or undefined where none can start. */
export async function startWorker(): Promise<Worker | undefined> {
  if (typeof Worker === "undefined") return undefined;
  let worker: Worker | undefined;
  try {
    worker = new Worker(new URL("./worker.ts", import.meta.url));
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
