import { makeStyles, tokens } from "@fluentui/react-components";
import { useId, useState } from "react";
import { SeverityMark } from "../kit/SeverityMark";
import { TextButton } from "../kit/TextButton";
import { count, counted, countRows, reconciliation, type CheckReport, type LogReading } from "./report";
import { countNotChecked } from "./results/lacks";
import { UnreadableRows } from "./UnreadableRows";
import type { Jump } from "./useJump";

interface StatusBarProps {
  readonly reading: LogReading;
  readonly report: CheckReport | undefined;
  readonly jump: Jump;
}

const useStyles = makeStyles({
  bar: {
    position: "sticky",
    bottom: 0,
    zIndex: 1,
    flexShrink: 0,
    padding: "5px 12px",
    borderTop: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground2,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
  },
  line: { margin: 0 },
  state: { display: "flex", flexWrap: "wrap", alignItems: "center", gap: "0 12px" },
  notChecked: { display: "inline-flex", alignItems: "center", gap: "4px" },
  rows: { maxHeight: "40vh", overflowY: "auto", marginTop: "4px" },
});

/** Always in sight: that no row vanished, which rows could not be read, and how much could not be checked. */
export function StatusBar({ reading, report, jump }: StatusBarProps) {
  const styles = useStyles();
  const id = useId();
  const [open, setOpen] = useState(false);
  const rows = countRows(reading.sheets);
  const hidden = reading.sheets.reduce((sum, { hiddenRows }) => sum + hiddenRows, 0);
  const notChecked = report && countNotChecked(report.notChecked);
  return (
    <section className={styles.bar} aria-label="Rows, and what was not checked">
      <p className={styles.line}>
        {counted(rows.total, "row")} = {reconciliation(rows).map((part) => `${part} + `)}
        {rows.unreadable === 0 ? (
          "0 unreadable"
        ) : (
          <TextButton
            aria-expanded={open}
            aria-controls={open ? id : undefined}
            onClick={() => {
              setOpen(!open);
            }}
          >
            {count(rows.unreadable)} unreadable
          </TextButton>
        )}
      </p>
      {(notChecked !== undefined || hidden > 0) && (
        <div className={styles.state}>
          {notChecked !== undefined && (
            <span className={styles.notChecked}>
              <SeverityMark mark="not checked" />
              Not checked: {count(notChecked)}
            </span>
          )}
          {hidden > 0 && <span>{counted(hidden, "hidden row")} read as well</span>}
        </div>
      )}
      {open && (
        <div id={id} className={styles.rows}>
          <UnreadableRows rows={reading.unreadable} jump={jump} />
        </div>
      )}
    </section>
  );
}
