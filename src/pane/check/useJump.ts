import { useCallback, useRef, useState } from "react";
import { cellName, type CellAddress, type CellValue } from "../../sheet/sheet";
import type { Workbook } from "../../workbook/workbook";
import { useAnnounce } from "../kit/announce";
import { problemOf } from "../../session/problem";

/** What to tell after a jump, and beside which item. */
export interface JumpNote {
  readonly from: string;
  readonly sentence: string;
}

export interface Jump {
  /**
   * Shows a cell. `from` names the item it was asked from; `held` is what the cell held when it was judged,
   * where that is known.
   */
  to(address: CellAddress, from: string, held?: CellValue): void;
  readonly note: JumpNote | undefined;
}

/** `October!B7`, as a spreadsheet names a cell of a sheet. */
export function placeName(address: CellAddress): string {
  return `${address.sheet}!${cellName(address)}`;
}

/** The way from an item of the pane to its cell; it says so where the cell is gone or holds something else now. */
export function useJump(workbook: Workbook): Jump {
  const announce = useAnnounce();
  const [note, setNote] = useState<JumpNote>();
  const last = useRef(0);
  const to = useCallback(
    (address: CellAddress, from: string, held?: CellValue) => {
      const mine = ++last.current;
      setNote(undefined);
      showCell(workbook, address, held).then(
        (sentence) => {
          if (mine !== last.current) return;
          if (sentence !== undefined) setNote({ from, sentence });
          announce(sentence ?? `${placeName(address)} is selected.`);
        },
        (thrown: unknown) => {
          if (mine !== last.current) return;
          const { sentence } = problemOf(thrown);
          setNote({ from, sentence });
          announce(sentence);
        },
      );
    },
    [workbook, announce],
  );
  return { to, note };
}

/** Selects the cell; answers with a sentence where it is not, or no longer, what was meant. */
async function showCell(
  workbook: Workbook,
  address: CellAddress,
  held: CellValue | undefined,
): Promise<string | undefined> {
  if (!workbook.capabilities.select)
    return `Cells cannot be shown here. Look at ${placeName(address)} in your file.`;
  const sheets = await workbook.listSheets();
  if (!sheets.some(({ name }) => name === address.sheet))
    return `The sheet ${address.sheet} is no longer in this workbook. Check the log again.`;
  await workbook.selectCell(address);
  if (held === undefined || !workbook.readCell) return undefined;
  const holds = await workbook.readCell(address);
  return sameValue(holds ?? null, held)
    ? undefined
    : `${placeName(address)} has changed since the check. Check the log again.`;
}

function sameValue(a: CellValue, b: CellValue): boolean {
  const plain = (value: CellValue) => (typeof value === "object" && value !== null ? value.error : value);
  const blank = (value: CellValue) => (plain(value) === "" ? null : plain(value));
  return blank(a) === blank(b);
}
