import type { Acceptance } from "../../../audit/judge/acceptance";
import type { Finding, Severity } from "../../../audit/judge/finding";
import type { FindingFacts } from "../report";
import { placeName } from "../useJump";

export interface ShownFinding extends Partial<FindingFacts> {
  readonly finding: Finding;
  /** Its severity, unless the shop lets it stand. */
  readonly group: Group;
  readonly acceptance: Acceptance | undefined;
  /** Its place in the report. */
  readonly key: number;
}

/** By harm; what the shop lets stand is counted apart. */
export type Group = Severity | "accepted";

export interface Filter {
  /** None chosen shows all. */
  readonly groups: readonly Group[];
  /** A rule's id, or "" for all; so are the others. */
  readonly rule: string;
  readonly cylinder: string;
  readonly filledBy: string;
  /** ISO dates, the first and last day of the period. */
  readonly from: string;
  readonly to: string;
  readonly text: string;
}

export const NO_FILTER: Filter = {
  groups: [],
  rule: "",
  cylinder: "",
  filledBy: "",
  from: "",
  to: "",
  text: "",
};

/** How many of the choices narrow the list, besides the groups and the words. */
export function narrowedBy({ rule, cylinder, filledBy, from, to }: Filter): number {
  return [rule, cylinder, filledBy, from + to].filter((said) => said !== "").length;
}

export function isFiltered(filter: Filter): boolean {
  return filter.groups.length > 0 || filter.text !== "" || narrowedBy(filter) > 0;
}

/** Whether a finding fits. In a period there are only those of a fill whose day is known. */
export function matcher(filter: Filter): (shown: ShownFinding) => boolean {
  const { groups, rule, filledBy, from, to } = filter;
  const words = filter.text.toLowerCase().split(/\s+/).filter(Boolean);
  const cylinder = bareSerial(filter.cylinder);
  return (shown) => {
    const { finding, group } = shown;
    if (groups.length > 0 && !groups.includes(group)) return false;
    if (rule !== "" && finding.rule !== rule) return false;
    if (filledBy !== "" && shown.filledBy !== filledBy) return false;
    if (cylinder !== "" && !bareSerial(finding.serial).includes(cylinder)) return false;
    if (from + to !== "" && !isWithin(finding.fillDate, from, to)) return false;
    return words.length === 0 || words.every((word) => saidOf(shown).includes(word));
  };
}

function isWithin(day: string, from: string, to: string): boolean {
  return day !== "" && (from === "" || day >= from) && (to === "" || day <= to);
}

function saidOf({ finding, acceptance, filledBy }: ShownFinding): string {
  const { rule, serial, message, todo, fillDate, source, cell } = finding;
  const said = [rule, serial, message, todo, fillDate, source, placeName(cell), filledBy];
  return [...said, acceptance?.reason].join(" ").toLowerCase();
}

/** As people type serials: `gp 1003` is GP-1003. */
function bareSerial(serial: string): string {
  return serial.toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");
}
