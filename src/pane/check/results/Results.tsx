import { makeStyles, tokens } from "@fluentui/react-components";
import { useId, useRef, type RefObject } from "react";
import type { Workbook } from "../../../workbook/workbook";
import type { Shop } from "../../shop/useShop";
import { counted, type CheckReport } from "../report";
import type { Jump } from "../useJump";
import { AllFindings } from "./AllFindings";
import { RiskList } from "./RiskList";
import { useAccepted } from "./useAccepted";
import { useFindings } from "./useFindings";

export interface ResultsProps {
  readonly report: CheckReport;
  readonly shop: Shop;
  readonly workbook: Workbook;
  readonly jump: Jump;
  readonly titleRef: RefObject<HTMLHeadingElement>;
}

const useStyles = makeStyles({
  results: { display: "flex", flexDirection: "column", gap: "8px" },
  title: {
    margin: "4px 0 0",
    fontSize: tokens.fontSizeBase400,
    lineHeight: tokens.lineHeightBase400,
    fontWeight: tokens.fontWeightSemibold,
    outline: "none",
    scrollMarginTop: "48px",
  },
});

/** What the check found: whom to call, what not to fill, then everything by harm. */
export function Results({ report, shop, workbook, jump, titleRef }: ResultsProps) {
  const styles = useStyles();
  const id = useId();
  const accepted = useAccepted(shop);
  const findings = useFindings(report, accepted);
  const list = useRef<HTMLHeadingElement>(null);
  const showFindingsOf = (serial: string) => {
    findings.clear();
    findings.change({ cylinder: serial });
    list.current?.scrollIntoView({ block: "start" });
    list.current?.focus({ preventScroll: true });
  };
  const atRisk = { accepted, jump, onShowFindings: showFindingsOf };
  return (
    <section className={styles.results} aria-labelledby={id}>
      <h2 className={styles.title} id={id} ref={titleRef} tabIndex={-1}>
        {title(report, findings.counts.accepted)}
      </h2>
      {report.findings.length > 0 && (
        <>
          <RiskList
            {...atRisk}
            title="Call the owner"
            hint="The last known fill is dangerous and was not replaced since"
            none="Nobody to call: no last fill was found dangerous in what was checked."
            copied="call list"
            initiallyOpen
            cylinders={report.recall}
          />
          <RiskList
            {...atRisk}
            title="Do not fill next"
            hint="Something is wrong with the cylinder itself"
            none="No cylinder to turn away: nothing was found wrong with one in what was checked."
            copied="list"
            cylinders={report.doNotFill}
          />
        </>
      )}
      <AllFindings
        report={report}
        findings={findings}
        accepted={accepted}
        workbook={workbook}
        jump={jump}
        titleRef={list}
      />
    </section>
  );
}

function title(report: CheckReport, accepted: number): string {
  const open = report.findings.length - accepted;
  if (report.findings.length === 0) return nothingFound(report);
  return accepted === 0 ? counted(open, "finding") : `${counted(open, "finding")}, ${accepted} accepted`;
}

/** Nothing found is not the same as all in order: say which it is. */
function nothingFound({ fullyJudged, notChecked }: CheckReport): string {
  if (notChecked.length === 0) return "Nothing found";
  return fullyJudged
    ? "Nothing found in what was checked"
    : "Nothing found, but hydro, visual or oxygen rating could not be checked for every fill";
}
