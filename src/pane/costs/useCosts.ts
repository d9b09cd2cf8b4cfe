import { useCallback, useEffect, useReducer, useRef } from "react";
import { Temporal } from "temporal-polyfill";
import { countryRules } from "../../cylinders/countryRules";
import type { Scenario } from "../../costs/whatIf";
import { emptyPriceList, emptyStockSheet } from "../../reports/costs/emptyLists";
import type { SheetDraft } from "../../sheet/draft/draft";
import type { Sheet } from "../../sheet/sheet";
import type { Workbook } from "../../workbook/workbook";
import type { Watch } from "../check/pace";
import { problemOf, wasCancelled, type Problem } from "../kit/problem";
import type { PaneProps } from "../Pane";
import type { Shop } from "../shop/useShop";
import type { CostAnswer, CostOrder } from "./costDesk";
import { costEngine } from "./costEngine";

/** What part of the answer is looked at. */
export interface CostView {
  readonly month: string | undefined;
  readonly scenario: Scenario | undefined;
}

interface State {
  readonly busy: { readonly doing: string; readonly share: number } | undefined;
  readonly answer: CostAnswer | undefined;
  readonly view: CostView;
  /** Names of the sheets that were written last, and what for. */
  readonly written: { readonly names: readonly string[]; readonly what: Written } | undefined;
  readonly changed: boolean;
  readonly problem: Problem | undefined;
  /** Sheets that the host could not hand over. */
  readonly unreachable: readonly string[];
}

export type Written = "price list" | "stock sheet" | "cost sheets";

type Event =
  | { readonly kind: "began"; readonly doing: string }
  | { readonly kind: "progressed"; readonly doing: string; readonly share: number }
  | {
      readonly kind: "answered";
      readonly answer: CostAnswer;
      readonly view: CostView;
      readonly fresh: boolean;
    }
  | { readonly kind: "written"; readonly names: readonly string[]; readonly what: Written }
  | { readonly kind: "unreachable"; readonly names: readonly string[] }
  | { readonly kind: "stopped" }
  | { readonly kind: "failed"; readonly problem: Problem }
  | { readonly kind: "log changed" };

const NOTHING_YET: State = {
  busy: undefined,
  answer: undefined,
  view: { month: undefined, scenario: undefined },
  written: undefined,
  changed: false,
  problem: undefined,
  unreachable: [],
};

function reducer(state: State, event: Event): State {
  switch (event.kind) {
    case "began":
      return { ...state, busy: { doing: event.doing, share: 0 }, problem: undefined };
    case "progressed":
      return state.busy ? { ...state, busy: { doing: event.doing, share: event.share } } : state;
    case "answered":
      return {
        ...state,
        busy: undefined,
        answer: event.answer,
        view: event.view,
        ...(event.fresh && { changed: false, written: undefined }),
      };
    case "written":
      return { ...state, busy: undefined, written: { names: event.names, what: event.what } };
    case "unreachable":
      return { ...state, unreachable: event.names };
    case "stopped":
      return { ...state, busy: undefined };
    case "failed":
      return { ...state, busy: undefined, problem: event.problem };
    case "log changed":
      return state.changed || !state.answer ? state : { ...state, changed: true };
  }
}

export interface Costs extends State {
  /** Reads the workbook and works everything out. */
  run(): void;
  /** Looks at another month, or asks what if. */
  look(view: Partial<CostView>): void;
  write(customers: boolean): void;
  writeEmpty(what: "price list" | "stock sheet"): void;
  cancel(): void;
}

/** The costs of one workbook: what they came to, and what is under way. Call only once the shop has answered. */
export function useCosts(workbook: Workbook, shop: Shop, watchChanges: PaneProps["watchChanges"]): Costs {
  const [state, dispatch] = useReducer(reducer, NOTHING_YET);
  const engine = useRef(costEngine());
  const sheets = useRef<readonly Sheet[]>([]);
  const underWay = useRef<AbortController>();
  const { settings, change } = shop;
  const { view } = state;

  const work = useCallback((doing: string, job: (watch: Watch) => Promise<void>) => {
    underWay.current?.abort();
    const controller = new AbortController();
    underWay.current = controller;
    dispatch({ kind: "began", doing });
    const progress = (now: string, share: number) => {
      if (!controller.signal.aborted) dispatch({ kind: "progressed", doing: now, share });
    };
    job({ progress, signal: controller.signal }).catch((thrown: unknown) => {
      if (controller.signal.aborted || wasCancelled(thrown)) return;
      dispatch({ kind: "failed", problem: problemOf(thrown) });
    });
  }, []);

  const order = useCallback(
    (of: CostView, write?: CostOrder["write"]): CostOrder => {
      const { country, units } = settings;
      if (country === undefined || units === undefined)
        throw new Error("Costs before the shop has answered.");
      return {
        country,
        units,
        choices: settings.sheets,
        banks: (settings.sources ?? []).map(({ name, mix }) => ({ name, mix })),
        today: Temporal.Now.plainDateISO().toString(),
        month: of.month,
        scenario: of.scenario,
        write,
      };
    },
    [settings],
  );

  const run = useCallback(() => {
    work("Reading the sheets", async (watch) => {
      const names = (await workbook.listSheets()).map(({ name }) => name);
      const found: Sheet[] = [];
      const unreachable: string[] = [];
      for (const [at, name] of names.entries()) {
        watch.progress(`Reading ${name}`, (0.5 * at) / names.length);
        try {
          found.push(await workbook.readSheet(name, undefined, watch.signal));
        } catch (thrown) {
          watch.signal.throwIfAborted();
          unreachable.push(`${name}: ${problemOf(thrown).sentence}`);
        }
      }
      sheets.current = found;
      const answer = await engine.current.answer(found, order(view), {
        ...watch,
        progress: (doing, share) => {
          watch.progress(doing, 0.5 + share / 2);
        },
      });
      // A month that is gone from the log is looked at no more.
      const isGone = view.month !== undefined && !answer.months.includes(view.month);
      const shown = isGone ? { ...view, month: undefined } : view;
      const final = isGone ? await engine.current.answer(found, order(shown), watch) : answer;
      dispatch({ kind: "unreachable", names: unreachable });
      dispatch({ kind: "answered", answer: final, view: shown, fresh: true });
    });
  }, [work, workbook, order, view]);

  const look = useCallback(
    (part: Partial<CostView>) => {
      const next = { ...view, ...part };
      work("Working out the costs", async (watch) => {
        const answer = await engine.current.answer(sheets.current, order(next), watch);
        dispatch({ kind: "answered", answer, view: next, fresh: false });
      });
    },
    [work, order, view],
  );

  /** What Brimbook wrote is no part of the log, whatever its headings look like. */
  const add = useCallback(
    async (drafts: readonly SheetDraft[], what: Written, { progress, signal }: Watch) => {
      const names = await workbook.addSheets(
        drafts,
        (share) => {
          progress("Writing the sheets", share);
        },
        signal,
      );
      change((now) => ({
        ...now,
        sheets: [
          ...now.sheets.filter(({ sheet }) => !names.includes(sheet)),
          ...names.map((sheet) => ({ sheet, use: false, columns: [] })),
        ],
      }));
      dispatch({ kind: "written", names, what });
    },
    [workbook, change],
  );

  const write = useCallback(
    (customers: boolean) => {
      work("Writing the sheets", async (watch) => {
        const { drafts = [] } = await engine.current.answer(
          sheets.current,
          order(view, { customers }),
          watch,
        );
        await add(drafts, "cost sheets", watch);
      });
    },
    [work, order, view, add],
  );

  const writeEmpty = useCallback(
    (what: "price list" | "stock sheet") => {
      const { units, country } = settings;
      if (units === undefined || country === undefined) return;
      const { paper } = countryRules(country).habits;
      work("Writing the sheet", (watch) =>
        add(
          [what === "price list" ? emptyPriceList(units, paper) : emptyStockSheet(units, paper)],
          what,
          watch,
        ),
      );
    },
    [work, add, settings],
  );

  const cancel = useCallback(() => {
    underWay.current?.abort();
    dispatch({ kind: "stopped" });
  }, []);

  useEffect(() => {
    const working = engine.current;
    return () => {
      underWay.current?.abort();
      working.close();
    };
  }, []);

  useEffect(
    () =>
      watchChanges?.(() => {
        dispatch({ kind: "log changed" });
      }),
    [watchChanges],
  );

  return { ...state, run, look, write, writeEmpty, cancel };
}
