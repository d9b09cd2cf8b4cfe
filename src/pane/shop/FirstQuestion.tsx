import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { useState, type FormEvent } from "react";
import type { ShopSettings } from "../../workbook/settings";
import { RulesAndUnits } from "./RulesAndUnits";
import type { Shop } from "./useShop";

interface FirstQuestionProps {
  readonly shop: Shop;
  readonly onOpenSample: (() => void) | undefined;
}

const useStyles = makeStyles({
  form: { padding: "4px 12px 16px", display: "flex", flexDirection: "column", gap: "14px" },
  title: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: tokens.fontWeightSemibold },
  text: { margin: 0 },
  small: { margin: 0, fontSize: tokens.fontSizeBase200, color: tokens.colorNeutralForeground3 },
  error: { margin: 0, fontWeight: tokens.fontWeightSemibold },
});

/** The first run: what Brimbook does, and the one question nobody can skip. */
export function FirstQuestion({ shop, onOpenSample }: FirstQuestionProps) {
  const styles = useStyles();
  const [country, setCountry] = useState(shop.settings.country);
  const [units, setUnits] = useState<ShopSettings["units"]>(shop.settings.units);
  const [missing, setMissing] = useState<string>();
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (country === undefined || units === undefined) {
      setMissing(
        country === undefined
          ? "Choose the country whose rules you fill under: due dates and limits differ, so none is assumed."
          : "Choose the units on your gauges: a bare number could be psi or bar.",
      );
      return;
    }
    shop.change((settings) => ({ ...settings, country, units }));
  };
  return (
    <form className={styles.form} onSubmit={submit} noValidate>
      <h2 className={styles.title}>Check your fill log</h2>
      <p className={styles.text}>
        Brimbook reads the log you keep and lists every fill past hydro, past visual or beyond the
        cylinder&apos;s oxygen rating, with its cell. Two things first:
      </p>
      <RulesAndUnits country={country} units={units} onCountry={setCountry} onUnits={setUnits} />
      {missing !== undefined && (
        <p role="alert" className={styles.error}>
          {missing}
        </p>
      )}
      <Button type="submit" appearance="primary">
        Start
      </Button>
      {onOpenSample && <Button onClick={onOpenSample}>Try it on a sample log</Button>}
      <p className={styles.small}>
        {shop.kept
          ? "The answer is kept in this workbook; change it under Rules & shop."
          : "This window cannot keep the answer: you will be asked again next time."}{" "}
        Nothing leaves your workbook.
      </p>
    </form>
  );
}
