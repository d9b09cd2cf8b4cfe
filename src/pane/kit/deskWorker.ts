import type { Sheet } from "../../sheet/sheet";
import type { Desk, FromDesk, ToDesk } from "./deskEngine";
import { failedWith, ReceivedSheets } from "./sheetWorker";

/** Opens a desk in this worker, for the engine on the page that started it. */
export function serveDesk<Order, Answer>(openDesk: (sheets: readonly Sheet[]) => Desk<Order, Answer>): void {
  const received = new ReceivedSheets();
  let desk: Desk<Order, Answer> | undefined;

  const tell = (message: FromDesk<Answer>): void => {
    self.postMessage(message);
  };

  const answer = async (order: Order): Promise<void> => {
    try {
      desk ??= openDesk(received.sheets);
      const steps = desk.answer(order);
      let step = await steps.next();
      for (; !step.done; step = await steps.next()) tell({ kind: "progress", ...step.value });
      tell({ kind: "answer", answer: step.value });
    } catch (thrown) {
      tell(failedWith(thrown));
    }
  };

  self.onmessage = ({ data }: MessageEvent<ToDesk<Order>>) => {
    if (data.kind === "answer") {
      void answer(data.order);
      return;
    }
    desk = undefined;
    received.take(data);
  };
  tell({ kind: "ready" });
}
