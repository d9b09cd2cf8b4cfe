import {
  CARD_WORDS,
  METHOD_WORDS,
  MIX_WORDS,
  RATING_WORDS,
  SIGNATURE_WORDS,
  STATUS_WORDS,
  TEST_WORDS,
  TICK_WORDS,
  UNSAID_WORDS,
  type Language,
} from "./languages";
import { Vocabulary, type OwnWords } from "./vocabulary";

/*
 * The closed vocabularies, and what their words can mean. Each is made by a function of its own: the worksheet
 * functions make three of them and carry no other.
 */

/** What a register says of a cylinder; the gravest first. */
export const STATUS_MEANINGS = [
  /** Condemned, rejected, retired, quarantined: it may not be filled. */
  "out of service",
  /** Dropped, dented, in a fire: tested before its next use. */
  "damaged",
  /** It waits for a test, and nothing says since when. */
  "test due",
  /** At the tester, sold, lost: not here, and nothing says since when. */
  "away",
  "fine",
  /** Whose it is, or what for: nothing of its state. */
  "no status",
] as const;
export type StatusMeaning = (typeof STATUS_MEANINGS)[number];

export const METHOD_MEANINGS = ["air", "premix", "continuous", "partial pressure", "membrane"] as const;
export type FillMethod = (typeof METHOD_MEANINGS)[number];
export const RATING_MEANINGS = ["oxygen clean", "up to 40", "air only"] as const;
export type RatingMeaning = (typeof RATING_MEANINGS)[number];
export const TEST_MEANINGS = ["out of test", "failed", "passed"] as const;
export const TICK_MEANINGS = ["yes", "no", "failed"] as const;
export const SIGNATURE_MEANINGS = ["signed", "not signed"] as const;
export const CARD_MEANINGS = ["seen", "not seen"] as const;
export const MIX_MEANINGS = ["air", "oxygen"] as const;
export const UNSAID_MEANINGS = ["not known", "not legible"] as const;

type Tongues = readonly Language[] | undefined;

export const statusWords = (languages?: Tongues, own?: OwnWords) =>
  new Vocabulary(STATUS_MEANINGS, STATUS_WORDS, languages, own);
export const methodWords = (languages?: Tongues, own?: OwnWords) =>
  new Vocabulary(METHOD_MEANINGS, METHOD_WORDS, languages, own);
export const ratingWords = (languages?: Tongues, own?: OwnWords) =>
  new Vocabulary(RATING_MEANINGS, RATING_WORDS, languages, own);
export const testWords = (languages?: Tongues, own?: OwnWords) =>
  new Vocabulary(TEST_MEANINGS, TEST_WORDS, languages, own);
export const tickWords = (languages?: Tongues, own?: OwnWords) =>
  new Vocabulary(TICK_MEANINGS, TICK_WORDS, languages, own);
export const signatureWords = (languages?: Tongues, own?: OwnWords) =>
  new Vocabulary(SIGNATURE_MEANINGS, SIGNATURE_WORDS, languages, own);
export const cardWords = (languages?: Tongues, own?: OwnWords) =>
  new Vocabulary(CARD_MEANINGS, CARD_WORDS, languages, own);
export const mixWords = (languages?: Tongues) => new Vocabulary(MIX_MEANINGS, MIX_WORDS, languages);
export const unsaidWords = (languages?: Tongues) => new Vocabulary(UNSAID_MEANINGS, UNSAID_WORDS, languages);
