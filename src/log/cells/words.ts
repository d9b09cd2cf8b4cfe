import { Temporal } from "temporal-polyfill";
import type { CylinderStatus, ExternalCheck, FillMethod } from "../log";
import { ambiguous, BLANK, unknownWord, unreadable, value, type Reading } from "../reading";
import { STATUS_MEANINGS, type StatusMeaning } from "../vocabularies/meanings";
import { clausesOf, NOTHING, type Vocabulary } from "../vocabularies/vocabulary";
import type { LogWords } from "../vocabularies/logWords";
import { ofNoUse, plain, sayingNothing, shown, tidy, type Cell } from "./cell";
import { dateTextOf, monthOf } from "./dateText";

/*
 * Cells whose words belong to a closed vocabulary. A word of the tables has its meaning, a word of several meanings is
 * open, and every other is an unknown word: never the harmless one.
 */

/** The one meaning of a text; several, or none, as a reading that says so. */
function meant<Meaning extends string>(
  text: string,
  vocabulary: Vocabulary<Meaning>,
): Reading<Meaning> | "nothing" {
  const meanings = vocabulary.meaningsOf(text);
  const [first, second] = meanings;
  if (first === undefined) return unknownWord(text);
  if (first === NOTHING) return "nothing";
  return second === undefined ? value(first) : severalMeanings(text, meanings as readonly Meaning[]);
}

function severalMeanings<T>(text: string, meanings: readonly T[], words = meanings.map(String)): Reading<T> {
  const word = text.trim();
  return { kind: "ambiguous", choices: meanings, why: `“${word}” can mean ${words.join(" or ")}. Say which.`, doubt: "word", word }; // prettier-ignore
}

/** Reads how a fill was made. */
export function readMethod(cell: Cell, methods: Vocabulary<FillMethod>): Reading<FillMethod> {
  if (typeof cell.value !== "string")
    return ofNoUse(cell, "a method: air, premix, continuous, partial pressure or membrane");
  const text = tidy(cell.value);
  if (methods.meaningsOf(text).length === 0) {
    const nothing = sayingNothing(plain(text));
    if (nothing) return nothing;
  }
  const whole = meant(text, methods);
  if (whole === "nothing") return BLANK;
  if (whole.kind !== "unknown word") return whole;
  // “Bank EAN32”, “premix 32 %”: the gas beside the method says nothing of it.
  const withoutGas = text.replace(GAS, " ").trim();
  const without = withoutGas === text || withoutGas === "" ? whole : meant(withoutGas, methods);
  if (without !== "nothing" && without.kind !== "unknown word") return without;
  const clauses = clausesOf(text).map((clause) => meant(clause, methods));
  const named = [...new Set(clauses.flatMap((each) => (each !== "nothing" && each.kind === "value" ? [each.value] : [])))]; // prettier-ignore
  if (
    clauses.length < 2 ||
    named.length === 0 ||
    clauses.some((each) => each !== "nothing" && each.kind !== "value")
  )
    return whole;
  const others = named.filter((method) => method !== "air");
  return others.length > 1
    ? ambiguous(others, `“${shown(cell)}” names more than one method.`)
    : value(others[0] ?? named[0]!);
}

const GAS = /\b(?:ean ?x?|nx|nitrox|tx|trimix)[ -]?\d{1,2}(?:[./]\d{1,2})?\b|\b\d{1,2}(?:[.,]\d)? ?%/gi;

/** What is said of a cylinder's state: by the phrase, or by its clauses, of which the gravest counts. */
export function readStatus(cell: Cell, words: LogWords): Reading<CylinderStatus> {
  if (typeof cell.value === "object") return ofNoUse(cell, "a status");
  const written = tidy(String(cell.value));
  const bare = tidy(written.replace(DATES, " ").replace(/[\s,;:(-]+$|^[\s,;:)-]+/g, ""));
  const as = (meaning: StatusMeaning): CylinderStatus => ({ meaning, written });
  if (/^[-.–/\\_~\s]*$/.test(bare)) return written === "" || bare === written ? BLANK : unknownWord(written);
  const whole = meant(bare, words.status);
  if (whole === "nothing") return value(as("no status"));
  if (whole.kind === "value") return value(as(whole.value));
  if (whole.kind === "ambiguous") return severalMeanings(bare, whole.choices.map(as), [...whole.choices]);
  const nothing = sayingNothing(plain(bare));
  if (nothing) return nothing;
  const clauses = clausesOf(bare).map((clause) => meant(clause, words.status));
  const known = clauses.flatMap((each) => (each !== "nothing" && each.kind === "value" ? [each.value] : []));
  const isAllKnown =
    clauses.length > 1 && clauses.every((each) => each === "nothing" || each.kind === "value");
  const [first] = clauses;
  const isOutFirst =
    clauses.length > 1 && first !== undefined && first !== "nothing" && first.kind === "value" &&
    first.value === "out of service" && !clausesOf(bare).slice(1).some((clause) => words.tick.meaningsOf(clause).includes("no")); // prettier-ignore
  if (isOutFirst && !bare.includes("?")) return value(as("out of service"));
  const gravest = STATUS_MEANINGS.find((meaning) => known.includes(meaning));
  return isAllKnown && gravest !== undefined ? value(as(gravest)) : unknownWord(bare);
}

/** A date in a status: since when it is so. */
const DATES =
  /\b(?:\d{4}[-/.]\d{1,2}(?:[-/.]\d{1,2})?|\d{1,2}[-/.]\d{1,2}[-/.]\d{2,4}|\d{1,2}[-/.]\d{2,4}|(?:in |since |on |seit |am |le |el |il |sinds )?(?:19|20)\d{2})\b/gi;

/** Reads a look at the outside: done, not done, or found wanting. */
export function readExternalCheck(cell: Cell, words: LogWords): Reading<ExternalCheck> {
  const reading = readTick(cell, words);
  if (reading.kind !== "value") return reading as Reading<never>;
  return value({ passed: reading.value !== "failed", written: shown(cell) });
}

/** Reads a consent: given, by whom; a no is none. */
export function readConsent(cell: Cell, words: LogWords): Reading<string> {
  const reading = readTick(cell, words);
  if (reading.kind === "value") return reading.value === "yes" ? value(shown(cell)) : BLANK;
  return reading as Reading<never>;
}

/** A tick, or the name of whoever ticked. A box left open, or a no, is blank. */
function readTick(cell: Cell, words: LogWords): Reading<"yes" | "failed"> {
  if (typeof cell.value === "object") return ofNoUse(cell, "a tick");
  if (typeof cell.value === "boolean") return cell.value ? value("yes") : BLANK;
  const text = tidy(String(cell.value));
  const clauses = words.tick.meaningsOf(text).length > 0 ? [text] : clausesOf(text);
  const read = clauses.map((clause) => meant(clause, words.tick));
  const said = read.map((each) =>
    each === "nothing" ? "no" : each.kind === "value" ? each.value : undefined,
  );
  if (said.includes("failed")) return value("failed");
  if (said.length > 0 && said.every((each) => each === "yes")) return value("yes");
  if (said.length > 0 && said.every((each) => each === "no")) return BLANK;
  return (
    sayingNothing(plain(text)) ?? (isName(text, words) || isDay(text) ? value("yes") : unknownWord(text))
  );
}

/** Reads a signature: a name, initials, a tick. A no, or what says that nobody signed, is none. */
export function readSignature(cell: Cell, words: LogWords): Reading<string> {
  return readPresence(cell, words, words.signature, "signed");
}

/** Reads a card that was seen: its number, its level, a tick. A no is none. */
export function readCard(cell: Cell, words: LogWords): Reading<string> {
  return readPresence(cell, words, words.card, "seen");
}

function readPresence<Meaning extends string>(
  cell: Cell,
  words: LogWords,
  vocabulary: Vocabulary<Meaning>,
  present: Meaning,
): Reading<string> {
  if (typeof cell.value === "object") return ofNoUse(cell, "text");
  if (typeof cell.value === "boolean") return cell.value ? value("yes") : BLANK;
  const text = tidy(String(cell.value));
  if (text === "" || text === "0") return BLANK;
  const withoutNumbers = tidy(text.replace(/\S*\d\S*/g, " "));
  const phrase = vocabulary.meaningsOf(text).length > 0 ? text : withoutNumbers;
  if (phrase !== "") {
    const clauses = vocabulary.meaningsOf(phrase).length > 0 ? [phrase] : clausesOf(phrase);
    const read = clauses.map((clause) => meant(clause, vocabulary));
    const isNot = (each: (typeof read)[number]): boolean =>
      each === "nothing" || (each.kind === "value" && each.value !== present);
    if (read.length > 0 && read.some(isNot)) return BLANK;
    if (read.length > 0 && read.every((each) => each !== "nothing" && each.kind === "value"))
      return value(text);
  }
  const nothing = sayingNothing(plain(text));
  if (nothing) return nothing;
  // A card's number; letters around it are those of its kind.
  if (
    /\d/.test(text) &&
    /^[\p{L}\p{N} ./#:-]{1,40}$/u.test(text) &&
    /^(?:\p{L}{0,6}[ .#:-]*)*$/u.test(withoutNumbers)
  )
    return value(text);
  return isName(text, words) ? value(text) : unknownWord(text);
}

/**
 * A name or initials: up to four words that begin with a capital, or up to three letters; and no word of the tables.
 * Names are no vocabulary; this is only their form.
 */
function isName(text: string, words: LogWords): boolean {
  if (!NAME.test(text) && !INITIALS.test(text)) return false;
  return !words.knows(text) && !text.split(/\s+/).every((word) => words.knows(word));
}

const NAME = /^(?:\p{Lu}[\p{L}'’.-]*|\p{Lo}+|(?:van|von|de|del|della|di|da|der|den|le|la|y|e|af|ter|ten|zu|dos)|&)(?:[ ,]+(?:\p{Lu}[\p{L}'’.-]*|\p{Lo}+|(?:van|von|de|del|della|di|da|der|den|le|la|y|e|af|ter|ten|zu|dos)|&)){0,4}\.?$/u; // prettier-ignore
const INITIALS = /^(?:\p{L}{1,3}|(?:\p{L}\.? ?){1,3}|\p{L}{1,3}\/\p{L}{1,3})$/u;

function isDay(text: string): boolean {
  return dateTextOf(text, LATEST_YEAR)?.kind === "day";
}

const LATEST_YEAR = new Temporal.PlainYearMonth(2099, 12).year;

/** What a word in a column of tests says; undefined for what is none. */
export function readTestWord<T>(cell: Cell, words: LogWords["test"]): Reading<T> | undefined {
  if (typeof cell.value !== "string" || /\d/.test(cell.value)) return undefined;
  const text = tidy(cell.value);
  const said = meant(text, words);
  if (said === "nothing") return BLANK;
  if (said.kind === "ambiguous") return unknownWord(text);
  if (said.kind !== "value") return monthOf(plain(text)) === undefined ? unknownWord(text) : undefined;
  switch (said.value) {
    case "passed":
      return unreadable(`“${shown(cell)}” gives no date. Write the date of the last test.`);
    case "failed":
      return { kind: "unreadable", why: `“${shown(cell)}”: the test was failed. Don't fill until it is passed.`, says: "failed" }; // prettier-ignore
    case "out of test":
      return { kind: "unreadable", why: `“${shown(cell)}”: out of test, with no date. Write the date of the last test.`, says: "out of test" }; // prettier-ignore
    default:
      return undefined;
  }
}
