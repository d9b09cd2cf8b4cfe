import { useCallback, useEffect, useRef, useState } from "react";
import { Temporal } from "temporal-polyfill";
import type { Receipt } from "../../counter/receive/receipt";
import type { Waiting } from "../../counter/receive/waitingRows";
import type { Sheet } from "../../sheet/sheet";
import type { ShopSettings } from "../../workbook/settings";
import { WorkbookProblem, type SelectedRows, type Workbook } from "../../workbook/workbook";
import { checkEngine } from "../check/checkEngine";
import type { CheckOrder } from "../check/checkJob";
import type { CheckReport, SheetReading } from "../check/report";
import { problemOf, wasCancelled, type Problem } from "../kit/problem";
import type { PaneProps } from "../Pane";
import { enteredSheet } from "../../counter/receive/enteredSheet";
import type { EnteredCylinder } from "../../counter/form";
import type { ListedPrices } from "../../counter/plan/prices";

export interface Register {
  /** What is on record of the cylinders last asked for, in the order asked. */
  readonly receipts: readonly Receipt[];
  /** How the sheets were understood when they were asked. */
  readonly sheets: readonly SheetReading[];
  /** The prices that stand in the workbook, once it was asked. */
  readonly prices: ListedPrices | undefined;
  readonly busy: boolean;
  readonly problem: Problem | undefined;
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

/** Looks cylinders up in the workbook's logs and registers, in a worker of its own. */
export function useRegister(
  workbook: Workbook,
  settings: ShopSettings,
  watchChanges: PaneProps["watchChanges"],
): Register {
  const [receipts, setReceipts] = useState<readonly Receipt[]>([]);
  const [sheets, setSheets] = useState<readonly SheetReading[]>([]);
  const [prices, setPrices] = useState<ListedPrices>();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem>();
  const engine = useRef(checkEngine());
  const fetched = useRef<readonly Sheet[]>();
  const underWay = useRef<AbortController>();

  const fetch = useCallback(
    async (signal: AbortSignal) => {
      // Where the host cannot tell of changes, the sheets may be others by now.
      if (fetched.current && watchChanges) return fetched.current;
      fetched.current = await readable(workbook, signal);
      return fetched.current;
    },
    [workbook, watchChanges],
  );

  const lookUp = useCallback(
    (
      entered: readonly EnteredCylinder[],
      wanted: Pick<CheckOrder, "receive" | "waiting">,
      then?: (report: CheckReport) => void,
    ) => {
      underWay.current?.abort();
      const controller = new AbortController();
      underWay.current = controller;
      const { signal } = controller;
      setBusy(true);
      setProblem(undefined);
      const job = async () => {
        const own = enteredSheet(entered, settings.units ?? "metric");
        const read = await fetch(signal);
        const order = { ...orderFor(settings), ...wanted };
        const report = await engine.current.run(own ? [...read, own] : read, order, {
          progress: () => undefined,
          signal,
        });
        signal.throwIfAborted();
        setReceipts(report.receipts ?? []);
        setSheets(report.sheets);
        setPrices(report.prices);
        setBusy(false);
        then?.(report);
      };
      job().catch((thrown: unknown) => {
        if (signal.aborted || wasCancelled(thrown)) return;
        setBusy(false);
        setProblem(problemOf(thrown));
      });
    },
    [fetch, settings],
  );
  const ask = useCallback<Register["ask"]>(
    (asked, entered) => {
      lookUp(entered, { receive: asked });
    },
    [lookUp],
  );
  const takeRows = useCallback<Register["takeRows"]>(
    ({ sheet, rows }, asked, entered, then) => {
      lookUp(entered, { receive: asked, waiting: { sheet, rows } }, ({ waiting }) => {
        if (waiting) then(waiting);
      });
    },
    [lookUp],
  );

  useEffect(
    () =>
      watchChanges?.(() => {
        fetched.current = undefined;
      }),
    [watchChanges],
  );
  useEffect(() => {
    const working = engine.current;
    return () => {
      underWay.current?.abort();
      working.close();
    };
  }, []);

  const forget = useCallback(() => {
    underWay.current?.abort();
    setReceipts([]);
    setBusy(false);
  }, []);
  return { receipts, sheets, prices, busy, problem, ask, takeRows, forget };
}

/** Every sheet that can be read; one that cannot keeps nobody from looking in the others. */
async function readable(workbook: Workbook, signal: AbortSignal): Promise<readonly Sheet[]> {
  const sheets: Sheet[] = [];
  for (const { name } of await workbook.listSheets()) {
    try {
      sheets.push(await workbook.readSheet(name, undefined, signal));
    } catch (thrown) {
      if (!(thrown instanceof WorkbookProblem)) throw thrown;
    }
  }
  return sheets;
}

function orderFor(settings: ShopSettings): CheckOrder {
  const { country, units } = settings;
  if (country === undefined || units === undefined) throw new Error("A fill before the shop has answered.");
  return {
    country,
    units,
    choices: settings.sheets,
    shop: { house: settings.house, airTests: settings.airTests, sources: settings.sources },
    today: Temporal.Now.plainDateISO().toString(),
    judge: false,
  };
}
