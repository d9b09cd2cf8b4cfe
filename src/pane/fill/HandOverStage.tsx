import { Button } from "@fluentui/react-components";
import { useState } from "react";
import { Temporal } from "temporal-polyfill";
import { labelText } from "../../depth/labelText";
import { Refusal } from "../../gas/refusal";
import type { SheetReading } from "../check/report";
import { CopyButton } from "../kit/CopyButton";
import { problemOf, type Problem } from "../kit/problem";
import { ProblemNote } from "../kit/ProblemNote";
import { useAnnounce } from "../kit/announce";
import { useFilling, isTicked } from "./FillContext";
import { FormField, FormSelect, Tick } from "./FormField";
import { nextCylinder, shownIn, writtenIn } from "./form";
import { asPasted, logRow } from "./logRow";
import { fillCard } from "./print/fillCard";
import { LABEL_STOCK, labelSheet } from "./print/labels";
import { printPage } from "./print/printPage";
import { planSheet } from "./planSheet";
import { useFillStyles } from "./styles";

/** The customer's own analysis and signature, the label, and the row for the log. */
export function HandOverStage({ onNext }: { readonly onNext: () => void }) {
  const styles = useFillStyles();
  const { form, model, receipt, change, register } = useFilling();
  const { analysis } = model;
  const mix = analysis?.mix ?? model.wanted?.endMix;
  const needsCard = mix !== undefined && (mix.helium > 0.0005 || mix.oxygen > 0.225 || mix.oxygen < 0.2);
  return (
    <div className={styles.stage}>
      <h2 className={styles.title}>Hand over</h2>
      {!analysis && (
        <p className={styles.text}>
          <strong>Not analysed.</strong> Without an analysis there is no label: a plan is not a measurement.
        </p>
      )}
      <FormField name="customerOxygen" label="The customer analyses too: oxygen" unit="%" />
      <SecondReading />
      <FormField name="customerName" label="Received by" hint="The name; the signature goes on the card." />
      {needsCard && (
        <FormField
          name="certification"
          label="Certification seen"
          hint={`${mix.helium > 0.0005 ? "Trimix" : "Nitrox"} is handed to a diver certified for it.`}
        />
      )}
      <Tick name="signed" label="Card signed, mix and MOD read out" />
      {!isTicked(form, "signed") && <p className={styles.small}>Not signed yet.</p>}
      <LabelPrint />
      <LogRowPart />
      <div className={styles.row}>
        <Button
          className={styles.half}
          onClick={() => {
            const card = fillCard(model, receipt, form.units, today().toString());
            if (card) printPage(card);
          }}
        >
          Print the fill card
        </Button>
        <InsertPlan />
      </div>
      <Button
        className={styles.button}
        appearance="primary"
        onClick={() => {
          register.forget();
          change(nextCylinder);
          onNext();
        }}
      >
        Done: next cylinder
      </Button>
    </div>
  );
}

function today(): Temporal.PlainDate {
  return Temporal.Now.plainDateISO();
}

/** Two analysers, or two people, should come to the same. */
const READINGS_DIFFER_POINTS = 1;

function SecondReading() {
  const styles = useFillStyles();
  const { form, model } = useFilling();
  const theirs = Number(shownIn(form, "customerOxygen").replace(",", "."));
  const { analysis } = model;
  if (!analysis || !(theirs > 0)) return null;
  const apart = Math.abs(theirs - analysis.mix.oxygen * 100);
  return apart > READINGS_DIFFER_POINTS ? (
    <p className={styles.text}>
      <strong>{apart.toFixed(1)} points from yours: calibrate and analyse again, both.</strong>
    </p>
  ) : (
    <p className={styles.small}>Agrees with yours.</p>
  );
}

function LabelPrint() {
  const styles = useFillStyles();
  const { form, model, receipt, units } = useFilling();
  const { analysis, station } = model;
  if (!analysis) return null;
  const stock =
    LABEL_STOCK.find(({ id }) => id === shownIn(form, "labelStock")) ?? LABEL_STOCK[units === "us" ? 0 : 3]!;
  let text: string;
  try {
    text = labelText({
      pressureBar: analysis.pressureBar,
      analysedMix: analysis.mix,
      analysedBy: writtenIn(form, "initials").text,
      fillDate: today(),
      serial: receipt?.serial ?? writtenIn(form, "asked").text,
      units,
      maxPpO2: station.maxPpO2,
    });
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return <p className={styles.text}>{thrown.message}</p>;
  }
  return (
    <section className={styles.card} aria-label="The label" data-part="label">
      <h3 className={styles.heading}>Label</h3>
      <p className={styles.text}>{text}</p>
      <FormSelect
        name="labelStock"
        label="Label sheet"
        choices={LABEL_STOCK.map(({ id, name }) => [id, name] as const)}
      />
      <Button
        className={styles.half}
        onClick={() => {
          printPage(labelSheet([text], stock));
        }}
      >
        Print the label
      </Button>
    </section>
  );
}

/** A sheet of fills that names the day and the cylinder; anything less is no place for a record. */
function canTakeFills({ kind, columns }: SheetReading): boolean {
  const has = (field: string) => columns.some((column) => column.field === field);
  return (kind === "fills" || kind === "flat") && has("date") && (has("serial") || has("shopNumber"));
}

/** The row as the person's own columns have it, written only when asked. */
function LogRowPart() {
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
  const row = logRow(sheet.columns, form, model, receipt, today());
  const append = async () => {
    try {
      const at = await workbook.appendRow!(sheet.name, row);
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

function InsertPlan() {
  const styles = useFillStyles();
  const { model, units, workbook } = useFilling();
  const [problem, setProblem] = useState<Problem>();
  const announce = useAnnounce();
  const insert = async () => {
    const draft = planSheet(model, units);
    if (!draft) return;
    try {
      const [name = draft.name] = await workbook.addSheets([draft]);
      announce(`The plan is in the sheet ${name}.`);
    } catch (thrown) {
      setProblem(problemOf(thrown));
    }
  };
  return (
    <>
      <Button className={styles.half} onClick={() => void insert()}>
        Insert the plan as a sheet
      </Button>
      {problem && <ProblemNote problem={problem} />}
    </>
  );
}
