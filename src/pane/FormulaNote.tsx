import { makeStyles, tokens } from "@fluentui/react-components";
import { useEffect, useState } from "react";
import { callInCell, callInWords } from "../functions/hosts/callInCell";
import type { Argument } from "../typed/cells";
import { cellName, type CellAddress } from "../sheet/sheet";
import type { FormulaHost } from "../workbook/workbook";

interface Note {
  readonly address: CellAddress;
  readonly formula: string;
  readonly sentence: string;
}

const useStyles = makeStyles({
  note: {
    flexShrink: 0,
    boxSizing: "border-box",
    maxHeight: "35%",
    overflowY: "auto",
    padding: "6px 12px",
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground2,
    color: tokens.colorNeutralForeground1,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    fontVariantNumeric: "tabular-nums",
    overflowWrap: "anywhere",
  },
  cell: { fontWeight: tokens.fontWeightSemibold, marginRight: "8px" },
  formula: { fontFamily: tokens.fontFamilyMonospace },
  sentence: { margin: "2px 0 0" },
});

/** How the answer in the selected cell came about, or why there is none, where one of our functions stands in it. */
export function FormulaNote({ host }: { readonly host: FormulaHost }) {
  const styles = useStyles();
  const note = useNote(host);
  if (!note) return null;
  return (
    <section className={styles.note} aria-label="Selected cell" aria-live="polite" tabIndex={0}>
      <span className={styles.cell}>{cellName(note.address)}</span>
      <span className={styles.formula}>={note.formula}</span>
      <p className={styles.sentence}>{note.sentence}</p>
    </section>
  );
}

/** Looks again whenever the user goes elsewhere or edits a cell; of two looks the later one counts. */
function useNote(host: FormulaHost): Note | undefined {
  const [note, setNote] = useState<Note>();
  useEffect(() => {
    let latest = 0;
    const look = () => {
      const turn = (latest += 1);
      noteOn(host).then(
        (found) => {
          if (turn === latest) setNote(found);
        },
        () => {
          /* The cell is being edited, or its sheet is gone: there is nothing to explain just now. */
          if (turn === latest) setNote(undefined);
        },
      );
    };
    const stop = host.watchCellInHand(look);
    look();
    return () => {
      latest = NaN;
      stop();
    };
  }, [host]);
  return note;
}

async function noteOn(host: FormulaHost): Promise<Note | undefined> {
  const { address, formula, down } = await host.readCellInHand();
  const call = formula === undefined ? undefined : callInCell(formula, down);
  if (formula === undefined || !call) return undefined;
  const given: Argument[] = [];
  for (const argument of call.given) {
    const isReference = typeof argument === "object" && argument !== null;
    given.push(isReference ? await host.readArea(argument.sheet ?? address.sheet, argument) : argument);
  }
  const sentence = callInWords(call, given);
  return sentence === undefined ? undefined : { address, formula, sentence };
}
