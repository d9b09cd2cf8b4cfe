import { Field, Select } from "@fluentui/react-components";
import { GROUPINGS, type Grouping } from "../../costs/sums";
import { count } from "../check/report";
import type { CostAnswer } from "../../session/questions/costs";
import { money, useTableStyles } from "./figures";

interface GroupTableProps {
  readonly answer: CostAnswer;
  readonly grouping: Grouping;
  readonly onGrouping: (grouping: Grouping) => void;
}

const NAMES: Readonly<Record<Grouping, string>> = {
  mix: "Mix",
  month: "Month",
  size: "Cylinder",
  customer: "Customer",
};
/** Enough to see where the money goes; the sheets have them all. */
const SHOWN = 12;

/** What fills of one kind cost and earned. */
export function GroupTable({ answer, grouping, onGrouping }: GroupTableProps) {
  const styles = useTableStyles();
  const groups = answer.groups[grouping];
  const { sum } = answer;
  return (
    <div>
      <Field label="By" orientation="horizontal">
        <Select
          value={grouping}
          onChange={(_, { value }) => {
            if (value in GROUPINGS) onGrouping(value as Grouping);
          }}
        >
          {(Object.keys(NAMES) as Grouping[]).map((name) => (
            <option key={name} value={name}>
              {NAMES[name].toLowerCase()}
            </option>
          ))}
        </Select>
      </Field>
      <div className={styles.scroll}>
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">{NAMES[grouping]}</th>
              <th scope="col">Fills</th>
              <th scope="col">Cost</th>
              <th scope="col">of one</th>
              <th scope="col">Margin</th>
            </tr>
          </thead>
          <tbody>
            {groups.slice(0, SHOWN).map(({ name, fills, cost, margin, settled }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{count(fills)}</td>
                <td>{money(cost)}</td>
                <td>{money(cost / fills)}</td>
                <td>{settled === 0 ? "not known" : money(margin)}</td>
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">All</th>
              <td>{count(sum.fills)}</td>
              <td>{money(sum.cost)}</td>
              <td>{sum.fills === 0 ? "" : money(sum.cost / sum.fills)}</td>
              <td>{sum.settled === 0 ? "not known" : money(sum.margin)}</td>
            </tr>
          </tfoot>
        </table>
      </div>
      {groups.length > SHOWN && (
        <p className={styles.small}>
          And {count(groups.length - SHOWN)} more, which cost less each: the written sheets have them all.
        </p>
      )}
    </div>
  );
}
