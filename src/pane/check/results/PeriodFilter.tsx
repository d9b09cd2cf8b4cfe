import { Field, Input, makeStyles, Select } from "@fluentui/react-components";
import { useState } from "react";
import { monthInWords } from "./dayInWords";
import type { Choice, Findings } from "./useFindings";

interface PeriodFilterProps {
  readonly findings: Findings;
  /** The months that hold findings: `2026-10`. */
  readonly months: readonly Choice[];
  readonly className: string;
}

const useStyles = makeStyles({
  days: { display: "grid", gridTemplateColumns: "1fr 1fr", gap: "6px", marginTop: "6px" },
  day: { minWidth: 0, "& input": { minWidth: 0, width: "100%" } },
});

/** A month of the log, or any days from one to another. */
export function PeriodFilter({ findings, months, className }: PeriodFilterProps) {
  const styles = useStyles();
  const { filter, change } = findings;
  const [ownDays, setOwnDays] = useState(false);
  const month = filter.from.slice(0, 7);
  const isMonth = filter.from === `${month}-01` && filter.to === `${month}-31`;
  const none = filter.from + filter.to === "";
  const showsDays = ownDays || (!none && !isMonth);
  return (
    <div className={className}>
      <Field label="Period" size="small">
        <Select
          size="small"
          value={showsDays ? "days" : month}
          onChange={(_, { value }) => {
            setOwnDays(value === "days");
            // ISO dates are compared as text: no day of a month comes after its 31st.
            if (value === "") change({ from: "", to: "" });
            else if (value !== "days") change({ from: `${value}-01`, to: `${value}-31` });
            else if (isMonth) change({ from: "", to: "" });
          }}
        >
          <option value="">All dates</option>
          {months.map(({ value, count }) => (
            <option key={value} value={value}>
              {monthInWords(value)} ({count})
            </option>
          ))}
          <option value="days">From one day to another</option>
        </Select>
      </Field>
      {showsDays && (
        <div className={styles.days}>
          <Field label="From" size="small" className={styles.day}>
            <Input
              size="small"
              type="date"
              value={filter.from}
              onChange={(_, { value }) => {
                change({ from: value });
              }}
            />
          </Field>
          <Field label="To" size="small" className={styles.day}>
            <Input
              size="small"
              type="date"
              value={filter.to}
              onChange={(_, { value }) => {
                change({ to: value });
              }}
            />
          </Field>
        </div>
      )}
    </div>
  );
}
