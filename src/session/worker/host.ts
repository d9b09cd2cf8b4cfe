import { Refusal } from "../../gas/refusal";
import type { SheetRow } from "../../sheet/sheet";
import { LogBook } from "../logBook";
import { answerSteps, type QuestionName } from "../questions";
import { Snapshot } from "../snapshot";
import type { FromHost, ToHost } from "./messages";
import { pacer } from "./pace";
import { takenApart } from "./pieces";
import { seldom } from "./told";

interface Asked {
  readonly id: number;
  readonly name: QuestionName;
  readonly wanted: unknown;
}

/**
 * The keeper of one workbook, in a worker or on the page: it takes what changed, and answers questions one after the
 * other. A commit while it works on an answer makes it begin that answer anew: none is ever of an older state.
 */
export class Host {
  readonly #snapshot = new Snapshot();
  #rows: SheetRow[] = [];
  #book: LogBook | undefined;
  #version = 0;
  readonly #asked: Asked[] = [];
  #underWay: { readonly id: number; readonly controller: AbortController } | undefined;

  constructor(
    private readonly tell: (message: FromHost) => void,
    private readonly sliceMs: number,
  ) {}

  readonly hear = (message: ToHost): void => {
    switch (message.kind) {
      case "list":
        this.#snapshot.list(message.names);
        return;
      case "rows":
        if (message.isFirst) this.#rows = [];
        for (const row of message.rows) this.#rows.push(row);
        return;
      case "sheet":
        this.#snapshot.replace(message.head, this.#takeRows());
        return;
      case "splice":
        this.#snapshot.splice(message.sheet, message.firstRow, this.#takeRows());
        return;
      case "commit":
        this.#commit(message);
        return;
      case "ask":
        this.#asked.push(message);
        void this.#work();
        return;
      case "cancel":
        this.#cancel(message.id);
    }
  };

  #takeRows(): readonly SheetRow[] {
    const rows = this.#rows;
    this.#rows = [];
    return rows;
  }

  #commit({ version, terms }: Extract<ToHost, { kind: "commit" }>): void {
    this.#snapshot.commit();
    const { sheets } = this.#snapshot;
    const before = this.#book;
    const isNew = before?.sheets !== sheets || JSON.stringify(before.terms) !== JSON.stringify(terms);
    this.#version = version;
    if (isNew) {
      this.#book = terms && new LogBook(sheets, terms, before);
      this.#underWay?.controller.abort();
    }
    this.tell({ kind: "committed", isNew });
    void this.#work();
  }

  #cancel(id: number): void {
    const at = this.#asked.findIndex((each) => each.id === id);
    if (at >= 0) this.#asked.splice(at, 1);
    if (this.#underWay?.id === id) this.#underWay.controller.abort();
  }

  /** Answers what was asked, the first first. */
  async #work(): Promise<void> {
    if (this.#underWay) return;
    for (let next = this.#asked[0]; next && this.#book; next = this.#asked[0]) {
      const controller = new AbortController();
      this.#underWay = { id: next.id, controller };
      await this.#answer(next, this.#book, controller.signal);
      if (!controller.signal.aborted && this.#asked[0] === next) this.#asked.shift();
      this.#underWay = undefined;
    }
  }

  async #answer({ id, name, wanted }: Asked, book: LogBook, signal: AbortSignal): Promise<void> {
    const version = this.#version;
    try {
      const pace = pacer(signal, this.sliceMs);
      const progress = seldom((told) => {
        this.tell({ kind: "progress", id, ...told });
      });
      const steps = answerSteps(name, book, wanted);
      let step = await steps.next();
      for (; !step.done; step = await steps.next()) {
        progress(step.value);
        await pace();
      }
      signal.throwIfAborted();
      const rest = takenApart(step.value, (items) => {
        this.tell({ kind: "items", id, items });
      });
      this.tell({ kind: "answer", id, version, answer: rest });
    } catch (thrown) {
      if (signal.aborted) return;
      const error = thrown instanceof Error ? thrown : new Error(String(thrown));
      const refused = error instanceof Refusal;
      this.tell({ kind: "failed", id, sentence: error.message, refused, details: error.stack ?? "" });
    }
  }
}
