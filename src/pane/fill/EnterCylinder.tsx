import { Button, Field, Input } from "@fluentui/react-components";
import { useState, type FormEvent } from "react";
import { UNIT_NAMES } from "../../gas/units";
import { useFilling } from "./FillContext";
import type { EnteredCylinder } from "../../counter/form";
import { TOUCH, useFillStyles } from "./styles";

const ASKED: readonly (readonly [keyof EnteredCylinder, string, string])[] = [
  ["owner", "Owner", ""],
  ["size", "Size, or litres of water volume", "AL80, 12"],
  ["servicePressure", "Service pressure", "as stamped"],
  ["hydro", "Hydro", "as stamped: 03/24"],
  ["visual", "Visual", "as on the sticker"],
  ["cleaned", "Oxygen cleaned", "where it is"],
  ["rating", "Oxygen rating", "AIR, 40, O2 clean"],
];

interface EnterCylinderProps {
  readonly serial: string;
  readonly onEntered: (cylinder: EnteredCylinder) => void;
}

/** A cylinder that the register does not hold: written once, from its shoulder, and judged like any other. */
export function EnterCylinder({ serial, onEntered }: EnterCylinderProps) {
  const styles = useFillStyles();
  const { form, shop } = useFilling();
  const known = form.entered.find((cylinder) => cylinder.serial === serial);
  const [written, setWritten] = useState<EnteredCylinder>(known ?? { ...NOTHING, serial });
  const units = shop.settings.units ?? "metric";
  const submit = (event: FormEvent) => {
    event.preventDefault();
    onEntered({ ...written, serial });
  };
  return (
    <form className={styles.card} onSubmit={submit} aria-label="Write the cylinder down">
      <h3 className={styles.heading}>Not in the register: write {serial} down here</h3>
      {ASKED.map(([field, label, placeholder]) => (
        <Field
          key={field}
          label={field === "servicePressure" ? `${label}, ${UNIT_NAMES[units].pressure}` : label}
        >
          <Input
            style={{ minHeight: TOUCH }}
            value={written[field]}
            placeholder={placeholder}
            onChange={(_, { value }) => {
              setWritten((before) => ({ ...before, [field]: value }));
            }}
          />
        </Field>
      ))}
      <Button type="submit" className={styles.half}>
        Judge it by this
      </Button>
      <p className={styles.small}>
        Kept in this workbook for next time, not written into your register: add it there too.
      </p>
    </form>
  );
}

const NOTHING: EnteredCylinder = {
  serial: "",
  owner: "",
  size: "",
  servicePressure: "",
  hydro: "",
  visual: "",
  cleaned: "",
  rating: "",
};
