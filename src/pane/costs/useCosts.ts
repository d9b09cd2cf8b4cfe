import { useCallback, useState } from "react";
import { countryRules } from "../../cylinders/countryRules";
import type { Scenario } from "../../costs/whatIf";
import { emptyPriceList, emptyStockSheet } from "../../reports/costs/emptyLists";
import type { Problem } from "../../session/problem";
import type { CostAnswer } from "../../session/questions/costs";
import type { Told } from "../../session/worker/told";
import type { Workbook } from "../../workbook/workbook";
import { useLasting } from "../kit/useLasting";
import { useTask } from "../kit/useTask";
import { useAnswer, useSession } from "../session";
import type { Shop } from "../shop/useShop";

/** What part of the answer is looked at. */
export interface CostView {
  readonly month: string | undefined;
  readonly scenario: Scenario | undefined;
}

export type Written = "price list" | "stock sheet" | "cost sheets";

export interface Costs {
  readonly answer: CostAnswer | undefined;
  readonly view: CostView;
  /** Names of the sheets that were written last, and what for. */
  readonly written: { readonly names: readonly string[]; readonly what: Written } | undefined;
  readonly busy: Told | undefined;
  readonly problem: Problem | undefined;
  /** Sheets that the host could not hand over. */
  readonly unreachable: readonly string[];
  /** Whether changes of the workbook are seen by themselves; else `run` reads it again. */
  readonly isLive: boolean;
  run(): void;
  /** Looks at another month, or asks what if. */
  look(view: Partial<CostView>): void;
  write(customers: boolean): void;
  writeEmpty(what: "price list" | "stock sheet"): void;
  cancel(): void;
}

/** The costs of the workbook that is open. They are worked out by themselves, and keep up with it. */
export function useCosts(workbook: Workbook, { settings, change }: Shop): Costs {
  const { session, state } = useSession();
  const [wanted, setWanted] = useState<CostView>({ month: undefined, scenario: undefined });
  const asked = useAnswer("costs", wanted);
  const [written, setWritten] = useState<Costs["written"]>();
  const { answer } = asked;
  const task = useTask();
  const working = state.busy ?? asked.busy;
  const isLong = useLasting(working !== undefined);
  // A month that is gone from the log is looked at no more.
  const isGone = wanted.month !== undefined && answer !== undefined && !answer.months.includes(wanted.month);
  if (isGone) setWanted({ ...wanted, month: undefined });

  const write = (customers: boolean) => {
    task.start("Writing the sheets", async ({ progress, signal }) => {
      const watch = { progress: () => undefined, signal };
      const { answer: laidOut } = await session.ask("costs", { ...wanted, write: { customers } }, watch);
      const names = await workbook.addSheets(laidOut.drafts ?? [], progress, signal);
      setWritten({ names, what: "cost sheets" });
    });
  };
  const writeEmpty = (what: "price list" | "stock sheet") => {
    const { units, country } = settings;
    if (units === undefined || country === undefined) return;
    const { paper } = countryRules(country).habits;
    task.start("Writing the sheet", async ({ progress, signal }) => {
      const draft = what === "price list" ? emptyPriceList(units, paper) : emptyStockSheet(units, paper);
      const names = await workbook.addSheets([draft], progress, signal);
      // It is no part of the log, whatever its headings look like.
      change((now) => ({
        ...now,
        sheets: [
          ...now.sheets.filter(({ sheet }) => !names.includes(sheet)),
          ...names.map((sheet) => ({ sheet, use: false, columns: [] })),
        ],
      }));
      setWritten({ names, what });
    });
  };
  const cancel = () => {
    task.cancel();
    session.cancel();
    asked.cancel();
  };
  const { again } = asked;
  const run = useCallback(() => {
    setWritten(undefined);
    void session.readAgain();
    again();
  }, [session, again]);
  return {
    answer,
    view: wanted,
    written,
    busy: task.busy ?? (state.busy || !answer || !asked.isOfThese || isLong ? working : undefined),
    problem: task.problem ?? asked.problem ?? state.problem,
    unreachable: state.unreachable.map(({ name, sentence }) => `${name}: ${sentence}`),
    isLive: session.isLive,
    run,
    look: (part) => {
      setWanted({ ...wanted, ...part });
    },
    ...{ write, writeEmpty, cancel },
  };
}
