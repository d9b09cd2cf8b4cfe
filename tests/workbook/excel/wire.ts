/**
 * What office.js sends to Excel and gets back, as far as it is used here. Learnt by looking at what the npm package
 * @microsoft/office-js 1.1.110 sends; it is not documented.
 */
export interface WireRequest {
  readonly Actions: readonly WireAction[];
  readonly ObjectPaths: Readonly<Record<string, WirePath>>;
}

export interface WireAction {
  readonly Id: number;
  readonly ActionType: ActionType;
  readonly Name: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: { readonly Arguments?: readonly unknown[] };
  readonly QueryInfo?: { readonly Select?: readonly string[] };
}

export interface WirePath {
  readonly Id: number;
  readonly ObjectPathType: PathType;
  readonly Name: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: { readonly Arguments?: readonly unknown[] };
}

export interface WireAnswer {
  readonly Results: readonly { readonly ActionId: number; readonly Value: unknown }[];
  /** The trace actions that were carried out: office.js counts a handler of an event as registered only then. */
  readonly TraceIds?: readonly number[];
  readonly Error?: WireError;
}

export interface WireError {
  readonly Code: string;
  readonly Message: string;
  readonly Location: string;
  readonly ActionIndex: number;
  readonly HttpStatusCode: number;
}

export const ActionType = { instantiate: 1, query: 2, method: 3, set: 4, trace: 5 } as const;
export type ActionType = (typeof ActionType)[keyof typeof ActionType];

export const PathType = {
  root: 1,
  service: 2,
  method: 3,
  property: 4,
  indexer: 5,
  reference: 6,
  none: 7,
} as const;
export type PathType = (typeof PathType)[keyof typeof PathType];

/** The name under which Excel tells the reference by which office.js may speak of an object in later requests. */
export const REFERENCE = "_ReferenceId";
/** The calls by which office.js asks for such a reference, and gives it back. */
export const KEEP_REFERENCE = "_KeepReference";
export const REMOVE_REFERENCE = "_RemoveReference";

/** Set in a request's flags where Excel may wait for the cell being edited. */
export const DELAY_FOR_CELL_EDIT = 64;

/** The name under which a collection's members are answered. */
export const ITEMS = "_Items";

export const pascal = (name: string) => name.charAt(0).toUpperCase() + name.slice(1);
export const camel = (name: string) => name.charAt(0).toLowerCase() + name.slice(1);

/** What is called otherwise on the wire. */
export const WIRE_NAMES: Readonly<Record<string, string>> = { showGridlines: "Gridlines" };
