import { Field, Radio, RadioGroup, Select } from "@fluentui/react-components";
import { COUNTRIES } from "../../cylinders/countryRules";
import type { ShopSettings } from "../../workbook/settings";

export type Units = NonNullable<ShopSettings["units"]>;

interface RulesAndUnitsProps {
  readonly country: string | undefined;
  readonly units: Units | undefined;
  /** What to say where an answer is missing. */
  readonly missing?: { readonly country?: string | undefined; readonly units?: string | undefined };
  readonly onCountry: (code: string | undefined) => void;
  readonly onUnits: (units: Units) => void;
}

/** The two things only the shop can say: whose rules, and which units. Nothing is chosen beforehand. */
export function RulesAndUnits({ country, units, missing, onCountry, onUnits }: RulesAndUnitsProps) {
  return (
    <>
      <Field label="Whose rules does this shop fill under?" validationMessage={missing?.country}>
        <Select
          name="country"
          value={country ?? ""}
          onChange={(_, { value }) => {
            onCountry(value === "" ? undefined : value);
          }}
        >
          <option value="">Choose a country</option>
          {COUNTRIES.map(({ code, name }) => (
            <option key={code} value={code}>
              {name}
            </option>
          ))}
        </Select>
      </Field>
      <Field label="Which units are on the gauges?" validationMessage={missing?.units}>
        <RadioGroup
          name="units"
          value={units ?? ""}
          onChange={(_, { value }) => {
            onUnits(value === "us" ? "us" : "metric");
          }}
        >
          <Radio value="us" label="US: psi, ft, °F, cu ft" />
          <Radio value="metric" label="Metric: bar, m, °C, L" />
        </RadioGroup>
      </Field>
    </>
  );
}
