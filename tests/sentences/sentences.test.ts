import { expect, it } from "vitest";
import { CASES, saidOf, type Case } from "./cases";

/*
 * findings.txt holds every sentence that these cases make the audit say, each once, for somebody to read: dates, mixes,
 * figures and quotations are blanks in it, and stand below with the case that fills them. A sentence reworded is one
 * line changed. `npx vitest run tests/sentences -u` writes it; what it then holds is to be read before it is kept.
 */

const MONTH = "(?:January|February|March|April|May|June|July|August|September|October|November|December)";
const BLANKS = new RegExp(
  [
    "“[^”]*”",
    `\\d{1,2} ${MONTH} \\d{4}`,
    "\\d{4}[-/]\\d{2}(?:-\\d{2})?",
    "(?:EAN|TX )\\d+(?:\\.\\d+)?(?:/\\d+(?:\\.\\d+)?)?",
    "(?<![A-Za-z])(?:\\d[\\d,.]*\\d|\\d)",
  ].join("|"),
  "g",
);

function withBlanks(sentence: string): { readonly text: string; readonly filled: readonly string[] } {
  return { text: sentence.replace(BLANKS, "{}"), filled: sentence.match(BLANKS) ?? [] };
}

function caseName([rule, change, { country = "US", context, row, options }]: Case): string {
  const besides = [country, context?.stampOrder === undefined && context ? "stamps open" : "", row ? "other units" : "", options ? "air tests" : ""]; // prettier-ignore
  return `${rule} ${JSON.stringify(change)} ${besides.filter(Boolean).join(", ")}`;
}

function reviewed(cases: readonly Case[]): string {
  const bySentence = new Map<string, string[]>();
  const note = (sentence: string, line: string) => {
    bySentence.set(sentence, [...(bySentence.get(sentence) ?? []), `    ${line}`]);
  };
  for (const each of cases) {
    const said = saidOf(each);
    if (said.length === 0) note("(nothing)", caseName(each));
    for (const { about, sentence } of said) {
      const { text, filled } = withBlanks(sentence);
      note(text, [`${caseName(each)}: ${about}`, ...filled].join(" | "));
    }
  }
  return [...bySentence].map(([sentence, lines]) => [sentence, ...lines, ""].join("\n")).join("\n");
}

it("every sentence is as it was read", async () => {
  await expect(reviewed(CASES)).toMatchFileSnapshot("findings.txt");
});

it("a sentence reworded is one line, and a figure that changes is its case's", () => {
  expect(withBlanks("Filled to 3,500 psi, above 3,000 psi on 12 November 2026.")).toEqual({
    text: "Filled to {} psi, above {} psi on {}.",
    filled: ["3,500", "3,000", "12 November 2026"],
  });
  expect(withBlanks("Ordered EAN32, analysed TX 21/35: “no” at 2014-03.").filled).toEqual([
    "EAN32",
    "TX 21/35",
    "“no”",
    "2014-03",
  ]);
});
