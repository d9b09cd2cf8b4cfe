import { depthWarnings } from "../../counter/plan/depths";
import { analyserOff } from "../../counter/plan/analyser";
import { Button } from "@fluentui/react-components";
import { nameMix } from "../../gas/nameMix";
import { Disclosure } from "../kit/Disclosure";
import { SeverityMark } from "../kit/SeverityMark";
import { useFilling } from "./FillContext";
import { FormField } from "./FormField";
import type { Analysis, Correction } from "../../counter/plan/model";
import { StepsTable } from "./StepsTable";
import { useFillStyles } from "./styles";
import { depthText, partsText, pressureText } from "../../counter/words";

/** What the analyser says, against what was ordered; and how to put it right. */
export function AnalyseStage({ onNext }: { readonly onNext: () => void }) {
  const styles = useFillStyles();
  const { model, receipt } = useFilling();
  const { analysis } = model;
  const isTwin = (receipt?.size?.count ?? 1) > 1;
  return (
    <div className={styles.stage}>
      <h2 className={styles.title}>Analyse</h2>
      <h3 className={styles.heading}>Analyser, before</h3>
      <div className={styles.pair}>
        <FormField name="airReading" label="Reads on air" placeholder="20.9" unit="%" />
        <FormField name="oxygenReading" label="Reads on oxygen" placeholder="99 or more" unit="%" />
      </div>
      <CalibrationNote />
      <h3 className={styles.heading}>The gas</h3>
      <div className={styles.pair}>
        <FormField name="analysedOxygen" label="Oxygen" unit="%" />
        <FormField name="analysedHelium" label="Helium" unit="%" />
      </div>
      <div className={styles.pair}>
        <FormField name="analysedPressure" label="Pressure, settled" />
        <FormField name="initials" label="Analysed by" />
      </div>
      <Disclosure
        title="Second post"
        heading="h3"
        hint="A twin set: with the isolator closed the halves differ"
        initiallyOpen={isTwin}
      >
        <div className={styles.pair}>
          <FormField name="secondPostOxygen" label="Oxygen, post 2" unit="%" />
          <FormField name="secondPostHelium" label="Helium, post 2" unit="%" />
        </div>
      </Disclosure>
      {isTwin && !model.analysis?.secondPost && (
        <p className={styles.small}>A twin set is analysed at both posts.</p>
      )}
      {analysis && <AnalysisCard analysis={analysis} />}
      {analysis && !analysis.isWithin && <Corrections corrections={analysis.corrections} />}
      {analysis && (
        <Button
          className={styles.button}
          appearance={analysis.isWithin ? "primary" : "secondary"}
          onClick={onNext}
        >
          {analysis.isWithin ? "Next: hand over" : "Hand over as analysed"}
        </Button>
      )}
    </div>
  );
}

function CalibrationNote() {
  const styles = useFillStyles();
  const { form } = useFilling();
  const off = analyserOff(form);
  return off.length === 0 ? null : (
    <p className={styles.text}>
      <strong>Calibrate again: {off.join("; ")}.</strong>
    </p>
  );
}

function AnalysisCard({ analysis }: { readonly analysis: Analysis }) {
  const styles = useFillStyles();
  const { model, units } = useFilling();
  const { depths } = analysis;
  const signed = (points: number) => `${points < 0 ? "−" : "+"}${Math.abs(points).toFixed(1)}`;
  return (
    <section className={styles.card} aria-label="The analysis" aria-live="polite" data-part="analysis">
      <p className={styles.title}>
        {nameMix(analysis.mix)} ({partsText(analysis.mix)})
      </p>
      <p className={styles.text}>
        {signed(analysis.offOxygen)} points of oxygen
        {Math.abs(analysis.offHelium) > 0.05 ? `, ${signed(analysis.offHelium)} of helium` : ""} from the
        order: {analysis.isWithin ? "within tolerance." : "out of tolerance."}
      </p>
      {depths.mod !== undefined && (
        <p className={styles.text} data-part="mod">
          MOD {depthText(depths.mod, units)} at ppO2 {model.station.maxPpO2}, rounded down
        </p>
      )}
      {depthWarnings(depths, units).map((line) => (
        <p key={line} className={styles.text}>
          <strong>{line}</strong>
        </p>
      ))}
      {analysis.postsDiffer && (
        <p className={styles.text}>
          <SeverityMark mark="stop" />
          <strong>The posts differ: open the isolator, let it mix, and analyse both again.</strong>
        </p>
      )}
    </section>
  );
}

function Corrections({ corrections }: { readonly corrections: readonly Correction[] }) {
  const styles = useFillStyles();
  const { model, units } = useFilling();
  return (
    <section aria-label="Put it right" data-part="corrections">
      <h3 className={styles.heading}>Put it right</h3>
      <p className={styles.small}>
        Analyse again first: gas that has not mixed reads wrong. Or keep it as it is, labelled as analysed.
      </p>
      {corrections.length === 0 && <p className={styles.text}>No way with what the station has.</p>}
      {corrections.map(({ title, way, endBar }, index) => (
        <Disclosure
          key={way.key + String(endBar)}
          title={title}
          hint={[
            way.may === "yes" ? "" : way.may === "no" ? "Not allowed." : "Not known.",
            ...way.why,
            `Ends at ${pressureText(endBar, units)}.`,
          ]
            .filter(Boolean)
            .join(" ")}
          initiallyOpen={index === 0}
        >
          <StepsTable
            order={way.order!}
            plan={way.plan!}
            units={units}
            gaugeErrorBar={model.exactness?.errors.gaugeBar ?? 0}
          />
        </Disclosure>
      ))}
    </section>
  );
}
