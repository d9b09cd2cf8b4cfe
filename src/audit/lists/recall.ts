import { Temporal } from "temporal-polyfill";
import type { Fill } from "../../log/log";
import type { Acceptance, Acceptances } from "../judge/acceptance";
import type { CellAddress } from "../../sheet/sheet";
import type { DueLists } from "./dueLists";
import { type CylinderAtRisk, SEVERITIES, type Finding, type Severity } from "../judge/finding";
import type { LogColumns } from "../judge/logColumns";
import type { FilledCylinder } from "../judge/rule";
import { nameOf } from "../record/nameOf";
import type { CylinderLife } from "../walk/cylinderLife";
import { dateText } from "../../words/inSentences";

/**
 * Keeps what was found against the last fill of each cylinder, while fills come by in the order they were made. A later
 * fill replaces the earlier one: only what the cylinder may still hold is recalled, the latest fill first.
 */
export class LastFills {
  /** By cylinder; where no later fill is known to be of the same one, by the fill. */
  readonly #against = new Map<CylinderLife | Fill, CylinderAtRisk>();

  constructor(private readonly columns: LogColumns) {}

  add(filled: FilledCylinder, life: CylinderLife | undefined, findings: readonly Finding[]): void {
    const { fill } = filled;
    const key = life ?? fill;
    this.#against.delete(key);
    if (findings.length === 0) return;
    const { date, serial, shopNumber } = fill.fields;
    const isByNumber = serial.kind !== "value" && shopNumber.kind === "value";
    this.#against.set(key, {
      serial: nameOf(filled) || "no serial",
      ...(life === undefined && { nameless: true }),
      owner: ownerOf(filled),
      lastFill: this.columns.cell({ field: isByNumber ? "shopNumber" : "serial" }, fill),
      fillDate: date.kind === "value" ? date.value.toString() : "",
      findings,
    });
  }

  /** Cylinders whose last fill is dangerous: call the owners. */
  recall(): readonly CylinderAtRisk[] {
    return this.#withFindings(({ severity }) => severity === "stop");
  }

  /** Cylinders that were filled although something is wrong with the vessel itself, which the next fill will not cure. */
  doNotFill(): readonly CylinderAtRisk[] {
    return this.#withFindings(({ rule, severity }) => isOfVessel(rule) && AGAINST_FILLING.includes(severity));
  }

  #withFindings(counts: (finding: Finding) => boolean): readonly CylinderAtRisk[] {
    const atRisk = [...this.#against.values()].flatMap((cylinder) => {
      const findings = cylinder.findings.filter(counts).sort(byHarm);
      return findings.length === 0 ? [] : [{ ...cylinder, findings }];
    });
    return atRisk.reverse();
  }
}

function byHarm(one: Finding, other: Finding): number {
  return SEVERITIES.indexOf(one.severity) - SEVERITIES.indexOf(other.severity);
}

/** Cylinders with at least one finding that the shop has not accepted, with those only. */
export function openRisks(
  cylinders: readonly CylinderAtRisk[],
  accepted: Acceptances,
): readonly CylinderAtRisk[] {
  return cylinders.flatMap((cylinder) => {
    const findings = cylinder.findings.filter((finding) => accepted.of(finding) === undefined);
    return findings.length > 0 ? [{ ...cylinder, findings }] : [];
  });
}

/** A cylinder of which every finding was accepted: nobody is called, and it stays in sight as accepted. */
export interface AcceptedRisk extends CylinderAtRisk {
  readonly accepted: readonly Acceptance[];
}

/** Cylinders with findings that the shop has accepted every one. */
export function acceptedRisks(
  cylinders: readonly CylinderAtRisk[],
  accepted: Acceptances,
): readonly AcceptedRisk[] {
  return cylinders.flatMap((cylinder) => {
    const of = cylinder.findings.flatMap((finding) => accepted.of(finding) ?? []);
    return of.length === cylinder.findings.length ? [{ ...cylinder, accepted: of }] : [];
  });
}

const AGAINST_FILLING: readonly Severity[] = ["stop", "breach"];

/** Rules whose id begins with V are about the pressure vessel. */
function isOfVessel(rule: string): boolean {
  return rule.startsWith("V");
}

/** Whose cylinder it is: by the fill, else by the register. */
export function ownerOf({ fill, cylinder }: FilledCylinder): string | undefined {
  return ownerIn(fill.fields) ?? cylinder.records.map(({ fields }) => ownerIn(fields)).find(Boolean);
}

function ownerIn({ owner }: Pick<Fill["fields"], "owner">): string | undefined {
  return owner.kind === "value" ? owner.value : undefined;
}

/** A cylinder that must not be filled next, and why, in sentences. */
export interface NotToFill {
  readonly serial: string;
  readonly owner: string | undefined;
  readonly reasons: readonly string[];
  /** The cell of the first reason. */
  readonly cell: CellAddress;
}

/** Cylinders not to fill next: something is wrong with the vessel, or a test of it is out of date on the day of the lists. */
export function notToFillNext(
  { doNotFill }: { readonly doNotFill: readonly CylinderAtRisk[] },
  { outOfDate }: DueLists,
): readonly NotToFill[] {
  const found = new Map<string, Omit<NotToFill, "serial"> & { readonly reasons: string[] }>();
  const add = ({ serial, owner, cell }: Omit<NotToFill, "reasons">, reason: string): void => {
    const entry = found.get(serial) ?? { owner, cell, reasons: [] };
    entry.reasons.push(reason);
    found.set(serial, entry);
  };
  for (const entry of outOfDate)
    add(
      entry,
      `${TESTS[entry.test]} ${entry.last} was due by ${dateText(Temporal.PlainDate.from(entry.until))}.`,
    );
  const listed = new Set(found.keys());
  for (const { serial, nameless, owner, findings } of doNotFill) {
    for (const { rule, message, cell } of findings) {
      const isToldToday = PAST_DUE.includes(rule) && (listed.has(serial) || nameless !== true);
      if (!isToldToday) add({ serial, owner, cell }, message);
    }
  }
  return [...found].map(([serial, entry]) => ({ serial, ...entry }));
}

const TESTS = { hydro: "Hydro", visual: "Visual", "oxygen cleaning": "Oxygen cleaning" } as const;

/** Hydro and visual: whether they are out of date is a matter of today, and for the due lists. */
const PAST_DUE: readonly string[] = ["V01", "V06"];
