import { Button } from "@fluentui/react-components";
import { useRef, useState } from "react";
import type { RowNotTaken, Waiting, WaitingCylinder } from "../../counter/receive/waitingRows";
import { WorkbookProblem, type SelectedRows } from "../../workbook/workbook";
import { useAnnounce } from "../kit/announce";
import { problemOf, type Problem } from "../../session/problem";
import { ProblemNote } from "../kit/ProblemNote";
import { useFilling } from "./FillContext";
import { shownIn, writeField } from "../../counter/form";
import { orders, serialsIn, withWaiting, type Added } from "../../counter/plan/rowLines";
import { useFillStyles } from "./styles";

/** Nobody has so many whips; a selection beyond it is a slip. */
const MOST_ROWS = 50;

interface Taken extends Added {
  readonly before: string;
  readonly outOfSight: number;
  readonly waiting: Waiting;
}

/** Brings the rows selected in the sheet into the list, below what is typed there, and says what became of each. */
export function TakeRows() {
  const styles = useFillStyles();
  const { workbook, register, form, change } = useFilling();
  const [taken, setTaken] = useState<Taken>();
  const [problem, setProblem] = useState<Problem>();
  const announce = useAnnounce();
  const takeButton = useRef<HTMLButtonElement>(null);
  if (!workbook.readSelection) return null;

  const take = async () => {
    setTaken(undefined);
    setProblem(undefined);
    try {
      const selected = checked(await workbook.readSelection!());
      register.takeRows(selected, serialsIn(shownIn(form, "row")), form.entered, (waiting) => {
        change((now) => {
          const before = shownIn(now, "row");
          const added = withWaiting(before, waiting.cylinders);
          setTaken({ ...added, before, waiting, outOfSight: selected.outOfSight });
          announce(summaryOf(added));
          return added.added.length === 0 ? now : writeField(now, "row", added.list);
        });
      });
    } catch (thrown) {
      setProblem(problemOf(thrown));
    }
  };
  return (
    <>
      <Button ref={takeButton} className={styles.button} onClick={() => void take()}>
        Take the rows selected in the sheet
      </Button>
      {problem && <ProblemNote problem={problem} />}
      {taken && (
        <section className={styles.card} aria-label="Rows taken" data-part="rows-taken">
          <WhatBecame taken={taken} />
          {taken.added.length > 0 && shownIn(form, "row") === taken.list && (
            <Button
              className={styles.half}
              onClick={() => {
                change((now) => writeField(now, "row", taken.before));
                setTaken(undefined);
                takeButton.current?.focus();
                announce("The rows are out of the list again.");
              }}
            >
              Take them out again
            </Button>
          )}
        </section>
      )}
    </>
  );
}

function checked(selected: SelectedRows): SelectedRows {
  const { rows, outOfSight, sheet } = selected;
  if (rows.length > MOST_ROWS)
    throw new WorkbookProblem(
      `${rows.length} rows of “${sheet}” are selected: select those of the cylinders to fill, ${MOST_ROWS} at most.`,
    );
  if (rows.length === 0)
    throw new WorkbookProblem(
      outOfSight > 0
        ? `All selected rows of “${sheet}” are hidden or filtered away: select rows that are in sight.`
        : `Nothing is selected in “${sheet}”: select rows of the log or the register, then press again.`,
    );
  return selected;
}

function summaryOf({ added }: Added): string {
  return added.length === 0
    ? "None of the selected rows was taken."
    : `${added.length === 1 ? "One cylinder" : `${added.length} cylinders`} added to the list.`;
}

function WhatBecame({ taken }: { readonly taken: Taken }) {
  const styles = useFillStyles();
  const { added, known, waiting, outOfSight } = taken;
  const ordered = orders(added);
  const lines = [
    ...added.filter(({ lacks }) => lacks.length > 0).map((each) => `${placed(each)}: ${each.lacks.join("; ")}.`),
    ...(ordered.size < 2
      ? [...ordered.keys()].map((mix) => `Ordered: ${mix}.`)
      : [`They order different mixes: ${[...ordered].map(([mix, by]) => `${mix} (${by.map(({ serial }) => serial).join(", ")})`).join("; ")}.`]),
    ...(known.length === 0 ? [] : [`In the list already, and left as they are: ${known.map(placed).join(", ")}.`]),
    ...byReason(waiting.notTaken).map(({ rows, why }) => `Not taken: ${rowsText(rows)}. ${why}`),
    ...(outOfSight === 0
      ? []
      : [`${outOfSight === 1 ? "One selected row is" : `${outOfSight} selected rows are`} hidden or filtered away: left out.`]),
  ]; // prettier-ignore
  return (
    <>
      <p className={styles.text}>
        <strong>{summaryOf(taken)}</strong>
        {added.length === 0 ? "" : ` From ${waiting.sheet}: ${added.map(placed).join(", ")}.`}
      </p>
      {lines.map((line) => (
        <p key={line} className={styles.text}>
          {line}
        </p>
      ))}
    </>
  );
}

function placed({ serial, row }: WaitingCylinder): string {
  return `${serial} (row ${row + 1})`;
}

function byReason(
  notTaken: readonly RowNotTaken[],
): readonly { readonly why: string; readonly rows: readonly number[] }[] {
  const rows = new Map<string, number[]>();
  for (const { row, why } of notTaken) rows.set(why, [...(rows.get(why) ?? []), row]);
  return [...rows].map(([why, each]) => ({ why, rows: each }));
}

function rowsText(rows: readonly number[]): string {
  return `${rows.length === 1 ? "row" : "rows"} ${rows.map((row) => row + 1).join(", ")}`;
}
