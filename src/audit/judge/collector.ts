import { cellName, type CellAddress } from "../../sheet/sheet";
import { SEVERITIES, type AuditResult, type Finding, type NotChecked } from "./finding";
import type { LogColumns } from "./logColumns";
import type { Fault, FilledCylinder, NotJudged, Rule } from "./rule";
import { CellRuns } from "./cellRuns";
import { sourceFor } from "../shop/citation";
import { nameOf } from "../record/nameOf";
import { fieldName } from "../../words/fields";

/** How many cells are kept to look at, of fills that could not be judged. */
const CELLS_KEPT = 20;

interface Lack {
  readonly rule: Rule;
  readonly why: string;
  count: number;
  /** A twin set that lacks the same twice is one fill. */
  lastFill: unknown;
  readonly cells: CellAddress[];
  readonly runs: CellRuns;
}

interface Found {
  readonly rule: Rule;
  readonly day: number;
  readonly finding: Finding;
  /** Of a doubt of a whole column: the cells that have it. */
  readonly cells?: CellAddress[];
}

/** Gathers verdicts into what the audit answers. */
export class Collector {
  readonly #found: Found[] = [];
  readonly #toldOfRegister = new Set<string>();
  #fill: unknown;
  readonly #toldOfFill = new Set<string>();
  readonly #lacks = new Map<string, Lack>();
  readonly #ofColumns = new Map<string, CellAddress[]>();

  constructor(private readonly columns: LogColumns) {}

  /** Keeps a fault where it counts, unless it was told before; answers what it found, or undefined where the log has no such column. */
  fault(rule: Rule, fault: Fault, filled: FilledCylinder, isCounted: boolean): Finding | undefined {
    const { fill, day } = filled;
    if (fault.blank !== undefined && !this.columns.has(fault.blank, fill)) {
      if (isCounted) this.#count(rule, noColumnFor([fault.blank.field]), 1, fill, undefined);
      return undefined;
    }
    const cell = this.columns.cell(fault.at, fill);
    const ofRegister = cell.sheet !== fill.sheet || cell.row !== fill.row;
    const { severity, basis, message, todo } = fault;
    const source = sourceFor(filled.cylinder.country, fault);
    const date = fill.fields.date;
    const fillDate = !ofRegister && date.kind === "value" ? date.value.toString() : "";
    const finding: Finding = {
      rule: rule.id,
      severity,
      basis,
      source,
      cell,
      serial: nameOf(filled),
      fillDate,
      message,
      todo,
      evidence: evidenceOf(severity, message, this.columns.textAt(cell)),
      ...(fault.fault !== undefined && { fault: fault.fault }),
    };
    if (!isCounted) return finding;
    if (fault.ofColumn) {
      this.#foundInColumn({ rule, day: day ?? Infinity, finding });
      return finding;
    }
    const isNew = ofRegister ? this.#firstTold(rule, cell) : !this.#toldOfTwin(rule, fault, fill);
    if (isNew) this.#found.push({ rule, day: day ?? Infinity, finding });
    return finding;
  }

  notJudged(rule: Rule, lack: NotJudged, { fill }: FilledCylinder): void {
    const noColumn = lack.blank === true && !this.columns.has(lack.at, fill);
    const why = noColumn ? noColumnFor([lack.at.field]) : lack.why;
    this.#count(rule, why, 1, fill, noColumn ? undefined : this.columns.cell(lack.at, fill));
  }

  /** A rule that could judge no fill at all, and why. */
  unable(rule: Rule, why: string, fills: number): void {
    if (fills > 0) this.#count(rule, why, fills, undefined, undefined);
  }

  result(
    decisive: readonly Rule[],
    complete: boolean,
  ): Pick<AuditResult, "findings" | "notChecked" | "fullyJudged"> {
    const lacks = [...this.#lacks.values()].sort((one, other) => one.rule.rank - other.rule.rank);
    return {
      findings: this.#found
        .sort(byHarm)
        .map(({ finding, cells }) => (cells ? ofColumn(finding, cells) : finding)),
      notChecked: lacks.map(({ rule, count, why, cells, runs }): NotChecked => ({
        rule: rule.id,
        count,
        why,
        cells,
        runs: runs.all(),
      })),
      fullyJudged: complete && !lacks.some(({ rule }) => decisive.includes(rule)),
    };
  }

  #count(rule: Rule, why: string, fills: number, fill: unknown, cell: CellAddress | undefined): void {
    const key = `${rule.id} ${why}`;
    let lack = this.#lacks.get(key);
    if (lack === undefined) {
      lack = { rule, why, count: 0, lastFill: undefined, cells: [], runs: new CellRuns() };
      this.#lacks.set(key, lack);
    }
    if (fill !== undefined && lack.lastFill === fill) return;
    lack.lastFill = fill;
    lack.count += fills;
    if (cell === undefined) return;
    lack.runs.add(cell);
    if (lack.cells.length < CELLS_KEPT && !lack.cells.some((kept) => isSame(kept, cell)))
      lack.cells.push(cell);
  }

  /** Told at its first cell, however many rows of the column have it. */
  #foundInColumn(found: Found): void {
    const { rule, finding } = found;
    const { sheet, column } = finding.cell;
    const key = `${rule.id} ${column} ${sheet}`;
    const cells = this.#ofColumns.get(key);
    if (cells === undefined) {
      this.#ofColumns.set(key, [finding.cell]);
      this.#found.push({ ...found, cells: this.#ofColumns.get(key)! });
    } else if (!isSame(cells.at(-1)!, finding.cell)) cells.push(finding.cell);
  }

  /** What is wrong with the fill itself is told once, not for each cylinder of a twin set. */
  #toldOfTwin(rule: Rule, { at, message }: Fault, fill: unknown): boolean {
    if (this.#fill !== fill) this.#toldOfFill.clear();
    this.#fill = fill;
    const key = `${rule.id} ${at.field} ${message}`;
    const told = at.field !== "serial" && this.#toldOfFill.has(key);
    this.#toldOfFill.add(key);
    return told;
  }

  #firstTold(rule: Rule, { sheet, row, column }: CellAddress): boolean {
    const key = `${rule.id} ${sheet} ${row} ${column}`;
    const first = !this.#toldOfRegister.has(key);
    this.#toldOfRegister.add(key);
    return first;
  }
}

/** So many cells are named in a sentence. */
const CELLS_NAMED = 6;

/** It is about no one fill: of how many, and where, its sentence says. */
function ofColumn(finding: Finding, cells: readonly CellAddress[]): Finding {
  const named = cells.slice(0, CELLS_NAMED).map(cellName).join(", ");
  const others = cells.length > CELLS_NAMED ? ` and ${cells.length - CELLS_NAMED} more` : "";
  const rows = cells.length === 1 ? "1 row" : `${cells.length} rows`;
  return {
    ...finding,
    serial: "",
    fillDate: "",
    cells,
    message: `${finding.message} In ${rows}: ${named}${others}.`,
  };
}

/** What a finding says in figures and quotes, and what stands in its cell; how it is worded does not matter. */
function evidenceOf(severity: string, message: string, text: string): string {
  const facts = message.match(/“[^”]*”|[\p{L}./-]*\d[\p{L}\d.,/-]*/gu) ?? [];
  return shortHash([severity, text, ...facts].join("\n"));
}

/** FNV-1a, 32 bits: it tells whether two texts are the same, no more. */
function shortHash(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at++) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return (hash >>> 0).toString(36);
}

function isSame(one: CellAddress, other: CellAddress): boolean {
  return one.row === other.row && one.column === other.column && one.sheet === other.sheet;
}

export function noColumnFor(fields: Rule["needs"][number]): string {
  return `the log has no column for ${fields.map(fieldName).join(" or ")}`;
}

/** Ordered by harm: severity, then the rank of the rule, then the day. Equal ones stay in the order of the log. */
function byHarm(one: Found, other: Found): number {
  return (
    SEVERITIES.indexOf(one.finding.severity) - SEVERITIES.indexOf(other.finding.severity) ||
    one.rule.rank - other.rule.rank ||
    (one.day === other.day ? 0 : one.day - other.day)
  );
}
