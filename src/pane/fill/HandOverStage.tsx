import { Button } from "@fluentui/react-components";
import { Temporal } from "temporal-polyfill";
import { isTicked, useFilling } from "./FillContext";
import { FormField, Tick } from "./FormField";
import { nextCylinder } from "../../counter/form";
import { lacksCertification, needsCertification, secondReading } from "../../counter/write/handedOver";
import { InsertSheet } from "./InsertSheet";
import { LabelPart } from "./LabelPart";
import { LogRowPart } from "./LogRowPart";
import { planSheet } from "../../counter/plan/planSheet";
import { cardOf } from "../../counter/print/card";
import { cardSheet } from "../../counter/print/cardSheet";
import { fillCard } from "../../counter/print/fillCard";
import { printPage } from "./printPage";
import { useFillStyles } from "./styles";

/** The customer's own analysis and signature, the label, and the row for the log. */
export function HandOverStage({ onNext }: { readonly onNext: () => void }) {
  const styles = useFillStyles();
  const { model, change, register } = useFilling();
  const mix = needsCertification(model);
  return (
    <div className={styles.stage}>
      <h2 className={styles.title}>Hand over</h2>
      {!model.analysis && (
        <p className={styles.text}>
          <strong>Not analysed.</strong> Without an analysis there is no label: a plan is not a measurement.
        </p>
      )}
      <FormField name="customerOxygen" label="The customer analyses too: oxygen" unit="%" />
      <SecondReading />
      <FormField name="customerName" label="Received by" hint="The name; the signature goes on the card." />
      {mix && (
        <FormField
          name="certification"
          label="Certification seen"
          hint={`${mix.helium > 0.0005 ? "Trimix" : "Nitrox"} is handed to a diver certified for it.`}
        />
      )}
      <Tick name="signed" label="Card signed, mix and MOD read out" />
      <LabelPart />
      <LogRowPart />
      <CardAndPlan />
      <StillOpen />
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

/** What a handover lacks is said before the next cylinder comes. */
function StillOpen() {
  const styles = useFillStyles();
  const { form, model } = useFilling();
  const open = [
    ...(model.analysis ? [] : ["not analysed"]),
    ...(lacksCertification(form, model) ? ["certification not seen"] : []),
    ...(isTicked(form, "signed") ? [] : ["not signed"]),
  ];
  return open.length === 0 ? null : (
    <p className={styles.text} data-part="still-open">
      <strong>Still open:</strong> {open.join("; ")}.
    </p>
  );
}

function SecondReading() {
  const styles = useFillStyles();
  const { form, model } = useFilling();
  const second = secondReading(form, model);
  if (!second) return null;
  return second.differs ? (
    <p className={styles.text}>
      <strong>{second.apartPoints.toFixed(1)} points from yours: calibrate and analyse again, both.</strong>
    </p>
  ) : (
    <p className={styles.small}>Agrees with yours.</p>
  );
}

/** The card on paper or as a sheet, and the plan as formulas to go on from. */
function CardAndPlan() {
  const styles = useFillStyles();
  const { model, receipt, units } = useFilling();
  const card = () => cardOf(model, receipt, units, Temporal.Now.plainDateISO().toString());
  return (
    <div className={styles.row}>
      <Button
        className={styles.half}
        onClick={() => {
          const made = card();
          if (made) printPage(fillCard(made));
        }}
      >
        Print the fill card
      </Button>
      <InsertSheet
        words="Insert the card as a sheet"
        draft={() => {
          const made = card();
          return made && cardSheet(made);
        }}
      />
      <InsertSheet words="Insert the plan as a sheet" draft={() => planSheet(model, units)} />
    </div>
  );
}
