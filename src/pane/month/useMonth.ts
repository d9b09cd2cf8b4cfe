import { useCallback, useEffect, useRef, useState } from "react";
import { Temporal } from "temporal-polyfill";
import { countryRules } from "../../cylinders/countryRules";
import type { Sheet } from "../../sheet/sheet";
import type { Workbook } from "../../workbook/workbook";
import type { Watch } from "../check/pace";
import type { DeskStep } from "../kit/deskEngine";
import { problemOf, wasCancelled, type Problem } from "../kit/problem";
import type { PaneProps } from "../Pane";
import type { Shop } from "../shop/useShop";
import type { MadeReport, MonthChoice, MonthOrder, ReportOrder } from "./monthDesk";
import { monthEngine } from "./monthEngine";

/** What is wanted of the report, as it stands in the form. */
export interface MonthForm {
  readonly month: string;
  readonly names: boolean;
  readonly paper: ReportOrder["paper"];
  readonly shopName: string;
  readonly preparedBy: string;
}

export interface Month {
  /** Undefined until the log was looked through. */
  readonly months: readonly MonthChoice[] | undefined;
  readonly form: MonthForm;
  /** Absent while none is made for what the form says. */
  readonly report: MadeReport | undefined;
  /** The sheets it was written to. */
  readonly written: readonly string[] | undefined;
  readonly busy: DeskStep | undefined;
  readonly problem: Problem | undefined;
  /** Sheets that could not be read, each in a sentence. */
  readonly unreachable: readonly string[];
  /** The workbook has changed since it was read. */
  readonly changed: boolean;
  readonly fill: (part: Partial<MonthForm>) => void;
  readonly look: () => void;
  readonly make: () => void;
  readonly write: () => void;
  readonly download: () => void;
  readonly cancel: () => void;
}

/** Excel tells of our own writing a little after it is done. */
const OWN_ECHO_MS = 1000;

/** Month end in one workbook. Call only once the shop has answered. */
export function useMonth(workbook: Workbook, shop: Shop, watchChanges: PaneProps["watchChanges"]): Month {
  const { settings, change } = shop;
  const [engine] = useState(() => monthEngine());
  const [months, setMonths] = useState<readonly MonthChoice[]>();
  const [form, setForm] = useState<MonthForm>(() => emptyForm(shop));
  const [report, setReport] = useState<MadeReport>();
  const [written, setWritten] = useState<readonly string[]>();
  const [unreachable, setUnreachable] = useState<readonly string[]>([]);
  const [changed, setChanged] = useState(false);
  const { busy, problem, work, cancel } = useWork();
  const sheets = useRef<readonly Sheet[]>([]);
  const deafUntil = useRef(0);

  const order = (wanted?: ReportOrder): MonthOrder => {
    const { country, units, house, airTests, sources, accepted = [] } = settings;
    if (country === undefined || units === undefined)
      throw new Error("Month end before the shop has answered.");
    const today = Temporal.Now.plainDateISO().toString();
    const { sheets: choices } = settings;
    return { country, units, choices, audit: { house, airTests, sources }, accepted, today, report: wanted };
  };

  const look = () => {
    work("Reading the sheets", async (watch) => {
      const found = await readAll(workbook, watch);
      sheets.current = found.sheets;
      const answer = await engine.answer(found.sheets, order(), watch);
      setUnreachable(found.unreachable);
      setMonths(answer.months);
      setChanged(false);
      setReport(undefined);
      setWritten(undefined);
      const usual = usualMonth(answer.months);
      setForm((now) =>
        answer.months.some(({ month }) => month === now.month) ? now : { ...now, month: usual },
      );
    });
  };

  const make = () => {
    const { shopName: name } = form;
    // The name of the shop is the same next month.
    if (said(name) !== settings.shopName) change((now) => ({ ...now, shopName: said(name) }));
    work("Judging the fills", async (watch) => {
      const { month, names, paper, shopName, preparedBy } = form;
      const wanted = { month, names, paper, shopName: said(shopName), preparedBy: said(preparedBy) };
      const answer = await engine.answer(sheets.current, order(wanted), watch);
      setReport(answer.report);
      setWritten(undefined);
    });
  };

  /** What Brimbook wrote is no part of the log, whatever its headings look like. */
  const write = () => {
    if (!report) return;
    work("Writing the sheets", async ({ progress, signal }) => {
      const told = (share: number) => {
        progress("Writing the sheets", share);
      };
      deafUntil.current = Infinity;
      const names = await workbook.addSheets(report.drafts, told, signal).finally(() => {
        deafUntil.current = performance.now() + OWN_ECHO_MS;
      });
      change((now) => ({
        ...now,
        sheets: [
          ...now.sheets.filter(({ sheet }) => !names.includes(sheet)),
          ...names.map((sheet) => ({ sheet, use: false, columns: [] })),
        ],
      }));
      setWritten(names);
    });
  };

  const download = () => {
    if (!report) return;
    work("Writing the file", async ({ signal }) => {
      const { saveReport } = await import("./saveReport");
      await saveReport(report.drafts, `Month ${form.month}.xlsx`, signal);
    });
  };

  const fill = (part: Partial<MonthForm>) => {
    setForm((now) => ({ ...now, ...part }));
    setReport(undefined);
    setWritten(undefined);
  };

  useEffect(() => () => engine.close(), [engine]);
  useEffect(
    () =>
      watchChanges?.(() => {
        if (performance.now() > deafUntil.current) setChanged(true);
      }),
    [watchChanges],
  );
  return {
    ...{ months, form, report, written, busy, problem, unreachable },
    changed: changed && months !== undefined,
    ...{ fill, look, make, write, download, cancel },
  };
}

/** One piece of work at a time, with its progress, its problem, and the way to call it off. */
function useWork() {
  const [busy, setBusy] = useState<DeskStep>();
  const [problem, setProblem] = useState<Problem>();
  const underWay = useRef<AbortController>();
  const work = useCallback((doing: string, job: (watch: Watch) => Promise<void>) => {
    underWay.current?.abort();
    const controller = new AbortController();
    const { signal } = controller;
    underWay.current = controller;
    setProblem(undefined);
    setBusy({ doing, share: 0 });
    const progress = (now: string, share: number) => {
      if (!signal.aborted) setBusy({ doing: now, share });
    };
    job({ progress, signal })
      .catch((thrown: unknown) => {
        if (!signal.aborted && !wasCancelled(thrown)) setProblem(problemOf(thrown));
      })
      .finally(() => {
        if (!signal.aborted) setBusy(undefined);
      });
  }, []);
  const cancel = useCallback(() => {
    underWay.current?.abort();
    setBusy(undefined);
  }, []);
  useEffect(() => () => underWay.current?.abort(), []);
  return { busy, problem, work, cancel };
}

async function readAll(workbook: Workbook, { progress, signal }: Watch) {
  const names = (await workbook.listSheets()).map(({ name }) => name);
  const sheets: Sheet[] = [];
  const unreachable: string[] = [];
  for (const [at, name] of names.entries()) {
    try {
      const told = (share: number) => {
        progress(`Reading ${name}`, ((at + share) / names.length) * 0.3);
      };
      sheets.push(await workbook.readSheet(name, told, signal));
    } catch (thrown) {
      if (wasCancelled(thrown)) throw thrown;
      unreachable.push(problemOf(thrown).sentence);
    }
  }
  return { sheets, unreachable };
}

/** At month end the month that is over is wanted: the latest one before today's, else the latest there is. */
function usualMonth(months: readonly MonthChoice[]): string {
  const today = Temporal.Now.plainDateISO().toPlainYearMonth().toString();
  return (months.find(({ month }) => month < today) ?? months[0])?.month ?? "";
}

function emptyForm({ settings }: Shop): MonthForm {
  const { country, shopName = "" } = settings;
  const paper = country === undefined ? "A4" : countryRules(country).habits.paper;
  return { month: "", names: false, paper, shopName, preparedBy: "" };
}

function said(text: string): string | undefined {
  return text.trim() === "" ? undefined : text.trim();
}
