import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { Workbook } from "../../workbook/workbook";
import { count, counted } from "../check/report";
import { ChartFigure } from "../kit/chart/ChartFigure";
import type { MadeReport } from "../../session/questions/month";
import type { Month } from "./useMonth";

interface MadeReportViewProps {
  readonly month: Month;
  readonly report: MadeReport;
  readonly workbook: Workbook;
}

const useStyles = makeStyles({
  view: { display: "flex", flexDirection: "column", gap: "12px" },
  heading: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: tokens.fontWeightSemibold },
  list: { margin: 0, padding: 0, listStyleType: "none" },
  buttons: { display: "flex", flexWrap: "wrap", gap: "8px" },
  text: { margin: 0 },
  small: { margin: 0, fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground3 },
});

/** What stands in the report, its charts, and what can be done with it. */
export function MadeReportView({ month, report, workbook }: MadeReportViewProps) {
  const styles = useStyles();
  const { months = [], form, written } = month;
  const text = months.find((each) => each.month === form.month)?.text ?? form.month;
  const drawsCharts = workbook.capabilities.charts;
  const charts = report.drafts.flatMap((sheet) => sheet.charts.map((chart) => ({ chart, sheet })));
  return (
    <section className={styles.view} aria-label={`Report of ${text}`}>
      <h2 className={styles.heading}>{text}</h2>
      <ul className={styles.list}>
        <li>
          {counted(report.fills, "fill")}
          {report.undated > 0 &&
            `, and ${counted(report.undated, "fill")} of the log without a date that can be read`}
        </li>
        <li>
          {counted(report.open, "open finding")}
          {report.accepted > 0 && `, ${count(report.accepted)} accepted`}
        </li>
        <li>
          Not checked:{" "}
          {report.notChecked === 0 ? "nothing" : `something for ${counted(report.notChecked, "reason")}`}
          {!report.fullyJudged && "; hydro, visual and oxygen rating were not judged for every fill"}
        </li>
      </ul>
      <div className={styles.buttons}>
        <Button appearance={written ? "secondary" : "primary"} onClick={month.write}>
          Write as new sheets
        </Button>
        {!drawsCharts && <Button onClick={month.download}>Download as .xlsx</Button>}
      </div>
      {written && <p className={styles.text}>Written as new sheets: {written.join(", ")}.</p>}
      <p className={styles.small}>
        {counted(report.drafts.length, "new sheet")}, ready to print on {form.paper}. Your log is not touched.
        {!drawsCharts && " The grid here shows no charts: a saved copy and the download have them."}
      </p>
      {charts.map(({ chart, sheet }) => (
        <ChartFigure key={chart.title} chart={chart} sheet={sheet} />
      ))}
    </section>
  );
}
