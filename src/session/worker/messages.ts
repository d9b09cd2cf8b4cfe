import type { SheetRow } from "../../sheet/sheet";
import type { QuestionName } from "../questions";
import type { SheetHead } from "../snapshot";
import type { Terms } from "../terms";
import type { Told } from "./told";

/** How sheets travel: in blocks of rows, since copying a big sheet at once would hold the screen. */
export type SheetMessage =
  /** The sheets there are, in the order of their tabs. */
  | { readonly kind: "list"; readonly names: readonly string[] }
  /** Rows that belong to the next "sheet" or "splice". */
  | { readonly kind: "rows"; readonly isFirst: boolean; readonly rows: readonly SheetRow[] }
  /** All of a sheet: the rows before it. */
  | { readonly kind: "sheet"; readonly head: SheetHead }
  /** The rows before it stand in this sheet now, from this row on. */
  | { readonly kind: "splice"; readonly sheet: string; readonly firstRow: number };

export type ToHost =
  | SheetMessage
  /** The workbook is in order again: what came before is taken over at once, as this version. */
  | { readonly kind: "commit"; readonly version: number; readonly terms: Terms | undefined }
  | { readonly kind: "ask"; readonly id: number; readonly name: QuestionName; readonly wanted: unknown }
  | { readonly kind: "cancel"; readonly id: number };

export type FromHost =
  | { readonly kind: "ready" }
  /** Whether a commit made the sheets or the terms other ones. */
  | { readonly kind: "committed"; readonly isNew: boolean }
  | ({ readonly kind: "progress"; readonly id: number } & Told)
  /** Items of long lists in the answer that follows. */
  | { readonly kind: "items"; readonly id: number; readonly items: readonly unknown[] }
  | { readonly kind: "answer"; readonly id: number; readonly version: number; readonly answer: unknown }
  | {
      readonly kind: "failed";
      readonly id: number;
      readonly sentence: string;
      readonly refused: boolean;
      readonly details: string;
    };
