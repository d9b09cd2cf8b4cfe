import type { SheetMessage, WorkerMessage } from "../kit/sheetWorker";
import type { CostAnswer, CostOrder, CostStep } from "./costDesk";

export type ToCostWorker = SheetMessage | { readonly kind: "answer"; readonly order: CostOrder };

export type FromCostWorker =
  | WorkerMessage
  | ({ readonly kind: "progress" } & CostStep)
  | { readonly kind: "answer"; readonly answer: CostAnswer };
