import { useCallback, useEffect, useRef, useState } from "react";
import type { Waiting } from "../../counter/receive/waitingRows";
import { problemOf, wasCancelled, type Problem } from "../../session/problem";
import type { OnTheCounter, Received } from "../../session/questions/receive";
import type { SelectedRows } from "../../workbook/workbook";
import { useSession } from "../session";
import type { EnteredCylinder } from "../../counter/form";

export interface Register extends Pick<OnTheCounter, "receipts" | "sheets" | "prices"> {
  readonly busy: boolean;
  readonly problem: Problem | undefined;
  /** Asks what is on record of these cylinders; what it answers keeps up with the workbook. */
  ask(asked: readonly string[], entered: readonly EnteredCylinder[]): void;
  /** As `ask`, with the cylinders of these rows besides, of which it tells what the rows say. */
  takeRows(
    selected: SelectedRows,
    asked: readonly string[],
    entered: readonly EnteredCylinder[],
    then: (waiting: Waiting) => void,
  ): void;
  forget(): void;
}

const NOTHING: OnTheCounter = { receipts: [], sheets: [] };

/** Looks cylinders up in the workbook's logs and registers. */
export function useRegister(): Register {
  const { session, state } = useSession();
  const [found, setFound] = useState(NOTHING);
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem>();
  const latest = useRef<Received>();
  const underWay = useRef<AbortController>();

  const lookUp = useCallback(
    (wanted: Received, isFresh: boolean, then?: (answer: OnTheCounter) => void) => {
      underWay.current?.abort();
      const controller = new AbortController();
      const { signal } = (underWay.current = controller);
      latest.current = wanted;
      session
        .ask("receive", wanted, { progress: () => undefined, signal }, isFresh)
        .then(({ answer }) => {
          if (signal.aborted) return;
          setFound(answer);
          setProblem(undefined);
          then?.(answer);
        })
        .catch((thrown: unknown) => {
          if (!signal.aborted && !wasCancelled(thrown)) setProblem(problemOf(thrown));
        })
        .finally(() => {
          if (!signal.aborted) setBusy(false);
        });
    },
    [session],
  );
  const ask = useCallback<Register["ask"]>(
    (asked, entered) => {
      setBusy(true);
      lookUp({ asked, entered }, true);
    },
    [lookUp],
  );
  const takeRows = useCallback<Register["takeRows"]>(
    ({ sheet, rows }, asked, entered, then) => {
      setBusy(true);
      const wanted = { asked, entered };
      lookUp({ ...wanted, waiting: { sheet, rows } }, true, ({ waiting, receipts }) => {
        // The rows may be others by the next change: their cylinders are asked for by name.
        latest.current = { ...wanted, asked: receipts.map((receipt) => receipt.asked) };
        if (waiting) then(waiting);
      });
    },
    [lookUp],
  );
  const forget = useCallback(() => {
    underWay.current?.abort();
    latest.current = undefined;
    setFound((now) => ({ ...now, receipts: [] }));
    setBusy(false);
  }, []);

  // What was asked is asked again of the workbook as it is now.
  const { version } = state;
  useEffect(() => {
    if (latest.current && !latest.current.waiting) lookUp(latest.current, false);
  }, [version, lookUp]);
  useEffect(() => () => underWay.current?.abort(), []);

  return { ...found, busy, problem, ask, takeRows, forget };
}
