import { trimixBehindDate } from "./dateTrimix";
import { AIR, HELIUM, OXYGEN, type Mixture } from "./mixture";
import { refuse } from "./refusal";

/** Below this much oxygen nothing is a nitrox, and a number is more likely a slip. */
export const LEAST_OXYGEN_PERCENT = 5;

const PURE = new Map<string, Mixture>([
  ["air", AIR],
  ["o2", OXYGEN],
  ["oxygen", OXYGEN],
  ["he", HELIUM],
  ["helium", HELIUM],
]);

type Family = "nitrox" | "trimix" | "heliox";
const FAMILIES = new Map<string, Family>([
  ["ean", "nitrox"],
  ["eanx", "nitrox"],
  ["nx", "nitrox"],
  ["nitrox", "nitrox"],
  ["tx", "trimix"],
  ["trimix", "trimix"],
  ["heliox", "heliox"],
]);

const NUMBER = /^(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
const WAYS_TO_WRITE = "write air, EAN32, TX 18/45, heliox 21, oxygen or helium";

/**
 * Reads which gas a cell says.
 *
 * - A number: 0.05 to 1 is the oxygen fraction, 5 to 100 oxygen per cent. Text that holds only a number likewise.
 * - Text, in any case, spaces and hyphens free: "air", "O2", "EAN32", "nitrox 32", "31,8 %", "21/35", "TX 18 45",
 *   "18/45/37", "heliox 21".
 *
 * @throws Refusal with what was found and what to write instead.
 */
export function readMix(raw: string | number): Mixture {
  return typeof raw === "number" ? fromNumber(raw) : fromText(raw);
}

function fromNumber(number: number): Mixture {
  if (number >= 0.05 && number <= 1) return { oxygen: number, helium: 0 };
  if (number >= LEAST_OXYGEN_PERCENT && number <= 100) return { oxygen: number / 100, helium: 0 };
  if (number === 0) refuse("The mix is blank (or 0): say which gas it is, such as air or EAN32.");
  if (number > 100) refuse(`Mix ${number}: ${trimixAsDate(number)}`);
  if (!(number > 0)) refuse(`Oxygen ${number}: ${WAYS_TO_WRITE}.`);
  return refuse(`Oxygen ${number}: write 0.32, 32 or EAN32.`);
}

function trimixAsDate(serial: number): string {
  const why = "is almost always a trimix that the spreadsheet turned into a date";
  const mixes = trimixBehindDate(serial).map(({ oxygen, helium }) => `TX ${oxygen}/${helium}`);
  return mixes.length > 0
    ? `a number above 100 ${why}. Type ${mixes.join(" or ")}, whichever it was.`
    : `a number above 100 ${why} (10/50 becomes 1 October 1950). Type it as TX 10/50.`;
}

function fromText(raw: string): Mixture {
  // NFKC turns the typesetter's spaces, subscripts and full-width characters into plain ones.
  const text = raw
    .normalize("NFKC")
    .replace(/[\u2010-\u2015\u2212]/g, "-")
    .trim()
    .toLowerCase();
  const shown = raw.trim();
  if (text === "") refuse("The mix is blank: say which gas it is, such as air or EAN32.");
  const pure = PURE.get(text.replace(/[\s-]/g, ""));
  if (pure) return pure;

  const joined = text.replace(/([a-z])[\s-]+(?=[a-z])/g, "$1");
  const [, word = "", rest = ""] = /^([a-z]*)(.*)$/s.exec(joined) ?? [];
  if (word === "") return fromNumbers(shown, rest.trim());
  const family = FAMILIES.get(word) ?? refuse(notAMix(shown, word));
  return READERS[family](shown, rest.replace(/^[\s-]+/, ""));
}

function notAMix(shown: string, word: string): string {
  if (word === "empty")
    return `"${shown}" says how much is in the cylinder, not which gas: ${WAYS_TO_WRITE}.`;
  if (word === "heo")
    return `"${shown}": the trade does not agree which number comes first. Write heliox 21, with the oxygen.`;
  if (word === "argon" || word === "ar") return `"${shown}" is not a breathing gas: ${WAYS_TO_WRITE}.`;
  return `"${shown}" is not a mix: ${WAYS_TO_WRITE}.`;
}

/** Without a word in front: a number, a per cent, or a trimix with slashes. */
function fromNumbers(shown: string, text: string): Mixture {
  if (text.includes("/")) return bareTrimix(shown, text.split("/"));
  const percent = /^(.*?)\s*%$/.exec(text);
  if (percent) return nitrox(shown, numberIn(shown, percent[1]!));
  if (NUMBER.test(text)) return fromNumber(numberIn(shown, text));
  const two = text.split(/[\s-]+/).filter((part) => part !== "");
  if (two.length === 2 && two.every((part) => NUMBER.test(part)) && !text.startsWith("-"))
    return refuse(`"${shown}": two numbers could be anything. For a trimix write TX ${two[0]}/${two[1]}.`);
  return refuse(`"${shown}" is not a mix: ${WAYS_TO_WRITE}.`);
}

/** A pair that makes 100 is a heliox, or a nitrox with its nitrogen written out: they are hundreds of feet apart. */
function bareTrimix(shown: string, parts: readonly string[]): Mixture {
  const mix = trimix(shown, parts);
  const { oxygen, helium } = mix;
  if (parts.length === 2 && Math.abs(oxygen + helium - 1) < 1e-9 && helium > 0) {
    const percent = Number((oxygen * 100).toFixed(4));
    refuse(
      `"${shown}" can be heliox or nitrox: write TX ${percent}/${Number((helium * 100).toFixed(4))} for oxygen and helium, or EAN${percent} for nitrox.`,
    );
  }
  return mix;
}

const READERS: Readonly<Record<Family, (shown: string, text: string) => Mixture>> = {
  nitrox: (shown, text) => {
    if (text === "") refuse(`"${shown}" does not say how much oxygen: write EAN32, for example.`);
    if (text.includes("/")) refuse(`"${shown}": a nitrox holds no helium. For a trimix write TX ${text}.`);
    return nitrox(shown, numberIn(shown, withoutPercent(text)));
  },
  trimix: (shown, text) => {
    const parts = text.split(text.includes("/") ? "/" : /[\s-]+/).filter((part) => part !== "");
    if (parts.length < 2)
      refuse(`"${shown}" does not say how much oxygen and helium: write TX 18/45, for example.`);
    return trimix(shown, parts);
  },
  heliox: (shown, text) => {
    if (text === "") refuse(`"${shown}" does not say how much oxygen: write heliox 21, for example.`);
    const single = withoutPercent(text);
    if (/\d[\s/-]+\d/.test(single))
      refuse(
        `"${shown}": the trade does not agree which number comes first. Write heliox 21, with the oxygen only.`,
      );
    const oxygen = numberIn(shown, single);
    if (!(oxygen > 1 && oxygen <= 100))
      refuse(`"${shown}": the oxygen of a heliox is above 1, at most 100 %. Write heliox 21, for example.`);
    return { oxygen: oxygen / 100, helium: (100 - oxygen) / 100 };
  },
};

function nitrox(shown: string, oxygenPercent: number): Mixture {
  if (oxygenPercent >= LEAST_OXYGEN_PERCENT && oxygenPercent <= 100)
    return { oxygen: oxygenPercent / 100, helium: 0 };
  return refuse(`"${shown}": oxygen is 5 to 100 per cent. Write 0.32, 32 or EAN32.`);
}

/** Oxygen and helium per cent, and the nitrogen where it is stated: each may be rounded to a tenth. */
function trimix(shown: string, parts: readonly string[]): Mixture {
  const [oxygen = 0, helium = 0, nitrogen] = parts.map((part) => numberIn(shown, withoutPercent(part)));
  if (parts.length > 3) refuse(`"${shown}" is not a mix: a trimix is oxygen/helium, such as TX 18/45.`);
  if (oxygen <= 1)
    refuse(
      `"${shown}": the oxygen of a trimix comes first, in per cent and above 1. Write TX 18/45, for example.`,
    );
  if (oxygen + helium > 100)
    refuse(`"${shown}": ${oxygen} % oxygen and ${helium} % helium are more than 100 %. Check both.`);
  if (nitrogen !== undefined && Math.abs(oxygen + helium + nitrogen - 100) > 0.1 + 1e-9)
    refuse(
      `"${shown}" adds up to ${Number((oxygen + helium + nitrogen).toFixed(2))} %, not 100. Write oxygen/helium, such as TX 18/45.`,
    );
  return { oxygen: oxygen / 100, helium: helium / 100 };
}

function withoutPercent(text: string): string {
  return text.replace(/\s*%\s*$/, "");
}

function numberIn(shown: string, text: string): number {
  const trimmed = text.trim();
  if (!NUMBER.test(trimmed)) refuse(`"${shown}" is not a mix: ${WAYS_TO_WRITE}.`);
  return Number(trimmed.replace(",", "."));
}
