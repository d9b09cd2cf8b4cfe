import { makeStyles, mergeClasses, tokens } from "@fluentui/react-components";
import { Fragment } from "react";
import { SeverityMark } from "../kit/SeverityMark";
import { useFilling } from "./FillContext";
import { planSaid } from "../../counter/plan/planSaid";
import { StepsTable } from "./StepsTable";
import { useFillStyles } from "./styles";
import type { RankedWay } from "../../counter/plan/ways";

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
  const said = planSaid(model, chosen, units);
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
        <dd data-part="mix">{said.mix}</dd>
        {said.mod && (
          <>
            <dt>{said.mod[0]}</dt>
            <dd data-part="mod">{said.mod[1]}</dd>
          </>
        )}
        {said.facts.map(([what, fact]) => (
          <Fragment key={what}>
            <dt>{what}</dt>
            <dd>{fact}</dd>
          </Fragment>
        ))}
      </dl>
      {said.notes.map((line) => (
        <p key={line} className={styles.small}>
          {line}
        </p>
      ))}
      {said.warnings.map((line) => (
        <p key={line} className={styles.text}>
          <strong>{line}</strong>
        </p>
      ))}
      {said.cautions.map((line) => (
        <p key={line} className={styles.small}>
          {line}
        </p>
      ))}
    </section>
  );
}
