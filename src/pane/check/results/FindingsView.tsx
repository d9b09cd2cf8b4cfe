import { makeStyles, tokens } from "@fluentui/react-components";
import { useMemo, useRef } from "react";
import { noLongerFound } from "../../../audit/judge/acceptance";
import type { Workbook } from "../../../workbook/workbook";
import { CopyButton } from "../../kit/CopyButton";
import { Disclosure } from "../../kit/Disclosure";
import { SeverityMark } from "../../kit/SeverityMark";
import { count, counted, type CheckReport } from "../report";
import type { Jump } from "../useJump";
import { toCall, toTurnAway } from "./atRisk";
import { CylinderList } from "./CylinderList";
import { Filters } from "./Filters";
import { FindingList } from "./FindingList";
import { findingsText } from "./findingsText";
import { NoLongerFound } from "./NoLongerFound";
import { NotCheckedList } from "./NotCheckedList";
import { OnTheLog } from "./OnTheLog";
import { Pager } from "./Pager";
import { Summary } from "./Summary";
import type { Accepted } from "./useAccepted";
import type { Findings } from "./useFindings";

interface FindingsViewProps {
  readonly report: CheckReport;
  readonly findings: Findings;
  readonly accepted: Accepted;
  readonly workbook: Workbook;
  readonly jump: Jump;
}

const useStyles = makeStyles({
  marked: { display: "inline-flex", alignItems: "center", gap: "6px" },
  title: {
    margin: "4px 0 0",
    fontSize: tokens.fontSizeBase300,
    fontWeight: tokens.fontWeightSemibold,
    outline: "none",
  },
  foot: { display: "flex", flexWrap: "wrap", gap: "8px", alignItems: "center" },
  line: { margin: 0 },
  quiet: { margin: 0, fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground3 },
});

/** Whom to call, what not to fill, what was not checked; then every finding by harm, as filtered. */
export function FindingsView({ report, findings, accepted, workbook, jump }: FindingsViewProps) {
  const styles = useStyles();
  const list = useRef<HTMLHeadingElement>(null);
  const { all, matching, page, pages, setPage, filter } = findings;
  const showFindingsOf = (serial: string) => {
    findings.clear();
    findings.change({ cylinder: serial });
    list.current?.scrollIntoView({ block: "start" });
    list.current?.focus({ preventScroll: true });
  };
  const calls = toCall(report.recall, accepted);
  const letStand = report.recall.length - calls.length;
  const turnAway = toTurnAway(report, report.due, accepted);
  const gone = useMemo(() => noLongerFound(accepted.kept, report.findings), [accepted.kept, report.findings]);
  const undated =
    filter.from + filter.to === "" ? 0 : all.filter(({ finding }) => finding.fillDate === "").length;
  return (
    <>
      {calls.length > 0 ? (
        <Disclosure
          heading="h3"
          title={
            <span className={styles.marked}>
              <SeverityMark mark="stop" />
              Call the owner: {count(calls.length)}
            </span>
          }
          hint={`The last known fill is dangerous and was not replaced since; the latest first.${letStandInWords(letStand)}`}
          initiallyOpen
        >
          <CylinderList
            label="Call the owner"
            copied="call list"
            cylinders={calls}
            jump={jump}
            onShowFindings={showFindingsOf}
          />
        </Disclosure>
      ) : (
        <p className={styles.line}>
          Nobody to call: no last fill was found dangerous in what was checked.{letStandInWords(letStand)}
        </p>
      )}
      {turnAway.length > 0 && (
        <Disclosure
          heading="h3"
          title={
            <span className={styles.marked}>
              <SeverityMark mark="breach" />
              Do not fill next: {count(turnAway.length)}
            </span>
          }
          hint="Out of date today, or something is wrong with the cylinder itself"
        >
          <CylinderList label="Do not fill next" copied="list" cylinders={turnAway} jump={jump} />
        </Disclosure>
      )}
      <NotCheckedList notChecked={report.notChecked} jump={jump} />
      <NoLongerFound acceptances={gone} onRemove={accepted.remove} />
      {all.length > 0 && (
        <>
          <h3 className={styles.title} ref={list} tabIndex={-1}>
            All findings, the gravest first
          </h3>
          <Summary findings={findings} />
          <Filters findings={findings} />
          {undated > 0 && (
            <p className={styles.quiet}>
              {counted(undated, "finding")} without a day of a fill, such as those of the register, not shown.
            </p>
          )}
          {matching.length === 0 && (
            <p className={styles.line}>No finding fits. Clear the filter to see them all.</p>
          )}
          <FindingList findings={findings} accepted={accepted} jump={jump} />
          {pages > 1 && <Pager page={page} total={matching.length} onPage={setPage} />}
          <OnTheLog report={report} findings={findings} noLongerFound={gone} workbook={workbook} />
          <div className={styles.foot}>
            <CopyButton
              what={matching.length === all.length ? "findings" : "these findings"}
              text={() => findingsText(report, all, matching)}
            />
          </div>
        </>
      )}
    </>
  );
}

function letStandInWords(letStand: number): string {
  return letStand === 0 ? "" : ` ${count(letStand)} more accepted with a reason.`;
}
