import type { Sheet } from "../../sheet/sheet";
import { pacer, type Watch } from "../check/pace";
import { seldom, type Told } from "./told";
import { asked, SheetWorker, type SheetMessage, type WorkerMessage } from "./sheetWorker";

/** How far a desk has come with an order. */
export type DeskStep = Told;

type DeskSteps<Answer> = Generator<DeskStep, Answer, undefined> | AsyncGenerator<DeskStep, Answer, undefined>;

/** Sheets that were read once, and what is made of them, order by order and a step at a time. */
export interface Desk<Order, Answer> {
  answer(order: Order): DeskSteps<Answer>;
}

export type ToDesk<Order> = SheetMessage | { readonly kind: "answer"; readonly order: Order };

export type FromDesk<Answer> =
  | WorkerMessage
  | ({ readonly kind: "progress" } & DeskStep)
  | { readonly kind: "answer"; readonly answer: Answer };

/** Has a desk do its work without holding the screen. */
export interface DeskEngine<Order, Answer> {
  /**
   * What these sheets come to, as ordered. The same sheets are read once.
   *
   * @throws Refusal with a sentence; the signal's reason when called off.
   */
  answer(sheets: readonly Sheet[], order: Order, watch: Watch): Promise<Answer>;
  close(): void;
}

/** Works at a desk in a worker; where none can start, in slices on the page. */
export function deskEngine<Order, Answer>(
  startWorker: () => Promise<Worker | undefined>,
  openDesk: (sheets: readonly Sheet[]) => Desk<Order, Answer>,
): DeskEngine<Order, Answer> {
  const sheetWorker = new SheetWorker(startWorker);
  let onPage: { readonly sheets: readonly Sheet[]; readonly desk: Desk<Order, Answer> } | undefined;
  return {
    answer: (sheets, order, watch) =>
      sheetWorker.run(
        sheets,
        watch,
        (worker) => inWorker(worker, order, watch),
        () => {
          if (onPage?.sheets !== sheets) onPage = { sheets, desk: openDesk(sheets) };
          return inSlices(onPage.desk, order, watch);
        },
      ),
    close: () => {
      sheetWorker.close();
    },
  };
}

async function inSlices<Order, Answer>(
  desk: Desk<Order, Answer>,
  order: Order,
  { progress, signal }: Watch,
): Promise<Answer> {
  const pace = pacer(signal);
  const steps = desk.answer(order);
  const tell = seldom(({ doing, share }) => {
    progress(doing, share);
  });
  for (;;) {
    const step = await steps.next();
    if (step.done) return step.value;
    tell(step.value);
    await pace();
  }
}

function inWorker<Order, Answer>(worker: Worker, order: Order, { progress, signal }: Watch): Promise<Answer> {
  return asked<FromDesk<Answer>, Answer>(worker, { kind: "answer", order }, signal, (message) => {
    if (message.kind === "progress") progress(message.doing, message.share);
    return message.kind === "answer" ? message.answer : undefined;
  });
}
