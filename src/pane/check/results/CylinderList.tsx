import { makeStyles, tokens } from "@fluentui/react-components";
import { useState } from "react";
import type { CellAddress } from "../../../sheet/sheet";
import { CopyButton } from "../../kit/CopyButton";
import { SEVERITY_WORDS, type Mark } from "../../kit/SeverityMark";
import { TextButton } from "../../kit/TextButton";
import { useVisuallyHidden } from "../../kit/visuallyHidden";
import { SEVERITY_COLOURS } from "../../theme";
import { count, counted } from "../report";
import { placeName, type Jump } from "../useJump";

/** A cylinder on a list to work through. */
export interface ListedCylinder {
  readonly serial: string;
  readonly owner: string | undefined;
  /** How grave it is; said before the words. */
  readonly mark?: Mark;
  readonly says: string;
  readonly about?: string;
  /** The cell to look at. */
  readonly cell?: CellAddress;
  /** How many findings there are against it. */
  readonly findings?: number;
}

interface CylinderListProps {
  /** The list's name; its copied text begins with it. */
  readonly label: string;
  /** What the copied text is, as the button says it. */
  readonly copied: string;
  readonly cylinders: readonly ListedCylinder[];
  readonly jump: Jump;
  /** Shows what was found of one cylinder in the list of all. */
  readonly onShowFindings?: (serial: string) => void;
}

/** As many as anybody calls in one go. */
const SHOWN_AT_FIRST = 10;

const useStyles = makeStyles({
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
    borderLeft: `4px solid ${tokens.colorNeutralStroke1}`,
    padding: "6px 8px 7px",
    // The press counts for all of the entry, its foot too.
    ":has(> [data-part=cylinder]:hover)": { backgroundColor: tokens.colorNeutralBackground1Hover },
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke2}` },
  },
  jump: {
    display: "block",
    boxSizing: "border-box",
    width: "calc(100% + 16px)",
    margin: "-6px -8px 0",
    padding: "6px 8px 2px",
    border: "none",
    background: "none",
    font: "inherit",
    color: "inherit",
    textAlign: "left",
    cursor: "pointer",
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "-2px" },
  },
  who: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    columnGap: "8px",
    fontWeight: tokens.fontWeightSemibold,
  },
  says: { display: "block" },
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

/** Cylinders with owner and reason: a press leads to the cell, the whole list can be copied to telephone by. */
export function CylinderList({ label, copied, cylinders, jump, onShowFindings }: CylinderListProps) {
  const styles = useStyles();
  const [all, setAll] = useState(false);
  const shown = all ? cylinders : cylinders.slice(0, SHOWN_AT_FIRST);
  return (
    <>
      <ul className={styles.list} aria-label={label}>
        {shown.map((cylinder, at) => (
          <Entry key={at} cylinder={cylinder} label={label} jump={jump} onShowFindings={onShowFindings} />
        ))}
      </ul>
      <div className={styles.foot}>
        {cylinders.length > shown.length && (
          <TextButton
            onClick={() => {
              setAll(true);
            }}
          >
            Show {count(cylinders.length - shown.length)} more
          </TextButton>
        )}
        <CopyButton what={copied} text={() => cylindersText(label, cylinders)} />
      </div>
    </>
  );
}

interface EntryProps extends Pick<CylinderListProps, "label" | "jump"> {
  readonly cylinder: ListedCylinder;
  readonly onShowFindings: CylinderListProps["onShowFindings"] | undefined;
}

function Entry({ cylinder, label, jump, onShowFindings }: EntryProps) {
  const styles = useStyles();
  const hidden = useVisuallyHidden();
  const { serial, owner, mark, says, about, cell, findings } = cylinder;
  const from = `${label} ${serial}`;
  const content = (
    <>
      <span className={styles.who}>
        <span>{serial}</span> <span>{ownerInWords(owner)}</span>
      </span>
      {mark && <span className={hidden}>{SEVERITY_WORDS[mark]}. </span>}
      <span className={styles.says}>{says}</span>
    </>
  );
  return (
    <li className={styles.cylinder} style={mark && { borderLeftColor: SEVERITY_COLOURS[mark] }}>
      {cell === undefined ? (
        content
      ) : (
        <button
          type="button"
          data-part="cylinder"
          className={styles.jump}
          onClick={() => {
            jump.to(cell, from);
          }}
        >
          {content}
        </button>
      )}
      {(about !== undefined || findings !== undefined) && (
        <span className={styles.about}>
          <span>{about}</span>
          {findings !== undefined && onShowFindings && (
            <TextButton
              onClick={() => {
                onShowFindings(serial);
              }}
            >
              {counted(findings, "finding")} <span className={hidden}>of {serial}</span>
            </TextButton>
          )}
        </span>
      )}
      {jump.note?.from === from && <p className={styles.note}>{jump.note.sentence}</p>}
    </li>
  );
}

/** The owner, or that nobody is named. */
function ownerInWords(owner: string | undefined): string {
  return owner ?? "owner not in the log";
}

/** The list as plain text: to telephone by, or to hand on. */
export function cylindersText(label: string, cylinders: readonly ListedCylinder[]): string {
  const lines = cylinders.map(({ serial, owner, mark, says, about, cell }) => {
    const grave = mark ? `${SEVERITY_WORDS[mark]}: ` : "";
    const aside = about ?? (cell && placeName(cell));
    return `${serial}, ${ownerInWords(owner)}. ${grave}${says}${aside === undefined ? "" : ` [${aside}]`}`;
  });
  return [`${label}: ${cylinders.length}`, "", ...lines].join("\n");
}
