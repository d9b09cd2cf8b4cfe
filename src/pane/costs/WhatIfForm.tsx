import { Button, Field, Input, makeStyles, Select } from "@fluentui/react-components";
import { useState, type FormEvent } from "react";
import {
  NITROX_METHODS,
  PRICED_THINGS,
  type NitroxMethod,
  type PricedThing,
  type Scenario,
} from "../../costs/whatIf";
import { count } from "../check/report";
import type { CostAnswer } from "../../session/questions/costs";
import { money, useTableStyles } from "./figures";
import type { Costs } from "./useCosts";

const useStyles = makeStyles({
  form: { display: "flex", flexDirection: "column", gap: "8px", padding: "2px 0 6px" },
});

const METHOD_WORDS: Readonly<Record<NitroxMethod, string>> = {
  "partial pressure": "by partial pressure",
  premix: "from a bank",
  continuous: "by continuous blending",
};
const AS_IT_IS = "";

/** Asks what fills would have cost at another price, or with nitrox made another way. */
export function WhatIfForm({ costs, answer }: { costs: Costs; answer: CostAnswer }) {
  const styles = useStyles();
  const [thing, setThing] = useState<PricedThing>("oxygen");
  const [percent, setPercent] = useState("");
  const [method, setMethod] = useState<NitroxMethod | "">(AS_IT_IS);
  const [wrong, setWrong] = useState<string>();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const more = percent.trim() === "" ? 0 : Number(percent.replace(",", ".").replace("−", "-"));
    if (!Number.isFinite(more) || more < -100 || more > 1000) {
      setWrong("Write a number from -100 to 1000, such as 20 or -15.");
      return;
    }
    setWrong(undefined);
    const scenario: Scenario = {
      ...(more !== 0 && { price: { of: thing, times: 1 + more / 100 } }),
      ...(method !== AS_IT_IS && { method }),
    };
    costs.look({ scenario });
  };
  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      <Field label="If this price changes">
        <Select
          value={thing}
          onChange={(_, { value }) => {
            setThing(value as PricedThing);
          }}
        >
          {PRICED_THINGS.map((each) => (
            <option key={each} value={each}>
              {each}
            </option>
          ))}
        </Select>
      </Field>
      <Field label="by, in per cent" validationMessage={wrong}>
        <Input
          value={percent}
          inputMode="decimal"
          placeholder="20, or -15"
          onChange={(_, { value }) => {
            setPercent(value);
          }}
        />
      </Field>
      <Field label="and all nitrox is made">
        <Select
          value={method}
          onChange={(_, { value }) => {
            setMethod(value as NitroxMethod | "");
          }}
        >
          <option value={AS_IT_IS}>as it was</option>
          {NITROX_METHODS.map((each) => (
            <option key={each} value={each}>
              {METHOD_WORDS[each]}
            </option>
          ))}
        </Select>
      </Field>
      <Button type="submit" disabled={costs.busy !== undefined}>
        Compare
      </Button>
      {answer.whatIf && costs.view.scenario && (
        <Comparison whatIf={answer.whatIf} scenario={costs.view.scenario} />
      )}
    </form>
  );
}

function Comparison({ whatIf, scenario }: { whatIf: NonNullable<CostAnswer["whatIf"]>; scenario: Scenario }) {
  const styles = useTableStyles();
  const { before, after, cannot } = whatIf;
  const rows = [
    ["Cost", before.cost, after.cost],
    ["of one", perFill(before.cost, before.fills), perFill(after.cost, after.fills)],
    ["Margin", before.margin, after.margin],
  ] as const;
  return (
    <div>
      <p className={styles.small}>{inWords(scenario)}</p>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">{count(after.fills)} fills</th>
            <th scope="col">as it is</th>
            <th scope="col">then</th>
            <th scope="col">more</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(([name, was, would]) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{money(was)}</td>
              <td>{money(would)}</td>
              <td>{money(would - was)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {cannot.map(({ why, count: fills }) => (
        <p key={why} className={styles.small}>
          In neither sum: {count(fills)}, {why}.
        </p>
      ))}
    </div>
  );
}

function perFill(amount: number, fills: number): number {
  return fills === 0 ? 0 : amount / fills;
}

function inWords({ price, method }: Scenario): string {
  const parts = [
    ...(price ? [`${price.of} at ${Math.round(price.times * 1000) / 10} % of its price`] : []),
    ...(method ? [`all nitrox ${METHOD_WORDS[method]}`] : []),
  ];
  return parts.length === 0 ? "Nothing is different." : `With ${parts.join(", and ")}:`;
}
