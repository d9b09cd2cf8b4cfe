import type { SheetMessage, WorkerMessage } from "../kit/sheetWorker";
import type { Told } from "../kit/told";
import type { CheckOrder } from "./checkJob";
import type { CheckReport } from "./report";

export type ToWorker = SheetMessage | { readonly kind: "run"; readonly order: CheckOrder };

export type FromWorker =
  | WorkerMessage
  | ({ readonly kind: "progress" } & Told)
  | { readonly kind: "answer"; readonly answer: CheckReport };
