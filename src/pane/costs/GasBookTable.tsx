import { Button } from "@fluentui/react-components";
import type { GasAccount } from "../../costs/gasBook/gasBook";
import { UNIT_NAMES, volume, type Units } from "../../gas/units";
import { GAS_BOOK_NOTES } from "../../reports/costs/gasBookSheet";
import { count } from "../check/report";
import { placeName, type Jump } from "../check/useJump";
import { TextButton } from "../kit/TextButton";
import type { CostAnswer } from "../../session/questions/costs";
import { useTableStyles } from "./figures";
import type { Costs } from "./useCosts";

interface GasBookTableProps {
  readonly costs: Costs;
  readonly answer: CostAnswer;
  readonly units: Units;
  readonly jump: Jump;
}

const ROWS: readonly (readonly [string, (account: GasAccount) => number | undefined, string])[] = [
  ["Counted first", ({ openingL }) => openingL, ""],
  ["Delivered", ({ deliveredL }) => deliveredL, ""],
  ["Sent back", ({ sentBackL }) => sentBackL, ""],
  ["Used by fills", ({ usedL }) => usedL, ""],
  ["Should be there", ({ shouldBeL }) => shouldBeL, ""],
  ["Counted last", ({ closingL }) => closingL, "not counted"],
  ["Missing", ({ missingL }) => missingL, "not known"],
];

/** Oxygen and helium: what came, what fills took, what is missing. */
export function GasBookTable({ costs, answer, units, jump }: GasBookTableProps) {
  const styles = useTableStyles();
  const { book, stockSheet } = answer;
  if (!book || stockSheet === undefined)
    return (
      <>
        <p className={styles.small}>
          For this, a sheet says what was delivered, sent back and counted, under the headings Date, What, In
          or out, How many, Unit.
        </p>
        <Button
          size="small"
          disabled={costs.busy !== undefined}
          onClick={() => {
            costs.writeEmpty("stock sheet");
          }}
        >
          Write an empty sheet for it
        </Button>
      </>
    );
  const shown = (litres: number | undefined, without: string): string =>
    litres === undefined ? without : count(Math.round(volume(litres, units))).replace("-", "−");
  return (
    <>
      {book.accounts.length > 0 && (
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">{UNIT_NAMES[units].volume}</th>
              {book.accounts.map(({ gas, from, to }) => (
                <th scope="col" key={gas}>
                  {gas}
                  <br />
                  {from}
                  <br />
                  to {to}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {ROWS.map(([name, of, without]) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                {book.accounts.map((account) => (
                  <td key={account.gas}>{shown(of(account), without)}</td>
                ))}
              </tr>
            ))}
            <tr>
              <th scope="row">Fills left out</th>
              {book.accounts.map(({ gas, fillsLeftOut }) => (
                <td key={gas}>{count(fillsLeftOut)}</td>
              ))}
            </tr>
          </tbody>
        </table>
      )}
      {book.accounts.length === 0 && (
        <p className={styles.small}>“{stockSheet}” books neither oxygen nor helium yet.</p>
      )}
      {book.doubts.map(({ cell, sentence }, at) => (
        <p key={at} className={styles.small}>
          <TextButton
            onClick={() => {
              jump.to(cell, `stock ${at}`);
            }}
          >
            {placeName(cell)}
          </TextButton>{" "}
          {sentence}
        </p>
      ))}
      {GAS_BOOK_NOTES.map((note) => (
        <p key={note} className={styles.small}>
          {note}
        </p>
      ))}
    </>
  );
}
