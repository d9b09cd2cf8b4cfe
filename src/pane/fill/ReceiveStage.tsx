import { Button, makeStyles, mergeClasses, Spinner, tokens } from "@fluentui/react-components";
import { Fragment, useState } from "react";
import type { Receipt } from "../../counter/receive/receipt";
import { Disclosure } from "../kit/Disclosure";
import { ProblemNote } from "../kit/ProblemNote";
import { SeverityMark } from "../kit/SeverityMark";
import { EnterCylinder } from "./EnterCylinder";
import { useFilling } from "./FillContext";
import { onCounter } from "../../counter/form";
import { FormField, Tick } from "./FormField";
import { OUTSIDE, OUTSIDE_TITLE } from "../../counter/receive/outside";
import { printPage } from "./printPage";
import { refusalSlip } from "../../counter/print/refusalSlip";
import { useFillStyles } from "./styles";
import { receiptSaid } from "../../counter/receive/receiptSaid";

const useStyles = makeStyles({
  verdict: {
    display: "flex",
    alignItems: "center",
    gap: "8px",
    margin: 0,
    fontSize: tokens.fontSizeBase600,
    lineHeight: tokens.lineHeightBase600,
    fontWeight: tokens.fontWeightSemibold,
  },
});

/** The cylinder on the counter: may it be filled, with what, how far, and what is probably in it. */
export function ReceiveStage({ onNext }: { readonly onNext: () => void }) {
  const styles = useFillStyles();
  const { form, change, receipt, register } = useFilling();
  const [entering, setEntering] = useState(false);
  const lookUp = (serial = form.written.asked?.text.trim() ?? "") => {
    if (serial === "") return;
    change((before) => onCounter(before, serial));
    register.ask([serial], form.entered);
  };
  return (
    <div className={styles.stage}>
      <h2 className={styles.title}>Receive</h2>
      <FormField
        name="asked"
        label="Serial or shop number"
        onEnter={() => {
          lookUp();
        }}
      />
      <Button
        className={styles.button}
        appearance={receipt ? "secondary" : "primary"}
        onClick={() => {
          lookUp();
        }}
      >
        Look it up
      </Button>
      {register.busy && <Spinner size="tiny" label="Looking through the workbook" />}
      {register.problem && (
        <ProblemNote
          problem={register.problem}
          onTryAgain={() => {
            lookUp();
          }}
        />
      )}
      {receipt && <ReceiptCard receipt={receipt} />}
      {receipt?.suggestion !== undefined && receipt.found === "nothing" && (
        <Button
          className={styles.button}
          onClick={() => {
            lookUp(receipt.suggestion);
          }}
        >
          Did you mean {receipt.suggestion}?
        </Button>
      )}
      {receipt && (receipt.found === "nothing" || entering) && (
        <EnterCylinder
          serial={receipt.asked}
          onEntered={(cylinder) => {
            setEntering(false);
            change((before) => ({ ...before, entered: withEntered(before.entered, cylinder) }));
            register.ask([cylinder.serial], withEntered(form.entered, cylinder));
          }}
        />
      )}
      {receipt && receipt.verdict !== "do not fill" && (
        <>
          <OutsideCheck />
          <Button
            className={styles.button}
            appearance={receipt.verdict === "fill" ? "primary" : "secondary"}
            onClick={onNext}
          >
            Next: plan the fill
          </Button>
        </>
      )}
      {!receipt && !register.busy && (
        <p className={styles.small}>
          The register and the log of this workbook are asked. Without a serial you can go on to plan, but
          nothing is then known of tests, rating and pressure limit.
        </p>
      )}
    </div>
  );
}

function withEntered<T extends { readonly serial: string }>(all: readonly T[], one: T): T[] {
  return [...all.filter(({ serial }) => serial !== one.serial), one];
}

function ReceiptCard({ receipt }: { readonly receipt: Receipt }) {
  const styles = useFillStyles();
  const own = useStyles();
  const { units, model } = useFilling();
  const { verdict } = receipt;
  const said = receiptSaid(receipt, units);
  return (
    <section className={styles.card} aria-label="What the records say" aria-live="polite">
      <p className={own.verdict} data-part="verdict">
        {verdict !== "fill" && <SeverityMark mark={verdict === "not known" ? "not checked" : "stop"} />}
        {said.verdict}
      </p>
      <p className={styles.text}>{said.cylinder}</p>
      {receipt.note !== undefined && <p className={styles.small}>{receipt.note}</p>}
      {said.against.map(({ says, todo, source }) => (
        <p key={says} className={styles.text}>
          <strong>{says}</strong> {todo} <span className={styles.small}>{source}</span>
        </p>
      ))}
      {said.lines.map((line) => (
        <p key={line} className={styles.text}>
          {line}
        </p>
      ))}
      <dl className={styles.facts}>
        {said.facts.map(([what, fact]) => (
          <Fragment key={what}>
            <dt>{what}</dt>
            <dd>{fact}</dd>
          </Fragment>
        ))}
      </dl>
      {said.inside !== undefined && (
        <p className={styles.text} data-part="inside">
          {said.inside}
        </p>
      )}
      {verdict === "do not fill" && (
        <Button
          className={styles.half}
          onClick={() => {
            printPage(refusalSlip(receipt, model.paper));
          }}
        >
          Print a refusal slip
        </Button>
      )}
    </section>
  );
}

function OutsideCheck() {
  const styles = useFillStyles();
  return (
    <Disclosure title={OUTSIDE_TITLE} heading="h3" hint={`${OUTSIDE.length} things before the whip goes on`}>
      <div className={mergeClasses(styles.stage)}>
        <div>
          {OUTSIDE.map(([name, label]) => (
            <div key={name}>
              <Tick name={name} label={label} />
            </div>
          ))}
        </div>
      </div>
    </Disclosure>
  );
}
