import { ofNoUse, plain, shown, type Cell } from "../../log/cells/cell";
import { numbersIn } from "../../log/cells/numbers";
import { ambiguous, unreadable, value, type Reading } from "../../log/reading";
import { unitOf, type ListUnit } from "./unit";

/** Reads a volume in litres: a bare number in the unit given, or text with its own unit. */
export function readVolume(cell: Cell, usual: ListUnit): Reading<number> {
  if (typeof cell.value === "number") return volume(cell.value, usual, cell);
  if (typeof cell.value !== "string") return ofNoUse(cell, "a volume");
  const [, number = "", word = ""] = /^([\d.,' ]*\d)\s*(.*)$/.exec(plain(cell.value)) ?? [];
  const unit = word === "" ? usual : unitOf(word);
  const [first, second] = numbersIn(number);
  if (first === undefined || unit?.kind !== "volume")
    return ofNoUse(cell, "a volume such as 50 L or 282 cu ft");
  if (second !== undefined)
    return ambiguous([first, second], `“${shown(cell)}”: a dot may group thousands or start decimals.`);
  return volume(first, unit, cell);
}

function volume(number: number, unit: ListUnit, cell: Cell): Reading<number> {
  return number > 0
    ? value(number * unit.size)
    : unreadable(`“${shown(cell)}” is no volume: write a number above 0.`);
}

/** Reads a share, 0 to 1: `5 %`, a cell shown in per cent, or a number from 1 taken as per cent. */
export function readShare(cell: Cell): Reading<number> {
  if (typeof cell.value === "number") {
    if (cell.format?.includes("%") === true || cell.value === 0) return share(cell.value, cell);
    return cell.value >= 1
      ? share(cell.value / 100, cell)
      : ambiguous(
          [cell.value / 100, cell.value],
          `${cell.value}: ${cell.value} % or ${cell.value * 100} %? Write it with its sign.`,
        );
  }
  if (typeof cell.value !== "string") return ofNoUse(cell, "a share such as 5 %");
  const text = plain(cell.value);
  const [number] = numbersIn(text.replace(/\s*(?:%|percent|per cent)$/, ""));
  if (number === undefined) return ofNoUse(cell, "a share such as 5 %");
  return number >= 1 || /[%e]/.test(text) ? share(number / 100, cell) : share(Number.NaN, cell);
}

function share(of: number, cell: Cell): Reading<number> {
  return of >= 0 && of < 1 ? value(of) : unreadable(`“${shown(cell)}” is no share: write it such as 5 %.`);
}
