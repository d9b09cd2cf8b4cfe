import type { OfficeGlobals } from "../../../src/workbook/excel/session";
import type { FakeExcel } from "./fakeExcel";
import type { ObjectType } from "./objectModel";
import { NEEDS, OBJECT_MODEL } from "./objectModel";
import type { WireAction, WirePath } from "./wire";
import { WIRE_NAMES } from "./wire";
import { ActionType, DELAY_FOR_CELL_EDIT, ITEMS, pascal, PathType } from "./wire";

/**
 * A double of office.js in front of a fake Excel. Like the real one it sends nothing before `sync`, has no value that
 * was not loaded, and lets nobody use an object once its `Excel.run` is over. Microsoft's own office.js is put before
 * the same fake Excel in the browser tests, which is what the double is measured against.
 */
export function excelDouble(
  fake: FakeExcel,
  excelApi = "1.20",
): OfficeGlobals & { readonly pane: PaneDouble } {
  const supports = (version: string) => Number(version.split(".")[1]) <= Number(excelApi.split(".")[1]);
  const run = async (first: Excel.RunOptions | Context | Batch, second?: Batch) => {
    const batch = second ?? (first as Batch);
    const flags = "delayForCellEdit" in first && first.delayForCellEdit ? DELAY_FOR_CELL_EDIT : 0;
    const context = first instanceof Context ? first : new Context(fake, flags, supports);
    context.isOver = false;
    try {
      const result = await batch(context);
      await context.sync();
      return result;
    } finally {
      context.isOver = true;
    }
  };
  const pane = new PaneDouble();
  const onVisibilityModeChanged = pane.watch as typeof Office.addin.onVisibilityModeChanged;
  return {
    Excel: { run: run as unknown as typeof Excel.run },
    Office: {
      addin: { onVisibilityModeChanged },
      context: { requirements: { isSetSupported: (_, version) => supports(version) } },
    },
    pane,
  };
}

/** The pane's window: closed, it goes on running. */
class PaneDouble {
  private readonly watchers = new Set<(message: { visibilityMode: string }) => void>();
  readonly watch = async (watcher: (message: { visibilityMode: string }) => void) => {
    this.watchers.add(watcher);
    return async () => void this.watchers.delete(watcher);
  };
  show(visibilityMode: "Taskpane" | "Hidden"): void {
    for (const watcher of this.watchers) watcher({ visibilityMode });
  }
}

type Batch = (context: Context) => Promise<unknown>;

/** An error as office.js throws it. */
class OfficeError extends Error {
  readonly debugInfo: { readonly errorLocation: string };
  constructor(
    readonly code: string,
    errorLocation: string,
    message = `office.js says so, in a language of its own: ${code}.`,
  ) {
    super(message);
    this.debugInfo = { errorLocation };
  }
}

/** Collects what Excel is to do, sends it at `sync` and hands out the answers. */
class Context {
  isOver = false;
  readonly workbook: unknown;
  private lastId = 0;
  private actions: WireAction[] = [];
  private readonly paths = new Map<number, WirePath>();
  private readonly receivers = new Map<number, (value: unknown) => void>();

  constructor(
    readonly fake: FakeExcel,
    private readonly flags: number,
    readonly supports: (version: string) => boolean,
  ) {
    this.workbook = clientObject(this, "Workbook", { ObjectPathType: PathType.root, Name: "" });
  }

  addPath(path: Omit<WirePath, "Id">): number {
    this.lastId += 1;
    this.paths.set(this.lastId, { Id: this.lastId, ...path });
    return this.lastId;
  }

  setPath(id: number, path: Omit<WirePath, "Id">): void {
    this.paths.set(id, { Id: id, ...path });
  }

  addAction(action: Omit<WireAction, "Id">, receive: (value: unknown) => void): void {
    if (this.isOver) throw new OfficeError("InvalidObjectPath", action.Name);
    this.lastId += 1;
    this.actions.push({ ...action, Id: this.lastId });
    this.receivers.set(this.lastId, receive);
  }

  async sync(): Promise<void> {
    if (this.actions.length === 0) return;
    const request = { Actions: this.actions, ObjectPaths: Object.fromEntries(this.paths) };
    this.actions = [];
    const answer = await this.fake.answer(request, this.flags);
    for (const { ActionId, Value } of answer.Results) this.receivers.get(ActionId)?.(Value);
    if (answer.Error) throw new OfficeError(answer.Error.Code, answer.Error.Location, answer.Error.Message);
  }
}

type Handler = (told: unknown) => void;
type Answer = Readonly<Record<string, unknown>>;

class ClientObject {
  private readonly model: ObjectType;
  private readonly id: number;
  private readonly loaded = new Map<string, unknown>();
  private readonly reached = new Map<string, unknown>();

  constructor(
    private readonly context: Context,
    private readonly type: string,
    path: Omit<WirePath, "Id">,
    known?: Answer,
  ) {
    this.model = OBJECT_MODEL[type]!;
    this.id = context.addPath(path);
    if (known) this.receive(known);
    else {
      this.ask({ ActionType: ActionType.instantiate, Name: "" }, (value) => {
        this.receive(value);
        if (path.Name === "Add" || path.Name === "GetItemOrNullObject")
          this.settle(path, value as Answer | null);
      });
    }
  }

  /** What was added or found once is not to be added or looked for again: from now on it goes by its id. */
  private settle({ ParentObjectPathId = 0 }: Omit<WirePath, "Id">, found: Answer | null): void {
    const Id = found?.["Id"];
    if (Id === undefined) return;
    const ArgumentInfo = { Arguments: [Id] };
    const path = { ObjectPathType: PathType.indexer, Name: "", ParentObjectPathId, ArgumentInfo };
    this.context.setPath(this.id, path);
  }

  /** What a member of this object is, found by its name. */
  member(name: string): unknown {
    const { values, items, properties, objects, results, actions, events, open } = this.model;
    if (open) return this.openMember(name);
    if (name === "load") return (names: string) => this.load(names);
    if (name === "isNullObject" || (name === "items" && items) || values?.includes(name))
      return this.value(name);
    if (properties?.[name]) return this.property(name, properties[name]);
    this.mustBeSupported(name);
    if (events?.[name]) return { add: (handler: Handler) => this.listen(events[name]!, handler) };
    if (objects?.[name]) return (...given: unknown[]) => this.objectBy(name, objects[name]!, given);
    if (results?.includes(name)) return (...given: unknown[]) => this.resultOf(name, given);
    if (actions?.includes(name)) return (...given: unknown[]) => this.call(name, given, () => undefined);
    throw new Error(`The double does not know ${this.type}.${name}: look it up and add it.`);
  }

  /** Sets a value; like everything else it is sent with the next sync. */
  set(name: string, value: unknown): void {
    if (!this.model.open && !this.model.sets?.includes(name)) {
      throw new Error(`The double does not know how to set ${this.type}.${name}: look it up and add it.`);
    }
    const ArgumentInfo = { Arguments: [plainOf(value)] };
    this.ask(
      { ActionType: ActionType.set, Name: WIRE_NAMES[name] ?? pascal(name), ArgumentInfo },
      () => undefined,
    );
  }

  /** Of what is only written a member may be a property or a method: how it is used decides. */
  private openMember(name: string): unknown {
    return new Proxy(() => undefined, {
      get: (_, inner) =>
        typeof inner === "symbol"
          ? undefined
          : (this.property(name, "Looks") as Record<string, unknown>)[inner],
      set: (_, inner, value) => Reflect.set(this.property(name, "Looks") as object, inner, value),
      apply: (_, __, given: unknown[]) => this.objectBy(name, "Looks", given),
    });
  }

  private readonly receive = (value: unknown): void => {
    this.loaded.set("isNullObject", value === null);
    if (value === null) return;
    const { values = [], items } = this.model;
    const answer = value as Answer;
    for (const name of values) if (pascal(name) in answer) this.loaded.set(name, answer[pascal(name)]);
    if (items && ITEMS in answer) {
      const members = (answer[ITEMS] as Answer[]).map((item) =>
        this.objectBy("getItem", items, [item["Id"]], item),
      );
      this.loaded.set("items", members);
    }
  };

  private load(names: string): void {
    const Select = names.split(",").map((name) => name.trim().replace(/^items\//, ""));
    this.ask({ ActionType: ActionType.query, Name: "", QueryInfo: { Select } }, this.receive);
  }

  private value(name: string): unknown {
    if (!this.loaded.has(name) && this.loaded.get("isNullObject") !== true) {
      throw new OfficeError("PropertyNotLoaded", `${this.type}.${name}`);
    }
    return this.loaded.get(name);
  }

  private property(name: string, type: string): unknown {
    if (!this.reached.has(name)) {
      const path = { ObjectPathType: PathType.property, Name: pascal(name), ParentObjectPathId: this.id };
      this.reached.set(name, clientObject(this.context, type, path));
    }
    return this.reached.get(name);
  }

  private objectBy(name: string, type: string, given: readonly unknown[], known?: Answer): unknown {
    const how =
      name === "getItem"
        ? { ObjectPathType: PathType.indexer, Name: "" }
        : { ObjectPathType: PathType.method, Name: pascal(name) };
    const path = { ...how, ParentObjectPathId: this.id, ArgumentInfo: { Arguments: given.map(plainOf) } };
    return clientObject(this.context, type, path, known);
  }

  private resultOf(name: string, given: readonly unknown[]): { readonly value: unknown } {
    let answer: { readonly value: unknown } | undefined;
    this.call(name, given, (value) => (answer = { value }));
    const location = `${this.type}.${name}`;
    return {
      get value() {
        if (!answer) throw new OfficeError("ValueNotLoaded", location);
        return answer.value;
      },
    };
  }

  private listen(event: string, handler: Handler) {
    const { listeners } = this.context.fake;
    const hearing = listeners.get(event) ?? new Set();
    listeners.set(event, hearing);
    this.call(`_Register${event}Event`, [], () => hearing.add(handler));
    const remove = () => this.call(`_Unregister${event}Event`, [], () => hearing.delete(handler));
    return { context: this.context, remove };
  }

  private call(name: string, given: readonly unknown[], receive: (value: unknown) => void): void {
    const ArgumentInfo = { Arguments: given };
    this.ask({ ActionType: ActionType.method, Name: pascal(name), ArgumentInfo }, receive);
  }

  private ask(action: Omit<WireAction, "Id" | "ObjectPathId">, receive: (value: unknown) => void): void {
    this.context.addAction({ ...action, ObjectPathId: this.id }, receive);
  }

  private mustBeSupported(name: string): void {
    const needs = NEEDS[name];
    if (needs && !this.context.supports(needs)) throw new OfficeError("ApiNotFound", `${this.type}.${name}`);
  }
}

/** An object whose members are looked up in the object model. */
function clientObject(context: Context, type: string, path: Omit<WirePath, "Id">, known?: Answer): unknown {
  const object = new ClientObject(context, type, path, known);
  const handle: object = new Proxy(
    {},
    {
      // A promise that is resolved with the object asks for `then`.
      get: (_, name) => (typeof name === "symbol" || name === "then" ? undefined : object.member(name)),
      set: (_, name, value) => {
        object.set(String(name), value);
        return true;
      },
    },
  );
  HANDLES.add(handle);
  return handle;
}

/** An object of office.js among arguments goes over the wire as a word: what is only written is not looked into. */
function plainOf(argument: unknown): unknown {
  return typeof argument === "object" && argument !== null && HANDLES.has(argument) ? "{object}" : argument;
}

const HANDLES = new WeakSet<object>();
