import type { SheetMessage, WorkerMessage } from "../kit/sheetWorker";
import type { MonthAnswer, MonthOrder, MonthStep } from "./monthDesk";

export type ToMonthWorker = SheetMessage | { readonly kind: "answer"; readonly order: MonthOrder };

export type FromMonthWorker =
  | WorkerMessage
  | ({ readonly kind: "progress" } & MonthStep)
  | { readonly kind: "answer"; readonly answer: MonthAnswer };
