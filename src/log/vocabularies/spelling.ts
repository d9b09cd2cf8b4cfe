import { plain } from "../cells/cell";

/** Umlauts and the like as they are typed where the keyboard lacks them: `Fuelldruck`, `foer`. */
const DIGRAPHS: Readonly<Record<string, string>> = { ä: "ae", ö: "oe", ü: "ue", ø: "oe", å: "aa" };

/** The ways in which a phrase of the tables is spelled: as it stands, and without the letters of its language. */
export function spellingsOf(phrase: string): readonly string[] {
  const lower = phrase.toLowerCase();
  const typed = lower.replace(/[äöüøå]/g, (letter) => DIGRAPHS[letter]!);
  return typed === lower ? [lower] : [lower, typed];
}

/**
 * A phrase in the form in which phrases are compared: lower case, without accents and punctuation, single spaces.
 * A question mark stays, as it takes back what it follows.
 */
export function phraseForm(text: string): string {
  return plain(text)
    .replace(/(?<=\p{L})['.](?=\p{L}|$|\s)|["!]/gu, "")
    .replace(/(?<!\p{L})\.(?=\s|$)|[^\p{L}\p{N}\p{S}%?.]+/gu, " ")
    .replace(/\.(?!\d)/g, " ")
    .replace(/\s+/g, " ")
    .trim();
}
