import type { Finding } from "../../audit/finding";
import type { Sheet, SheetRow } from "../../sheet/sheet";
import type { CheckOrder } from "./checkJob";
import type { CheckReport, FindingFacts } from "./report";

/** Sheets travel in blocks of rows, since copying a big sheet at once would hold the screen. */
export type ToWorker =
  | { readonly kind: "clear" }
  | { readonly kind: "sheet"; readonly sheet: Omit<Sheet, "rows"> }
  | { readonly kind: "rows"; readonly rows: readonly SheetRow[] }
  | { readonly kind: "run"; readonly order: CheckOrder };

/** Findings travel in blocks too, ahead of the report they belong to. */
export type FromWorker =
  | { readonly kind: "ready" }
  | { readonly kind: "progress"; readonly doing: string; readonly share: number }
  | {
      readonly kind: "findings";
      readonly findings: readonly Finding[];
      readonly facts: readonly FindingFacts[];
    }
  | { readonly kind: "report"; readonly report: Omit<CheckReport, "findings" | "facts"> }
  | {
      readonly kind: "failed";
      readonly sentence: string;
      readonly refused: boolean;
      readonly details: string;
    };

export const ROWS_PER_MESSAGE = 500;
export const FINDINGS_PER_MESSAGE = 500;
