import { makeStyles, Select, tokens } from "@fluentui/react-components";
import { TextButton } from "../../kit/TextButton";
import type { Field, LogColumn } from "../../../log/log";
import { columnLetters } from "../../../sheet/sheet";
import type { Shop } from "../../shop/useShop";
import { saidOf, sayOfColumn, type ColumnSaying } from "../choices";
import { confidenceWord, CYLINDER_WORDS, FILL_WORDS, isField } from "../../../words/fields";
import type { SheetReading } from "../report";

interface ColumnEntryProps {
  readonly sheet: SheetReading;
  readonly column: LogColumn;
  readonly shop: Shop;
}

const NOT_READ = "";
const UNITS: Readonly<Partial<Record<Field, readonly NonNullable<LogColumn["unit"]>[]>>> = {
  startPressure: ["psi", "bar"],
  endPressure: ["psi", "bar"],
  settledPressure: ["psi", "bar"],
  oxygenAdded: ["psi", "bar"],
  heliumAdded: ["psi", "bar"],
  servicePressure: ["psi", "bar"],
  gasTemperatureK: ["°F", "°C"],
  modOnLabelM: ["ft", "m"],
};

const useStyles = makeStyles({
  entry: { padding: "6px 0", borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  heading: { display: "flex", gap: "6px", alignItems: "baseline" },
  letters: { color: tokens.colorNeutralForeground3, minWidth: "20px" },
  name: { fontWeight: tokens.fontWeightSemibold, flexGrow: 1 },
  sure: { color: tokens.colorNeutralForeground3, whiteSpace: "nowrap" },
  selects: { display: "flex", gap: "6px", margin: "2px 0" },
  field: { flexGrow: 1, minWidth: 0 },
  unit: { flexShrink: 0 },
  examples: { color: tokens.colorNeutralForeground3 },
});

/** One column: its heading, what it was taken for and how surely, examples, and the way to correct it. */
export function ColumnEntry({ sheet, column, shop }: ColumnEntryProps) {
  const styles = useStyles();
  const said = saidOf(shop.settings, sheet, column);
  const units = column.field && UNITS[column.field];
  const name = column.heading === "" ? "No heading" : column.heading;
  const say = (saying: ColumnSaying) => {
    shop.change((settings) => sayOfColumn(settings, sheet, column, saying));
  };
  return (
    <li className={styles.entry}>
      <div className={styles.heading}>
        <span className={styles.letters}>{columnLetters(column.column)}</span>
        <span className={styles.name}>{name}</span>
        <span className={styles.sure}>{howSure(column, said !== undefined)}</span>
      </div>
      <div className={styles.selects}>
        <Select
          size="small"
          className={styles.field}
          aria-label={`What “${name}” in ${sheet.name} is`}
          value={column.field ?? NOT_READ}
          onChange={(_, { value }) => {
            say({ field: isField(value) ? value : null });
          }}
        >
          <option value={NOT_READ}>Not read</option>
          <optgroup label="Fill">{options(FILL_WORDS)}</optgroup>
          <optgroup label="Cylinder">{options(CYLINDER_WORDS)}</optgroup>
        </Select>
        {units && (
          <Select
            size="small"
            className={styles.unit}
            aria-label={`Unit of “${name}” in ${sheet.name}`}
            value={column.unit ?? ""}
            onChange={(_, { value }) => {
              say({ answers: { unit: value === "" ? undefined : value } });
            }}
          >
            <option value="">Unit?</option>
            {units.map((unit) => (
              <option key={unit}>{unit}</option>
            ))}
          </Select>
        )}
      </div>
      {column.examples.length > 0 && <div className={styles.examples}>{column.examples.join(" · ")}</div>}
      {remarksOn(column).map((remark) => (
        <div key={remark} className={styles.examples}>
          {remark}
        </div>
      ))}
      {said && (
        <div className={styles.examples}>
          {Object.entries(said.answers).map(([about, answer]) => `You said: ${about} ${answer}. `)}
          <TextButton
            onClick={() => {
              say({
                field: undefined,
                answers: Object.fromEntries(Object.keys(said.answers).map((about) => [about, undefined])),
              });
            }}
          >
            Take back what I set for {name}
          </TextButton>
        </div>
      )}
    </li>
  );
}

/** What else there is to know of a column, in words. */
function remarksOn({ rows, further, adds, assumed }: LogColumn): readonly string[] {
  return [
    ...(rows
      ? [`Rows ${rows.first + 1} to ${rows.last + 1} only: the sheet holds more than one table.`]
      : []),
    ...(further ? ["A further test beside the one before it."] : []),
    ...(adds === "increment" ? ["Taken as how much was added."] : []),
    ...(adds === "stop" ? ["Taken as the gauge reading it stopped at."] : []),
    ...(assumed === undefined ? [] : [assumed]),
  ];
}

function options(words: Readonly<Record<string, string>>) {
  return Object.entries(words).map(([field, word]) => (
    <option key={field} value={field}>
      {word}
    </option>
  ));
}

/** How the meaning of a column stands, in words. */
export function howSure(column: LogColumn, saidByShop: boolean): string {
  if (saidByShop) return "set by you";
  return column.field === undefined ? "not read" : confidenceWord(column.confidence);
}
