import { Button } from "@fluentui/react-components";
import { Temporal } from "temporal-polyfill";
import { labelText } from "../../depth/labelText";
import { Refusal } from "../../gas/refusal";
import { useFilling } from "./FillContext";
import { FormField, FormSelect } from "./FormField";
import { shownIn, writtenIn } from "../../counter/form";
import { InsertSheet } from "./InsertSheet";
import { LABEL_STOCK, labelSheet, type LabelStock } from "../../counter/print/labels";
import { labelsSheet } from "../../counter/print/labelsSheet";
import { printPage } from "./printPage";
import { useFillStyles } from "./styles";

/** The label, from the analysis alone, on the stock the shop has: printed, or as a sheet. */
export function LabelPart() {
  const styles = useFillStyles();
  const { form, model, receipt, units } = useFilling();
  const { analysis, station } = model;
  if (!analysis) return null;
  const stock =
    LABEL_STOCK.find(({ id }) => id === shownIn(form, "labelStock")) ??
    LABEL_STOCK.find(({ paper }) => paper === model.paper)!;
  const from = beginAt(shownIn(form, "labelFrom"), stock);
  let text: string;
  try {
    text = labelText({
      pressureBar: analysis.pressureBar,
      analysedMix: analysis.mix,
      analysedBy: writtenIn(form, "initials").text,
      fillDate: Temporal.Now.plainDateISO(),
      serial: receipt?.serial ?? writtenIn(form, "asked").text,
      units,
      maxPpO2: station.maxPpO2,
    });
  } catch (thrown) {
    if (!(thrown instanceof Refusal)) throw thrown;
    return <p className={styles.text}>{thrown.message}</p>;
  }
  return (
    <section className={styles.card} aria-label="The label" data-part="label">
      <h3 className={styles.heading}>Label</h3>
      <p className={styles.text}>{text}</p>
      <FormSelect
        name="labelStock"
        label="Label sheet"
        choices={LABEL_STOCK.map(({ id, name }) => [id, name] as const)}
      />
      <FormField name="labelFrom" label="Begin at label" placeholder="1" problem={from.problem} />
      <div className={styles.row}>
        <Button
          className={styles.half}
          onClick={() => {
            printPage(labelSheet([text], stock, from.at));
          }}
        >
          Print the label
        </Button>
        <InsertSheet words="Insert the label as a sheet" draft={() => labelsSheet([text], stock, from.at)} />
      </div>
      <p className={styles.small}>Print on plain paper first, and lay it over the labels.</p>
    </section>
  );
}

/** Where a sheet begun goes on, from 0. */
function beginAt(
  written: string,
  { across, down }: LabelStock,
): { readonly at: number; readonly problem?: string } {
  if (written.trim() === "") return { at: 0 };
  const label = Number(written);
  if (Number.isInteger(label) && label >= 1 && label <= across * down) return { at: label - 1 };
  return { at: 0, problem: `Write 1 to ${across * down}; until then it begins at 1.` };
}
