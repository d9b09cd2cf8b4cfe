import { readdirSync, readFileSync } from "node:fs";
import { inUnit, settingsFor } from "../src/audit/shop/limits";
import type { Rule } from "../src/audit/judge/rule";
import { RULES } from "../src/audit/rules/orderOfHarm";
import { shopOf } from "../src/audit/shop/shop";
import { fieldName } from "../src/words/fields";
import { COUNTRIES, countryRules } from "../src/cylinders/countryRules";

const FOLDER = new URL("../src/audit/rules/", import.meta.url);
/** The comment above each rule: what it is about, and who says so. */
const COMMENTED =
  /\/\*\*((?:(?!\*\/)[\s\S])*)\*\/\s*export (?:const|function) \w+(?:(?!\nexport )[\s\S])*?id: "([A-Z]\d\d)"/g;

const FAMILIES: readonly (readonly [letter: string, title: string])[] = [
  ["V", "The pressure vessel"],
  ["O", "Oxygen"],
  ["G", "Analysis and labels"],
  ["A", "Air"],
  ["P", "People"],
  ["R", "Records"],
];

/** Rules that the trade's lists have and this audit does not, and why. */
const LEFT_OUT: readonly (readonly [what: string, why: string])[] = [
  [
    "V16 a twin set with one member at fault",
    "needs no rule of its own: a twin set is judged as its cylinders, each by every rule, and each is on the lists",
  ],
  ["V19 rise of pressure per minute", "a log gives one time of a fill, and no end or duration of it"],
  ["V20 tests that fall due soon", "is a list beside the findings: no fault, and no part of the exit code"],
  [
    "O05 as far as it goes by a visual since the cleaning",
    "logs do not say who looked inside, nor how; a hydro since is told",
  ],
  [
    "G07 analysed before the fill ended, or on another day than collected",
    "a log gives one time of a fill, and neither day nor time of its analysis",
  ],
  ["G08 analyser not calibrated that day", "a fill log has no place for calibrations"],
  [
    "G14 oxygen written in an odd way",
    "is read for what it means, with a note at the cell; never a finding per row",
  ],
  [
    "A04 filter past its hours",
    "a fill log has no place for filter hours; the cover of the month's report has room to write them in",
  ],
  [
    "R02 a serial one character off a known one",
    "is told with R01, which names the serial that was probably meant",
  ],
  [
    "R07 as far as it goes by fill numbers",
    "shops restart them by day, book or month as they please, so that a gap is no fault of itself; the cover of the month's report says which numbers are missing or given twice",
  ],
  [
    "R08 a test date changed after a flagged fill",
    "needs the register as it was, of which no copy is kept; an accepted finding that is no longer found is listed",
  ],
];

/** The reference of the audit's rules, made from the rules themselves. */
export function ruleReference(): string {
  const comments = commentsById();
  return [
    "# The rules of the audit",
    "",
    "Made from the rules themselves by `npx tsx scripts/generate-function-docs.ts`; do not edit.",
    "",
    "Each fill is judged on its own day. What cannot be judged is counted as not checked, with its reason: unknown is never a pass. A date that can be read in two ways makes a finding where the fill is past due by both, and the finding says so; else the fill is not checked. A rule whose columns the log does not have is not checked once, for all fills. A custom for which the country has no source of its own says whose it was taken from. Severities: **Stop** recall, do not fill; **Breach** a rule is broken; **Warn** a gap in practice, or a likely slip; **Note**. The rank orders rules by the harm they prevent.",
    ...FAMILIES.flatMap(([letter, title]) => [
      "",
      `## ${title}`,
      "",
      "| rule | rank | what it finds | what it must know | about it |",
      "| --- | --- | --- | --- | --- |",
      ...RULES.filter(({ id }) => id.startsWith(letter))
        .sort((one, other) => one.id.localeCompare(other.id))
        .map(
          (rule) =>
            `| ${rule.id} | ${rule.rank} | ${rule.title} | ${needsOf(rule)} | ${aboutOf(rule, comments)} |`,
        ),
    ]),
    "",
    "## Left out",
    "",
    ...LEFT_OUT.map(([what, why]) => `- ${what}: ${why}.`),
    "",
    "## Figures that a shop can set",
    "",
    "Under Rules & shop, each beside its source; what is set is listed on every report. Here as they come under US rules; besides, every interval of every class of cylinder can be set. Past a date of the law a fill stays a stop, whatever the shop has set.",
    "",
    "| figure | comes as | basis | source |",
    "| --- | --- | --- | --- |",
    ...figures(),
    "",
    `Countries with rules here, as a source was found for them: ${COUNTRIES.map(({ name }) => name).join(", ")}.`,
    "",
  ].join("\n");
}

/** In the order in which rules of one id stand in their files and in the list. */
function commentsById(): ReadonlyMap<string, string[]> {
  const found = new Map<string, string[]>();
  const files = readdirSync(FOLDER, { recursive: true, encoding: "utf8" }).filter((file) =>
    file.endsWith(".ts"),
  );
  for (const file of files.sort()) {
    for (const [, comment = "", id = ""] of readFileSync(new URL(file, FOLDER), "utf8").matchAll(COMMENTED)) {
      const text = comment
        .replace(/^\s*\* ?/gm, "")
        .replace(/\s+/g, " ")
        .replace(/\|/g, "\\|")
        .trim();
      found.set(id, [...(found.get(id) ?? []), text]);
    }
  }
  return found;
}

function aboutOf({ id }: Rule, comments: ReadonlyMap<string, string[]>): string {
  return (comments.get(id) ?? []).join(" ");
}

function needsOf({ needs }: Rule): string {
  const all = needs.map((fields) => [...new Set(fields.map(fieldName))].join(" or "));
  return all.length === 0 ? "what is there" : all.join("; ");
}

function figures(): readonly string[] {
  const rules = countryRules("US");
  const classes = new Set(rules.cylinders.map(({ name }) => name));
  const shop = shopOf(rules);
  return settingsFor(rules)
    .filter(({ group }) => !classes.has(group))
    .map((setting) => {
      const { group, name, basis, source } = setting;
      return `| ${group}: ${name} | ${inUnit(setting.of(shop), setting)} | ${basis} | ${source} |`;
    });
}
