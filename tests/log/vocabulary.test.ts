import { describe, expect, it } from "vitest";
import { z } from "zod";
import { readCell, UNSETTLED, type Kind } from "../../src/log/fieldKinds";
import { wordsOf } from "../../src/log/headings/headingWords";
import * as languages from "../../src/log/vocabularies/languages";
import { LogWords } from "../../src/log/vocabularies/logWords";
import * as meanings from "../../src/log/vocabularies/meanings";
import { phraseForm, spellingsOf } from "../../src/log/vocabularies/spelling";
import da from "#shared/vocabulary/da.json";
import de from "#shared/vocabulary/de.json";
import en from "#shared/vocabulary/en.json";
import es from "#shared/vocabulary/es.json";
import fi from "#shared/vocabulary/fi.json";
import fr from "#shared/vocabulary/fr.json";
import it_ from "#shared/vocabulary/it.json";
import ja from "#shared/vocabulary/ja.json";
import nl from "#shared/vocabulary/nl.json";
import no from "#shared/vocabulary/no.json";

const phrase = z.string().min(1).trim();
const phrases = (known: readonly string[]) =>
  z.record(
    z.string().refine((key) => key.split("|").every((meaning) => known.includes(meaning))),
    z.array(phrase).min(1),
  );
const file = z.strictObject({
  language: z.string().length(2),
  name: phrase,
  source: z.string().regex(/from memory|https?:/),
  headings: z.record(phrase, z.array(phrase).min(1)),
  status: phrases(meanings.STATUS_MEANINGS),
  method: phrases(meanings.METHOD_MEANINGS),
  rating: phrases(meanings.RATING_MEANINGS),
  test: phrases(meanings.TEST_MEANINGS),
  tick: phrases(meanings.TICK_MEANINGS),
  signature: phrases(meanings.SIGNATURE_MEANINGS),
  card: phrases(meanings.CARD_MEANINGS),
  mix: phrases(meanings.MIX_MEANINGS),
  unsaid: phrases(meanings.UNSAID_MEANINGS),
  months: z.union([z.array(z.array(phrase).min(1)).length(12), z.array(z.never()).length(0)]),
  danger: z.array(phrase),
});

const TABLES = {
  status: [languages.STATUS_WORDS, meanings.statusWords],
  method: [languages.METHOD_WORDS, meanings.methodWords],
  rating: [languages.RATING_WORDS, meanings.ratingWords],
  test: [languages.TEST_WORDS, meanings.testWords],
  tick: [languages.TICK_WORDS, meanings.tickWords],
  signature: [languages.SIGNATURE_WORDS, meanings.signatureWords],
  card: [languages.CARD_WORDS, meanings.cardWords],
  mix: [languages.MIX_WORDS, meanings.mixWords],
} as const;

describe("the files of the vocabularies", () => {
  it.each([da, de, en, es, fi, fr, it_, ja, nl, no].map((each) => [each.name, each] as const))(
    "%s keeps to the form, and names its source",
    (_, each) => {
      expect(() => file.parse(each)).not.toThrow();
    },
  );

  it.each(languages.LANGUAGES)("no word of %s has two meanings unless it is marked so", (language) => {
    for (const [table] of Object.values(TABLES)) {
      const seen = new Map<string, string>();
      for (const [key, list] of Object.entries(table[language]))
        for (const spelling of list.flatMap(spellingsOf)) {
          const form = phraseForm(spelling);
          expect(form, spelling).not.toBe("");
          expect(seen.get(form) ?? key, `${spelling} in ${language}`).toBe(key);
          seen.set(form, key);
        }
    }
  });

  it("no heading means one thing in one language and another in the next", () => {
    const seen = new Map<string, string>();
    for (const language of languages.LANGUAGES)
      for (const [key, list] of Object.entries(languages.HEADINGS[language]))
        for (const spelling of list.flatMap(spellingsOf)) {
          const form = wordsOf(spelling).join(" ");
          const meaning = key.split("+").sort().join("+");
          expect(seen.get(form) ?? meaning, `${spelling} in ${language}`).toBe(meaning);
          seen.set(form, meaning);
        }
  });

  it("a word of two languages with two meanings is open in a log of both", () => {
    expect(meanings.statusWords(["fr", "it"]).meaningsOf("perso")).toEqual(["no status", "away"]);
    expect(meanings.statusWords(["fr"]).meaningsOf("perso")).toEqual(["no status"]);
  });
});

const words = new LogWords();
const read = (kind: Kind, value: string | number | boolean, of = words) => {
  const reading = readCell({ value, format: undefined, dateSystem: 1900 }, kind, { ...UNSETTLED, words: of });
  if (reading.kind === "value") return reading.value;
  if (reading.kind === "unreadable") return reading.says ?? "unreadable";
  return reading.kind === "ambiguous" ? [...reading.choices] : reading.kind;
};
const statusOf = (text: string) => {
  const said = read("status", text);
  return typeof said === "object" && said !== null && "meaning" in said ? said.meaning : said;
};

describe("statuses", () => {
  it.each([
    ["COND.", "out of service"],
    ["OOS", "out of service"],
    ["O.O.S.", "out of service"],
    ["do not use", "out of service"],
    ["DNF!", "out of service"],
    ["quarantine", "out of service"],
    ["drilled", "out of service"],
    ["BER", "out of service"],
    ["red-tag", "out of service"],
    ["Neck  crack", "out of service"],
    ["Afgekeurd", "out of service"],
    ["durchgefallen", "out of service"],
    ["ausser Betrieb", "out of service"],
    ["außer Betrieb", "out of service"],
    ["RÉFORMÉ", "out of service"],
    ["hylätty", "out of service"],
    ["Må ikke fyldes", "out of service"],
    ["No good - condemned", "out of service"],
    ["Not to be filled", "out of service"],
    ["No longer in service", "out of service"],
    ["Condemned 2025-03", "out of service"],
    ["condemned (see Bob)", "out of service"],
    ["not condemned", "fine"],
    ["In Service", "fine"],
    ["i.O.", "fine"],
    ["rental", "no status"],
    ["at hydro", "away"],
    ["sold", "away"],
    ["hydro due", "test due"],
    ["dropped 2026-01", "damaged"],
    ["in service; dropped", "damaged"],
  ])("%s: %s", (text, meaning) => {
    expect(statusOf(text)).toBe(meaning);
  });

  it.each([
    "qwx",
    "condemned?",
    "Condemned: no",
    "was condemned, now ok",
    "on the condemned list",
    "ok to condemn",
    "uncondemned",
  ])("%s is not known", (text) => {
    expect(statusOf(text)).toBe("unknown word");
  });

  it("takes a word in the languages of the log only", () => {
    expect(read("status", "Brand", new LogWords(["en"]))).toBe("unknown word");
    expect(read("status", "brand", new LogWords(["de"]))).toMatchObject({ meaning: "damaged" });
    expect(read("status", "brand new", new LogWords(["en", "de"]))).toMatchObject({ meaning: "fine" });
  });
});

describe("words of the shop's own", () => {
  const own = new LogWords(
    ["en"],
    [
      { field: "status", word: "Shelf B", means: "out of service" },
      { field: "status", word: "condemned", means: "fine" },
      { field: "method", word: "decant", means: "premix" },
    ],
  );
  it("mean what the shop said, and never soften a word of the tables", () => {
    expect(read("status", "shelf b", own)).toMatchObject({ meaning: "out of service" });
    expect(read("status", "condemned", own)).toMatchObject({ meaning: "out of service" });
    expect(read("method", "Decant", own)).toBe("premix");
  });
});

describe("methods", () => {
  it.each([
    ["Comp", "air"],
    ["Druckluft", "air"],
    ["Vormischung", "premix"],
    ["p.p.", "partial pressure"],
    ["Bank EAN32", "premix"],
    ["partieel", "partial pressure"],
    ["membraan", "membrane"],
    ["decant", ["air", "premix", "partial pressure"]],
    ["transfill", ["air", "premix", "partial pressure"]],
    ["cascade", ["air", "premix", "partial pressure"]],
    ["booster", ["premix", "partial pressure"]],
    ["topoff", ["air", "premix"]],
    ["fresh magic", "unknown word"],
  ])("%s: %j", (text, method) => {
    expect(read("method", text)).toEqual(method);
  });
});

describe("ratings", () => {
  const clean = { maxOxygen: 1, oxygenClean: true };
  const forty = { maxOxygen: 0.4, oxygenClean: false };
  const air = { maxOxygen: undefined, oxygenClean: false };
  it.each([
    ["100% (O2 clean)", clean],
    ["O2 CLEAN 100%", clean],
    ["O2 cleaned (100%)", clean],
    ["O2 service 100%", clean],
    ["sauerstoffrein", clean],
    ["zuurstofschoon", clean],
    ["nur Luft", air],
    ["max 40 %", forty],
    ["tot 40", forty],
    ["nitrox ready", [forty, clean]],
    ["40 % O2 clean", [forty, clean]],
    ["not O2 clean", [air, forty]],
    ["sparkling", "unknown word"],
    ["sparkling 40", "unknown word"],
  ])("%s: %j", (text, service) => {
    expect(read("oxygen service", text)).toEqual(service);
  });
});

describe("ticks, signatures and cards", () => {
  it.each([
    ["external check", "FAIL bulge", { passed: false, written: "FAIL bulge" }],
    ["external check", "i.O.", { passed: true, written: "i.O." }],
    ["external check", "no", "blank"],
    ["external check", "whatever", "unknown word"],
    ["signature", "refused to sign", "blank"],
    ["signature", "Pending", "blank"],
    ["signature", "J. Ruiz", "J. Ruiz"],
    ["signature", "Ann van der Berg", "Ann van der Berg"],
    ["signature", "bk", "bk"],
    ["signature", "✓", "✓"],
    ["signature", "with the boss", "unknown word"],
    ["card", "no card", "blank"],
    ["card", "expired 2019", "blank"],
    ["card", "N-12345", "N-12345"],
    ["card", "nitrox 12345", "nitrox 12345"],
    ["card", "saw something", "unknown word"],
    ["consent", "verbal", "verbal"],
    ["consent", "verweigert", "blank"],
  ] as const)("%s %s: %j", (kind, text, wanted) => {
    expect(read(kind, text)).toEqual(wanted);
  });
});

describe("words in a column of tests", () => {
  it.each([
    ["OUT", "out of test"],
    ["verlopen", "out of test"],
    ["failed", "failed"],
    ["ok", "unreadable"],
    ["soonish", "unknown word"],
    ["??", "unreadable"],
  ])("%s: %s", (text, wanted) => {
    expect(read("stamp", text)).toBe(wanted);
  });
});
