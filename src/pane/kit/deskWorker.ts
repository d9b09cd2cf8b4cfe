import type { Sheet } from "../../sheet/sheet";
import type { Desk, FromDesk, ToDesk } from "./deskEngine";
import { seldom } from "./told";
import { failedWith, ReceivedSheets, tellAnswer } from "./sheetWorker";

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
      const progress = seldom((told) => {
        tell({ kind: "progress", ...told });
      });
      let step = await steps.next();
      for (; !step.done; step = await steps.next()) progress(step.value);
      tellAnswer(step.value, tell);
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
