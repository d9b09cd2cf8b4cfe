import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { useEffect, useId, useRef } from "react";
import type { ColumnQuestion, LogColumn } from "../../../log/log";
import type { Shop } from "../../shop/useShop";
import { useAnnounce } from "../../kit/announce";
import { sayOfColumn } from "../choices";
import { counted, type SheetReading } from "../report";

interface OpenQuestionsProps {
  readonly sheets: readonly SheetReading[];
  readonly shop: Shop;
  readonly onAllAnswered: () => void;
}

/** One question, for every column it is asked of: twelve monthly sheets ask once. */
interface SharedQuestion {
  readonly question: ColumnQuestion;
  readonly heading: string;
  readonly columns: readonly { readonly sheet: SheetReading; readonly column: LogColumn }[];
}

const useStyles = makeStyles({
  box: {
    padding: "8px 12px 10px",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${tokens.colorBrandStroke1}`,
    backgroundColor: tokens.colorNeutralBackground1,
  },
  title: {
    margin: 0,
    fontSize: tokens.fontSizeBase300,
    fontWeight: tokens.fontWeightSemibold,
    ":focus": { outline: "none" },
  },
  hint: { margin: 0, fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground3 },
  question: { border: "none", margin: "8px 0 0", padding: 0, minWidth: 0 },
  sentence: { padding: 0, marginBottom: "4px" },
  examples: { display: "block", fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground3 },
  choices: { display: "flex", flexWrap: "wrap", gap: "6px" },
});

/** What the cells alone cannot tell, asked where it is needed. What stays open is not checked. */
export function OpenQuestions({ sheets, shop, onAllAnswered }: OpenQuestionsProps) {
  const styles = useStyles();
  const id = useId();
  const announce = useAnnounce();
  const title = useRef<HTMLHeadingElement>(null);
  const answered = useRef(false);
  const questions = sharedQuestions(sheets);

  // The answered question goes away, and the focus with it: hand the focus to those that are left.
  useEffect(() => {
    if (!answered.current) return;
    answered.current = false;
    announce(
      `Kept. ${questions.length === 0 ? "No questions" : counted(questions.length, "question")} left.`,
    );
    if (questions.length === 0) onAllAnswered();
    else title.current?.focus();
  }, [questions.length, announce, onAllAnswered]);

  if (questions.length === 0) return null;
  return (
    <section className={styles.box} aria-labelledby={id}>
      <h2 className={styles.title} id={id} ref={title} tabIndex={-1}>
        {counted(questions.length, "question")} about your log
      </h2>
      <p className={styles.hint}>What stays open is not checked.</p>
      {questions.map(({ question, heading, columns }) => (
        <fieldset key={`${heading} ${question.sentence}`} className={styles.question}>
          <legend className={styles.sentence}>
            {question.sentence}
            <span className={styles.examples}>
              {heading}: {columns[0]?.column.examples.join(" · ")}
              {columns.length > 1 && ` (in ${columns.length} sheets)`}
            </span>
          </legend>
          <div className={styles.choices}>
            {question.choices.map((choice) => (
              <Button
                key={choice}
                size="small"
                onClick={() => {
                  answered.current = true;
                  shop.change((settings) =>
                    columns.reduce(
                      (so, { sheet, column }) =>
                        sayOfColumn(so, sheet, column, { answers: { [question.about]: choice } }),
                      settings,
                    ),
                  );
                }}
              >
                {choice}
              </Button>
            ))}
          </div>
        </fieldset>
      ))}
    </section>
  );
}

function sharedQuestions(sheets: readonly SheetReading[]): readonly SharedQuestion[] {
  const shared = new Map<string, SharedQuestion>();
  for (const sheet of sheets) {
    for (const column of sheet.columns) {
      const { question, heading } = column;
      if (!question) continue;
      const key = JSON.stringify([heading, question.about, question.sentence, question.choices]);
      const columns = [...(shared.get(key)?.columns ?? []), { sheet, column }];
      shared.set(key, { question, heading, columns });
    }
  }
  return [...shared.values()];
}
