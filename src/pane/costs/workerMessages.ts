import type { Sheet, SheetRow } from "../../sheet/sheet";
import type { CostAnswer, CostOrder, CostStep } from "./costDesk";

/** Sheets travel in blocks of rows, since copying a big sheet at once would hold the screen. */
export type ToCostWorker =
  | { readonly kind: "clear" }
  | { readonly kind: "sheet"; readonly sheet: Omit<Sheet, "rows"> }
  | { readonly kind: "rows"; readonly rows: readonly SheetRow[] }
  | { readonly kind: "answer"; readonly order: CostOrder };

export type FromCostWorker =
  | { readonly kind: "ready" }
  | ({ readonly kind: "progress" } & CostStep)
  | { readonly kind: "answer"; readonly answer: CostAnswer }
  | {
      readonly kind: "failed";
      readonly sentence: string;
      readonly refused: boolean;
      readonly details: string;
    };

export const ROWS_PER_MESSAGE = 500;
