import { makeStyles, tokens } from "@fluentui/react-components";
import { cellName, type CellAddress, type CellValue } from "../sheet/sheet";
import { placeName } from "../pane/check/useJump";
import { TextButton } from "../pane/kit/TextButton";
import { isError } from "../typed/cells";
import type { SelectedCell } from "./desk";

const useStyles = makeStyles({
  line: {
    display: "grid",
    gridTemplateColumns: "auto 1fr",
    gap: "2px 10px",
    alignContent: "start",
    flexShrink: 0,
    boxSizing: "border-box",
    /* The formula, and three lines of sentences. */
    height: "73px",
    overflowY: "auto",
    padding: "6px 12px 0",
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground2,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    fontVariantNumeric: "tabular-nums",
    overflowWrap: "anywhere",
  },
  cell: { minWidth: "3em", fontWeight: tokens.fontWeightSemibold },
  formula: { fontFamily: tokens.fontFamilyMonospace },
  value: { color: tokens.colorNeutralForeground2 },
  sentence: { gridColumn: "2", margin: 0 },
  error: { fontWeight: tokens.fontWeightSemibold, color: tokens.colorStatusDangerForeground1 },
});

interface CellLineProps {
  readonly selected: SelectedCell | undefined;
  /** Goes where the selected cell leads. */
  readonly onFollow: (target: CellAddress) => void;
}

/** The selected cell in words: its formula or value, and the sentence behind the answer or the error. */
export function CellLine({ selected, onFollow }: CellLineProps) {
  const styles = useStyles();
  return (
    <div className={styles.line} role="status" aria-label="Selected cell" tabIndex={0}>
      {selected && (
        <>
          <span className={styles.cell}>{cellName(selected.address)}</span>
          {selected.formula === undefined ? (
            <span className={styles.value}>{inWords(selected.value)}</span>
          ) : (
            <span className={styles.formula}>={selected.formula}</span>
          )}
          {selected.leadsTo && (
            <p className={styles.sentence}>
              Leads to{" "}
              <TextButton onClick={() => onFollow(selected.leadsTo!)}>
                {placeName(selected.leadsTo)}
              </TextButton>
            </p>
          )}
          {selected.sentence !== undefined && (
            <p className={styles.sentence}>
              {isError(selected.value) && <span className={styles.error}>{inWords(selected.value)} </span>}
              {selected.sentence}
            </p>
          )}
        </>
      )}
    </div>
  );
}

function inWords(value: CellValue): string {
  if (value === null) return "blank";
  if (typeof value === "boolean") return value ? "TRUE" : "FALSE";
  return typeof value === "object" ? value.error : String(value);
}
