import type { Finding } from "../../audit/finding";
import type { SheetMessage, WorkerMessage } from "../kit/sheetWorker";
import type { CheckOrder } from "./checkJob";
import type { CheckReport, FindingFacts } from "./report";

export type ToWorker = SheetMessage | { readonly kind: "run"; readonly order: CheckOrder };

/** Findings travel in blocks too, ahead of the report they belong to. */
export type FromWorker =
  | WorkerMessage
  | { readonly kind: "progress"; readonly doing: string; readonly share: number }
  | {
      readonly kind: "findings";
      readonly findings: readonly Finding[];
      readonly facts: readonly FindingFacts[];
    }
  | { readonly kind: "report"; readonly report: Omit<CheckReport, "findings" | "facts"> };

export const FINDINGS_PER_MESSAGE = 500;
