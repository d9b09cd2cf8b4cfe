import { Button, Field, makeStyles, Spinner, Textarea, tokens } from "@fluentui/react-components";
import { useMemo } from "react";
import { nameMix } from "../../gas/nameMix";
import { UNIT_NAMES } from "../../gas/units";
import { useFilling } from "./FillContext";
import { FormField } from "./FormField";
import type { FieldName } from "./form";
import { rowModel, type RowModel } from "./rowList";
import { useFillStyles } from "./styles";
import { pressureText, reading } from "./words";

const useStyles = makeStyles({
  table: { borderCollapse: "collapse", width: "100%", "& th": { textAlign: "left", fontWeight: tokens.fontWeightSemibold }, "& td, & th": { padding: "4px 6px 4px 0" }, "& td:first-child, & th:first-child": { whiteSpace: "nowrap" }, "& td:not(:first-child), & th:not(:first-child)": { textAlign: "right" } },
}); // prettier-ignore

/** A row of cylinders from a bank: in which order, from which bottle, and what is left. */
export function RowStage() {
  const styles = useFillStyles();
  const { form, register, units } = useFilling();
  const model = useMemo(() => rowModel(form, register.receipts), [form, register.receipts]);
  const serials = (form.written.row?.text ?? "")
    .split(/\r?\n/)
    .map((line) => line.split(/[\t;,]/)[0]!.trim())
    .filter((serial) => serial !== "");
  const unit = UNIT_NAMES[units].pressure;
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
      <ListField
        name="rowBank"
        label="The bank, one a line: name, size, pressure"
        placeholder={"A, 50, 3500"}
        problem={model.problems.rowBank}
      />
      <div className={styles.pair}>
        <FormField name="rowGas" label="Gas in the bank" placeholder="air" />
        <FormField name="rowTarget" label="Fill to, settled" />
      </div>
      {model.filled && <RowAnswer model={model} unit={unit} />}
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

function RowAnswer({ model, unit }: { readonly model: RowModel; readonly unit: string }) {
  const styles = useFillStyles();
  const own = useStyles();
  const { units } = useFilling();
  const { filled, order, more } = model;
  if (!filled || !order) return null;
  const short = filled.cylinders.filter(({ full }) => !full);
  return (
    <section className={styles.card} aria-label="How to fill the row" data-part="row-answer">
      {model.refused.length > 0 && (
        <p className={styles.text} data-part="row-refused">
          <strong>Left out, not to be filled:</strong> {model.refused.join(", ")}.
        </p>
      )}
      {model.notKnown.length > 0 && (
        <p className={styles.text} data-part="row-not-known">
          <strong>Not known to be in order:</strong> {model.notKnown.join(", ")}. Check them before they are
          filled.
        </p>
      )}
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
      {more !== undefined && <p className={styles.text}>Then {more} more like the last come out full.</p>}
      <p className={styles.small}>
        {nameMix(order.gas)}; readings settled. Close each bottle before the next is opened. A plan, not a
        measurement: analyse.
      </p>
    </section>
  );
}
