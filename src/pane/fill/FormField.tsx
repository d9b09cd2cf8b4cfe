import { Checkbox, Field, Input, makeStyles, mergeClasses, Select, tokens } from "@fluentui/react-components";
import { UNIT_NAMES } from "../../gas/units";
import { isTicked, useFilling, withTick } from "./FillContext";
import { isQuantity, shownIn, type FieldName } from "../../counter/form";
import { TOUCH } from "./styles";

const useStyles = makeStyles({
  input: { minHeight: TOUCH, width: "100%", minWidth: 0, fontSize: tokens.fontSizeBase400 },
  number: { "& input": { textAlign: "right", fontVariantNumeric: "tabular-nums" } },
  select: { minWidth: 0, "& select": { minHeight: TOUCH, minWidth: 0, textOverflow: "ellipsis" } },
  unit: { whiteSpace: "nowrap" },
  tick: { minHeight: TOUCH, alignItems: "center" },
});

interface FormFieldProps {
  readonly name: FieldName;
  readonly label: string;
  readonly hint?: string | undefined;
  readonly placeholder?: string | undefined;
  /** Behind the text, where the field is no quantity of its own: `%`. */
  readonly unit?: string;
  /** What is wrong with it where the plan of one cylinder does not read it. */
  readonly problem?: string | undefined;
  readonly onEnter?: () => void;
}

/** One field of the form, as high as a wet finger; what cannot be used is said under it. */
export function FormField({ name, label, hint, placeholder, unit, problem, onEnter }: FormFieldProps) {
  const styles = useStyles();
  const { form, write, model, units } = useFilling();
  const behind = unit ?? unitOf(name, units);
  return (
    <Field label={label} hint={hint} validationMessage={problem ?? model.problems[name]}>
      <Input
        className={mergeClasses(styles.input, behind !== undefined && styles.number)}
        name={name}
        value={shownIn(form, name)}
        placeholder={placeholder}
        autoComplete="off"
        spellCheck={false}
        contentAfter={
          behind === undefined ? undefined : (
            <span aria-hidden="true" className={styles.unit}>
              {behind}
            </span>
          )
        }
        input={{ "aria-label": behind === undefined ? label : `${label}, ${behind}` }}
        onChange={(_, { value }) => {
          write(name, value);
        }}
        onKeyDown={(event) => {
          if (event.key === "Enter" && onEnter) {
            event.preventDefault();
            onEnter();
          }
        }}
      />
    </Field>
  );
}

/** Puts the cursor into a field of this part of the pane: for a button that goes once it has filled the field in. */
export function focusField(part: HTMLElement | null, name: FieldName): void {
  part?.querySelector<HTMLInputElement>(`input[name=${name}]`)?.focus();
}

function unitOf(name: FieldName, units: "us" | "metric"): string | undefined {
  const kind = isQuantity(name);
  if (kind === "text" || kind === "lines") return undefined;
  return kind === "price" ? `per ${UNIT_NAMES[units].volume}` : UNIT_NAMES[units][kind];
}

interface FormSelectProps {
  readonly name: FieldName;
  readonly label: string;
  readonly choices: readonly (readonly [value: string, words: string])[];
}

export function FormSelect({ name, label, choices }: FormSelectProps) {
  const styles = useStyles();
  const { form, write } = useFilling();
  return (
    <Field label={label}>
      <Select
        className={styles.select}
        value={shownIn(form, name)}
        onChange={(_, { value }) => {
          write(name, value);
        }}
      >
        {choices.map(([value, words]) => (
          <option key={value} value={value}>
            {words}
          </option>
        ))}
      </Select>
    </Field>
  );
}

/** A box to tick that is remembered by name. */
export function Tick({ name, label }: { readonly name: string; readonly label: string }) {
  const styles = useStyles();
  const { form, change } = useFilling();
  return (
    <Checkbox
      className={styles.tick}
      size="large"
      label={label}
      checked={isTicked(form, name)}
      onChange={(_, { checked }) => {
        change((before) => withTick(before, name, checked === true));
      }}
    />
  );
}
