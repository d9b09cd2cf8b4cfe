import { makeStyles, tokens } from "@fluentui/react-components";
import { useId, type RefObject } from "react";
import { CopyButton } from "../../kit/CopyButton";
import { counted, type CheckReport } from "../report";
import type { Jump } from "../useJump";
import { Filters } from "./Filters";
import { FindingList } from "./FindingList";
import { findingsText } from "./findingsText";
import { NotCheckedList } from "./NotCheckedList";
import { Pager } from "./Pager";
import { Summary } from "./Summary";
import { useFindings } from "./useFindings";

interface ResultsProps {
  readonly report: CheckReport;
  readonly jump: Jump;
  readonly titleRef: RefObject<HTMLHeadingElement>;
}

const useStyles = makeStyles({
  results: { display: "flex", flexDirection: "column", gap: "10px" },
  title: {
    margin: "4px 0 0",
    fontSize: tokens.fontSizeBase400,
    lineHeight: tokens.lineHeightBase400,
    fontWeight: tokens.fontWeightSemibold,
    outline: "none",
    scrollMarginTop: "8px",
  },
  foot: { display: "flex", flexWrap: "wrap", gap: "8px", alignItems: "center" },
  none: { margin: 0 },
});

/** What the check found: the sum first, then what was not checked, then every finding by harm. */
export function Results({ report, jump, titleRef }: ResultsProps) {
  const styles = useStyles();
  const id = useId();
  const findings = useFindings(report);
  const { matching, page, pages, setPage } = findings;
  return (
    <section className={styles.results} aria-labelledby={id}>
      <h2 className={styles.title} id={id} ref={titleRef} tabIndex={-1}>
        {report.findings.length === 0 ? nothingFound(report) : counted(report.findings.length, "finding")}
      </h2>
      <Summary findings={findings} />
      <NotCheckedList notChecked={report.notChecked} jump={jump} />
      {report.findings.length > 0 && (
        <>
          <Filters findings={findings} />
          {matching.length === 0 && (
            <p className={styles.none}>No finding fits. Clear the filter to see them all.</p>
          )}
          <FindingList findings={findings} jump={jump} />
          {pages > 1 && <Pager page={page} total={matching.length} onPage={setPage} />}
          <div className={styles.foot}>
            <CopyButton
              what={matching.length === report.findings.length ? "findings" : "these findings"}
              text={() => findingsText(report, matching)}
            />
          </div>
        </>
      )}
    </section>
  );
}

/** Nothing found is not the same as all in order: say which it is. */
function nothingFound({ fullyJudged, notChecked }: CheckReport): string {
  if (notChecked.length === 0) return "Nothing found";
  return fullyJudged
    ? "Nothing found in what was checked"
    : "Nothing found, but hydro, visual or oxygen rating could not be checked for every fill";
}
