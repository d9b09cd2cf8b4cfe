import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { useState } from "react";
import { Temporal } from "temporal-polyfill";
import type { Acceptance } from "../../../audit/judge/acceptance";
import { findingsSheet } from "../../../reports/findingsSheet";
import { PROGRAM } from "../../../reports/month/options";
import { countryRules } from "../../../cylinders/countryRules";
import type { Workbook } from "../../../workbook/workbook";
import { ProblemNote } from "../../kit/ProblemNote";
import { counted, countRows, reconciliationLine, type CheckReport } from "../report";
import { WorkUnderWay } from "../WorkUnderWay";
import type { Findings } from "./useFindings";
import { useTask } from "../../kit/useTask";

interface OnTheLogProps {
  readonly report: CheckReport;
  readonly findings: Findings;
  readonly noLongerFound: readonly Acceptance[];
  readonly workbook: Workbook;
}

const useStyles = makeStyles({
  box: { display: "flex", flexDirection: "column", gap: "6px" },
  buttons: { display: "flex", flexWrap: "wrap", gap: "8px" },
  note: { margin: 0, fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
});

/** Puts the findings shown into the workbook, on request: a sheet of their own, or marks on their cells. */
export function OnTheLog({ report, findings, noLongerFound, workbook }: OnTheLogProps) {
  const styles = useStyles();
  const task = useTask();
  const [marked, setMarked] = useState(false);
  const { matching, all } = findings;
  const { marks } = workbook;
  const rules = countryRules(report.country);

  const writeSheet = () => {
    task.start("Writing the findings sheet", async ({ progress, signal }) => {
      const draft = findingsSheet({
        findings: matching.map(({ finding, filledBy = "", acceptance }) => ({
          finding,
          filledBy,
          acceptance,
        })),
        found: all.length,
        noLongerFound,
        notChecked: report.notChecked,
        overrides: report.overrides,
        asOf: report.due?.asOf ?? Temporal.Now.plainDateISO().toString(),
        rules: rules.name,
        rows: reconciliationLine(countRows(report.sheets)),
        paper: rules.habits.paper,
        program: PROGRAM,
      });
      const [name] = await workbook.addSheets([draft], progress, signal);
      return `Written to the new sheet ${name ?? draft.name}. Its cells lead back to the log.`;
    });
  };
  const mark = () => {
    task.start("Marking cells", async () => {
      const cells = matching.map(({ finding, held = null }) => ({ cell: finding.cell, held }));
      const leftOut = (await marks?.mark(cells)) ?? [];
      setMarked(true);
      return leftOut.length === 0
        ? "Marked. Take the marks away when you are done."
        : `Marked, except ${counted(leftOut.length, "cell")} that changed since the check. Check again to mark them.`;
    });
  };
  const clear = () => {
    task.start("Taking the marks away", async () => {
      const cleared = (await marks?.clear()) ?? 0;
      setMarked(false);
      return cleared === 0 ? "There were no marks." : "The marks are gone. Your cells are as they were.";
    });
  };

  return (
    <div className={styles.box}>
      <div className={styles.buttons}>
        <Button size="small" disabledFocusable={matching.length === 0} onClick={writeSheet}>
          Write a findings sheet
        </Button>
        {marks && (
          <>
            <Button size="small" disabledFocusable={matching.length === 0} onClick={mark}>
              {marked ? "Mark these instead" : "Mark on the log"}
            </Button>
            <Button size="small" onClick={clear}>
              Take marks away
            </Button>
          </>
        )}
      </div>
      {task.busy && <WorkUnderWay busy={task.busy} onCancel={task.cancel} />}
      {task.problem && <ProblemNote problem={task.problem} />}
      {task.done !== undefined && <p className={styles.note}>{task.done}</p>}
    </div>
  );
}
