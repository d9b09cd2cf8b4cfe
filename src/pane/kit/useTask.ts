import { useCallback, useEffect, useRef, useState } from "react";
import { useAnnounce } from "./announce";
import { problemOf, wasCancelled, type Problem } from "../../session/problem";

interface TaskState {
  readonly busy?: { readonly doing: string; readonly share: number };
  readonly problem?: Problem;
  /** What came of it, in a sentence. */
  readonly done?: string;
}

/** Hears how far the work is, and whether it was called off. */
export interface TaskWatch {
  readonly progress: (share: number) => void;
  readonly signal: AbortSignal;
}

/** One piece of work on the workbook at a time, with progress, Cancel, and what came of it: a job may answer a sentence. */
export function useTask() {
  const announce = useAnnounce();
  const [state, setState] = useState<TaskState>({});
  const underWay = useRef<AbortController>();
  useEffect(() => () => underWay.current?.abort(), []);

  const start = useCallback(
    (doing: string, job: (watch: TaskWatch) => Promise<unknown>) => {
      underWay.current?.abort();
      const controller = new AbortController();
      underWay.current = controller;
      const set = (next: TaskState) => {
        if (!controller.signal.aborted) setState(next);
      };
      set({ busy: { doing, share: 0 } });
      const progress = (share: number) => {
        set({ busy: { doing, share } });
      };
      job({ progress, signal: controller.signal }).then(
        (done) => {
          set(typeof done === "string" ? { done } : {});
          if (typeof done === "string" && !controller.signal.aborted) announce(done);
        },
        (thrown: unknown) => {
          set(wasCancelled(thrown) ? {} : { problem: problemOf(thrown) });
        },
      );
    },
    [announce],
  );
  const cancel = useCallback(() => {
    underWay.current?.abort();
    setState({});
  }, []);
  return { ...state, start, cancel };
}
