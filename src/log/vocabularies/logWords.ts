import type { OwnWord } from "../context";
import type { Field } from "../log";
import { LANGUAGES, type Language } from "./languages";
import {
  CARD_MEANINGS,
  METHOD_MEANINGS,
  RATING_MEANINGS,
  SIGNATURE_MEANINGS,
  STATUS_MEANINGS,
  TEST_MEANINGS,
  TICK_MEANINGS,
  cardWords,
  methodWords,
  mixWords,
  ratingWords,
  signatureWords,
  statusWords,
  testWords,
  tickWords,
  unsaidWords,
} from "./meanings";
import { phraseForm } from "./spelling";
import type { OwnWords, Vocabulary } from "./vocabulary";

/** Which closed vocabulary the words of a field belong to. */
export const VOCABULARY_OF = {
  status: "status",
  method: "method",
  oxygenService: "rating",
  hydro: "test",
  visual: "test",
  eddyCurrent: "test",
  oxygenCleaned: "test",
  externalCheck: "tick",
  consent: "tick",
  receivedBy: "signature",
  certification: "card",
} as const satisfies { readonly [field in Field]?: VocabularyName };
export type VocabularyName = "status" | "method" | "rating" | "test" | "tick" | "signature" | "card";
export type FieldOfWords = keyof typeof VOCABULARY_OF;

const MEANINGS: Readonly<Record<VocabularyName, readonly string[]>> = {
  status: STATUS_MEANINGS,
  method: METHOD_MEANINGS,
  rating: RATING_MEANINGS,
  test: TEST_MEANINGS,
  tick: TICK_MEANINGS,
  signature: SIGNATURE_MEANINGS,
  card: CARD_MEANINGS,
};

/** Every meaning that a word of this field can have. */
export function meaningsFor(field: FieldOfWords): readonly string[] {
  return MEANINGS[VOCABULARY_OF[field]];
}

/** The words of one log: in its languages, with those of the shop's own. */
export class LogWords {
  readonly mix: ReturnType<typeof mixWords>;
  readonly unsaid: ReturnType<typeof unsaidWords>;
  readonly status: ReturnType<typeof statusWords>;
  readonly method: ReturnType<typeof methodWords>;
  readonly rating: ReturnType<typeof ratingWords>;
  readonly test: ReturnType<typeof testWords>;
  readonly tick: ReturnType<typeof tickWords>;
  readonly signature: ReturnType<typeof signatureWords>;
  readonly card: ReturnType<typeof cardWords>;

  constructor(
    readonly languages: readonly Language[] = LANGUAGES,
    own: readonly OwnWord[] = [],
  ) {
    const of = (name: VocabularyName): OwnWords =>
      new Map(
        own
          .filter(({ field }) => VOCABULARY_OF[field as FieldOfWords] === name)
          .map(({ word, means }) => [phraseForm(word), means]),
      );
    // What a gas is called is told apart from everything else in any language.
    this.mix = mixWords();
    this.unsaid = unsaidWords(languages);
    this.status = statusWords(languages, of("status"));
    this.method = methodWords(languages, of("method"));
    this.rating = ratingWords(languages, of("rating"));
    this.test = testWords(languages, of("test"));
    this.tick = tickWords(languages, of("tick"));
    this.signature = signatureWords(languages, of("signature"));
    this.card = cardWords(languages, of("card"));
  }

  /** The vocabulary of a field. */
  of(field: FieldOfWords): Vocabulary<string> {
    return this[VOCABULARY_OF[field]] as unknown as Vocabulary<string>;
  }

  /** Whether any vocabulary knows a text: then it is no name. */
  knows(text: string): boolean {
    return [
      this.status,
      this.method,
      this.rating,
      this.test,
      this.tick,
      this.signature,
      this.card,
      this.unsaid,
    ].some((vocabulary) => vocabulary.meaningsOf(text).length > 0);
  }
}

const made = new Map<string, LogWords>();

/** The words in these languages; without own words made once, as their tables are large. */
export function wordsIn(languages: readonly Language[], own: readonly OwnWord[] = []): LogWords {
  if (own.length > 0) return new LogWords(languages, own);
  const key = languages.join();
  const words = made.get(key) ?? new LogWords(languages);
  made.set(key, words);
  return words;
}
