import { mergeClasses } from "@fluentui/react-components";
import { Fragment } from "react";
import { inject } from "../../blending/inject";
import type { Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { UNIT_NAMES } from "../../gas/units";
import { useFilling } from "./FillContext";
import type { BankedRow, StreamedRow } from "../../counter/plan/rowList";
import { useFillStyles } from "./styles";
import { partsText, percentText, pressureText, reading } from "../../counter/words";

/** Which bottle is opened on which cylinder, from where to where, and what the bank has afterwards. */
export function BankAnswer({ banked }: { readonly banked: BankedRow }) {
  const styles = useFillStyles();
  const { units, model } = useFilling();
  const { filled, order, more } = banked;
  const unit = UNIT_NAMES[units].pressure;
  const short = filled.cylinders.filter(({ full }) => !full);
  return (
    <section className={styles.card} aria-label="How to fill the row" data-part="row-answer">
      <table className={mergeClasses(styles.table, styles.figures)}>
        <thead>
          <tr>
            <th>Open</th>
            <th>From</th>
            <th>To, {unit}</th>
            <th>Bottle then</th>
          </tr>
        </thead>
        <tbody>
          {filled.openings.map(({ cylinder, bottle, fromBar, toBar, bottleToBar }, index) => (
            <tr key={index}>
              <td>
                {bottle} on {cylinder}
              </td>
              <td>{reading(fromBar, units)}</td>
              <td>
                <strong>{reading(toBar, units)}</strong>
              </td>
              <td>{reading(bottleToBar, units)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <h3 className={styles.heading}>Comes out with</h3>
      <dl className={styles.facts} data-part="row-mixes">
        {filled.cylinders.map(({ name, mix }) => (
          <Fragment key={name}>
            <dt>{name}</dt>
            <dd>
              {partsText(mix)}
              <Against mix={mix} bank={order.gas} tolerancePoints={model.limits.tolerancePoints} />
            </dd>
          </Fragment>
        ))}
      </dl>
      {short.map(({ name, pressureBar }) => (
        <p key={name} className={styles.text}>
          <strong>
            {name} comes out at {pressureText(pressureBar, units)}, not full:
          </strong>{" "}
          top it from the compressor.
        </p>
      ))}
      <p className={styles.text}>
        Bank afterwards:{" "}
        {filled.bank.map(({ name, pressureBar }) => `${name} ${pressureText(pressureBar, units)}`).join(", ")}
        .
      </p>
      <p className={styles.text}>Then {more === 0 ? "no" : more} more like the last come out full.</p>
      <p className={styles.small}>
        The bank holds {nameMix(order.gas)}; readings settled. Close each bottle before the next is opened. A
        plan, not a measurement: analyse.
      </p>
    </section>
  );
}

/** As shown, a tenth of a per cent. */
const SAME_POINTS = 0.05;

interface AgainstProps {
  readonly mix: Mixture;
  readonly bank: Mixture;
  readonly tolerancePoints: number;
}

/** What was left in the cylinder makes another mix of the bank's: how far off it is, in words. */
function Against({ mix, bank, tolerancePoints }: AgainstProps) {
  const apart = 100 * Math.max(Math.abs(mix.oxygen - bank.oxygen), Math.abs(mix.helium - bank.helium));
  if (apart < SAME_POINTS) return null;
  return apart > tolerancePoints ? (
    <strong>, not the bank’s {nameMix(bank)}</strong>
  ) : (
    <>, within tolerance of {nameMix(bank)}</>
  );
}

/** The stream each needs on its own residue, and what one stream makes of all of them. */
export function StreamAnswer({ streamed }: { readonly streamed: StreamedRow }) {
  const styles = useFillStyles();
  const { units } = useFilling();
  const unit = UNIT_NAMES[units].pressure;
  const { order, row, isAsked } = streamed;
  const { common, fills, heldBack } = row;
  const right = fills.filter(({ isRight }) => isRight);
  const refused = fills.filter(({ refused: why }) => why !== undefined);
  return (
    <section className={styles.card} aria-label="How to fill the row" data-part="row-answer">
      <table className={mergeClasses(styles.table, styles.figures)}>
        <thead>
          <tr>
            <th>Cylinder</th>
            <th>From, {unit}</th>
            <th>Own stream, O2</th>
            {common && <th>By {percentText(common.oxygen)}</th>}
          </tr>
        </thead>
        <tbody>
          {fills.map(({ cylinder, stream, byCommon, isTooRich, isRight }) => (
            <tr key={cylinder.name}>
              <td>{cylinder.name}</td>
              <td>{reading(cylinder.pressureBar, units)}</td>
              <td>{stream ? <strong>{percentText(stream.oxygen)}</strong> : "none"}</td>
              {common && (
                <td>
                  {byCommon ? (
                    <>
                      <span className={styles.whole}>{partsText(byCommon)},</span>{" "}
                      <span className={styles.whole}>
                        {isTooRich ? "above its rating" : isRight ? "right" : "out of tolerance"}
                      </span>
                    </>
                  ) : (
                    "cannot"
                  )}
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
      {refused.map(({ cylinder, refused: why }) => (
        <p key={cylinder.name} className={styles.text}>
          <strong>{cylinder.name} not by a stream of its own:</strong> {why}
        </p>
      ))}
      {common ? (
        <p className={styles.text} data-part="row-common">
          With one stream of {percentText(common.oxygen)} {isAsked ? "" : "(the best found) "}
          {right.length} of {fills.length} come out right, within {percentText(order.tolerance)}:{" "}
          {right.map(({ cylinder }) => cylinder.name).join(", ") || "none"}. Of what the compressor draws in,{" "}
          {percentText(inject(common, 1, order.oxygenSupply))} is the oxygen supply.
        </p>
      ) : (
        <p className={styles.text} data-part="row-common">
          <strong>No stream makes any of them.</strong>
        </p>
      )}
      {heldBack && (
        <p className={styles.text} data-part="row-held-back">
          A richer stream would make more of them right. It is kept to {percentText(heldBack.mostOxygen)} for{" "}
          {heldBack.by.join(", ")}, not known to be oxygen clean.
        </p>
      )}
      <p className={styles.small}>
        {nameMix(order.wanted)} at {pressureText(order.targetBar, units)} settled; the stream at most{" "}
        {percentText(order.maxOxygen)}. Analyse the stream all the time, and each cylinder. A plan, not a
        measurement.
      </p>
    </section>
  );
}
