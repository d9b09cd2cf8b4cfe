import { expect } from "vitest";
import type { AuditResult } from "../../src/audit/judge/finding";
import { fieldName } from "../../src/words/fields";
import type { Field, Log } from "../../src/log/log";
import type { CellAddress } from "../../src/sheet/sheet";

/** The columns that the findings of each rule lead to. */
const LEADS_TO: Readonly<Record<string, readonly Field[]>> = {
  V01: ["hydro", "made", "serial"],
  V02: ["status"],
  V03: ["endPressure", "settledPressure"],
  V04: ["made", "serial"],
  V05: ["eddyCurrent"],
  V06: ["visual", "hydro"],
  V07: ["endPressure", "settledPressure"],
  V08: ["status"],
  V09: ["hydro"],
  V10: ["hydro"],
  V11: ["hydro", "visual"],
  V12: ["cylinderClass"],
  V13: ["cylinderClass"],
  V14: ["valveThread"],
  V15: ["visual"],
  V17: ["startPressure"],
  V18: ["externalCheck"],
  O01: ["method", "oxygenAdded", "analysedMix", "orderedMix"],
  O02: ["analysedMix", "orderedMix"],
  O03: ["source", "method", "oxygenAdded", "analysedMix", "orderedMix"],
  O04: ["method"],
  O05: ["method"],
  O06: ["endPressure"],
  O07: ["analysedMix", "orderedMix"],
  O08: ["analysedMix", "orderedMix"],
  O09: ["analysedMix", "orderedMix"],
  O10: ["startMix"],
  O11: ["oxygenCleaned"],
  G01: ["analysedMix"],
  G02: ["modOnLabelM"],
  G03: ["analysedMix"],
  G04: ["analysedMix"],
  G05: ["certification"],
  G06: ["analysedHelium", "analysedMix"],
  G09: ["receivedBy", "analysedBy"],
  G10: ["certification"],
  G11: ["modOnLabelM"],
  G12: ["analysedMix"],
  G13: ["plannedDepthM"],
  A01: ["date"],
  A02: ["date"],
  A03: ["source"],
  P01: ["filledBy"],
  R01: ["serial", "shopNumber"],
  R03: ["hydro", "visual", "eddyCurrent", "oxygenCleaned", "made"],
  R04: ["hydro", "visual", "eddyCurrent", "oxygenCleaned", "made"],
  R05: ["hydro", "visual", "eddyCurrent", "oxygenCleaned", "made"],
  R06: ["startPressure", "endPressure", "settledPressure", "servicePressure", "oxygenAdded", "heliumAdded"],
  R07: ["endPressure", "settledPressure", "serial"],
  R09: ["consent"],
  R10: ["date"],
  R11: ["startPressure"],
};

const SENTENCE = /^[\p{Lu}\d“"].*[.!?]$/su;

/**
 * What holds for everything an audit answers: it says by whose rule, what is wrong and what to do, and leads to the cell
 * it is about; where a sheet has no such column, to the serial.
 */
export function expectWellMade(log: Log, { findings, notChecked }: AuditResult): void {
  for (const { rule, basis, source, message, todo, cell } of findings) {
    expect(["law", "practice", "house"]).toContain(basis);
    expect(source).toMatch(/\S/);
    expect(message, rule).toMatch(SENTENCE);
    expect(todo, rule).toMatch(SENTENCE);
    const { at, has } = columnOf(log, cell);
    const meant = LEADS_TO[rule] ?? [];
    if (has(meant)) expect(meant, `${rule} leads to ${at}`).toContain(at);
    else expect(at, rule).toBe("serial");
  }
  for (const { rule, why, cells } of notChecked) {
    expect(why, rule).toMatch(/^\p{Ll}.*[^.]$|^MOD .*[^.]$/u);
    for (const cell of cells) {
      const { at, named } = columnOf(log, cell);
      const field = named.find((each) => new RegExp(`^${fieldName(each)} (?:is blank|can)`).test(why));
      if (field !== undefined) expect(at, `${rule}: ${why}`).toBe(field);
    }
  }
}

function columnOf(log: Log, cell: CellAddress) {
  const { columns } = log.sheets.find(({ name }) => name === cell.sheet)!;
  const named = columns.flatMap(({ field }) => (field === undefined ? [] : [field]));
  return {
    at: columns.find(({ column }) => column === cell.column)?.field,
    named,
    has: (fields: readonly Field[]) => fields.some((field) => named.includes(field)),
  };
}
