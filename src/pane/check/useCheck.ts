import { startTransition as inTurns, useCallback, useEffect, useMemo, useReducer, useRef } from "react";
import { Temporal } from "temporal-polyfill";
import type { Sheet } from "../../sheet/sheet";
import type { ShopSettings } from "../../workbook/settings";
import type { Workbook } from "../../workbook/workbook";
import { problemOf, wasCancelled } from "../kit/problem";
import type { PaneProps } from "../Pane";
import type { Shop } from "../shop/useShop";
import { checkEngine } from "./checkEngine";
import type { CheckOrder } from "./checkJob";
import {
  checkReducer,
  chosenPart,
  NOTHING_YET,
  type Busy,
  type CheckState,
  type UnreachableSheet,
} from "./checkState";
import type { Watch } from "./pace";
import type { Question } from "./questions";

/** How much of a run goes into fetching the sheets; the rest is reading and judging them. */
const FETCHING_SHARE = 0.6;

export interface Check extends CheckState {
  readonly shop: Shop;
  /** The report was made under other settings than those of now. */
  readonly outOfDate: boolean;
  /** Looks through the workbook for logs. */
  look(): void;
  /** Checks the chosen sheets as they are now. */
  run(): void;
  /** Asks something of the log as it was checked last. */
  ask(question: Question): void;
  cancel(): void;
}

/** The check of one workbook: what was found in it, and what is under way. Call only once the shop has answered. */
export function useCheck(workbook: Workbook, shop: Shop, watchChanges: PaneProps["watchChanges"]): Check {
  const [state, dispatch] = useReducer(checkReducer, NOTHING_YET);
  const engine = useRef(checkEngine());
  const sheets = useRef<readonly Sheet[]>([]);
  const checked = useRef<readonly Sheet[]>([]);
  const underWay = useRef<AbortController>();
  const { settings } = shop;

  /** Does one piece of work; whatever else was under way is called off. */
  const work = useCallback((kind: Busy["with"], doing: string, job: (watch: Watch) => Promise<void>) => {
    underWay.current?.abort();
    const controller = new AbortController();
    underWay.current = controller;
    dispatch({ kind: "began", with: kind, doing });
    const progress = (now: string, share: number) => {
      if (!controller.signal.aborted) dispatch({ kind: "progressed", doing: now, share });
    };
    job({ progress, signal: controller.signal }).catch((thrown: unknown) => {
      if (controller.signal.aborted || wasCancelled(thrown)) return;
      dispatch({ kind: "failed", problem: problemOf(thrown) });
    });
  }, []);

  const look = useCallback(() => {
    work("looking", "Looking for logs in this workbook", async (watch) => {
      const found = await fetchAll(workbook, watch);
      const report = await engine.current.run(found.sheets, orderFor(settings, false), later(watch));
      sheets.current = found.sheets;
      inTurns(() => {
        dispatch({ kind: "looked", reading: report, unreachable: found.unreachable });
      });
    });
  }, [work, workbook, settings]);

  const run = useCallback(() => {
    if (!state.reading) return;
    const names = chosenPart(state.reading, settings.sheets).sheets.map(({ name }) => name);
    work("checking", "Reading the sheets", async (watch) => {
      const fetched: Sheet[] = [];
      for (const name of names)
        fetched.push(await fetchSheet(workbook, name, fetched.length, names.length, watch));
      const report = await engine.current.run(fetched, orderFor(settings, true), later(watch));
      checked.current = fetched;
      sheets.current = sheets.current.map(
        (sheet) => fetched.find(({ name }) => name === sheet.name) ?? sheet,
      );
      inTurns(() => {
        dispatch({ kind: "checked", report, order: orderKey(settings, names) });
      });
    });
  }, [work, workbook, settings, state.reading]);

  const ask = useCallback(
    (question: Question) => {
      work(question.kind, "Reading the rows", async (watch) => {
        const order = { ...orderFor(settings, false), ask: question };
        const { answer } = await engine.current.run(checked.current, order, watch);
        inTurns(() => {
          if (answer) dispatch({ kind: "answered", answer });
        });
      });
    },
    [work, settings],
  );

  const cancel = useCallback(() => {
    underWay.current?.abort();
    dispatch({ kind: "stopped" });
  }, []);

  // The first look, as soon as the area is there; and everything is called off when it goes.
  const firstLook = useRef(look);
  useEffect(() => {
    firstLook.current();
    const working = engine.current;
    return () => {
      underWay.current?.abort();
      working.close();
    };
  }, []);

  // A correction is read at once, from the sheets already at hand.
  const readBy = readingKey(settings);
  const lastReadBy = useRef(readBy);
  useEffect(() => {
    if (lastReadBy.current === readBy) return;
    lastReadBy.current = readBy;
    if (sheets.current.length === 0) return;
    work("reading", "Reading again with your answer", async (watch) => {
      const reading = await engine.current.run(sheets.current, orderFor(settings, false), watch);
      inTurns(() => {
        dispatch({ kind: "read again", reading });
      });
    });
  }, [readBy, settings, work]);

  useEffect(
    () =>
      watchChanges?.(() => {
        dispatch({ kind: "log changed" });
      }),
    [watchChanges],
  );

  const outOfDate = useMemo(() => {
    if (!state.report || !state.reading) return false;
    const names = chosenPart(state.reading, settings.sheets).sheets.map(({ name }) => name);
    return orderKey(settings, names) !== state.reportOrder;
  }, [state.report, state.reading, state.reportOrder, settings]);

  return { ...state, shop, outOfDate, look, run, ask, cancel };
}

/** The order of a run under these settings; the shop has answered by now. */
function orderFor(settings: ShopSettings, judge: boolean): CheckOrder {
  const { country, units } = settings;
  if (country === undefined || units === undefined) throw new Error("A check before the shop has answered.");
  // Which sheets are read is decided here; a sheet that is not ticked is still shown for what it is.
  const choices = settings.sheets.map(({ sheet, columns }) => ({ sheet, columns }));
  const today = Temporal.Now.plainDateISO().toString();
  return { country, units, choices, shop: toldBy(settings), today, judge };
}

function orderKey(settings: ShopSettings, names: readonly string[]): string {
  return JSON.stringify([readingKey(settings), names, toldBy(settings)]);
}

/** What decides how the sheets are read; whatever else a shop sets leaves the reading as it is. */
function readingKey({ country, units, sheets }: ShopSettings): string {
  const said = sheets
    .filter(({ columns }) => columns.length > 0)
    .map(({ sheet, columns }) => [sheet, columns]);
  return JSON.stringify([country, units, said]);
}

/** What the shop judges by besides its country's rules. */
function toldBy({ house, airTests, sources }: ShopSettings): NonNullable<CheckOrder["shop"]> {
  return { house, airTests, sources };
}

/** Every sheet the host can hand over, hidden ones too; those it cannot are named. */
async function fetchAll(workbook: Workbook, watch: Watch) {
  const infos = await workbook.listSheets();
  const sheets: Sheet[] = [];
  const unreachable: UnreachableSheet[] = [];
  for (const [at, { name }] of infos.entries()) {
    try {
      sheets.push(await fetchSheet(workbook, name, at, infos.length, watch));
    } catch (thrown) {
      watch.signal.throwIfAborted();
      unreachable.push({ name, sentence: problemOf(thrown).sentence });
    }
  }
  return { sheets, unreachable };
}

async function fetchSheet(
  workbook: Workbook,
  name: string,
  at: number,
  of: number,
  { progress, signal }: Watch,
) {
  signal.throwIfAborted();
  const tell = (share: number) => {
    progress(`Reading ${name}`, (FETCHING_SHARE * (at + share)) / of);
  };
  tell(0);
  return workbook.readSheet(name, tell, signal);
}

/** The watch of the part of a run after the sheets were fetched. */
function later({ progress, signal }: Watch): Watch {
  return {
    progress: (doing, share) => {
      progress(doing, FETCHING_SHARE + (1 - FETCHING_SHARE) * share);
    },
    signal,
  };
}
