import { makeStyles, tokens } from "@fluentui/react-components";
import { type RefObject } from "react";
import type { Workbook } from "../../../workbook/workbook";
import { CopyButton } from "../../kit/CopyButton";
import { counted, type CheckReport } from "../report";
import type { Jump } from "../useJump";
import { Filters } from "./Filters";
import { FindingList } from "./FindingList";
import { findingsText } from "./findingsText";
import { NotCheckedList } from "./NotCheckedList";
import { Pager } from "./Pager";
import { Summary } from "./Summary";
import type { Accepted } from "./useAccepted";
import type { Findings } from "./useFindings";

interface AllFindingsProps {
  readonly report: CheckReport;
  readonly findings: Findings;
  readonly accepted: Accepted;
  readonly workbook: Workbook;
  readonly jump: Jump;
  readonly titleRef: RefObject<HTMLHeadingElement>;
}

const useStyles = makeStyles({
  title: {
    margin: "4px 0 0",
    fontSize: tokens.fontSizeBase300,
    fontWeight: tokens.fontWeightSemibold,
    outline: "none",
    scrollMarginTop: "48px",
  },
  foot: { display: "flex", flexWrap: "wrap", gap: "8px", alignItems: "center" },
  line: { margin: 0 },
  quiet: { margin: 0, fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground3 },
});

/** The sum, what was not checked, and every finding by harm, as filtered. */
export function AllFindings({ report, findings, accepted, jump, titleRef }: AllFindingsProps) {
  const styles = useStyles();
  const { all, matching, page, pages, setPage, filter } = findings;
  const undated =
    filter.from + filter.to === "" ? 0 : all.filter(({ finding }) => finding.fillDate === "").length;
  return (
    <>
      {all.length > 0 && (
        <h3 className={styles.title} ref={titleRef} tabIndex={-1}>
          All findings, the gravest first
        </h3>
      )}
      <Summary findings={findings} />
      <NotCheckedList notChecked={report.notChecked} jump={jump} />
      {all.length > 0 && (
        <>
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
