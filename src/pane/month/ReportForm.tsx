import { Checkbox, Field, Input, makeStyles, Select } from "@fluentui/react-components";
import { counted } from "../check/report";
import type { MonthChoice } from "../../session/questions/month";
import type { Month } from "./useMonth";

interface ReportFormProps {
  readonly month: Month;
  readonly months: readonly MonthChoice[];
}

const useStyles = makeStyles({ form: { display: "flex", flexDirection: "column", gap: "8px" } });

/** Which month, and how the report is to be. */
export function ReportForm({ month: { form, fill, busy }, months }: ReportFormProps) {
  const styles = useStyles();
  const disabled = busy !== undefined;
  return (
    <div className={styles.form}>
      <Field label="Month">
        <Select
          value={form.month}
          disabled={disabled}
          onChange={(_, { value }) => {
            fill({ month: value });
          }}
        >
          {months.map(({ month, text, fills }) => (
            <option key={month} value={month}>
              {text}, {counted(fills, "fill")}
            </option>
          ))}
        </Select>
      </Field>
      <Field label="Name of the shop" hint="On the cover and at the foot of each page.">
        <Input
          value={form.shopName}
          disabled={disabled}
          onChange={(_, { value }) => {
            fill({ shopName: value });
          }}
        />
      </Field>
      <Field
        label="Prepared by"
        hint="Leave it blank to sign on paper. A name seals the figures with a checksum."
      >
        <Input
          value={form.preparedBy}
          disabled={disabled}
          onChange={(_, { value }) => {
            fill({ preparedBy: value });
          }}
        />
      </Field>
      <Field label="Paper">
        <Select
          value={form.paper}
          disabled={disabled}
          onChange={(_, { value }) => {
            fill({ paper: value === "Letter" ? "Letter" : "A4" });
          }}
        >
          <option value="A4">A4</option>
          <option value="Letter">Letter</option>
        </Select>
      </Field>
      <Checkbox
        label="Name owners and receivers"
        checked={form.names}
        disabled={disabled}
        onChange={(_, { checked }) => {
          fill({ names: checked === true });
        }}
      />
    </div>
  );
}
