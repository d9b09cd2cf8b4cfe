import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { useCallback, useEffect, useRef, type MutableRefObject, type RefObject } from "react";
import type { Workbook } from "../../workbook/workbook";
import { useAnnounce } from "../kit/announce";
import { ProblemNote } from "../kit/ProblemNote";
import { NoLogFound } from "./NoLogFound";
import { WorkUnderWay } from "./WorkUnderWay";
import { chosenPart, count, counted, type CheckReport } from "./report";
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
export function CheckArea({ check: current, workbook, onOpenSample }: CheckAreaProps) {
  const styles = useStyles();
  const pressed = useRef(false);
  const check: Check = {
    ...current,
    again: () => {
      pressed.current = true;
      current.again();
    },
  };
  const jump = useJump(workbook);
  const { report, busy, problem } = check;
  const checkButton = useRef<HTMLButtonElement>(null);
  const resultsTitle = useRef<HTMLHeadingElement>(null);
  const cancelButton = useRef<HTMLButtonElement>(null);
  const focusResults = useCallback(() => resultsTitle.current?.focus(), []);
  useSpokenState(check);
  useKeptFocus(check, pressed, cancelButton, checkButton, resultsTitle);

  if (!report) {
    return (
      <div className={styles.area}>
        {check.unreachable.map(({ name, sentence }) => (
          <p key={name} className={styles.caution}>
            {name}: {sentence}
          </p>
        ))}
        {problem && <ProblemNote problem={problem} onTryAgain={check.again} />}
        {busy ? (
          <WorkUnderWay busy={busy} onCancel={check.cancel} cancelRef={cancelButton} />
        ) : (
          !problem && (
            <>
              <p className={styles.caution}>This workbook has not been looked through.</p>
              <Button appearance="primary" onClick={check.again}>
                Look for logs
              </Button>
            </>
          )
        )}
      </div>
    );
  }

  const chosen = chosenPart(report, check.shop.settings.sheets);
  const fills = chosen.sheets.reduce((sum, { rows }) => sum + rows.fills, 0);
  return (
    <>
      <div className={styles.area}>
        {report.sheets.every(({ kind }) => kind === "neither") && (
          <NoLogFound onLookAgain={check.again} onOpenSample={onOpenSample} />
        )}
        <Setup check={check} reading={report} onAllAnswered={focusResults} />
        {problem && <ProblemNote problem={problem} onTryAgain={check.again} />}
        {busy ? (
          <WorkUnderWay busy={busy} onCancel={check.cancel} cancelRef={cancelButton} />
        ) : (
          !check.isLive && (
            <Button ref={checkButton} className={styles.button} appearance="primary" onClick={check.again}>
              Check again
            </Button>
          )
        )}
        {fills === 0 && <p className={styles.caution}>Tick a sheet that holds fills to check it.</p>}
        <p className={styles.caution}>
          This checks what was written, not the gas: analyse every cylinder. Its markings and your local rules
          come first.
        </p>
        <Results report={report} check={check} workbook={workbook} jump={jump} titleRef={resultsTitle} />
      </div>
      {chosen.sheets.length > 0 && <StatusBar reading={chosen} report={report} jump={jump} />}
    </>
  );
}

/** Tells a screen reader what the eye sees: that work began, and what came of it. */
function useSpokenState({ busy, report }: Check): void {
  const announce = useAnnounce();
  const isBusy = busy !== undefined;
  const told = useRef(report);
  useEffect(() => {
    if (isBusy) announce("Checking the log.");
  }, [isBusy, announce]);
  useEffect(() => {
    const before = told.current;
    told.current = report;
    if (!report || report === before) return;
    const changes = inWords(report);
    if (before && changes === "") return;
    announce(
      `Checked. ${counted(report.findings.length, "finding")}, ${count(countNotChecked(report.notChecked))} not checked.${changes}`,
    );
  }, [report, announce]);
}

/** What the last change of the workbook brought and took. */
function inWords({ came, went }: CheckReport): string {
  return [
    came.length > 0 ? ` New: ${counted(came.length, "finding")}.` : "",
    went.length > 0 ? ` Gone: ${counted(went.length, "finding")}.` : "",
  ].join("");
}

/**
 * The button that checks again gives way to Cancel, and Cancel to the results: the focus goes along, so that nobody at
 * the keyboard is thrown back to the top. Whoever went elsewhere meanwhile is left there. Only who pressed the button is
 * led on: the first check begins by itself, and live ones go by unseen.
 */
function useKeptFocus(
  { busy, report }: Check,
  pressed: MutableRefObject<boolean>,
  cancel: RefObject<HTMLElement>,
  check: RefObject<HTMLElement>,
  results: RefObject<HTMLElement>,
): void {
  const checking = busy !== undefined;
  const before = useRef({ checking, report });
  useEffect(() => {
    const { checking: wasChecking, report: oldReport } = before.current;
    before.current = { checking, report };
    const isLost = document.activeElement === document.body;
    if (checking === wasChecking || !pressed.current) return;
    if (!checking) pressed.current = false;
    if (!isLost || oldReport === undefined) return;
    if (checking) cancel.current?.focus();
    else if (report === oldReport) check.current?.focus();
    else {
      // Focus alone would scroll no further than to the title's own line, at the bottom of the pane.
      results.current?.scrollIntoView({ block: "start" });
      results.current?.focus({ preventScroll: true });
    }
  }, [checking, report, pressed, cancel, check, results]);
}
