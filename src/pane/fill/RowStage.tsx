import { Button, Field, Spinner, Textarea } from "@fluentui/react-components";
import { useMemo } from "react";
import { ProblemNote } from "../kit/ProblemNote";
import { useFilling } from "./FillContext";
import { FormField, FormSelect } from "./FormField";
import { shownIn, type FieldName } from "../../counter/form";
import { BankAnswer, StreamAnswer } from "./RowAnswers";
import { serialsIn } from "../../counter/plan/rowLines";
import { rowModel, type RowModel } from "../../counter/plan/rowList";
import { useFillStyles } from "./styles";
import { TakeRows } from "./TakeRows";
import { verdictText } from "../../counter/words";

/** A row of cylinders: from a bank, or by continuous blending on what is in each. */
export function RowStage() {
  const styles = useFillStyles();
  const { form, register, model: one } = useFilling();
  const { limits } = one;
  const isContinuous = shownIn(form, "rowWay") === "continuous";
  const model = useMemo(() => rowModel(form, limits, register.receipts), [form, limits, register.receipts]);
  const serials = serialsIn(shownIn(form, "row"));
  return (
    <div className={styles.stage}>
      <h2 className={styles.title}>A row of cylinders</h2>
      <ListField
        name="row"
        label="Cylinders, one a line: serial, size, pressure, mix"
        placeholder={"GP1001, AL80, 500, air"}
        problem={model.problems.row}
      />
      <TakeRows />
      <Button
        className={styles.button}
        onClick={() => {
          if (serials.length > 0) register.ask(serials, form.entered);
        }}
      >
        Check them all
      </Button>
      {register.busy && <Spinner size="tiny" label="Looking through the workbook" />}
      {register.problem && <ProblemNote problem={register.problem} />}
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

const LEAST_LINES_SHOWN = 3;
const MOST_LINES_SHOWN = 12;

interface ListFieldProps {
  readonly name: FieldName;
  readonly label: string;
  readonly placeholder: string;
  readonly problem: string | undefined;
}

function ListField({ name, label, placeholder, problem }: ListFieldProps) {
  const { form, write } = useFilling();
  const list = shownIn(form, name);
  return (
    <Field label={label} validationMessage={problem}>
      <Textarea
        rows={Math.min(MOST_LINES_SHOWN, Math.max(LEAST_LINES_SHOWN, list.split("\n").length))}
        value={list}
        placeholder={placeholder}
        onChange={(_, { value }) => {
          write(name, value);
        }}
      />
    </Field>
  );
}

function RowVerdicts({ serials }: { readonly serials: readonly string[] }) {
  const styles = useFillStyles();
  const { register } = useFilling();
  const shown = register.receipts.filter(({ asked }) => serials.includes(asked));
  if (shown.length === 0) return null;
  return (
    <table className={styles.table} data-part="row-verdicts">
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
              <strong>{verdictText(receipt)}</strong>
              {receipt.verdict === "not known" ? `: ${receipt.unknowns.join("; ")}.` : ""}
              {[...receipt.reasons, ...receipt.wrongInside].map(({ says }) => ` ${says}`).join("")}
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
      {model.repeated.map((line) => (
        <p key={line} className={styles.text} data-part="row-repeated">
          <strong>{line}</strong>
        </p>
      ))}
      {model.otherSize.map((line) => (
        <p key={line} className={styles.text} data-part="row-size">
          <strong>{line}</strong>
        </p>
      ))}
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
