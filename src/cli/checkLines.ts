import type { AuditResult, Finding, NotChecked } from "../audit/finding";
import { SEVERITIES } from "../audit/finding";
import { DECISIVE } from "../audit/rules";
import type { CountryRules } from "../cylinders/countryRules";
import type { Log } from "../log/log";
import { counted } from "../pane/check/report";
import { lacksOf } from "../pane/check/results/lacks";
import { ruleInWords } from "../audit/ruleInWords";
import { cellName, type CellAddress } from "../sheet/sheet";
import { rowLines } from "./readingLines";

const CAUTION =
  "This is a check of what the log says, not of the cylinders. Local codes, the cylinder's markings and licensed " +
  "practice come first; a fill that is not listed is not thereby safe.";

/** The audit as text: what was read, the findings by harm, what could not be judged, and the caution. */
export function checkLines(log: Log, result: AuditResult, rules: CountryRules): readonly string[] {
  return [
    `Rules: ${rules.name}.`,
    ...overrideLines(result),
    ...rowLines(log),
    "",
    ...findingLines(result),
    ...notCheckedLines(result),
    "",
    CAUTION,
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

function findingLines({ findings, fullyJudged }: AuditResult): readonly string[] {
  if (findings.length === 0)
    return [fullyJudged ? "Nothing found." : "Nothing found in what could be checked."];
  return SEVERITIES.flatMap((severity) => {
    const ofSeverity = findings.filter((finding) => finding.severity === severity);
    if (ofSeverity.length === 0) return [];
    return [`${WORDS[severity]} (${ofSeverity.length})`, ...ofSeverity.flatMap(oneFinding), ""];
  });
}

const WORDS = { stop: "STOP", breach: "BREACH", warn: "WARN", note: "NOTE" } as const;

function oneFinding(finding: Finding): readonly string[] {
  const { rule, source, basis, cell, serial, fillDate, message, todo } = finding;
  const which = [serial, fillDate && `filled ${fillDate}`].filter((part) => part !== "").join(", ");
  return [
    `  ${placeOf(cell)}${which && `  ${which}`}`,
    `      ${message}`,
    `      ${todo}`,
    `      ${ruleInWords(rule)}; ${basis}: ${source}`,
  ];
}

function notCheckedLines({ notChecked, fullyJudged }: AuditResult): readonly string[] {
  const judged = fullyJudged ? "Hydro, visual and oxygen rating were judged for every fill." : NOT_JUDGED;
  if (notChecked.length === 0) return [judged];
  const decisive = new Set(DECISIVE.map(({ id }) => id));
  const isWhole = ({ rule, cells }: NotChecked): boolean => cells.length === 0 && !decisive.has(rule);
  const whole = notChecked.filter(isWhole);
  return [
    "NOT CHECKED",
    ...lacksOf(notChecked.filter((lack) => !isWhole(lack))).map(
      ({ rules, count, why, cells }) =>
        `  ${counted(count, "fill")}, ${why}: ${namesOf(rules)}${placesOf(cells, count)}`,
    ),
    ...[...new Set(whole.map(({ why }) => why))].map((why) => {
      const rules = whole.filter((lack) => lack.why === why).map(({ rule }) => rule);
      return `  ${[...new Set(rules)].join(", ")}: no fill judged, ${why}`;
    }),
    judged,
  ];
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
