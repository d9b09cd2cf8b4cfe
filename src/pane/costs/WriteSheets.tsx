import { Button, Checkbox } from "@fluentui/react-components";
import { useState } from "react";
import { useTableStyles } from "./figures";
import type { Costs } from "./useCosts";

/** Writes what was worked out as new sheets, with customers only where asked. */
export function WriteSheets({ costs }: { costs: Costs }) {
  const styles = useTableStyles();
  const [customers, setCustomers] = useState(false);
  return (
    <div>
      <Button
        disabled={costs.busy !== undefined}
        onClick={() => {
          costs.write(customers);
        }}
      >
        Write the cost sheets
      </Button>
      <Checkbox
        label="with customers"
        checked={customers}
        onChange={(_, { checked }) => {
          setCustomers(checked === true);
        }}
      />
      <p className={styles.small}>New sheets with formulas and their sources. Your log is not touched.</p>
    </div>
  );
}
