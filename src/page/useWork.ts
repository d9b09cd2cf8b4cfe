import { useCallback, useRef, useState } from "react";
import { problemOf, wasCancelled, type Problem } from "../session/problem";

/** Work under way: what, how far, and how to call it off. */
export interface Work {
  readonly doing: string;
  readonly share: number;
  readonly cancel: () => void;
}

export type Job = (progress: (share: number) => void, signal: AbortSignal) => Promise<void>;

export interface WorkState {
  readonly work: Work | undefined;
  readonly problem: Problem | undefined;
  /** One piece of work at a time: the next one calls off the last. */
  readonly start: (doing: string, job: Job) => void;
  /** Says what went wrong with something else. */
  readonly fail: (thrown: unknown) => void;
  readonly dismissProblem: () => void;
}

/** Longer work, one at a time, and what went wrong with it. */
export function useWork(): WorkState {
  const [work, setWork] = useState<Work>();
  const [problem, setProblem] = useState<Problem>();
  const present = useRef<AbortController>(undefined);

  const start = useCallback((doing: string, job: Job) => {
    present.current?.abort();
    const caller = (present.current = new AbortController());
    const cancel = () => {
      caller.abort();
    };
    const progress = (share: number) => {
      if (!caller.signal.aborted) setWork({ doing, share, cancel });
    };
    setProblem(undefined);
    progress(0);
    job(progress, caller.signal)
      .catch((thrown: unknown) => {
        if (!wasCancelled(thrown)) setProblem(problemOf(thrown));
      })
      .finally(() => {
        if (present.current === caller) setWork(undefined);
      });
  }, []);

  const dismissProblem = useCallback(() => {
    setProblem(undefined);
  }, []);

  const fail = useCallback((thrown: unknown) => {
    setProblem(problemOf(thrown));
  }, []);

  return { work, problem, start, fail, dismissProblem };
}
