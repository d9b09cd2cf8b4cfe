import { makeStyles, tokens } from "@fluentui/react-components";
import { TextButton } from "../kit/TextButton";
import type { UnreadableRow } from "../../log/log";
import { count } from "./report";
import { placeName, type Jump } from "./useJump";

/** Enough to see what is wrong; a log with more has one cause. */
const SHOWN = 200;

const useStyles = makeStyles({
  list: { listStyleType: "none", margin: 0, padding: 0 },
  row: { padding: "2px 0" },
  note: { color: tokens.colorNeutralForeground3 },
});

/** Every row that could not be read, with its cell and the reason. */
export function UnreadableRows({ rows, jump }: { rows: readonly UnreadableRow[]; jump: Jump }) {
  const styles = useStyles();
  return (
    <>
      <ul className={styles.list}>
        {rows.slice(0, SHOWN).map((row) => {
          const place = placeName(row);
          const from = `unreadable ${place}`;
          return (
            <li key={place} className={styles.row}>
              <TextButton
                onClick={() => {
                  jump.to(row, from);
                }}
              >
                {place}
              </TextButton>{" "}
              {row.why}
              {jump.note?.from === from && <div className={styles.note}>{jump.note.sentence}</div>}
            </li>
          );
        })}
      </ul>
      {rows.length > SHOWN && <p className={styles.note}>And {count(rows.length - SHOWN)} more.</p>}
    </>
  );
}
