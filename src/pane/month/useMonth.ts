import { useState } from "react";
import { Temporal } from "temporal-polyfill";
import { countryRules } from "../../cylinders/countryRules";
import type { Problem } from "../../session/problem";
import type { MadeReport, MonthChoice, ReportOrder } from "../../session/questions/month";
import type { Told } from "../../session/worker/told";
import type { Workbook } from "../../workbook/workbook";
import { useLasting } from "../kit/useLasting";
import { useTask } from "../kit/useTask";
import { useAnswer, useSession } from "../session";
import type { Shop } from "../shop/useShop";

/** What is wanted of the report, as it stands in the form. */
export interface MonthForm {
  readonly month: string;
  readonly names: boolean;
  readonly paper: ReportOrder["paper"];
  readonly shopName: string;
  readonly preparedBy: string;
}

export interface Month {
  /** Undefined until the log was read. */
  readonly months: readonly MonthChoice[] | undefined;
  readonly form: MonthForm;
  /** Absent while none is made for what the form says; once made it keeps up with the log. */
  readonly report: MadeReport | undefined;
  /** The sheets it was written to. */
  readonly written: readonly string[] | undefined;
  readonly busy: Told | undefined;
  readonly problem: Problem | undefined;
  /** Sheets that could not be read, each in a sentence. */
  readonly unreachable: readonly string[];
  /** Whether changes of the log are seen by themselves. */
  readonly isLive: boolean;
  readonly fill: (part: Partial<MonthForm>) => void;
  /** Reads the workbook again, where the host does not tell of changes. */
  readonly look: () => void;
  readonly make: () => void;
  readonly write: () => void;
  readonly download: () => void;
  readonly cancel: () => void;
}

/** Month end in the workbook that is open. */
export function useMonth(workbook: Workbook, shop: Shop): Month {
  const { settings, change } = shop;
  const { session, state } = useSession();
  const months = useAnswer("months", undefined);
  const [typed, setTyped] = useState<MonthForm>(() => emptyForm(shop));
  const [wanted, setWanted] = useState<ReportOrder>();
  const made = useAnswer("month", wanted ?? "nothing");
  const [written, setWritten] = useState<{ readonly names: readonly string[]; readonly of: string }>();
  const task = useTask();
  const isThere = months.answer?.some(({ month }) => month === typed.month) === true;
  const form = isThere ? typed : { ...typed, month: usualMonth(months.answer ?? []) };
  const report = wanted && made.isOfThese ? made.answer : undefined;
  const working = state.busy ?? made.busy ?? months.busy;
  const isLong = useLasting(working !== undefined);
  const isWaitedFor =
    state.busy !== undefined ||
    !session.isLive ||
    !months.answer ||
    (wanted !== undefined && !report) ||
    isLong;

  const make = () => {
    const { month, names, paper, shopName, preparedBy } = form;
    // The name of the shop is the same next month.
    if (said(shopName) !== settings.shopName) change((now) => ({ ...now, shopName: said(shopName) }));
    setWanted({ month, names, paper, shopName: said(shopName), preparedBy: said(preparedBy) });
    made.again();
  };
  const write = () => {
    if (!report) return;
    task.start("Writing the sheets", async ({ progress, signal }) => {
      const names = await workbook.addSheets(report.drafts, progress, signal);
      setWritten({ names, of: report.checksum });
    });
  };
  const download = () => {
    if (!report) return;
    task.start("Writing the file", async ({ signal }) => {
      const { saveReport } = await import("./saveReport");
      await saveReport(report.drafts, `Month ${form.month}.xlsx`, signal);
    });
  };
  const fill = (part: Partial<MonthForm>) => {
    setTyped({ ...form, ...part });
    setWanted(undefined);
  };
  const cancel = () => {
    task.cancel();
    session.cancel();
    months.cancel();
    made.cancel();
    if (!report) setWanted(undefined);
  };
  const look = () => {
    void session.readAgain();
    months.again();
  };
  return {
    months: months.answer,
    form,
    report,
    written: report && written?.of === report.checksum ? written.names : undefined,
    busy: task.busy ?? (isWaitedFor ? working : undefined),
    problem: task.problem ?? made.problem ?? months.problem ?? state.problem,
    unreachable: state.unreachable.map(({ sentence }) => sentence),
    isLive: session.isLive,
    ...{ fill, look, make, write, download, cancel },
  };
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
