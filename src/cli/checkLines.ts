import {
  acceptancesOf,
  countAccepted,
  type Acceptance,
  type AcceptedCount,
  type Acceptances,
} from "../audit/judge/acceptance";
import { lacksOf } from "../audit/lists/lacks";
import { counted } from "../words/counts";
import { dueLists } from "../audit/lists/dueLists";
import type { CylinderAtRisk, AuditResult, Finding, NotChecked } from "../audit/judge/finding";
import { SEVERITIES } from "../audit/judge/finding";
import { acceptedRisks, notToFillNext, openRisks, type AcceptedRisk } from "../audit/lists/recall";
import { ruleInWords } from "../audit/rules/ruleInWords";
import { DECISIVE } from "../audit/rules/orderOfHarm";
import type { CountryRules } from "../cylinders/countryRules";
import { UNIT_NAMES } from "../gas/units";
import { cellName, type CellAddress } from "../sheet/sheet";
import { fillsAfter, type LogFile } from "./logFile";
import { doubtLines, rowLines } from "./readingLines";

const CAUTION =
  "This is a check of what the log says, not of the cylinders. Local codes, the cylinder's markings and licensed " +
  "practice come first; a fill that is not listed is not thereby safe.";

/** The audit as text: what was read and how, whom to call, the findings by harm, what could not be judged, the caution. */
export function checkLines(
  file: LogFile,
  result: AuditResult,
  rules: CountryRules,
  names: boolean,
): readonly string[] {
  const accepted = acceptancesOf(file.settings.accepted);
  return [
    ...shopLines(file, rules),
    ...overrideLines(result),
    ...rowLines(file.log),
    ...doubtLines(file.log, file.units),
    ...lateLines(file),
    "",
    ...acceptedCountLines(countAccepted(accepted, result.findings)),
    ...callLines(openRisks(result.recall, accepted), names),
    ...acceptedLines(acceptedRisks(result.recall, accepted), names),
    ...notToFillLines(file, openRisks(result.doNotFill, accepted), rules, names),
    ...findingLines(result, accepted),
    ...notCheckedLines(result, file.log.fills.length),
    "",
    CAUTION,
  ];
}

function shopLines({ name, units, asOf }: LogFile, rules: CountryRules): readonly string[] {
  const inUnits =
    units === undefined ? "as the log has them" : `${units} (${Object.values(UNIT_NAMES[units]).join(", ")})`;
  return [`File: ${name}, as of ${asOf.toString()}.`, `Rules: ${rules.name}.`, `Units: ${inUnits}.`];
}

/** A day given by mistake, or a fill dated by mistake. */
function lateLines(file: LogFile): readonly string[] {
  const late = fillsAfter(file);
  if (late === 0) return [];
  return [
    `  ${counted(late, "fill is", "fills are")} dated after ${file.asOf.toString()}, the day of this check, and judged all the same: ` +
      "give a later --as-of, or correct the dates.",
  ];
}

/** The shop's own figures, as every report lists them. */
function overrideLines({ overrides }: AuditResult): readonly string[] {
  return overrides.map(({ name, figure, instead, source, problem }) =>
    problem === undefined
      ? `  This shop's own: ${name} ${figure}, instead of ${instead} (${source}).`
      : `  Not used: ${name} ${figure}. ${problem} ${instead} holds.`,
  );
}

/** Whose telephone should ring: each cylinder once, with the gravest of what is wrong. */
function callLines(recall: readonly CylinderAtRisk[], names: boolean): readonly string[] {
  if (recall.length === 0) return [];
  return [
    `CALL FIRST: may still hold a dangerous fill (${counted(recall.length, "cylinder")})`,
    ...(names ? [] : ["  Add --names to see whose they are."]),
    ...recall.map((cylinder) => `  ${whose(cylinder, names)}  ${lastFill(cylinder)}`),
    "",
  ];
}

/** What a file brings with it is said at the top: whoever reads it may not know who accepted what. */
function acceptedCountLines({ count, by }: AcceptedCount): readonly string[] {
  if (count === 0) return [];
  return [
    `${counted(count, "finding was", "findings were")} accepted in this file, by ${by.join(", ")}.`,
    "",
  ];
}

function acceptedLines(accepted: readonly AcceptedRisk[], names: boolean): readonly string[] {
  if (accepted.length === 0) return [];
  return [
    `ACCEPTED: a stop, and nobody is called (${counted(accepted.length, "cylinder")})`,
    ...accepted.map((cylinder) => {
      const [{ reason, by, on }] = cylinder.accepted as [Acceptance];
      return `  ${whose(cylinder, names)}  ${lastFill(cylinder)} Accepted by ${by} on ${on}: ${reason}`;
    }),
    "",
  ];
}

function lastFill({ fillDate, findings: [worst, ...others] }: CylinderAtRisk): string {
  const filled = fillDate === "" ? "day of the last fill not known" : `last filled ${fillDate}`;
  const more = others.length === 0 ? "" : ` And ${counted(others.length, "more finding")}.`;
  return `${filled}, ${placeOf(worst!.cell)}: ${worst!.message}${more}`;
}

/** What to turn away at the counter, by what is wrong with the vessel or out of date on the day of the check. */
function notToFillLines(
  { log, options, asOf }: LogFile,
  doNotFill: readonly CylinderAtRisk[],
  rules: CountryRules,
  names: boolean,
): readonly string[] {
  const cylinders = notToFillNext({ doNotFill }, dueLists(log, rules, asOf, options));
  if (cylinders.length === 0) return [];
  return [
    `DO NOT FILL NEXT (${counted(cylinders.length, "cylinder")})`,
    ...cylinders.map((cylinder) => `  ${whose(cylinder, names)}  ${cylinder.reasons.join(" ")}`),
    "",
  ];
}

function whose({ serial, owner }: Pick<CylinderAtRisk, "serial" | "owner">, names: boolean): string {
  return names ? `${serial} (${owner ?? "owner not named"})` : serial;
}

function findingLines({ findings, fullyJudged }: AuditResult, accepted: Acceptances): readonly string[] {
  if (findings.length === 0)
    return [fullyJudged ? "Nothing found." : "Nothing found in what could be checked."];
  return SEVERITIES.flatMap((severity) => {
    const ofSeverity = findings.filter((finding) => finding.severity === severity);
    if (ofSeverity.length === 0) return [];
    return [
      `${WORDS[severity]} (${ofSeverity.length})`,
      ...ofSeverity.flatMap((finding) => oneFinding(finding, accepted.of(finding))),
      "",
    ];
  });
}

const WORDS = { stop: "STOP", breach: "BREACH", warn: "WARN", note: "NOTE" } as const;

function oneFinding(finding: Finding, acceptance: Acceptance | undefined): readonly string[] {
  const { rule, source, basis, cell, serial, fillDate, message, todo } = finding;
  const which = [serial, fillDate && `filled ${fillDate}`].filter((part) => part !== "").join(", ");
  return [
    `  ${placeOf(cell)}${which && `  ${which}`}`,
    `      ${message}`,
    `      ${todo}`,
    `      ${ruleInWords(rule)}; ${basis}: ${source}`,
    ...(acceptance ? [`      Accepted by ${acceptance.by} on ${acceptance.on}: ${acceptance.reason}`] : []),
  ];
}

function notCheckedLines({ notChecked, fullyJudged }: AuditResult, fills: number): readonly string[] {
  const judged = fullyJudged ? "Hydro, visual and oxygen rating were judged for every fill." : NOT_JUDGED;
  if (notChecked.length === 0) return [judged];
  const decisive = new Set(DECISIVE.map(({ id }) => id));
  const isWhole = ({ rule, cells }: NotChecked): boolean => cells.length === 0 && !decisive.has(rule);
  return [
    "NOT CHECKED",
    ...lacksOf(notChecked.filter((lack) => !isWhole(lack))).map(
      ({ rules, count, why, cells }) =>
        `  ${counted(count, "fill")}, ${why}: ${namesOf(rules)}${placesOf(cells, count)}`,
    ),
    ...wholeLines(notChecked.filter(isWhole), fills),
    judged,
  ];
}

/** Rules that could judge no fill at all, or none of some sheets. */
function wholeLines(lacks: readonly NotChecked[], fills: number): readonly string[] {
  const rulesBy = new Map<string, Set<string>>();
  for (const { rule, count, why } of lacks) {
    const judged = count < fills ? `${counted(count, "fill")} not judged` : "no fill judged";
    const what = `${judged}, ${why}`;
    rulesBy.set(what, (rulesBy.get(what) ?? new Set()).add(rule));
  }
  return [...rulesBy].map(([what, rules]) => `  ${[...rules].join(", ")}: ${what}`);
}

const PLACES_SHOWN = 5;

/** Where the first of them stand. */
function placesOf(cells: readonly CellAddress[], count: number): string {
  if (cells.length === 0) return "";
  const shown = cells.slice(0, PLACES_SHOWN).map(placeOf).join(", ");
  return ` (${shown}${count > PLACES_SHOWN && cells.length > PLACES_SHOWN ? ", and others" : ""})`;
}

function placeOf(cell: CellAddress): string {
  return `${cell.sheet}!${cellName(cell)}`;
}

/** A rule alone by its name; many by their letters, as one lack may stop a score of them. */
function namesOf(rules: readonly string[]): string {
  return rules.length === 1 ? ruleInWords(rules[0]!) : rules.join(", ");
}

const NOT_JUDGED = "Hydro, visual and oxygen rating were not judged for every fill: unknown is not a pass.";
