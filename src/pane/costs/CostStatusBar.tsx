import { makeStyles, tokens } from "@fluentui/react-components";
import { useId, useState } from "react";
import { count, counted } from "../check/report";
import { placeName, type Jump } from "../check/useJump";
import { SeverityMark } from "../kit/SeverityMark";
import { TextButton } from "../kit/TextButton";
import type { CostAnswer } from "../../session/questions/costs";

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
  line: { display: "flex", flexWrap: "wrap", alignItems: "center", gap: "0 6px" },
  list: { listStyleType: "none", margin: "4px 0 0", padding: 0, maxHeight: "40vh", overflowY: "auto" },
  item: { padding: "3px 0", borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  cells: { display: "flex", flexWrap: "wrap", gap: "0 10px" },
});

/** Always in sight: how many fills are in the sums, and how many are not. */
export function CostStatusBar({ answer, jump }: { answer: CostAnswer; jump: Jump }) {
  const styles = useStyles();
  const id = useId();
  const [open, setOpen] = useState(false);
  const { fills, notCosted, lacks, sum } = answer;
  return (
    <section className={styles.bar} aria-label="Fills costed and not costed">
      <div className={styles.line}>
        <span>
          {counted(fills, "fill")} = {count(sum.fills)} costed +{" "}
        </span>
        <SeverityMark mark="not checked" />
        {notCosted === 0 ? (
          "0 not costed"
        ) : (
          <TextButton
            aria-expanded={open}
            aria-controls={open ? id : undefined}
            onClick={() => {
              setOpen(!open);
            }}
          >
            {count(notCosted)} not costed
          </TextButton>
        )}
      </div>
      {open && notCosted > 0 && (
        <ul id={id} className={styles.list}>
          {lacks.map(({ why, count: lacking, cells }, at) => (
            <li key={why} className={styles.item}>
              {count(lacking)}: {why}
              <div className={styles.cells}>
                {cells.map((cell) => (
                  <TextButton
                    key={placeName(cell)}
                    onClick={() => {
                      jump.to(cell, `lack ${at}`);
                    }}
                  >
                    {placeName(cell)}
                  </TextButton>
                ))}
                {lacking > cells.length && <span>and others</span>}
              </div>
              {jump.note?.from === `lack ${at}` && <div>{jump.note.sentence}</div>}
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}
