import { HEADINGS, LANGUAGES, type Language } from "../vocabularies/languages";
import { spellingsOf } from "../vocabularies/spelling";
import { wordsOf } from "./headingWords";

/**
 * What phrases in headings mean (`#shared/vocabulary`). A heading is looked through for the longest phrases first; what
 * they mean together decides the field (`headingFields.ts`).
 */
export type Concept =
  | "start"
  | "end"
  /** German “Fülldruck”: the pressure that was reached, or the one that the cylinder is filled to at most. */
  | "full"
  | "ordered"
  | "analysed"
  | "added"
  | "settled"
  | "pressure"
  | "oxygen"
  | "helium"
  | "mix"
  | "nitrox"
  | "percent"
  | "temperature"
  | "mod"
  | "depth"
  | "external check"
  | "consent"
  | "neck thread"
  | "valve thread"
  | "money"
  | "date"
  | "time"
  | "cylinder"
  | "number"
  | "serial"
  | "owner"
  | "person"
  | "name"
  | "signature"
  | "certification"
  | "fill"
  | "method"
  | "source"
  | "remarks"
  | "hydro"
  | "visual"
  | "eddy"
  | "clean"
  | "grade"
  | "limit"
  | "test"
  /** Dutch “keuring”: the hydro or the visual. */
  | "some test"
  | "last"
  | "earlier"
  /** German forms and words: what is written is more often the next test than the last. */
  | "next by custom"
  | "due"
  | "made"
  | "class"
  | "material"
  | "alloy"
  | "size"
  | "service"
  | "status"
  | "inspected"
  | "counter"
  /** Of price lists and deliveries: such a sheet is no log, whatever pressures it has besides. */
  | "stock"
  | "by";

/** What a key of the tables means: `hydro+due` is both. */
function conceptsOf(key: string): readonly Concept[] {
  return key === "says nothing" ? [] : (key.split("+") as Concept[]);
}

/** A phrase of the tables. */
export interface Phrase {
  readonly concepts: readonly Concept[];
  /** In which it is said. */
  readonly languages: readonly Language[];
}

/** Every phrase with its meaning. No phrase means one thing in one language and another in the next: a test sees to it. */
export const MEANINGS: ReadonlyMap<string, Phrase> = meanings();

function meanings(): ReadonlyMap<string, Phrase> {
  const found = new Map<string, { concepts: readonly Concept[]; languages: Language[] }>();
  for (const language of LANGUAGES)
    for (const [key, phrases] of Object.entries(HEADINGS[language]))
      for (const spelling of phrases.flatMap(spellingsOf)) {
        const phrase = wordsOf(spelling).join(" ");
        const known = found.get(phrase);
        if (known === undefined) found.set(phrase, { concepts: conceptsOf(key), languages: [language] });
        else if (!known.languages.includes(language)) known.languages.push(language);
      }
  return found;
}

/** No phrase is longer, in words. */
export const LONGEST_PHRASE = Math.max(...[...MEANINGS.keys()].map((phrase) => phrase.split(" ").length));
