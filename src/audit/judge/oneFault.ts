import type { CellAddress } from "../../sheet/sheet";
import type { Finding } from "./finding";

/** One fault, however many rows have it: what screens and lists show as one. */
export interface OneFault extends Pick<Finding, "rule" | "severity" | "basis" | "source" | "todo"> {
  /** What is wrong: the sentence of the one finding, or what all of them have in common. */
  readonly message: string;
  /** In the order of the findings; each keeps what it is known again by. */
  readonly findings: readonly Finding[];
  /** Every cell that has the fault, each once. */
  readonly cells: readonly CellAddress[];
}

/** Findings put together to faults, in their order: the same is wrong in several rows, or with several fills of a cylinder. */
export function faultsOf(findings: readonly Finding[]): readonly OneFault[] {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const { rule, severity, source, todo, message, serial, fault } = finding;
    const what = fault === undefined ? [message] : [fault, serial];
    const key = JSON.stringify([rule, severity, source, todo, ...what]);
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [finding]);
    else group.push(finding);
  }
  return [...groups.values()].map((group) => {
    const { rule, severity, basis, source, todo, message, fault = message } = group[0]!;
    return {
      rule,
      severity,
      basis,
      source,
      todo,
      message: group.length === 1 ? message : fault,
      findings: group,
      cells: eachOnce(group.flatMap(({ cell, cells }) => cells ?? [cell])),
    };
  });
}

function eachOnce(cells: readonly CellAddress[]): readonly CellAddress[] {
  const byName = new Map(cells.map((cell) => [JSON.stringify([cell.sheet, cell.row, cell.column]), cell]));
  return byName.size === cells.length ? cells : [...byName.values()];
}
