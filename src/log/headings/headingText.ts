import { plain } from "../cells/cell";
import { LONGEST_PHRASE, MEANINGS, type Concept, type Phrase } from "./headings";
import { wordsOf } from "./headingWords";
import type { Language } from "../vocabularies/languages";
import type { LogColumn } from "../log";

/** A heading, understood as far as its words go. */
export interface HeadingMeaning {
  /** As it stands, its rows joined. */
  readonly heading: string;
  readonly concepts: ReadonlySet<Concept>;
  readonly unit: LogColumn["unit"];
  /** Share of its words that mean something here. */
  readonly understood: number;
  /** The languages in which all of it is said; none where a word of it is unknown. */
  readonly languages: readonly Language[];
}

const UNITS: readonly (readonly [unit: LogColumn["unit"], pattern: RegExp])[] = [
  ["psi", /\bpsi[ga]?\b|\blbs\b/],
  ["bar", /\bbar[ga]?\b/],
  ["°F", /°\s*f\b|\bdeg\.? ?f\b|\btemp[a-z]*\.?,? f\b|\(f\)|\bfahrenheit\b/],
  ["°C", /°\s*c\b|\bdeg\.? ?c\b|\btemp[a-z]*\.?,? c\b|\(c\)|\bcelsius\b/],
  ["ft", /\bft\b|\bfeet\b|\bfsw\b/],
  ["m", /\bmet(?:er|re)s?\b|\bmsw\b|\(m\)|\[m\]| m$|\bmetres\b|\bmetros\b/],
];

/** No heading. */
export const NO_MEANING: HeadingMeaning = {
  heading: "",
  concepts: new Set(),
  unit: undefined,
  understood: 0,
  languages: [],
};

const known = new Map<string, HeadingMeaning>();
/** A workbook has a few dozen headings, looked at several times; a hostile one must not fill the memory. */
const REMEMBERED_HEADINGS = 2000;

/** What the words of a heading mean together. */
export function meaningOf(heading: string): HeadingMeaning {
  let meaning = known.get(heading);
  if (meaning === undefined) {
    meaning = understand(heading);
    if (known.size >= REMEMBERED_HEADINGS) known.clear();
    known.set(heading, meaning);
  }
  return meaning;
}

function understand(heading: string): HeadingMeaning {
  const words = wordsOf(heading);
  const concepts = new Set<Concept>();
  let understood = 0;
  let languages: readonly Language[] | undefined;
  for (let at = 0; at < words.length;) {
    const [phrase, length] = longestPhraseAt(words, at);
    for (const concept of phrase?.concepts ?? []) concepts.add(concept);
    if (phrase !== undefined)
      languages = languages?.filter((language) => phrase.languages.includes(language)) ?? phrase.languages;
    understood += phrase === undefined ? 0 : length;
    at += length;
  }
  const unit = UNITS.find(([, pattern]) => pattern.test(plain(heading)))?.[0];
  // “End °F”: the unit alone says what is measured, unless it is something else than the gas.
  if ((unit === "°F" || unit === "°C") && !concepts.has("counter")) concepts.add("temperature");
  return {
    heading: heading.replace(/\s+/g, " ").trim(),
    concepts,
    unit,
    understood: words.length === 0 ? 0 : understood / words.length,
    languages: understood < words.length ? [] : (languages ?? []),
  };
}

function longestPhraseAt(words: readonly string[], at: number): readonly [Phrase | undefined, number] {
  for (let length = Math.min(LONGEST_PHRASE, words.length - at); length > 0; length--) {
    const phrase = MEANINGS.get(words.slice(at, at + length).join(" "));
    if (phrase) return [phrase, length];
  }
  return [undefined, 1];
}
