import { Button } from "@fluentui/react-components";
import { useState } from "react";
import { Temporal } from "temporal-polyfill";
import { isTotalsRow } from "../../log/totalsRow";
import type { SheetReading } from "../check/report";
import { CopyButton } from "../kit/CopyButton";
import { problemOf, type Problem } from "../kit/problem";
import { ProblemNote } from "../kit/ProblemNote";
import { useAnnounce } from "../kit/announce";
import { useFilling } from "./FillContext";
import { FormSelect } from "./FormField";
import { shownIn } from "./form";
import { lacksCertification } from "./handedOver";
import { asPasted, logRow } from "./logRow";
import { useFillStyles } from "./styles";

/** A sheet of fills that names the day and the cylinder; anything less is no place for a record. */
function canTakeFills({ kind, columns }: SheetReading): boolean {
  const has = (field: string) => columns.some((column) => column.field === field);
  return (kind === "fills" || kind === "flat") && has("date") && (has("serial") || has("shopNumber"));
}

/** The row as the person's own columns have it, written only when asked. */
export function LogRowPart() {
  const styles = useFillStyles();
  const { form, model, receipt, register, workbook } = useFilling();
  const [done, setDone] = useState<string>();
  const [problem, setProblem] = useState<Problem>();
  const announce = useAnnounce();
  const logs = register.sheets.filter(canTakeFills);
  const sheet = logs.find(({ name }) => name === shownIn(form, "logSheet")) ?? logs.at(-1);
  if (!sheet || !model.wanted)
    return (
      <p className={styles.small}>No log sheet was found to add the row to. Look the cylinder up first.</p>
    );
  const row = logRow(sheet.columns, form, model, receipt, Temporal.Now.plainDateISO());
  const append = async () => {
    try {
      const at = await workbook.appendRow!(sheet.name, row, (each) => isTotalsRow(each, sheet.columns));
      const said = `Written into row ${at.row + 1} of ${sheet.name}.`;
      setDone(said);
      setProblem(undefined);
      announce(said);
    } catch (thrown) {
      setProblem(problemOf(thrown));
    }
  };
  return (
    <section className={styles.card} aria-label="The row for the log" data-part="log-row">
      <h3 className={styles.heading}>Into the log: {sheet.name}</h3>
      {logs.length > 1 && (
        <FormSelect
          name="logSheet"
          label="Sheet"
          choices={[...logs].reverse().map(({ name }) => [name, name] as const)}
        />
      )}
      <p className={styles.small}>
        {row
          .map(({ column }) => sheet.columns.find((each) => each.column === column)?.heading ?? "")
          .join(", ")}
      </p>
      {lacksCertification(form, model) && (
        <p className={styles.text}>
          {sheet.columns.some(({ field }) => field === "certification" || field === "remarks")
            ? "The row says that no certification was seen."
            : "No certification was seen, and this sheet has no column to say so, nor one for remarks."}
        </p>
      )}
      <div className={styles.row}>
        {workbook.appendRow && (
          <Button
            className={styles.half}
            disabledFocusable={done !== undefined}
            onClick={() => void append()}
          >
            Add the row
          </Button>
        )}
        <CopyButton what="row" text={() => asPasted(row)} />
      </div>
      {done !== undefined && <p className={styles.text}>{done}</p>}
      {problem && <ProblemNote problem={problem} />}
    </section>
  );
}
