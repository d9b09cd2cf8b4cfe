import { Button } from "@fluentui/react-components";
import { useFilling } from "./FillContext";
import { FormField } from "./FormField";
import { StepsTable } from "./StepsTable";
import { useFillStyles } from "./styles";
import { CAUTIONS, degreesText, partsText, pressureText } from "../../counter/words";

/** At the panel: the steps to tick off, warm readings beside settled ones, and what to top once it has cooled. */
export function FillStage({ onNext }: { readonly onNext: () => void }) {
  const styles = useFillStyles();
  const { model, units } = useFilling();
  const { chosen, heat } = model;
  if (!chosen?.order || !chosen.plan)
    return <p className={styles.text}>There is no plan yet: go back to Plan.</p>;
  const { order, plan } = chosen;
  const found = heat?.found;
  return (
    <div className={styles.stage}>
      <h2 className={styles.title}>Fill</h2>
      {chosen.may !== "yes" && (
        <p className={styles.text}>
          <strong>{chosen.may === "no" ? "Not this way." : "Not known."}</strong> {chosen.why.join(" ")}
        </p>
      )}
      <StepsTable
        order={order}
        plan={plan}
        units={units}
        gaugeErrorBar={model.exactness?.errors.gaugeBar ?? 0}
        heat={heat}
        ticks
      />
      <h3 className={styles.heading}>Heat</h3>
      <FormField
        name="gasTemperature"
        label="Gas temperature while filling"
        hint="Shows what the gauge reads warm at each stop. The wall of the cylinder is cooler than its gas."
      />
      {heat && (
        <>
          <h3 className={styles.heading}>After cooling</h3>
          <div className={styles.pair}>
            <FormField name="foundPressure" label="Reading found" />
            <FormField name="foundTemperature" label="Found at" placeholder="settled" />
          </div>
        </>
      )}
      {found && (
        <section className={styles.card} aria-label="Top-off" aria-live="polite" data-part="top-off">
          <p className={styles.text}>
            Settled that is {pressureText(found.settledBar, units)} at{" "}
            {degreesText(order.temperatureK, units)}, and the mix is now {partsText(found.mixNow)} if the
            stops were right.
          </p>
          <p className={styles.text}>
            {found.missingBar > 0.05 ? (
              <strong>
                Top to {pressureText(order.endPressureBar, units)} settled; to{" "}
                {pressureText(found.warmStopBar(heat.warmK), units)} at {degreesText(heat.warmK, units)}.
              </strong>
            ) : (
              <strong>Nothing to top.</strong>
            )}{" "}
            Then: {partsText(found.mixAfter)}.
          </p>
        </section>
      )}
      <p className={styles.small}>{CAUTIONS[1]}</p>
      <Button className={styles.button} appearance="primary" onClick={onNext}>
        Next: analyse
      </Button>
    </div>
  );
}
