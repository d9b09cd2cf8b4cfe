import type { ShopSettings } from "../workbook/settings";
import type { Workbook, WorkbookChange } from "../workbook/workbook";
import { Pending, type RowSpan } from "./pending";
import { problemOf, type Problem } from "./problem";
import type { AnswerTo, ArgumentsOf, QuestionName } from "./questions";
import { termsOf, type Terms } from "./terms";
import { Client, startWorker, WorkerLost, type Answered, type StartWorker } from "./worker/client";
import type { Watch } from "./worker/pace";
import type { Told } from "./worker/told";

/** A sheet the host could not hand over, and why. */
export interface UnreachableSheet {
  readonly name: string;
  readonly sentence: string;
}

/** How an open workbook stands. */
export interface SessionState {
  /** Goes up whenever anything in it is another; 0 until it was read. */
  readonly version: number;
  /** Reading the whole workbook. */
  readonly busy: Told | undefined;
  /** Why it could not be read, or not again. */
  readonly problem: Problem | undefined;
  readonly unreachable: readonly UnreachableSheet[];
}

const NOTHING_YET: SessionState = { version: 0, busy: undefined, problem: undefined, unreachable: [] };

/** So long changes are gathered: a key press comes as several, and its formulas follow it. */
const GATHER_MS = 20;

/**
 * One open workbook. It is read once, into one keeper of its one log; after that what changed is read again, as soon as
 * the host tells of it. Whoever asks gets an answer that is true of one version of the workbook, never of a mixture.
 */
export class Session {
  #state = NOTHING_YET;
  readonly #listeners = new Set<() => void>();
  #client: Promise<Client> | undefined;
  #terms: Terms | undefined;
  /** Those that the keeper has. */
  #committed: Terms | undefined;
  #pending = new Pending();
  #keeping: Promise<void> | undefined;
  #controller = new AbortController();
  #commits = 0;
  /** The sheets in the order of their tabs, and whether they were hidden when they were read; undefined if never. */
  #known = new Map<string, boolean | undefined>();
  readonly #stopWatching: (() => void) | undefined;

  constructor(
    readonly workbook: Workbook,
    private readonly start: StartWorker = startWorker,
  ) {
    this.#pending.all = true;
    this.#stopWatching = workbook.watch?.((changes) => {
      this.#hear(changes);
    });
  }

  /** Whether changes are told of; else the workbook must be read again on request. */
  get isLive(): boolean {
    return this.#stopWatching !== undefined;
  }

  get state(): SessionState {
    return this.#state;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  /** Says what the log is read and judged by. The workbook is read as soon as the shop has said country and units. */
  setSettings(settings: ShopSettings): void {
    const terms = termsOf(settings);
    if (!terms || JSON.stringify(terms) === JSON.stringify(this.#terms)) return;
    this.#terms = terms;
    void this.#keepUp();
  }

  /** Reads the whole workbook again. */
  readAgain(): Promise<void> {
    this.#pending.all = true;
    return this.#keepUp();
  }

  /** Calls off reading the workbook, whether or not the host answers. */
  cancel(): void {
    if (!this.#keeping) return;
    this.#controller.abort();
    this.#keeping = undefined;
    // Half of it may have come: it is all read again before anything is taken over.
    this.#pending.all = true;
    this.#set({ busy: undefined });
  }

  /**
   * Asks something of the log as it is now. Where the host does not tell of changes, `fresh` reads it again before.
   * Rejects with the signal's reason when called off, else with what `problemOf` knows.
   */
  async ask<Name extends QuestionName>(
    name: Name,
    wanted: ArgumentsOf<Name>,
    watch: Watch,
    fresh = false,
  ): Promise<Answered<AnswerTo<Name>>> {
    if (fresh && !this.isLive) this.#pending.all = true;
    for (let isSecond = false; ; isSecond = true) {
      await this.#settled(watch.signal);
      const client = await this.#started();
      try {
        return await client.ask(name, wanted, watch);
      } catch (thrown) {
        if (!(thrown instanceof WorkerLost) || isSecond) throw thrown;
        this.#forget();
      }
    }
  }

  close(): void {
    this.#stopWatching?.();
    this.#controller.abort();
    void this.#client?.then((client) => {
      client.close();
    });
    this.#client = undefined;
    this.#terms = undefined;
    this.#listeners.clear();
  }

  #set(part: Partial<SessionState>): void {
    this.#state = { ...this.#state, ...part };
    for (const listener of this.#listeners) listener();
  }

  #started(): Promise<Client> {
    return (this.#client ??= Client.start(this.start));
  }

  /** After the worker is gone: another one has to be told everything. */
  #forget(): void {
    this.#client = undefined;
    this.#pending.all = true;
  }

  #hear(changes: readonly WorkbookChange[]): void {
    for (const change of changes) this.#pending.add(change);
    // What changes before the first reading is read with it; after a reading that was called off nobody asked for more.
    if (this.#state.version > 0) void this.#keepUp(GATHER_MS);
  }

  /** Waits until nothing is left to be read. */
  async #settled(signal: AbortSignal): Promise<void> {
    await this.#keepUp();
    signal.throwIfAborted();
    if (this.#state.version === 0) throw new DOMException("The workbook was not read.", "AbortError");
  }

  /** Reads what is to be read until nothing is, then has it taken over at once. */
  #keepUp(after = 0): Promise<void> {
    if (this.#keeping) return this.#keeping;
    const keeping = this.#keepingUp(after).then((isDone) => {
      if (this.#keeping !== keeping) return;
      this.#keeping = undefined;
      if (isDone && !this.#pending.isEmpty) void this.#keepUp();
    });
    this.#keeping = keeping;
    return keeping;
  }

  async #keepingUp(after: number): Promise<boolean> {
    if (!this.#terms) return false;
    if (this.#pending.isEmpty && this.#terms === this.#committed) return true;
    const { signal } = (this.#controller = new AbortController());
    if (after > 0) await new Promise((resolve) => setTimeout(resolve, after));
    if (signal.aborted) return false;
    if (this.#pending.all) this.#set({ busy: { doing: "Reading the sheets", share: 0 }, problem: undefined });
    try {
      const client = await this.#started();
      while (!this.#pending.isEmpty || this.#terms !== this.#committed) {
        while (!this.#pending.isEmpty) {
          signal.throwIfAborted();
          const pending = this.#pending;
          this.#pending = new Pending();
          await unlessAborted(this.#read(pending, client, signal), signal);
        }
        signal.throwIfAborted();
        const terms = this.#terms;
        const version = ++this.#commits;
        client.list([...this.#known].flatMap(([name, hidden]) => (hidden === undefined ? [] : [name])));
        const isNew = await client.commit(version, terms);
        this.#committed = terms;
        if (isNew || this.#state.version === 0) this.#set({ version });
      }
      this.#set({ busy: undefined, problem: undefined });
      return true;
    } catch (thrown) {
      if (signal.aborted) return false;
      // What changed while it was read may be why it failed, such as a sheet that is gone.
      const isOvertaken = !this.#pending.isEmpty;
      this.#pending.all = true;
      if (isOvertaken) return true;
      if (thrown instanceof WorkerLost) this.#forget();
      this.#set({ busy: undefined, problem: problemOf(thrown) });
      return false;
    }
  }

  async #read(pending: Pending, client: Client, signal: AbortSignal): Promise<void> {
    const wanted = new Map(pending.sheets);
    const isOfUnknown = [...wanted.keys()].some((name) => !this.#known.has(name));
    if (pending.all || pending.list || isOfUnknown) await this.#list(wanted, pending.all, signal);
    signal.throwIfAborted();
    let done = 0;
    for (const [name, spans] of wanted) {
      const progress = (share: number) => {
        if (this.#state.busy && !signal.aborted)
          this.#set({ busy: { doing: `Reading ${name}`, share: (done + share) / wanted.size } });
      };
      if (spans === "whole" || !this.workbook.readRows) await this.#readSheet(name, client, progress, signal);
      else
        for (const { firstRow, lastRow } of spans) {
          const rows = await this.workbook.readRows(name, firstRow, lastRow);
          signal.throwIfAborted();
          await client.splice(name, firstRow, rows, signal);
        }
      signal.throwIfAborted();
      done++;
    }
  }

  /** Lists the sheets, and adds those to be read that are new, or were hidden or shown; or all. */
  async #list(
    wanted: Map<string, "whole" | readonly RowSpan[]>,
    all: boolean,
    signal: AbortSignal,
  ): Promise<void> {
    const infos = await this.workbook.listSheets();
    signal.throwIfAborted();
    const known = this.#known;
    for (const name of [...wanted.keys()]) if (!infos.some((info) => info.name === name)) wanted.delete(name);
    for (const { name, hidden } of infos) if (all || known.get(name) !== hidden) wanted.set(name, "whole");
    this.#known = new Map();
    for (const { name } of infos) this.#known.set(name, known.get(name));
    this.#set({
      unreachable: this.#state.unreachable.filter(({ name }) => this.#known.has(name)),
    });
  }

  /** A sheet that cannot be read is named, and the others are read; one that could be before holds up everything. */
  async #readSheet(
    name: string,
    client: Client,
    progress: (share: number) => void,
    signal: AbortSignal,
  ): Promise<void> {
    const others = this.#state.unreachable.filter((each) => each.name !== name);
    try {
      progress(0);
      const { rows, ...head } = await this.workbook.readSheet(name, progress, signal);
      signal.throwIfAborted();
      await client.replace(head, rows, signal);
      this.#known.set(name, head.hidden);
      if (others.length < this.#state.unreachable.length) this.#set({ unreachable: others });
    } catch (thrown) {
      signal.throwIfAborted();
      if (thrown instanceof WorkerLost || this.#known.get(name) !== undefined) throw thrown;
      this.#set({ unreachable: [...others, { name, sentence: problemOf(thrown).sentence }] });
    }
  }
}

/** What the work comes to, or the signal's reason as soon as it is called off: a host may never answer. */
function unlessAborted<Result>(work: Promise<Result>, signal: AbortSignal): Promise<Result> {
  return new Promise((resolve, reject) => {
    const stop = () => {
      reject(signal.reason as Error);
    };
    signal.addEventListener("abort", stop, { once: true });
    work.then(resolve, reject).finally(() => {
      signal.removeEventListener("abort", stop);
    });
  });
}
