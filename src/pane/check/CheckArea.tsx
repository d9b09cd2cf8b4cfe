import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { useCallback, useEffect, useRef, type RefObject } from "react";
import type { Workbook } from "../../workbook/workbook";
import { useAnnounce } from "../kit/announce";
import { Notice, ProblemNote } from "../kit/ProblemNote";
import { chosenPart } from "./checkState";
import { NoLogFound } from "./NoLogFound";
import { WorkUnderWay } from "./WorkUnderWay";
import { count, counted } from "./report";
import { countNotChecked } from "./results/lacks";
import { Results } from "./results/Results";
import { Setup } from "./setup/Setup";
import { StatusBar } from "./StatusBar";
import type { Check } from "./useCheck";
import { useJump } from "./useJump";

interface CheckAreaProps {
  readonly check: Check;
  readonly workbook: Workbook;
  readonly onOpenSample?: (() => void) | undefined;
}

const useStyles = makeStyles({
  area: { padding: "12px", display: "flex", flexDirection: "column", gap: "12px", flexGrow: 1 },
  button: { width: "100%" },
  caution: {
    margin: 0,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
});

/** Check the log: which sheets, how they were understood, what was found, what could not be checked. */
export function CheckArea({ check, workbook, onOpenSample }: CheckAreaProps) {
  const styles = useStyles();
  const jump = useJump(workbook);
  const { reading, report, busy, problem } = check;
  const checkButton = useRef<HTMLButtonElement>(null);
  const focusCheckButton = useCallback(() => checkButton.current?.focus(), []);
  const cancelButton = useRef<HTMLButtonElement>(null);
  const resultsTitle = useRef<HTMLHeadingElement>(null);
  useSpokenState(check);
  useKeptFocus(check, cancelButton, checkButton, resultsTitle);

  if (!reading) {
    return (
      <div className={styles.area}>
        {problem && <ProblemNote problem={problem} onTryAgain={check.look} />}
        {busy ? (
          <WorkUnderWay busy={busy} onCancel={check.cancel} />
        ) : (
          !problem && (
            <>
              <p className={styles.caution}>This workbook has not been looked through.</p>
              <Button appearance="primary" onClick={check.look}>
                Look for logs
              </Button>
            </>
          )
        )}
      </div>
    );
  }

  const chosen = chosenPart(reading, check.shop.settings.sheets);
  const fills = chosen.sheets.reduce((sum, { rows }) => sum + rows.fills, 0);
  return (
    <>
      <div className={styles.area}>
        {reading.sheets.every(({ kind }) => kind === "neither") && (
          <NoLogFound onLookAgain={check.look} onOpenSample={onOpenSample} />
        )}
        <Setup check={check} reading={reading} onAllAnswered={focusCheckButton} />
        {problem && <ProblemNote problem={problem} />}
        {report && (check.changed || check.outOfDate) && (
          <Notice>
            {check.changed
              ? "Your log changed since this check. Check again to see it as it is now."
              : "You changed what is checked, or how it is read. Check again to see what that makes of it."}
          </Notice>
        )}
        {busy?.with === "looking" || busy?.with === "checking" ? (
          <WorkUnderWay busy={busy} onCancel={check.cancel} cancelRef={cancelButton} />
        ) : (
          <Button
            ref={checkButton}
            className={styles.button}
            appearance="primary"
            disabledFocusable={fills === 0}
            onClick={check.run}
          >
            {report ? "Check again" : "Check the log"}
          </Button>
        )}
        {fills === 0 && <p className={styles.caution}>Tick a sheet that holds fills to check it.</p>}
        <p className={styles.caution}>
          This checks what was written, not the gas: analyse every cylinder. Its markings and your local rules
          come first.
        </p>
        {report && (
          <Results report={report} check={check} workbook={workbook} jump={jump} titleRef={resultsTitle} />
        )}
      </div>
      {chosen.sheets.length > 0 && <StatusBar reading={chosen} report={report} jump={jump} />}
    </>
  );
}

/** Tells a screen reader what the eye sees: that work began, and what came of it. */
function useSpokenState({ busy, report, reading }: Check): void {
  const announce = useAnnounce();
  const doing = busy?.with;
  const told = useRef({ report, reading });
  useEffect(() => {
    if (doing === "looking") announce("Looking for logs in this workbook.");
    if (doing === "checking") announce("Checking the log.");
  }, [doing, announce]);
  useEffect(() => {
    if (report && report !== told.current.report)
      announce(
        `Checked. ${counted(report.findings.length, "finding")}, ${count(countNotChecked(report.notChecked))} not checked.`,
      );
    else if (reading && !told.current.reading) announce("The workbook was looked through.");
    told.current = { report, reading };
  }, [report, reading, announce]);
}

/**
 * The button that starts a check gives way to Cancel, and Cancel to the results: the focus goes along, so that
 * nobody at the keyboard is thrown back to the top. Whoever went elsewhere meanwhile is left there.
 */
function useKeptFocus(
  { busy, report }: Check,
  cancel: RefObject<HTMLElement>,
  check: RefObject<HTMLElement>,
  results: RefObject<HTMLElement>,
): void {
  const checking = busy?.with === "checking";
  const before = useRef({ checking, report });
  useEffect(() => {
    const { checking: wasChecking, report: oldReport } = before.current;
    before.current = { checking, report };
    if (checking === wasChecking || document.activeElement !== document.body) return;
    if (checking) cancel.current?.focus();
    else if (report === oldReport) check.current?.focus();
    else {
      // Focus alone would scroll no further than to the title's own line, at the bottom of the pane.
      results.current?.scrollIntoView({ block: "start" });
      results.current?.focus({ preventScroll: true });
    }
  }, [checking, report, cancel, check, results]);
}
