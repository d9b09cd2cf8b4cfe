import { Button, makeStyles } from "@fluentui/react-components";
import { useEffect, useState, type ReactNode } from "react";
import { registeredVersion } from "../functions/hosts/registered";
import { problemOf, type Problem } from "../session/problem";
import { Notice, ProblemNote } from "../pane/kit/ProblemNote";
import { useAnnounce } from "../pane/kit/announce";
import { VERSION } from "../version";
import type { ExcelWorkbook } from "../workbook/excel/excelWorkbook";
import { brokenSentence, OLD_FUNCTIONS, repairedSentence } from "./notices";
import { useBrokenFormulas } from "./useBrokenFormulas";

const useStyles = makeStyles({
  note: { flexShrink: 0, padding: "8px 44px 4px 12px", display: "flex", flexDirection: "column", gap: "8px" },
});

/** What is wrong with the worksheet functions in this workbook, where something is, and the way to put it right. */
export function FunctionsNote({ workbook }: { readonly workbook: ExcelWorkbook }) {
  const styles = useStyles();
  const announce = useAnnounce();
  const { broken, look } = useBrokenFormulas(workbook);
  const [outcome, setOutcome] = useState<string>();
  const [problem, setProblem] = useState<Problem>();
  const [working, setWorking] = useState(false);

  useEffect(() => {
    if (broken > 0) setOutcome(undefined);
  }, [broken]);

  const repair = async () => {
    setWorking(true);
    setProblem(undefined);
    try {
      const sentence = repairedSentence(await workbook.repairFormulas(await workbook.findBrokenFormulas()));
      announce(sentence);
      look();
      setOutcome(sentence);
    } catch (thrown) {
      setProblem(problemOf(thrown));
    }
    setWorking(false);
  };

  const notes: ReactNode[] = [];
  if (registeredVersion() !== VERSION) notes.push(<Notice key="old">{OLD_FUNCTIONS}</Notice>);
  if (problem) notes.push(<ProblemNote key="problem" problem={problem} />);
  if (outcome !== undefined) notes.push(<Notice key="outcome">{outcome}</Notice>);
  else if (broken > 0) {
    const action = (
      <Button size="small" disabled={working} onClick={() => void repair()}>
        Repair formulas
      </Button>
    );
    notes.push(
      <Notice key="broken" actions={action}>
        {brokenSentence(broken)}
      </Notice>,
    );
  }
  return notes.length === 0 ? null : (
    <section className={styles.note} aria-label="Worksheet functions">
      {notes}
    </section>
  );
}
