import type { CellAddress, CellValue, Sheet, SheetRow } from "../../../src/sheet/sheet";
import { BLANK_ROW, columnLetters } from "../../../src/sheet/sheet";
import type { FakeBook } from "./fakeObjects";
import { FakeSheet, HostError, WorkbookObject } from "./fakeObjects";
import type { WireAction, WireAnswer, WirePath, WireRequest } from "./wire";
import { ActionType, camel, DELAY_FOR_CELL_EDIT, ITEMS, pascal, PathType } from "./wire";
import { KEEP_REFERENCE, REFERENCE, REMOVE_REFERENCE } from "./wire";

/**
 * Excel's side of the wire: a workbook in memory that answers office.js's requests. The same answers serve our own
 * double of office.js and, in a browser, Microsoft's proxies.
 */
export class FakeExcel {
  readonly book: FakeBook;
  /** Every request that came, in order. */
  readonly requests: WireRequest[] = [];
  /** Who wants to hear of what, by the name under which office.js asks to hear of it. */
  readonly listeners = new Map<string, Set<(told: unknown) => void>>();
  /** An answer longer than this is refused. */
  answerLimit = Number.POSITIVE_INFINITY;
  /** Refuses a request with the code it returns. */
  refuse: (request: WireRequest) => string | undefined = () => undefined;
  /** What Excel has besides the workbook, by its name on the wire: the functions' results, the pane's window. */
  readonly services: Record<string, object> = {};
  /** What was asked for and is not known here: a test that meets it has found a hole. */
  readonly unknown: string[] = [];
  private readonly references = new Map<string, unknown>();
  private lastReference = 0;
  private editing: { done: Promise<void>; finish: () => void } | undefined;

  constructor(sheets: readonly Sheet[]) {
    const tabs = sheets.map(
      (sheet, index) =>
        new FakeSheet(`{sheet-${index}}`, sheet.name, sheet.hidden, [...sheet.rows], sheet.merges),
    );
    this.book = {
      sheets: tabs,
      parts: new Map(),
      formulas: new Map(),
      looks: [],
      calculated: [],
      tables: [],
      marks: [],
      dateSystem: sheets[0]!.dateSystem,
      activeSheet: tabs[0]!,
      selected: { row: 0, column: 0 },
      further: [],
      cellLimit: 5_000_000,
      mergeLimit: 512,
      showDate,
      calculate: () => 0,
      dateFunction: (book, year, month, day) =>
        Date.UTC(year, month - 1, day) / 86_400_000 + 25_569 - (book.dateSystem === 1904 ? 1462 : 0),
    };
  }

  get selected(): CellAddress {
    return { sheet: this.book.activeSheet.name, ...this.book.selected };
  }

  /** The user begins to edit a cell: Excel refuses everything until it is done, or lets it wait where asked. */
  startEditing(): void {
    let finish = () => {};
    const done = new Promise<void>((resolve) => (finish = resolve));
    this.editing = { done, finish };
  }

  finishEditing(): void {
    this.editing?.finish();
    this.editing = undefined;
  }

  /** Something happened in the workbook: `tell("DataChanged", { worksheetId, address })`. */
  tell(event: string, told: unknown = {}): void {
    for (const listener of this.listeners.get(event) ?? []) listener(told);
  }

  /** An edit by the user, told as Excel tells it. */
  edit(sheet: FakeSheet, row: number, values: readonly CellValue[], formats?: SheetRow["formats"]): void {
    while (sheet.rows.length <= row) sheet.rows.push(BLANK_ROW);
    sheet.rows[row] = { values, ...(formats && { formats }) };
    const address = `A${row + 1}:${columnLetters(values.length - 1)}${row + 1}`;
    this.tell("DataChanged", { worksheetId: sheet.id, address, changeType: "RangeEdited" });
  }

  async answer(request: WireRequest, flags: number): Promise<WireAnswer> {
    this.requests.push(request);
    if (this.editing) {
      if (!(flags & DELAY_FOR_CELL_EDIT)) return refused("InvalidOperationInCellEditMode", 0);
      await this.editing.done;
    }
    const code = this.refuse(request);
    if (code !== undefined) return refused(code, 0);
    const answer = this.carryOut(request);
    if (JSON.stringify(answer).length > this.answerLimit) {
      return refused("ResponsePayloadSizeLimitExceeded", 0);
    }
    // Nothing of the workbook itself may leak out: all that goes over the wire is JSON.
    return JSON.parse(JSON.stringify(answer)) as WireAnswer;
  }

  private carryOut(request: WireRequest): WireAnswer {
    const objects = new Map<number, unknown>();
    const objectAt = (id: number): unknown => {
      if (!objects.has(id)) objects.set(id, this.find(request.ObjectPaths[id]!, objectAt));
      return objects.get(id);
    };
    const Results: { ActionId: number; Value: unknown }[] = [];
    const TraceIds: number[] = [];
    for (const [index, action] of request.Actions.entries()) {
      try {
        if (action.ActionType === ActionType.trace) {
          TraceIds.push(action.Id);
          Results.push({ ActionId: action.Id, Value: null });
          continue;
        }
        Results.push({ ActionId: action.Id, Value: this.perform(action, objectAt(action.ObjectPathId)) });
      } catch (error) {
        if (!(error instanceof HostError)) throw error;
        if (error.code === "ApiNotFound") this.unknown.push(error.about);
        return refused(error.code, index, Results);
      }
    }
    return { Results, TraceIds };
  }

  private find(path: WirePath, objectAt: (id: number) => unknown): unknown {
    const parent = () => objectAt(path.ParentObjectPathId!);
    switch (path.ObjectPathType) {
      case PathType.root:
        return new WorkbookObject(this.book);
      case PathType.service:
        if (!this.services[path.Name]) throw new HostError("ApiNotFound", path.Name);
        return this.services[path.Name];
      case PathType.none:
        return null;
      case PathType.property:
        return member(parent(), path.Name);
      case PathType.method:
        return call(parent(), path.Name, path.ArgumentInfo?.Arguments);
      case PathType.indexer:
        return call(parent(), "GetItem", path.ArgumentInfo?.Arguments);
      case PathType.reference:
        if (!this.references.has(path.Name)) throw new HostError("InvalidReference");
        return this.references.get(path.Name);
    }
  }

  private perform(action: WireAction, object: unknown): unknown {
    const given = action.ArgumentInfo?.Arguments ?? [];
    switch (action.ActionType) {
      case ActionType.instantiate:
        return object === null ? null : { [REFERENCE]: this.referenceOf(object), ...idOf(object) };
      case ActionType.query:
        return object === null ? null : query(object, action.QueryInfo?.Select ?? []);
      case ActionType.set:
        member(object, action.Name);
        (object as Record<string, unknown>)[camel(action.Name)] = given[0];
        return null;
      case ActionType.method:
        if (action.Name === KEEP_REFERENCE) this.references.set(`{${(this.lastReference += 1)}}`, object);
        else if (action.Name === REMOVE_REFERENCE) this.references.delete(given[0] as string);
        else if (!action.Name.startsWith("_")) return call(object, action.Name, given) ?? null;
        return null;
      case ActionType.trace:
        return null;
    }
  }

  private referenceOf(object: unknown): string | undefined {
    return [...this.references].find(([, kept]) => kept === object)?.[0];
  }
}

/** Objects that were added are spoken of by their id from then on. */
function idOf(object: unknown): { Id?: string } {
  const id = (object as { id?: unknown }).id;
  return typeof id === "string" ? { Id: id } : {};
}

function query(object: unknown, names: readonly string[]): Record<string, unknown> {
  if (names.length === 0) throw new HostError("InvalidArgument");
  const items = (object as { items?: unknown[] }).items;
  if (items) return { [ITEMS]: items.map((item) => query(item, names)) };
  return Object.fromEntries(names.map((name) => [pascal(name), member(object, name)]));
}

function member(object: unknown, name: string): unknown {
  const isObject = typeof object === "object" || typeof object === "function";
  if (!isObject || object === null) throw new HostError("InvalidObjectPath");
  if (!(camel(name) in object)) throw new HostError("ApiNotFound", name);
  return (object as Record<string, unknown>)[camel(name)];
}

function call(object: unknown, name: string, given: readonly unknown[] = []): unknown {
  const method = member(object, name);
  if (typeof method !== "function") throw new HostError("ApiNotFound", name);
  return Reflect.apply(method as (...args: unknown[]) => unknown, object, [...given]) as unknown;
}

function refused(Code: string, ActionIndex: number, Results: WireAnswer["Results"] = []): WireAnswer {
  const Message = `Excel says so, in a language of its own: ${Code}.`;
  return { Results, Error: { Code, Message, Location: "Fake.excel", ActionIndex, HttpStatusCode: 400 } };
}

/** Dates as English speakers see them, as far as the tests' formats go. */
function showDate(serialFrom1900: number, format: string): string {
  const date = new Date((serialFrom1900 - 25_569) * 86_400_000);
  const [year, month, day] = date.toISOString().slice(0, 10).split("-") as [string, string, string];
  const monthName = date.toLocaleString("en-US", { month: "short", timeZone: "UTC" });
  const shown: Record<string, string> = { yyyy: year, yy: year.slice(2), mmm: monthName, mm: month, dd: day };
  return format.replace(/y+|m+|d+/g, (code) => shown[code] ?? String(Number(code === "m" ? month : day)));
}
