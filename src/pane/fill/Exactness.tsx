import { Disclosure } from "../kit/Disclosure";
import { useFilling } from "./FillContext";
import { FormField } from "./FormField";
import { useFillStyles } from "./styles";
import { temperature, UNIT_NAMES, type Units } from "../../gas/units";
import { figure } from "../../words/figures";
import { pressureErrorText } from "../../counter/words";

const AT = {
  start: "start",
  drain: "drain",
  helium: "helium stop",
  oxygen: "oxygen stop",
  top: "end",
} as const;

/** What gauge, temperature and analyser errors do to the mix, and whether the tolerance can be met at all. */
export function Exactness() {
  const styles = useFillStyles();
  const { model, units } = useFilling();
  const { exactness } = model;
  if (!exactness) return null;
  const { budget, errors, tolerancePoints, isMet, coarsestGaugeBar } = exactness;
  const off = points(budget.oxygen);
  const helium = budget.helium > 0.00005 ? `, helium ±${points(budget.helium)}` : "";
  return (
    <Disclosure
      title="How exact must I be?"
      heading="h3"
      hint={`Oxygen ±${off} points${helium}: ${isMet ? "within" : "not surely within"} ±${figure(tolerancePoints)}`}
    >
      <div className={styles.stage} data-part="exactness">
        <FormField name="tolerance" label="Tolerance, points" placeholder={figure(tolerancePoints)} />
        <p className={styles.text}>
          With a gauge off by ±{pressureErrorText(errors.gaugeBar, units)}, gas ±
          {degreesApart(errors.temperatureK, units)} from what was meant and the old mix known to ±
          {points(errors.startMix)} points:
        </p>
        <dl className={styles.facts}>
          {budget.shares.slice(0, 6).map(({ of, at, oxygen, helium: he }) => (
            <FactPair
              key={`${of} ${at}`}
              what={
                of === "start mix" ? "Old mix" : `${of === "gauge" ? "Gauge" : "Temperature"} at ${AT[at]}`
              }
              fact={`±${points(oxygen)}${he > 0.00005 ? ` O2, ±${points(he)} He` : ""}`}
            />
          ))}
          <FactPair what="All together" fact={`±${off}${helium}`} />
        </dl>
        <p className={styles.text}>
          {coarsestGaugeBar === undefined
            ? "Out of tolerance whatever the gauge: let the gas settle, and analyse what is in the cylinder first."
            : coarsestGaugeBar === Infinity
              ? "The gauge makes no difference here."
              : `To stay within ±${figure(tolerancePoints)} points the gauge must be good to ±${pressureErrorText(coarsestGaugeBar, units)}.`}
        </p>
      </div>
    </Disclosure>
  );
}

function points(fraction: number): string {
  return figure(fraction * 100);
}

/** A difference of temperatures. */
function degreesApart(kelvin: number, units: Units): string {
  const zero = temperature(273.15, units);
  return `${figure(temperature(273.15 + kelvin, units) - zero, 0)} ${UNIT_NAMES[units].temperature}`;
}

function FactPair({ what, fact }: { readonly what: string; readonly fact: string }) {
  return (
    <>
      <dt>{what}</dt>
      <dd>{fact}</dd>
    </>
  );
}
