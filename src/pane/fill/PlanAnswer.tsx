import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { nameMix } from "../../gas/nameMix";
import { SeverityMark } from "../kit/SeverityMark";
import { useFilling } from "./FillContext";
import { pricesFrom } from "../../counter/plan/prices";
import { StepsTable } from "./StepsTable";
import { useFillStyles } from "./styles";
import type { RankedWay } from "../../counter/plan/ways";
import { CAUTIONS, depthText, depthWarnings, moneyText, partsText, volumeText } from "../../counter/words";

const useStyles = makeStyles({
  mark: { display: "flex", gap: "6px", alignItems: "baseline", "& svg": { alignSelf: "center" } },
  title: { fontWeight: tokens.fontWeightSemibold },
});

const MARKS = {
  no: { mark: "stop", word: "Not this way" },
  "not known": { mark: "not checked", word: "Not known" },
} as const;

/** The steps of the way that was chosen, the mix they make, and what it takes. */
export function PlanAnswer({ chosen }: { readonly chosen: RankedWay }) {
  const styles = useFillStyles();
  const own = useStyles();
  const { model, units } = useFilling();
  const { order, plan, may } = chosen;
  if (!order || !plan) return null;
  const { depths, station } = model;
  const result = plan.result.mix;
  return (
    <section className={styles.card} aria-label="The plan" data-part="plan">
      <h3 className={mergeClasses(styles.heading, own.title)}>{chosen.title}</h3>
      {may !== "yes" && (
        <div className={own.mark} data-part="may">
          <SeverityMark mark={MARKS[may].mark} />
          <span>
            <strong>{MARKS[may].word}.</strong> {chosen.why.join(" ")}
          </span>
        </div>
      )}
      <StepsTable
        order={order}
        plan={plan}
        units={units}
        gaugeErrorBar={model.exactness?.errors.gaugeBar ?? 0}
      />
      <dl className={styles.facts}>
        <dt>Mix</dt>
        <dd data-part="mix">
          {nameMix(result)} ({partsText(result)})
        </dd>
        {depths?.mod !== undefined && (
          <>
            <dt>MOD at ppO2 {station.maxPpO2}</dt>
            <dd data-part="mod">{depthText(depths.mod, units)}, rounded down</dd>
          </>
        )}
        {chosen.used.map(({ gas, volumeL }) => (
          <FactPair key={gas} what={`${USED_WORDS[gas]} used`} fact={volumeText(volumeL, units)} />
        ))}
        {chosen.lostL > 0 && <FactPair what="Let out" fact={volumeText(chosen.lostL, units)} />}
        {chosen.minutes !== undefined && (
          <FactPair what="Compressor runs" fact={`${Math.ceil(chosen.minutes)} min`} />
        )}
        {chosen.cost && <FactPair what="Cost" fact={moneyText(chosen.cost.total)} />}
      </dl>
      {chosen.cost && station.prices && <p className={styles.small}>{pricesFrom(station.prices)}</p>}
      {chosen.costProblem !== undefined && <p className={styles.small}>{chosen.costProblem}</p>}
      {depths &&
        depthWarnings(depths, units).map((line) => (
          <p key={line} className={styles.text}>
            <strong>{line}</strong>
          </p>
        ))}
      {CAUTIONS.slice(1).map((line) => (
        <p key={line} className={styles.small}>
          {line}
        </p>
      ))}
    </section>
  );
}

const USED_WORDS = { helium: "Helium", oxygen: "Oxygen", top: "Top gas" } as const;

function FactPair({ what, fact }: { readonly what: string; readonly fact: string }) {
  return (
    <>
      <dt>{what}</dt>
      <dd>{fact}</dd>
    </>
  );
}
