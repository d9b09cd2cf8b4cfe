import { makeStyles, tokens } from "@fluentui/react-components";
import { TextButton } from "../../kit/TextButton";
import type { NotChecked } from "../../../audit/judge/finding";
import { Disclosure } from "../../kit/Disclosure";
import { SeverityMark } from "../../kit/SeverityMark";
import { count } from "../report";
import { ruleInWords } from "../../../audit/rules/ruleInWords";
import { placeName, type Jump } from "../useJump";
import { lacksOf } from "../../../audit/lists/lacks";
import { countNotChecked } from "./lacks";

interface NotCheckedListProps {
  readonly notChecked: readonly NotChecked[];
  readonly jump: Jump;
}

/** Enough to see what they have in common. */
const CELLS_SHOWN = 6;

const useStyles = makeStyles({
  box: {
    padding: "0 10px",
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px dashed ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
  },
  title: { display: "inline-flex", alignItems: "center", gap: "6px" },
  list: {
    listStyleType: "none",
    margin: 0,
    padding: "0 0 4px",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
  },
  item: {
    display: "grid",
    gridTemplateColumns: "minmax(34px, auto) 1fr",
    columnGap: "8px",
    padding: "4px 0",
    borderTop: `1px solid ${tokens.colorNeutralStroke3}`,
  },
  count: { textAlign: "right", fontWeight: tokens.fontWeightSemibold },
  cells: { display: "flex", flexWrap: "wrap", alignItems: "center", gap: "0 10px" },
  cell: { minHeight: "24px" },
  rules: { display: "block", color: tokens.colorNeutralForeground3 },
  rule: { color: tokens.colorNeutralForeground3 },
});

/** What no rule could judge, how often and why: unknown is never a pass. */
export function NotCheckedList({ notChecked, jump }: NotCheckedListProps) {
  const styles = useStyles();
  const sum = countNotChecked(notChecked);
  if (sum === 0) return null;
  return (
    <div className={styles.box}>
      <Disclosure
        heading="h3"
        title={
          <span className={styles.title}>
            <SeverityMark mark="not checked" />
            Not checked: {count(sum)}
          </span>
        }
        hint="What is missing, and where"
      >
        <ul className={styles.list}>
          {lacksOf(notChecked).map(({ rules, count: fills, why, cells }, at) => (
            <li key={at} className={styles.item}>
              <span className={styles.count}>{count(fills)}</span>
              <div>
                {why}
                <span className={styles.rules}>{rules.map(ruleInWords).join("; ")}</span>
                <div className={styles.cells}>
                  {cells.slice(0, CELLS_SHOWN).map((cell) => (
                    <TextButton
                      className={styles.cell}
                      key={placeName(cell)}
                      onClick={() => {
                        jump.to(cell, `not checked ${at}`);
                      }}
                    >
                      {placeName(cell)}
                    </TextButton>
                  ))}
                  {cells.length > CELLS_SHOWN && <span className={styles.rule}>and others</span>}
                </div>
                {jump.note?.from === `not checked ${at}` && (
                  <div className={styles.rule}>{jump.note.sentence}</div>
                )}
              </div>
            </li>
          ))}
        </ul>
      </Disclosure>
    </div>
  );
}
