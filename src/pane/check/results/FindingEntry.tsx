import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { memo, useEffect, useId, useRef, useState } from "react";
import { ruleInWords } from "../../../audit/rules/ruleInWords";
import { BASIS_WORDS } from "../../../words/bases";
import { SEVERITY_WORDS } from "../../kit/SeverityMark";
import { useVisuallyHidden } from "../../kit/visuallyHidden";
import { SEVERITY_COLOURS } from "../../theme";
import { placeName } from "../useJump";
import { dayInWords } from "./dayInWords";
import { AcceptForm } from "./AcceptForm";
import { AcceptedNote } from "./AcceptedNote";
import type { Accepted } from "./useAccepted";
import type { ShownFinding } from "./filter";

interface FindingEntryProps {
  readonly entry: ShownFinding;
  /** Its place on the page. */
  readonly at: number;
  /** It is the list's tab stop. */
  readonly active: boolean;
  /** Its cell was the last one shown. */
  readonly current: boolean;
  readonly note: string | undefined;
  readonly accepted: Accepted;
  readonly onActive: (at: number) => void;
  readonly onJump: (entry: ShownFinding) => void;
}

const useStyles = makeStyles({
  entry: {
    position: "relative",
    borderLeft: "4px solid",
    contentVisibility: "auto",
    containIntrinsicSize: "auto 110px",
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke2}` },
  },
  current: { backgroundColor: tokens.colorBrandBackground2 },
  finding: {
    display: "block",
    width: "100%",
    padding: "7px 8px 7px 8px",
    border: "none",
    background: "none",
    font: "inherit",
    color: "inherit",
    textAlign: "left",
    cursor: "pointer",
    ":hover": { backgroundColor: tokens.colorNeutralBackground1Hover },
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "-2px" },
  },
  message: { display: "block", fontWeight: tokens.fontWeightSemibold },
  todo: { display: "block", marginTop: "2px" },
  about: {
    display: "block",
    marginTop: "3px",
    paddingRight: "52px",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
  foot: { position: "absolute", right: "6px", bottom: "6px" },
  footOpen: { position: "static", padding: "0 8px 8px" },
  why: {
    minHeight: "24px",
    padding: "0 8px",
    font: "inherit",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorBrandForeground1,
    background: "none",
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    cursor: "pointer",
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "1px" },
  },
  reasons: {
    display: "grid",
    gridTemplateColumns: "auto 1fr",
    columnGap: "8px",
    margin: "6px 0 0",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    "& dt": { color: tokens.colorNeutralForeground3 },
    "& dd": { margin: 0 },
  },
  note: { margin: 0, padding: "0 8px 8px", fontSize: tokens.fontSizeBase200 },
});

/** One finding: what is wrong, what to do, where; and, when asked, by whose rule. */
export const FindingEntry = memo(function FindingEntry(props: FindingEntryProps) {
  const { entry, at, active, current, note, accepted, onActive, onJump } = props;
  const { finding, acceptance, filledBy } = entry;
  const styles = useStyles();
  const hidden = useVisuallyHidden();
  const id = useId();
  const [open, setOpen] = useState(false);
  const about = [finding.serial, dayInWords(finding.fillDate), placeName(finding.cell)].filter(Boolean);
  const why = useRef<HTMLButtonElement>(null);
  const reasons = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (open) reasons.current?.scrollIntoView({ block: "nearest" });
  }, [open]);
  const activate = () => {
    onActive(at);
  };
  return (
    <li
      data-at={at}
      className={mergeClasses(styles.entry, current && styles.current)}
      style={{ borderLeftColor: SEVERITY_COLOURS[finding.severity] }}
    >
      <button
        type="button"
        data-part="finding"
        className={styles.finding}
        tabIndex={active ? 0 : -1}
        aria-current={current}
        onFocus={activate}
        onClick={() => {
          onJump(entry);
        }}
      >
        <span className={hidden}>{SEVERITY_WORDS[finding.severity]}. </span>
        <span className={styles.message}>{finding.message}</span>
        <span className={styles.todo}>{finding.todo}</span>
        {acceptance && <AcceptedNote acceptance={acceptance} />}
        <span className={styles.about}>{about.join(" · ")}</span>
      </button>
      <div className={mergeClasses(styles.foot, open && styles.footOpen)}>
        <button
          ref={why}
          type="button"
          data-part="why"
          className={styles.why}
          tabIndex={active ? 0 : -1}
          aria-expanded={open}
          aria-controls={open ? id : undefined}
          aria-label={`Why: ${finding.message}`}
          onFocus={activate}
          onClick={() => {
            setOpen(!open);
          }}
        >
          Why
        </button>
        {open && (
          <div ref={reasons} id={id}>
            <dl className={styles.reasons}>
              <dt>Rule</dt>
              <dd>{ruleInWords(finding.rule)}</dd>
              <dt>Basis</dt>
              <dd>{BASIS_WORDS[finding.basis]}</dd>
              <dt>Source</dt>
              <dd>{finding.source}</dd>
              {filledBy && (
                <>
                  <dt>Filled by</dt>
                  <dd>{filledBy}</dd>
                </>
              )}
            </dl>
            <AcceptForm
              finding={finding}
              acceptance={acceptance}
              accepted={accepted}
              onClosed={() => why.current?.focus()}
            />
          </div>
        )}
      </div>
      {note !== undefined && <p className={styles.note}>{note}</p>}
    </li>
  );
});
