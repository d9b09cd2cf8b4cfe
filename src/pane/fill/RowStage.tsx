import { Button, Field, makeStyles, Spinner, Textarea, tokens } from "@fluentui/react-components";
import { useMemo } from "react";
import { inject } from "../../blending/inject";
import { nameMix } from "../../gas/nameMix";
import { UNIT_NAMES } from "../../gas/units";
import { useFilling } from "./FillContext";
import { FormField, FormSelect } from "./FormField";
import { shownIn, type FieldName } from "./form";
import { rowModel, type BankedRow, type RowModel, type StreamedRow } from "./rowList";
import { useFillStyles } from "./styles";
import { partsText, percentText, pressureText, reading } from "./words";

const useStyles = makeStyles({
  table: { borderCollapse: "collapse", width: "100%", "& th": { textAlign: "left", fontWeight: tokens.fontWeightSemibold }, "& td, & th": { padding: "4px 6px 4px 0" }, "& td:first-child, & th:first-child": { whiteSpace: "nowrap" }, "& td:not(:first-child), & th:not(:first-child)": { textAlign: "right" } },
}); // prettier-ignore

/** A row of cylinders: from a bank, or by continuous blending on what is in each. */
export function RowStage() {
  const styles = useFillStyles();
  const { form, register, model: one } = useFilling();
  const { limits } = one;
  const isContinuous = shownIn(form, "rowWay") === "continuous";
  const model = useMemo(() => rowModel(form, limits, register.receipts), [form, limits, register.receipts]);
  const serials = (form.written.row?.text ?? "")
    .split(/\r?\n/)
    .map((line) => line.split(/[\t;,]/)[0]!.trim())
    .filter((serial) => serial !== "");
  return (
    <div className={styles.stage}>
      <h2 className={styles.title}>A row of cylinders</h2>
      <ListField
        name="row"
        label="Cylinders, one a line: serial, size, pressure, mix"
        placeholder={"GP1001, AL80, 500, air"}
        problem={model.problems.row}
      />
      <Button
        className={styles.button}
        onClick={() => {
          if (serials.length > 0) register.ask(serials, form.entered);
        }}
      >
        Check them all
      </Button>
      {register.busy && <Spinner size="tiny" label="Looking through the workbook" />}
      <RowVerdicts serials={serials} />
      <FormSelect
        name="rowWay"
        label="Filled"
        choices={[
          ["bank", "from a bank"],
          ["continuous", "by continuous blending"],
        ]}
      />
      {isContinuous ? (
        <>
          <div className={styles.pair}>
            <FormField name="rowMix" label="Mix wanted" placeholder="EAN32" problem={model.problems.rowMix} />
            <FormField name="rowTarget" label="Fill to, settled" problem={model.problems.rowTarget} />
          </div>
          <div className={styles.pair}>
            <FormField
              name="rowStream"
              label="One stream for all"
              placeholder="the best"
              problem={model.problems.rowStream}
            />
            <FormField name="continuousMost" label="Compressor's limit" unit="%" placeholder="40" />
          </div>
          <FormField name="oxygenSupply" label="Oxygen supply" unit="%" placeholder="100" />
        </>
      ) : (
        <>
          <ListField
            name="rowBank"
            label="The bank, one a line: name, size, pressure"
            placeholder={"A, 50, 3500"}
            problem={model.problems.rowBank}
          />
          <div className={styles.pair}>
            <FormField
              name="rowGas"
              label="Gas in the bank"
              placeholder="air"
              problem={model.problems.rowGas}
            />
            <FormField name="rowTarget" label="Fill to, settled" problem={model.problems.rowTarget} />
          </div>
        </>
      )}
      <RowCautions model={model} />
      {model.banked && <BankAnswer banked={model.banked} />}
      {model.streamed && <StreamAnswer streamed={model.streamed} />}
    </div>
  );
}

interface ListFieldProps {
  readonly name: FieldName;
  readonly label: string;
  readonly placeholder: string;
  readonly problem: string | undefined;
}

function ListField({ name, label, placeholder, problem }: ListFieldProps) {
  const { form, write } = useFilling();
  return (
    <Field label={label} validationMessage={problem}>
      <Textarea
        rows={4}
        value={form.written[name]?.text ?? ""}
        placeholder={placeholder}
        onChange={(_, { value }) => {
          write(name, value);
        }}
      />
    </Field>
  );
}

const WORDS = { fill: "Fill", "do not fill": "Do not fill", "not known": "Not known" } as const;

function RowVerdicts({ serials }: { readonly serials: readonly string[] }) {
  const own = useStyles();
  const { register } = useFilling();
  const shown = register.receipts.filter(({ asked }) => serials.includes(asked));
  if (shown.length === 0) return null;
  return (
    <table className={own.table} data-part="row-verdicts">
      <thead>
        <tr>
          <th>Cylinder</th>
          <th>Records say</th>
        </tr>
      </thead>
      <tbody>
        {shown.map((receipt) => (
          <tr key={receipt.asked}>
            <td>{receipt.serial}</td>
            <td>
              <strong>{WORDS[receipt.verdict]}</strong>
              {receipt.verdict === "do not fill"
                ? ` ${receipt.reasons.map(({ says }) => says).join(" ")}`
                : ""}
              {receipt.verdict === "not known" ? `: ${receipt.unknowns.join("; ")}` : ""}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What stands against cylinders of the row comes before any figure. */
function RowCautions({ model }: { readonly model: RowModel }) {
  const styles = useFillStyles();
  return (
    <>
      {model.leftOut.length > 0 && (
        <div data-part="row-refused">
          <p className={styles.text}>
            <strong>Left out, not to be filled so:</strong>
          </p>
          <ul className={styles.list}>
            {model.leftOut.map(({ name, why }) => (
              <li key={name}>
                {name}: {why.join(" ")}
              </li>
            ))}
          </ul>
        </div>
      )}
      {model.notKnown.length > 0 && (
        <p className={styles.text} data-part="row-not-known">
          <strong>Not known to be in order:</strong> {model.notKnown.join(", ")}. Check them before they are
          filled.
        </p>
      )}
    </>
  );
}

function BankAnswer({ banked }: { readonly banked: BankedRow }) {
  const styles = useFillStyles();
  const own = useStyles();
  const { units } = useFilling();
  const { filled, order, more } = banked;
  const unit = UNIT_NAMES[units].pressure;
  const short = filled.cylinders.filter(({ full }) => !full);
  return (
    <section className={styles.card} aria-label="How to fill the row" data-part="row-answer">
      <table className={own.table}>
        <thead>
          <tr>
            <th>Open</th>
            <th>From</th>
            <th>To, {unit}</th>
            <th>Bottle then</th>
          </tr>
        </thead>
        <tbody>
          {filled.openings.map(({ cylinder, bottle, fromBar, toBar, bottleToBar }) => (
            <tr key={`${cylinder} ${bottle} ${fromBar}`}>
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
      <p className={styles.text}>Then {more} more like the last come out full.</p>
      <p className={styles.small}>
        {nameMix(order.gas)}; readings settled. Close each bottle before the next is opened. A plan, not a
        measurement: analyse.
      </p>
    </section>
  );
}

/** The stream each needs on its own residue, and what one stream makes of all of them. */
function StreamAnswer({ streamed }: { readonly streamed: StreamedRow }) {
  const styles = useFillStyles();
  const own = useStyles();
  const { units } = useFilling();
  const { order, row, isAsked } = streamed;
  const { common, fills } = row;
  const right = fills.filter(({ isRight }) => isRight);
  const refused = fills.filter(({ refused: why }) => why !== undefined);
  return (
    <section className={styles.card} aria-label="How to fill the row" data-part="row-answer">
      <table className={own.table}>
        <thead>
          <tr>
            <th>Cylinder</th>
            <th>From</th>
            <th>Own stream, O2</th>
            {common && <th>By {percentText(common.oxygen)}</th>}
          </tr>
        </thead>
        <tbody>
          {fills.map(({ cylinder, stream, byCommon, isRight }) => (
            <tr key={cylinder.name}>
              <td>{cylinder.name}</td>
              <td>{reading(cylinder.pressureBar, units)}</td>
              <td>{stream ? <strong>{percentText(stream.oxygen)}</strong> : "none"}</td>
              {common && (
                <td>
                  {byCommon ? `${partsText(byCommon)}, ${isRight ? "right" : "out of tolerance"}` : "cannot"}
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
      <p className={styles.small}>
        {nameMix(order.wanted)} at {pressureText(order.targetBar, units)} settled; the stream at most{" "}
        {percentText(order.maxOxygen)}. Analyse the stream all the time, and each cylinder. A plan, not a
        measurement.
      </p>
    </section>
  );
}
