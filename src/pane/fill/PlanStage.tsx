import { Button } from "@fluentui/react-components";
import { useRef } from "react";
import { nameMix } from "../../gas/nameMix";
import { Disclosure } from "../kit/Disclosure";
import { Exactness } from "./Exactness";
import { useFilling } from "./FillContext";
import { FormField, focusField } from "./FormField";
import { PlanAnswer } from "./PlanAnswer";
import { StationFields } from "./StationFields";
import { useFillStyles } from "./styles";
import { WaysList } from "./WaysList";
import { figure } from "../../words/figures";
import { gaugeReading, UNIT_NAMES } from "../../gas/units";
import { partsText, reading } from "../../counter/words";

/** What is wanted, what there is, and the answer, live. */
export function PlanStage({ onNext }: { readonly onNext: () => void }) {
  const styles = useFillStyles();
  const { receipt, model, form, write, units } = useFilling();
  const inside = receipt?.inside?.mix;
  const service = receipt?.limit?.limitBar;
  const stage = useRef<HTMLDivElement>(null);
  return (
    <div ref={stage} className={styles.stage}>
      <h2 className={styles.title}>Plan</h2>
      <h3 className={styles.heading}>In the cylinder</h3>
      <div className={styles.pair}>
        <FormField name="startPressure" label="Pressure" placeholder="or empty" />
        <FormField name="startMix" label="Mix, analysed" placeholder="EAN32, air" />
      </div>
      {inside && form.written.startMix === undefined && (
        <Button
          className={styles.button}
          onClick={() => {
            write("startMix", mixCell(inside));
            focusField(stage.current, "startMix");
          }}
        >
          Take {nameMix(inside)} from the log ({partsText(inside)})
        </Button>
      )}
      <h3 className={styles.heading}>Wanted</h3>
      <div className={styles.pair}>
        <FormField name="endPressure" label="Pressure, settled" />
        <FormField name="endMix" label="Mix" placeholder="EAN32, TX 18/45" />
      </div>
      {service !== undefined && form.written.endPressure === undefined && (
        <Button
          className={styles.button}
          onClick={() => {
            write("endPressure", figure(gaugeReading(service, units), units === "us" ? 0 : 1));
            focusField(stage.current, "endPressure");
          }}
        >
          To its limit: {reading(service, units)} {UNIT_NAMES[units].pressure}
        </Button>
      )}
      <FormField
        name="size"
        label="Size, or litres of water volume"
        placeholder={receipt?.size?.name ?? "AL80, 12"}
        hint={model.volumeL === undefined ? "For gas used and cost." : undefined}
      />
      <Disclosure title="The station: gases, banks, prices" heading="h3" hint="Kept for the next cylinder">
        <StationFields />
      </Disclosure>
      {!model.chosen && model.ways.length === 0 && (
        <p className={styles.small}>
          Write what is in the cylinder and what is wanted: the steps appear here as you type.
        </p>
      )}
      {model.chosen && <PlanAnswer chosen={model.chosen} />}
      {model.ways.length > 0 && <WaysList />}
      {model.chosen && <Exactness />}
      {model.chosen && (
        <Button className={styles.button} appearance="primary" onClick={onNext}>
          Next: fill
        </Button>
      )}
    </div>
  );
}

/** A mix as a field holds it: `31.6`, or `TX 18.1/44.6`. */
function mixCell(mix: { readonly oxygen: number; readonly helium: number }): string {
  const oxygen = figure(mix.oxygen * 100, 1);
  return mix.helium > 0.0005 ? `TX ${oxygen}/${figure(mix.helium * 100, 1)}` : `${oxygen}`;
}
