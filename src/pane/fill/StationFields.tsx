import { FormField, FormSelect } from "./FormField";
import { useFillStyles } from "./styles";

/** What the station fills with; kept from one cylinder to the next. */
export function StationFields() {
  const styles = useFillStyles();
  return (
    <div className={styles.stage}>
      <div className={styles.pair}>
        <FormField name="topMix" label="Top gas" placeholder="air" />
        <FormField name="temperature" label="Settled at" placeholder="70 °F, 20 °C" />
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
      <div className={styles.pair}>
        <FormField name="priceOxygen" label="Oxygen price" />
        <FormField name="priceHelium" label="Helium price" />
      </div>
      <div className={styles.pair}>
        <FormField name="priceTop" label="Top gas price" />
        <FormField name="pricePerFill" label="Per fill" />
      </div>
      <div className={styles.pair}>
        <FormField name="maxPpO2" label="Highest ppO2" placeholder="1.4" />
        <FormField name="gaugeError" label="Gauge good to ±" placeholder="1 % of end" />
      </div>
    </div>
  );
}
