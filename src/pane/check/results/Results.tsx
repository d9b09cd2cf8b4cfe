import { makeStyles, tokens } from "@fluentui/react-components";
import { useId, useState, type RefObject } from "react";
import { COUNTRIES, countryInWords } from "../../../cylinders/countryRules";
import type { Workbook } from "../../../workbook/workbook";
import { AreaTabs } from "../../AreaTabs";
import { counted, type CheckReport } from "../report";
import type { Check } from "../useCheck";
import type { Jump } from "../useJump";
import { DueView } from "./DueView";
import { FindingsView } from "./FindingsView";
import { FurtherView } from "./further/FurtherView";
import { useAccepted } from "./useAccepted";
import { useFindings } from "./useFindings";

export interface ResultsProps {
  readonly report: CheckReport;
  readonly check: Check;
  readonly workbook: Workbook;
  readonly jump: Jump;
  readonly titleRef: RefObject<HTMLHeadingElement>;
}

const VIEWS = { findings: "Findings", due: "Due", further: "Look further" } as const;

const useStyles = makeStyles({
  results: { display: "flex", flexDirection: "column", gap: "8px" },
  title: {
    margin: "4px 0 0",
    fontSize: tokens.fontSizeBase400,
    lineHeight: tokens.lineHeightBase400,
    fontWeight: tokens.fontWeightSemibold,
    outline: "none",
  },
  by: { margin: 0, fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground3 },
  view: { display: "flex", flexDirection: "column", gap: "8px" },
});

/** What the check found; what falls due; and what else can be asked of the log. */
export function Results({ report, check, workbook, jump, titleRef }: ResultsProps) {
  const styles = useStyles();
  const id = useId();
  const [view, setView] = useState<keyof typeof VIEWS>("findings");
  const accepted = useAccepted(check.shop);
  const findings = useFindings(report, accepted);
  return (
    <section className={styles.results} aria-labelledby={id}>
      <h2 className={styles.title} id={id} ref={titleRef} tabIndex={-1}>
        {title(report, findings.counts.accepted)}
      </h2>
      <p className={styles.by}>{judgedBy(report)}</p>
      <AreaTabs areas={VIEWS} area={view} onArea={setView} id={id} label="What the log says" pinned={false} />
      <div
        role="tabpanel"
        id={`${id}-${view}-panel`}
        aria-labelledby={`${id}-${view}`}
        className={styles.view}
      >
        {view === "findings" && (
          <FindingsView
            report={report}
            findings={findings}
            accepted={accepted}
            workbook={workbook}
            jump={jump}
          />
        )}
        {view === "due" && report.due && <DueView due={report.due} jump={jump} />}
        {view === "further" && <FurtherView report={report} check={check} jump={jump} />}
      </div>
    </section>
  );
}

function title(report: CheckReport, accepted: number): string {
  const open = report.findings.length - accepted;
  if (report.findings.length === 0) return nothingFound(report);
  return accepted === 0 ? counted(open, "finding") : `${counted(open, "finding")}, ${accepted} accepted`;
}

/** Whose rules, and how many figures of the shop's own stand in their place. */
function judgedBy({ country, overrides }: CheckReport): string {
  const rules = COUNTRIES.find(({ code }) => code === country) ?? { name: country };
  const own =
    overrides.length === 0 ? "" : `, with ${counted(overrides.length, "figure")} of this shop's own`;
  return `By the rules of ${countryInWords(rules)}${own}.`;
}

/** Nothing found is not the same as all in order: say which it is. */
function nothingFound({ fullyJudged, notChecked }: CheckReport): string {
  if (notChecked.length === 0) return "Nothing found";
  return fullyJudged
    ? "Nothing found in what was checked"
    : "Nothing found, but hydro, visual or oxygen rating could not be checked for every fill";
}
