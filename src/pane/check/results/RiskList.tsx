import { makeStyles, tokens } from "@fluentui/react-components";
import { useState } from "react";
import type { CylinderAtRisk } from "../../../audit/recall";
import { CopyButton } from "../../kit/CopyButton";
import { Disclosure } from "../../kit/Disclosure";
import { SEVERITY_WORDS, SeverityMark } from "../../kit/SeverityMark";
import { TextButton } from "../../kit/TextButton";
import { useVisuallyHidden } from "../../kit/visuallyHidden";
import { SEVERITY_COLOURS } from "../../theme";
import { count, counted } from "../report";
import { placeName, type Jump } from "../useJump";
import { openRisks, ownerInWords, riskText } from "./atRisk";
import { dayInWords } from "./dayInWords";
import type { Accepted } from "./useAccepted";

interface RiskListProps {
  readonly title: string;
  readonly hint: string;
  /** What is said in place of an empty list. */
  readonly none: string;
  /** What the copied text is, as the button says it. */
  readonly copied: string;
  readonly initiallyOpen?: boolean;
  readonly cylinders: readonly CylinderAtRisk[];
  readonly accepted: Accepted;
  readonly jump: Jump;
  /** Shows what was found of one cylinder in the list of all. */
  readonly onShowFindings: (serial: string) => void;
}

/** As many as anybody calls in one go. */
const SHOWN_AT_FIRST = 10;

const useStyles = makeStyles({
  title: { display: "inline-flex", alignItems: "center", gap: "6px" },
  none: { margin: 0 },
  list: {
    listStyleType: "none",
    margin: "2px 0 6px",
    padding: 0,
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    borderRadius: tokens.borderRadiusMedium,
    overflow: "hidden",
  },
  cylinder: {
    borderLeft: "4px solid",
    padding: "0 8px 7px",
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke2}` },
  },
  jump: {
    display: "block",
    boxSizing: "border-box",
    width: "calc(100% + 16px)",
    margin: "0 -8px",
    padding: "7px 8px 2px",
    border: "none",
    background: "none",
    font: "inherit",
    color: "inherit",
    textAlign: "left",
    cursor: "pointer",
    ":hover": { backgroundColor: tokens.colorNeutralBackground1Hover },
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "-2px" },
  },
  who: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    columnGap: "8px",
    fontWeight: tokens.fontWeightSemibold,
  },
  wrong: { display: "block" },
  about: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    columnGap: "8px",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
  note: { margin: 0, fontSize: tokens.fontSizeBase200 },
  foot: { display: "flex", flexWrap: "wrap", alignItems: "center", gap: "4px 12px", paddingBottom: "4px" },
});

/** Cylinders that somebody has to be called about, or that must not be filled: whose, why, and where it stands. */
export function RiskList(props: RiskListProps) {
  const { title, hint, none, copied, accepted, jump, onShowFindings } = props;
  const styles = useStyles();
  const [all, setAll] = useState(false);
  const { open, letStand } = openRisks(props.cylinders, accepted);
  const shown = all ? open : open.slice(0, SHOWN_AT_FIRST);
  const others = letStand > 0 && `${counted(letStand, "more")} accepted with a reason.`;
  if (open.length === 0)
    return (
      <p className={styles.none}>
        {none} {others}
      </p>
    );
  return (
    <Disclosure
      heading="h3"
      title={
        <span className={styles.title}>
          <SeverityMark mark={worst(open)} />
          {title}: {count(open.length)}
        </span>
      }
      hint={hint}
      initiallyOpen={props.initiallyOpen ?? false}
    >
      <ul className={styles.list} aria-label={title}>
        {shown.map((cylinder) => (
          <Entry
            key={cylinder.serial}
            cylinder={cylinder}
            title={title}
            jump={jump}
            onShowFindings={onShowFindings}
          />
        ))}
      </ul>
      <div className={styles.foot}>
        {open.length > shown.length && (
          <TextButton
            onClick={() => {
              setAll(true);
            }}
          >
            Show {count(open.length - shown.length)} more
          </TextButton>
        )}
        <CopyButton what={copied} text={() => riskText(title, open)} />
        {others}
      </div>
    </Disclosure>
  );
}

interface EntryProps extends Pick<RiskListProps, "title" | "jump" | "onShowFindings"> {
  readonly cylinder: CylinderAtRisk;
}

function Entry({ cylinder, title, jump, onShowFindings }: EntryProps) {
  const styles = useStyles();
  const hidden = useVisuallyHidden();
  const { serial, owner, fillDate, findings } = cylinder;
  const [finding] = findings;
  if (!finding) return null;
  const from = `${title} ${serial}`;
  return (
    <li className={styles.cylinder} style={{ borderLeftColor: SEVERITY_COLOURS[finding.severity] }}>
      <button
        type="button"
        data-part="at risk"
        className={styles.jump}
        onClick={() => {
          jump.to(finding.cell, from);
        }}
      >
        <span className={styles.who}>
          <span>{serial}</span> <span>{ownerInWords(owner)}</span>
        </span>
        <span className={hidden}>{SEVERITY_WORDS[finding.severity]}. </span>
        <span className={styles.wrong}>
          {finding.message} {finding.todo}
        </span>
      </button>
      <span className={styles.about}>
        <span>
          {fillDate === "" ? "Day of the last fill not known" : `Last filled ${dayInWords(fillDate)}`}
          {` · ${placeName(finding.cell)}`}
        </span>
        <TextButton
          onClick={() => {
            onShowFindings(serial);
          }}
        >
          {findings.length > 1 ? counted(findings.length, "finding") : "Findings"}{" "}
          <span className={hidden}>of {serial}</span>
        </TextButton>
      </span>
      {jump.note?.from === from && <p className={styles.note}>{jump.note.sentence}</p>}
    </li>
  );
}

function worst(cylinders: readonly CylinderAtRisk[]): CylinderAtRisk["findings"][number]["severity"] {
  return cylinders.some(({ findings }) => findings.some(({ severity }) => severity === "stop"))
    ? "stop"
    : "breach";
}
