import {
  createContext,
  startTransition as inTurns,
  useCallback,
  useContext,
  useEffect,
  useRef,
  useState,
  useSyncExternalStore,
  type ReactNode,
} from "react";
import { problemOf, wasCancelled, type Problem } from "../session/problem";
import type { AnswerTo, ArgumentsOf, QuestionName } from "../session/questions";
import { Session, type SessionState } from "../session/session";
import type { StartWorker } from "../session/worker/client";
import type { Told } from "../session/worker/told";
import type { ShopSettings } from "../workbook/settings";
import type { Workbook } from "../workbook/workbook";

const SessionContext = createContext<Session | undefined>(undefined);

interface SessionProviderProps {
  readonly workbook: Workbook;
  readonly settings: ShopSettings;
  readonly startWorker?: StartWorker | undefined;
  readonly children: ReactNode;
}

/** Opens one session on a workbook for all areas. Another workbook needs another one: give it a key. */
export function SessionProvider({ workbook, settings, startWorker, children }: SessionProviderProps) {
  const [session, setSession] = useState<Session>();
  useEffect(() => {
    const opened = new Session(workbook, startWorker);
    setSession(opened);
    return () => {
      opened.close();
    };
  }, [workbook, startWorker]);
  useEffect(() => {
    session?.setSettings(settings);
  }, [session, settings]);
  return session && <SessionContext.Provider value={session}>{children}</SessionContext.Provider>;
}

/** The session of the workbook that is open, and how it stands. */
export function useSession(): { readonly session: Session; readonly state: SessionState } {
  const session = useContext(SessionContext);
  if (!session) throw new Error("Outside a session.");
  return { session, state: useSyncExternalStore(session.subscribe, () => session.state) };
}

/** A question, as it stands. */
export interface Asked<Answer> {
  /** The latest answer; it stays until there is a newer one. */
  readonly answer: Answer | undefined;
  /** Whether the answer is to these arguments, be it of a workbook that changed since. */
  readonly isOfThese: boolean;
  readonly busy: Told | undefined;
  readonly problem: Problem | undefined;
  readonly cancel: () => void;
  /** Asks again, after a failure or a cancel. */
  readonly again: () => void;
}

const NOT_FAR: Told = { doing: "Reading the rows", share: 0 };

interface Known<Answer> {
  readonly of: string;
  readonly answer: Answer;
}

/**
 * Asks a question of the log, and again whenever the workbook, the settings or the arguments are other ones. Nothing is
 * asked while `wanted` is "nothing".
 */
export function useAnswer<Name extends QuestionName>(
  name: Name,
  wanted: ArgumentsOf<Name> | "nothing",
): Asked<AnswerTo<Name>> {
  const { session, state } = useSession();
  const { version } = state;
  const key = JSON.stringify(wanted ?? null);
  const latest = useRef(wanted);
  latest.current = wanted;
  const [known, setKnown] = useState<Known<AnswerTo<Name>>>();
  const [far, setFar] = useState<Told>(NOT_FAR);
  const [problem, setProblem] = useState<Problem>();
  const [tries, setTries] = useState(0);
  const turn = JSON.stringify([key, version, tries]);
  /** The turn that was answered last, failed or was called off. */
  const [over, setOver] = useState<string>();
  const underWay = useRef<AbortController>();

  useEffect(() => {
    const of = latest.current;
    if (version === 0 || of === "nothing") return;
    const controller = new AbortController();
    const { signal } = controller;
    underWay.current = controller;
    const progress = (doing: string, share: number) => {
      if (!signal.aborted) setFar({ doing, share });
    };
    setProblem(undefined);
    setFar(NOT_FAR);
    session.ask(name, of as ArgumentsOf<Name>, { progress, signal }).then(
      ({ answer }) => {
        if (signal.aborted) return;
        inTurns(() => {
          setKnown({ of: key, answer });
          setOver(turn);
        });
      },
      (thrown: unknown) => {
        if (signal.aborted) return;
        if (!wasCancelled(thrown)) setProblem(problemOf(thrown));
        setOver(turn);
      },
    );
    return () => {
      controller.abort();
    };
  }, [session, name, key, version, turn]);

  const cancel = useCallback(() => {
    underWay.current?.abort();
    setOver(turn);
  }, [turn]);
  const again = useCallback(() => {
    setTries((n) => n + 1);
  }, []);
  const busy = version > 0 && wanted !== "nothing" && over !== turn ? far : undefined;
  return { answer: known?.answer, isOfThese: known?.of === key, busy, problem, cancel, again };
}
