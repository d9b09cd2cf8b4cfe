import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { useEffect, useRef, type RefObject } from "react";
import type { Workbook } from "../../workbook/workbook";
import { count, counted } from "../check/report";
import { WorkUnderWay } from "../check/WorkUnderWay";
import { useAnnounce } from "../kit/announce";
import { Notice, ProblemNote } from "../kit/ProblemNote";
import type { Shop } from "../shop/useShop";
import { MadeReportView } from "./MadeReportView";
import { ReportForm } from "./ReportForm";
import { useMonth, type Month } from "./useMonth";

interface MonthAreaProps {
  readonly workbook: Workbook;
  readonly shop: Shop;
}

const useStyles = makeStyles({
  area: { padding: "12px", display: "flex", flexDirection: "column", gap: "12px", flexGrow: 1 },
  text: { margin: 0 },
  caution: {
    margin: 0,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
});

/** Month end: the report of one month, looked at here and written as new sheets. */
export function MonthArea({ workbook, shop }: MonthAreaProps) {
  const styles = useStyles();
  const month = useMonth(workbook, shop);
  const button = useRef<HTMLButtonElement>(null);
  const { months, report, busy, problem, unreachable } = month;
  useSpokenState(month);
  useFocusBack(busy !== undefined, button);
  return (
    <div className={styles.area}>
      {!months && (
        <p className={styles.text}>
          The report of a month for an inspector, an insurer or the owner: what was filled, what was found,
          what could not be checked, and which tests fall due.
        </p>
      )}
      {problem && <ProblemNote problem={problem} />}
      {unreachable.length > 0 && <Notice>Not read: {unreachable.join(" ")}</Notice>}
      {months?.length === 0 && (
        <Notice>
          No fill with a date that can be read. See under “Check the log” how the sheets are understood.
        </Notice>
      )}
      {months && months.length > 0 && <ReportForm month={month} months={months} />}
      {busy ? (
        <WorkUnderWay busy={busy} onCancel={month.cancel} />
      ) : (
        <NextStep month={month} button={button} />
      )}
      {report && !busy && <MadeReportView month={month} report={report} workbook={workbook} />}
      <p className={styles.caution}>
        A report says what the log says. It is no inspection; what could not be judged stands in it as not
        checked.
      </p>
    </div>
  );
}

function NextStep({
  month,
  button,
}: {
  readonly month: Month;
  readonly button: RefObject<HTMLButtonElement>;
}) {
  const { months, report, isLive } = month;
  const again = !isLive || !months;
  return (
    <>
      {months && months.length > 0 && !report && (
        <Button ref={button} appearance="primary" onClick={month.make}>
          Make the report
        </Button>
      )}
      {again && (
        <Button appearance={months ? "secondary" : "primary"} onClick={month.look}>
          {months ? "Read the log again" : "Read the log"}
        </Button>
      )}
    </>
  );
}

/** Tells a screen reader what came of it. */
function useSpokenState({ months, report, written }: Month): void {
  const announce = useAnnounce();
  const told = useRef({ months, report, written });
  useEffect(() => {
    const before = told.current;
    told.current = { months, report, written };
    if (written && written !== before.written) announce(`Written: ${written.join(", ")}.`);
    else if (report && report !== before.report)
      announce(`${counted(report.fills, "fill")}, ${counted(report.open, "open finding")}.`);
    else if (months && months !== before.months) announce(`${count(months.length)} months with fills.`);
  }, [months, report, written, announce]);
}

/** The button gives way to Cancel: whoever pressed either finds the focus on the next button. */
function useFocusBack(busy: boolean, button: RefObject<HTMLButtonElement>): void {
  const was = useRef(busy);
  useEffect(() => {
    if (was.current && !busy && document.activeElement === document.body) button.current?.focus();
    was.current = busy;
  }, [busy, button]);
}
