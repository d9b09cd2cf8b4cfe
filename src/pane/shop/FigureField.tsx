import { Field, Input, makeStyles, Select, tokens } from "@fluentui/react-components";
import { useState } from "react";
import type { HouseSetting } from "../../audit/shop/houseSetting";
import { inUnit, problemWith } from "../../audit/shop/limits";
import { BASIS_WORDS } from "../../words/bases";
import { TextButton } from "../kit/TextButton";

interface FigureFieldProps {
  readonly setting: HouseSetting;
  /** What the country or the trade says. */
  readonly usual: number | string;
  /** The shop's own, where it has set one. */
  readonly own: number | string | undefined;
  /** Undefined: as it came. */
  readonly onChange: (value: number | string | undefined) => void;
}

const useStyles = makeStyles({
  figure: {
    display: "grid",
    gridTemplateColumns: "minmax(72px, 110px) 1fr",
    columnGap: "8px",
    alignItems: "center",
  },
  changed: { borderLeft: `3px solid ${tokens.colorBrandStroke1}`, paddingLeft: "8px" },
  small: {
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
  own: { fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
});

/** One figure beside its source; one of the shop's own is marked, and can be taken back. */
export function FigureField({ setting, usual, own, onChange }: FigureFieldProps) {
  const styles = useStyles();
  const [typed, setTyped] = useState<string>();
  const { limits, name, unit, basis, source } = setting;
  const value = own ?? usual;
  const shown = typed ?? String(value);
  const entered = "choices" in limits ? shown : numberIn(shown);
  const problem = problemWith(setting, entered);
  const take = (next: string) => {
    const figure = "choices" in limits ? next : numberIn(next);
    if (problemWith(setting, figure) !== undefined) return;
    setTyped(undefined);
    if (figure !== value) onChange(figure === usual ? undefined : figure);
  };
  return (
    <div className={own === undefined ? undefined : styles.changed}>
      <Field
        label={name}
        size="small"
        validationMessage={problem}
        validationState={problem === undefined ? "none" : "error"}
      >
        {"choices" in limits ? (
          <Select
            size="small"
            value={shown}
            onChange={(_, { value: next }) => {
              take(next);
            }}
          >
            {limits.choices.map((choice) => (
              <option key={choice} value={choice}>
                {choice}
              </option>
            ))}
          </Select>
        ) : (
          <Input
            size="small"
            inputMode="decimal"
            value={shown}
            contentAfter={<span className={styles.small}>{unit}</span>}
            onChange={(_, { value: next }) => {
              setTyped(next);
            }}
            onBlur={() => {
              take(shown);
            }}
            onKeyDown={({ key }) => {
              if (key === "Enter") take(shown);
              if (key === "Escape") setTyped(undefined);
            }}
          />
        )}
      </Field>
      {own !== undefined && (
        <div className={styles.own}>
          This shop&apos;s own, instead of {inUnit(usual, setting)}.{" "}
          <TextButton
            aria-label={`Reset: ${name}`}
            onClick={() => {
              setTyped(undefined);
              onChange(undefined);
            }}
          >
            Reset
          </TextButton>
        </div>
      )}
      <div className={styles.small}>
        {BASIS_WORDS[basis]}: {source}
      </div>
    </div>
  );
}

/** `12`, `0,5`; NaN where it is no number. */
function numberIn(text: string): number {
  return text.trim() === "" ? NaN : Number(text.trim().replace(",", "."));
}
