import { makeStyles, tokens } from "@fluentui/react-components";
import { UNIT_NAMES, type Units } from "../../gas/units";
import type { FillOrder, FillPlan } from "../../blending/planFill";
import { Tick } from "./FormField";
import type { Heat } from "../../counter/plan/model";
import { stepsSaid, stopsHold } from "../../counter/plan/planSaid";

const useStyles = makeStyles({
  steps: { listStyle: "none", margin: 0, padding: 0, display: "flex", flexDirection: "column" },
  step: {
    display: "grid",
    gridTemplateColumns: "minmax(0, 1fr) auto",
    columnGap: "10px",
    alignItems: "baseline",
    padding: "8px 0",
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  what: { fontSize: tokens.fontSizeBase400, fontWeight: tokens.fontWeightSemibold },
  add: { color: tokens.colorNeutralForeground3, fontSize: tokens.fontSizeBase200 },
  stop: { textAlign: "right", whiteSpace: "nowrap" },
  figure: { fontSize: "36px", lineHeight: "40px", fontWeight: tokens.fontWeightSemibold },
  unit: { fontSize: tokens.fontSizeBase300, color: tokens.colorNeutralForeground3 },
  warm: { display: "block", fontSize: tokens.fontSizeBase300 },
  caution: {
    margin: "6px 0 0",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground2,
  },
});

interface StepsTableProps {
  readonly order: FillOrder;
  readonly plan: FillPlan;
  readonly units: Units;
  readonly gaugeErrorBar: number;
  /** Readings while warm, beside the settled ones. */
  readonly heat?: Heat | undefined;
  /** With a box to tick for each step. */
  readonly ticks?: boolean;
}

/** The steps of a plan with their stops, to be read at arm's length, and the temperature they hold for. */
export function StepsTable({ order, plan, units, gaugeErrorBar, heat, ticks = false }: StepsTableProps) {
  const styles = useStyles();
  const unit = UNIT_NAMES[units].pressure;
  if (plan.steps.length === 0) return <p>The order is in the cylinder already: nothing to add.</p>;
  return (
    <div data-part="steps">
      <ol className={styles.steps}>
        {stepsSaid(plan, order, units, heat).map(({ step, what, change, stop, warm }) => (
          <li key={step} className={styles.step} data-step={step}>
            <span>
              {ticks ? (
                <Tick name={`step-${step}`} label={what} />
              ) : (
                <span className={styles.what}>{what}</span>
              )}
              <span className={styles.add}>
                <br />
                {change}
              </span>
            </span>
            <span className={styles.stop}>
              <span className={styles.unit}>stop at </span>
              <span className={styles.figure} data-part="stop">
                {stop}
              </span>{" "}
              <span className={styles.unit}>{unit}</span>
              {warm !== undefined && (
                <span className={styles.warm} data-part="warm">
                  {warm}
                </span>
              )}
            </span>
          </li>
        ))}
      </ol>
      <p className={styles.caution}>
        {stopsHold(order, gaugeErrorBar, units)} A plan, not a measurement: analyse.
      </p>
    </div>
  );
}
