import { useMemo } from "react";
import { Temporal } from "temporal-polyfill";
import {
  acceptancesOf,
  identityOf,
  withAcceptance,
  withoutAcceptance,
  type Acceptance,
  type Acceptances,
} from "../../../audit/judge/acceptance";
import type { Finding } from "../../../audit/judge/finding";
import type { ShopSettings } from "../../../workbook/settings";
import type { Shop } from "../../shop/useShop";

/** What the shop lets stand, and the way to accept a finding or take that back. It is kept in the workbook. */
export interface Accepted extends Acceptances {
  /** All that was ever accepted and not taken back. */
  readonly kept: readonly Acceptance[];
  /** Who accepted last: most likely the one at the desk. */
  readonly lastBy: string;
  accept(finding: Finding, reason: string, by: string): void;
  takeBack(finding: Finding): void;
  /** As taking back, where the finding itself is gone. */
  remove(acceptance: Acceptance): void;
}

type Kept = NonNullable<ShopSettings["accepted"]>[number];

export function useAccepted({ settings, change }: Shop): Accepted {
  const { accepted } = settings;
  return useMemo(() => {
    const keep = (next: (before: readonly Kept[]) => readonly Kept[]) => {
      change((before) => ({ ...before, accepted: [...next(before.accepted ?? [])] }));
    };
    return {
      ...acceptancesOf(accepted),
      kept: accepted ?? [],
      lastBy: accepted?.at(-1)?.by ?? "",
      accept: (finding, reason, by) => {
        const on = Temporal.Now.plainDateISO().toString();
        keep((before) => withAcceptance(before, { ...identityOf(finding), reason, by, on }));
      },
      takeBack: (finding) => {
        keep((before) => withoutAcceptance(before, identityOf(finding)));
      },
      remove: (acceptance) => {
        keep((before) => withoutAcceptance(before, acceptance));
      },
    };
  }, [accepted, change]);
}
