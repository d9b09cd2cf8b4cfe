import da from "#shared/vocabulary/da.json";
import de from "#shared/vocabulary/de.json";
import en from "#shared/vocabulary/en.json";
import es from "#shared/vocabulary/es.json";
import fi from "#shared/vocabulary/fi.json";
import fr from "#shared/vocabulary/fr.json";
import it from "#shared/vocabulary/it.json";
import ja from "#shared/vocabulary/ja.json";
import nl from "#shared/vocabulary/nl.json";
import no from "#shared/vocabulary/no.json";

/** Languages whose headings and words are known. English first: its words stand in logs everywhere. */
export const LANGUAGES = ["en", "de", "fr", "es", "it", "nl", "da", "no", "fi", "ja"] as const;
export type Language = (typeof LANGUAGES)[number];

/** Phrases by what they mean; of an ambiguous phrase, its meanings with `|` between them. */
export type Phrases = Readonly<Record<string, readonly string[]>>;
type ByLanguage<T> = Readonly<Record<Language, T>>;

/*
 * Each table on its own, so that what needs one table carries no other: the worksheet functions take methods, ratings
 * and mixes, and no headings.
 * A bundler leaves out a table that nothing needs only where a call marked as pure makes it.
 */
export const HEADINGS = /* @__PURE__ */ (() => ({ en: en.headings, de: de.headings, fr: fr.headings, es: es.headings, it: it.headings, nl: nl.headings, da: da.headings, no: no.headings, fi: fi.headings, ja: ja.headings } as ByLanguage<Phrases>))(); // prettier-ignore
export const STATUS_WORDS = /* @__PURE__ */ (() => ({ en: en.status, de: de.status, fr: fr.status, es: es.status, it: it.status, nl: nl.status, da: da.status, no: no.status, fi: fi.status, ja: ja.status } as ByLanguage<Phrases>))(); // prettier-ignore
export const METHOD_WORDS = /* @__PURE__ */ (() => ({ en: en.method, de: de.method, fr: fr.method, es: es.method, it: it.method, nl: nl.method, da: da.method, no: no.method, fi: fi.method, ja: ja.method } as ByLanguage<Phrases>))(); // prettier-ignore
export const RATING_WORDS = /* @__PURE__ */ (() => ({ en: en.rating, de: de.rating, fr: fr.rating, es: es.rating, it: it.rating, nl: nl.rating, da: da.rating, no: no.rating, fi: fi.rating, ja: ja.rating } as ByLanguage<Phrases>))(); // prettier-ignore
export const TEST_WORDS = /* @__PURE__ */ (() => ({ en: en.test, de: de.test, fr: fr.test, es: es.test, it: it.test, nl: nl.test, da: da.test, no: no.test, fi: fi.test, ja: ja.test } as ByLanguage<Phrases>))(); // prettier-ignore
export const TICK_WORDS = /* @__PURE__ */ (() => ({ en: en.tick, de: de.tick, fr: fr.tick, es: es.tick, it: it.tick, nl: nl.tick, da: da.tick, no: no.tick, fi: fi.tick, ja: ja.tick } as ByLanguage<Phrases>))(); // prettier-ignore
export const SIGNATURE_WORDS = /* @__PURE__ */ (() => ({ en: en.signature, de: de.signature, fr: fr.signature, es: es.signature, it: it.signature, nl: nl.signature, da: da.signature, no: no.signature, fi: fi.signature, ja: ja.signature } as ByLanguage<Phrases>))(); // prettier-ignore
export const CARD_WORDS = /* @__PURE__ */ (() => ({ en: en.card, de: de.card, fr: fr.card, es: es.card, it: it.card, nl: nl.card, da: da.card, no: no.card, fi: fi.card, ja: ja.card } as ByLanguage<Phrases>))(); // prettier-ignore
export const MIX_WORDS = /* @__PURE__ */ (() => ({ en: en.mix, de: de.mix, fr: fr.mix, es: es.mix, it: it.mix, nl: nl.mix, da: da.mix, no: no.mix, fi: fi.mix, ja: ja.mix } as ByLanguage<Phrases>))(); // prettier-ignore
export const UNSAID_WORDS = /* @__PURE__ */ (() => ({ en: en.unsaid, de: de.unsaid, fr: fr.unsaid, es: es.unsaid, it: it.unsaid, nl: nl.unsaid, da: da.unsaid, no: no.unsaid, fi: fi.unsaid, ja: ja.unsaid } as ByLanguage<Phrases>))(); // prettier-ignore
/** For each month from January its names, the long one first. */
export const MONTH_NAMES: ByLanguage<readonly (readonly string[])[]> = /* @__PURE__ */ (() => ({ en: en.months, de: de.months, fr: fr.months, es: es.months, it: it.months, nl: nl.months, da: da.months, no: no.months, fi: fi.months, ja: ja.months }))(); // prettier-ignore
/** Phrases in remarks that somebody should read. */
export const DANGER_WORDS: ByLanguage<readonly string[]> = /* @__PURE__ */ (() => ({ en: en.danger, de: de.danger, fr: fr.danger, es: es.danger, it: it.danger, nl: nl.danger, da: da.danger, no: no.danger, fi: fi.danger, ja: ja.danger }))(); // prettier-ignore
