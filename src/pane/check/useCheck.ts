import { useCallback } from "react";
import type { Problem } from "../../session/problem";
import type { CheckReport } from "../../session/questions/check";
import type { UnreachableSheet } from "../../session/session";
import type { Told } from "../../session/worker/told";
import { useAnswer, useSession } from "../session";
import type { Shop } from "../shop/useShop";
import { useLasting } from "../kit/useLasting";

/** The check of the workbook that is open. It runs by itself, and again whenever the workbook or the shop is another. */
export interface Check {
  readonly shop: Shop;
  /** What was found last; absent until the workbook was read. */
  readonly report: CheckReport | undefined;
  readonly unreachable: readonly UnreachableSheet[];
  /** What the user has to wait for: not what is done before anybody sees it. */
  readonly busy: Told | undefined;
  readonly problem: Problem | undefined;
  /** Whether changes are seen by themselves; else `again` reads the workbook anew. */
  readonly isLive: boolean;
  again(): void;
  cancel(): void;
}

export function useCheck(shop: Shop): Check {
  const { session, state } = useSession();
  const { answer, busy, problem, again: askAgain, cancel: stopAsking } = useAnswer("check", undefined);
  const underWay = state.busy ?? busy;
  const isLong = useLasting(underWay !== undefined);
  const again = useCallback(() => {
    void session.readAgain();
    askAgain();
  }, [session, askAgain]);
  const cancel = useCallback(() => {
    session.cancel();
    stopAsking();
  }, [session, stopAsking]);
  return {
    shop,
    report: answer,
    unreachable: state.unreachable,
    busy: state.busy || !session.isLive || !answer || isLong ? underWay : undefined,
    problem: state.problem ?? problem,
    isLive: session.isLive,
    again,
    cancel,
  };
}
