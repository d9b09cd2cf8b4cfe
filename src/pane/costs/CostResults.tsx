import { makeStyles, tokens } from "@fluentui/react-components";
import { useState } from "react";
import type { CostSum, Grouping } from "../../costs/sums";
import type { Units } from "../../gas/units";
import { count, counted } from "../check/report";
import { placeName, type Jump } from "../check/useJump";
import { Disclosure } from "../kit/Disclosure";
import { TextButton } from "../kit/TextButton";
import type { CostAnswer } from "../../session/questions/costs";
import { gas, money, useTableStyles } from "./figures";
import { GasBookTable } from "./GasBookTable";
import { GroupTable } from "./GroupTable";
import type { Costs } from "./useCosts";
import { WhatIfForm } from "./WhatIfForm";

interface CostResultsProps {
  readonly costs: Costs;
  readonly answer: CostAnswer;
  readonly units: Units;
  readonly jump: Jump;
}

const useStyles = makeStyles({
  results: { display: "flex", flexDirection: "column", gap: "8px" },
  tiles: { display: "flex", flexWrap: "wrap", gap: "6px", margin: 0 },
  tile: {
    // As many side by side as fit whole.
    flex: "1 0 auto",
    display: "flex",
    flexDirection: "column-reverse",
    alignItems: "flex-end",
    padding: "6px 8px",
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    borderRadius: tokens.borderRadiusMedium,
    "& dt": { fontSize: tokens.fontSizeBase200 },
    "& dd": {
      margin: 0,
      fontSize: tokens.fontSizeBase400,
      lineHeight: tokens.lineHeightBase400,
      fontWeight: tokens.fontWeightSemibold,
      overflowWrap: "normal",
    },
  },
  line: { margin: 0, fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
  list: {
    margin: 0,
    padding: "0 0 4px 18px",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
  },
});

/** The sums first, then by what one wants to look, then what if, the gas book, and how it came about. */
export function CostResults({ costs, answer, units, jump }: CostResultsProps) {
  const styles = useStyles();
  const small = useTableStyles().small;
  const [grouping, setGrouping] = useState<Grouping>("mix");
  const { sum, leftOut, priceDoubts, otherPriceSheets } = answer;
  return (
    <section className={styles.results} aria-label="Costs">
      <dl className={styles.tiles}>
        <Tile name="Cost" amount={sum.cost} />
        <Tile name="Charged" amount={sum.charged} />
        <Tile name="Margin" amount={sum.margin} />
      </dl>
      <p className={styles.line}>{gasInWords(sum, units)}</p>
      {(sum.unbilled > 0 || sum.chargeNotKnown > 0) && <p className={styles.line}>{unbilledInWords(sum)}</p>}
      {leftOut.length > 0 && (
        <p className={styles.line}>
          In no cost here, as the price list says nothing of it: {leftOut.join(", ")}.
        </p>
      )}
      <GroupTable answer={answer} grouping={grouping} onGrouping={setGrouping} />
      {priceDoubts.length + otherPriceSheets.length > 0 && (
        <Disclosure
          heading="h2"
          title={`Price list: ${counted(priceDoubts.length + otherPriceSheets.length, "thing")} not used`}
          hint="What, and why"
        >
          <ul className={styles.list}>
            {priceDoubts.map(({ cell, sentence }, at) => (
              <li key={at}>
                <TextButton
                  onClick={() => {
                    jump.to(cell, `price ${at}`);
                  }}
                >
                  {placeName(cell)}
                </TextButton>{" "}
                {sentence}
                {jump.note?.from === `price ${at}` && <div className={small}>{jump.note.sentence}</div>}
              </li>
            ))}
            {otherPriceSheets.map((name) => (
              <li key={name}>
                “{name}” looks like a price list too. “{answer.priceSheet}” comes first and is used.
              </li>
            ))}
          </ul>
        </Disclosure>
      )}
      <Disclosure heading="h2" title="What if" hint="Another price, or nitrox made another way">
        <WhatIfForm costs={costs} answer={answer} />
      </Disclosure>
      <Disclosure heading="h2" title="Gas book" hint="Oxygen and helium used, against deliveries">
        <GasBookTable costs={costs} answer={answer} units={units} jump={jump} />
      </Disclosure>
      <Disclosure heading="h2" title="How it was worked out">
        <ul className={styles.list}>
          {answer.notes.map((note) => (
            <li key={note}>{note}</li>
          ))}
        </ul>
      </Disclosure>
    </section>
  );
}

function Tile({ name, amount }: { name: string; amount: number }) {
  return (
    <div className={useStyles().tile}>
      <dt>{name}</dt>
      <dd>{money(amount)}</dd>
    </div>
  );
}

function gasInWords({ oxygenL, heliumL, airL, readyMadeL, compressorHours }: CostSum, units: Units): string {
  const parts = [
    oxygenL > 0 ? `oxygen ${gas(oxygenL, units)}` : "",
    heliumL > 0 ? `helium ${gas(heliumL, units)}` : "",
    airL > 0 ? `air ${gas(airL, units)}` : "",
    readyMadeL > 0 ? `bank or membrane gas ${gas(readyMadeL, units)}` : "",
    compressorHours > 0 ? `compressor ${compressorHours.toFixed(1)} h` : "",
  ].filter((part) => part !== "");
  return parts.length === 0 ? "No gas is costed." : `Went in: ${parts.join(", ")}.`;
}

function unbilledInWords({ unbilled, unbilledCost, chargeNotKnown }: CostSum): string {
  const free =
    unbilled > 0 ? `Unbilled: ${counted(unbilled, "fill")}, which cost ${money(unbilledCost)}. ` : "";
  const unknown =
    chargeNotKnown > 0
      ? `Charge not known: ${count(chargeNotKnown)}; these are in no charge and no margin.`
      : "";
  return free + unknown;
}
