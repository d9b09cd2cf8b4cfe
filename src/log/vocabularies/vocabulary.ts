import { LANGUAGES, type Language, type Phrases } from "./languages";
import { phraseForm, spellingsOf } from "./spelling";

/** What a shop answered where a word means nothing in its log. */
export const NOTHING = "nothing";

/** A word of the shop's own and what it means: a meaning of its vocabulary, or `nothing`. */
export type OwnWords = ReadonlyMap<string, string>;

/**
 * The phrases of one field and what they mean, in the languages of a log. Closed: a text is one of its phrases as a
 * whole, or it is not known. A phrase never counts inside a longer one.
 */
export class Vocabulary<Meaning extends string> {
  readonly #meanings = new Map<string, readonly Meaning[]>();

  constructor(
    /** Every meaning a phrase can have, as questions offer them. */
    readonly choices: readonly Meaning[],
    tables: Readonly<Record<Language, Phrases>>,
    languages: readonly Language[] = LANGUAGES,
    /** What the shop said of words that the tables leave open; a table's plain word stays what it is. */
    private readonly own: OwnWords = NO_WORDS,
  ) {
    for (const language of languages)
      for (const [key, phrases] of Object.entries(tables[language]))
        for (const spelling of phrases.flatMap(spellingsOf))
          this.#add(phraseForm(spelling), key.split("|") as Meaning[]);
  }

  /** What a whole text means: nothing where it is not known, several where it has several meanings. */
  meaningsOf(text: string): readonly (Meaning | typeof NOTHING)[] {
    const phrase = phraseForm(text);
    const known = this.#meanings.get(phrase) ?? [];
    if (known.length === 1) return known;
    const own = this.own.get(phrase) as Meaning | undefined;
    return own === undefined ? known : [own];
  }

  /** Every phrase, in the form in which phrases are compared. */
  get phrases(): ReadonlyMap<string, readonly Meaning[]> {
    return this.#meanings;
  }

  /** In two languages of one log a word may mean two things: then it is open. */
  #add(phrase: string, meanings: readonly Meaning[]): void {
    const known = this.#meanings.get(phrase);
    this.#meanings.set(phrase, known === undefined ? meanings : [...new Set([...known, ...meanings])]);
  }
}

const NO_WORDS: OwnWords = new Map();

/** The clauses of a text, apart by punctuation; a text without is one. */
export function clausesOf(text: string): readonly string[] {
  return text
    .split(/[,;:()[\]\n/|&]+|\s[-–—+]+\s|\.\s/)
    .map((clause) => clause.trim())
    .filter((clause) => phraseForm(clause) !== "");
}
