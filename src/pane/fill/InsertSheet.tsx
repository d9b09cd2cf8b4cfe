import { Button } from "@fluentui/react-components";
import { useState } from "react";
import type { SheetDraft } from "../../sheet/draft/draft";
import { useAnnounce } from "../kit/announce";
import { problemOf, type Problem } from "../../session/problem";
import { ProblemNote } from "../kit/ProblemNote";
import { useFilling } from "./FillContext";
import { useFillStyles } from "./styles";

interface InsertSheetProps {
  readonly words: string;
  /** None where there is nothing to insert yet. */
  readonly draft: () => SheetDraft | undefined;
}

/** A button that writes a sheet of ours into the workbook. */
export function InsertSheet({ words, draft }: InsertSheetProps) {
  const styles = useFillStyles();
  const { workbook } = useFilling();
  const [problem, setProblem] = useState<Problem>();
  const announce = useAnnounce();
  const insert = async () => {
    setProblem(undefined);
    const sheet = draft();
    if (!sheet) {
      announce("There is no plan yet: go back to Plan.");
      return;
    }
    try {
      const [name = sheet.name] = await workbook.addSheets([sheet]);
      announce(`It is in the sheet ${name}.`);
    } catch (thrown) {
      setProblem(problemOf(thrown));
    }
  };
  return (
    <>
      <Button className={styles.half} onClick={() => void insert()}>
        {words}
      </Button>
      {problem && <ProblemNote problem={problem} />}
    </>
  );
}
