import { Button } from "@fluentui/react-components";
import { useEffect, useState } from "react";
import { Temporal } from "temporal-polyfill";
import type { Field } from "../../log/log";
import { isTotalsRow } from "../../log/rows/totalsRow";
import type { Workbook } from "../../workbook/workbook";
import type { SheetReading } from "../check/report";
import { CopyButton } from "../kit/CopyButton";
import { problemOf, type Problem } from "../../session/problem";
import { ProblemNote } from "../kit/ProblemNote";
import { useAnnounce } from "../kit/announce";
import { useFilling } from "./FillContext";
import { FormField, FormSelect } from "./FormField";
import { shownIn } from "../../counter/form";
import { lacksCertification } from "../../counter/write/handedOver";
import { logPlace, type LogPlace } from "../../counter/write/logPlace";
import { asPasted, leftBlank, logRow } from "../../counter/write/logRow";
import { useFillStyles } from "./styles";

/** A sheet of fills that names the day and the cylinder; anything less is no place for a record. */
function canTakeFills({ kind, columns }: SheetReading): boolean {
  const has = (field: string) => columns.some((column) => column.field === field);
  return (kind === "fills" || kind === "flat") && has("date") && (has("serial") || has("shopNumber"));
}

function placeIn(workbook: Workbook, { name, columns }: SheetReading): Promise<LogPlace> {
  return workbook.readSheet(name).then((read) => logPlace(read, columns, Temporal.Now.plainDateISO()));
}

/** Of a sheet that could not be read: it is read again to write the row, and what is wrong is said then. */
const NO_PLACE: LogPlace = { nextNumber: undefined, otherMonth: undefined };

/** What the sheet's rows say of the next one; undefined until they are read. */
function useLogPlace(sheet: SheetReading | undefined): LogPlace | undefined {
  const { workbook } = useFilling();
  const [place, setPlace] = useState<LogPlace>();
  useEffect(() => {
    let wanted = true;
    setPlace(undefined);
    if (sheet)
      void placeIn(workbook, sheet)
        .catch(() => NO_PLACE)
        .then((found) => {
          if (wanted) setPlace(found);
        });
    return () => {
      wanted = false;
    };
  }, [workbook, sheet]);
  return place;
}

/** The row as the person's own columns have it, written only when asked. */
export function LogRowPart() {
  const styles = useFillStyles();
  const { form, model, receipt, register, workbook } = useFilling();
  const [done, setDone] = useState<string>();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem>();
  const announce = useAnnounce();
  const logs = register.sheets.filter(canTakeFills);
  const sheet = logs.find(({ name }) => name === shownIn(form, "logSheet")) ?? logs.at(-1);
  const place = useLogPlace(sheet);
  if (!sheet || !model.wanted)
    return (
      <p className={styles.small}>No log sheet was found to add the row to. Look the cylinder up first.</p>
    );
  const { columns } = sheet;
  const has = (field: Field) => columns.some((column) => column.field === field);
  const rowAt = (nextNumber: number | undefined) =>
    logRow(columns, { form, model, receipt, now: Temporal.Now.plainDateTimeISO(), nextNumber });
  const row = rowAt(place?.nextNumber);
  const blank = place ? leftBlank(columns, row) : [];
  const append = async () => {
    setBusy(true);
    try {
      // Somebody may have written a row since the card was opened.
      const { nextNumber } = await placeIn(workbook, sheet);
      const at = await workbook.appendRow!(sheet.name, rowAt(nextNumber), (each) =>
        isTotalsRow(each, columns),
      );
      const said = `Written into row ${at.row + 1} of ${sheet.name}.`;
      setDone(said);
      setProblem(undefined);
      announce(said);
    } catch (thrown) {
      setProblem(problemOf(thrown));
    }
    setBusy(false);
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
      {has("filledBy") && <FormField name="filledBy" label="Filled by" />}
      {has("source") && (
        <FormField
          name="filledFrom"
          label="Filled from"
          hint="The bank or compressor, as the log names it."
        />
      )}
      <p className={styles.small}>
        {row.map(({ column }) => columns.find((each) => each.column === column)?.heading ?? "").join(", ")}
      </p>
      {blank.length > 0 && (
        <p className={styles.text} data-part="left-blank">
          <strong>Left blank:</strong> {blank.join("; ")}.
        </p>
      )}
      {place?.otherMonth !== undefined && done === undefined && (
        <p className={styles.text} data-part="other-month">
          <strong>{place.otherMonth}</strong> Look whether the row belongs there.
        </p>
      )}
      {lacksCertification(form, model) && (
        <p className={styles.text}>
          {has("certification") || has("remarks")
            ? "The row says that no certification was seen."
            : "No certification was seen, and this sheet has no column to say so, nor one for remarks."}
        </p>
      )}
      <div className={styles.row}>
        {workbook.appendRow && (
          <Button
            className={styles.half}
            disabledFocusable={busy || done !== undefined}
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
