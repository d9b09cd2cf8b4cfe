import { Button, makeStyles, tokens } from "@fluentui/react-components";
import type { Costs } from "./useCosts";

const useStyles = makeStyles({
  box: {
    padding: "12px",
    borderRadius: tokens.borderRadiusMedium,
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground1,
  },
  title: { margin: "0 0 4px", fontSize: tokens.fontSizeBase300, fontWeight: tokens.fontWeightSemibold },
  text: { margin: "0 0 8px" },
});

/** What makes a price list, told to somebody whose workbook has none. */
export function PriceListNeeded({ costs }: { costs: Costs }) {
  const styles = useStyles();
  return (
    <section className={styles.box}>
      <h2 className={styles.title}>No price list found here</h2>
      <p className={styles.text}>
        A price list is a sheet with the headings What, We pay and Per, and rows such as Oxygen, Helium,
        Compressor delivers, Filter, Labour. With We charge beside them it says what fills earn.
      </p>
      <Button
        disabled={costs.busy !== undefined}
        onClick={() => {
          costs.writeEmpty("price list");
        }}
      >
        Write an empty price list
      </Button>
    </section>
  );
}
