import { figure } from "../../words/figures";
import { volume } from "../../gas/units";
import { useFilling } from "./FillContext";
import { FormField, FormSelect } from "./FormField";
import { listedPrice } from "../../counter/plan/prices";
import { useFillStyles } from "./styles";

/** What the station fills with; kept from one cylinder to the next. */
export function StationFields() {
  const styles = useFillStyles();
  const { register, units } = useFilling();
  return (
    <div className={styles.stage}>
      <div className={styles.pair}>
        <FormField name="topMix" label="Top gas" placeholder="air" />
        <FormField name="temperature" label="Settled at" placeholder={units === "us" ? "70" : "20"} />
      </div>
      <div className={styles.pair}>
        <FormField name="oxygenSupply" label="Oxygen supply" placeholder="100" unit="%" />
        <FormField name="oxygenBank" label="Oxygen bank" />
      </div>
      <div className={styles.pair}>
        <FormField name="heliumBank" label="Helium bank" />
        <FormSelect
          name="order"
          label="Order"
          choices={[
            ["", "Helium first"],
            ["oxygen first", "Oxygen first"],
          ]}
        />
      </div>
      <div className={styles.pair}>
        <FormField name="bankMix" label="Ready-mixed bank" placeholder="EAN32" />
        <FormField name="bankPressure" label="Its pressure" />
      </div>
      <div className={styles.pair}>
        <FormField name="continuousMost" label="Continuous, up to" placeholder="none" unit="%" />
        <FormField name="compressorFlow" label="Compressor, per min" />
      </div>
      <div className={styles.pairAtop}>
        <PriceField name="priceOxygen" label="Oxygen price" of="oxygen" />
        <PriceField name="priceHelium" label="Helium price" of="helium" />
      </div>
      <div className={styles.pairAtop}>
        <PriceField name="priceTop" label="Top gas price" of="top" />
        <FormField
          name="pricePerFill"
          label="Per fill"
          hint={register.prices?.list.labour && `Blank: labour by ${register.prices.sheet}`}
        />
      </div>
      <div className={styles.pair}>
        <FormField name="maxPpO2" label="Highest ppO2" placeholder="1.4" />
        <FormField name="gaugeError" label="Gauge good to ±" placeholder="1 % of end" />
      </div>
    </div>
  );
}

interface PriceFieldProps {
  readonly name: "priceOxygen" | "priceHelium" | "priceTop";
  readonly label: string;
  readonly of: "oxygen" | "helium" | "top";
}

/** A price to type; left blank it is that of the workbook's price list, which is shown with where it stands. */
function PriceField({ name, label, of }: PriceFieldProps) {
  const { register, units } = useFilling();
  const listed = register.prices && listedPrice(of, register.prices);
  const shown = listed && figure(listed.perL / volume(1, units), 4);
  return (
    <FormField
      name={name}
      label={label}
      placeholder={shown}
      hint={listed && `Blank: ${shown} by ${listed.from}`}
    />
  );
}
