import { Button, makeStyles, tokens } from "@fluentui/react-components";
import { useRef, useState, type FormEvent } from "react";
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
  small: {
    margin: 0,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
});

/** The first run: what Brimbook does, and the one question nobody can skip. */
export function FirstQuestion({ shop, onOpenSample }: FirstQuestionProps) {
  const styles = useStyles();
  const [country, setCountry] = useState(shop.settings.country);
  const [units, setUnits] = useState(shop.settings.units);
  const [asked, setAsked] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    if (country !== undefined && units !== undefined) {
      shop.change((settings) => ({ ...settings, country, units }));
      return;
    }
    setAsked(true);
    form.current
      ?.querySelector<HTMLElement>(country === undefined ? "[name=country]" : "[name=units]")
      ?.focus();
  };
  const missing = asked
    ? {
        country:
          country === undefined ? "Choose one: due dates and limits differ, so none is assumed." : undefined,
        units: units === undefined ? "Choose one: a bare number could be psi or bar." : undefined,
      }
    : {};
  return (
    <form ref={form} className={styles.form} onSubmit={submit} noValidate>
      <h2 className={styles.title}>Check your fill log</h2>
      <p className={styles.text}>
        Brimbook reads the log you keep and lists every fill past hydro, past visual or beyond the
        cylinder&apos;s oxygen rating, and leads you to each. Two things first:
      </p>
      <RulesAndUnits
        country={country}
        units={units}
        missing={missing}
        onCountry={setCountry}
        onUnits={setUnits}
      />
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
