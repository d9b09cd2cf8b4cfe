import { trimixBehindDate } from "../../gas/dateTrimix";
import { mixture, OXYGEN, type Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { readMix } from "../../gas/readMix";
import { Refusal } from "../../gas/refusal";
import { showsDate, showsTimeOnly } from "../../sheet/numberFormat";
import type { DateOrder } from "../context";
import { ambiguous, unreadable, value, type Reading } from "../reading";
import { ofNoUse, plain, sayingNothing, shown, tidy, type Cell } from "./cell";
import { numbersIn } from "./numbers";
import { NOTHING, type Vocabulary } from "../vocabularies/vocabulary";

const DAYS_BETWEEN_SYSTEMS = 1462;

/** Reads which gas a cell says, with the doubts a spreadsheet and a hurried hand leave around it. */
export function readMixCell(
  cell: Cell,
  column: { readonly dateOrder: DateOrder | undefined },
  words: Vocabulary<"air" | "oxygen">,
): Reading<Mixture> {
  if (typeof cell.value === "number") return fromNumber(cell.value, cell, column.dateOrder);
  if (typeof cell.value !== "string") return ofNoUse(cell, "a mix such as air, EAN32 or TX 18/45");
  const text = plain(cell.value);
  const nothing = sayingNothing(text);
  if (nothing) return nothing;
  const [gas] = words.meaningsOf(text);
  if (gas !== undefined && gas !== NOTHING) return attempt(() => readMix(gas));
  if (/^0+2$/.test(text)) return zeroForO(shown(cell));
  if (/\bmax\b|\bonly\b/.test(text))
    return unreadable(`“${shown(cell)}” is a limit, not a mix. Write what was filled.`);
  if (/^(?:normoxic|normoxisch|normoxique)/.test(text) && !/\d/.test(text))
    return unreadable(`“${shown(cell)}” does not say how much helium. Write the mix, such as TX 21/35.`);
  return trimixWithDot(text) ?? twoReadings(text) ?? asWritten(tidy(cell.value), text);
}

/** The helium fraction from a column of its own, written as oxygen is: a fraction or per cent. */
export function readHelium(cell: Cell): Reading<number> {
  const wanted = "helium in per cent";
  if (typeof cell.value !== "string" && typeof cell.value !== "number") return ofNoUse(cell, wanted);
  if (typeof cell.value === "number") {
    return showsDate(cell.format)
      ? unreadable(`A date stands where ${wanted} belongs. Write the number.`)
      : helium(cell.value, cell);
  }
  const text = plain(cell.value);
  const nothing = sayingNothing(text);
  if (nothing) return nothing;
  const [number, other] = numbersIn(
    text.replace(/^(?:he|helium)\s*|\s*(?:%|he|helium)\s*$/g, "").replace(/\s*%$/, ""),
  );
  if (number === undefined || other !== undefined) return ofNoUse(cell, wanted);
  return helium(text.includes("%") ? number / 100 : number, cell);
}

function helium(number: number, cell: Cell): Reading<number> {
  if (number >= 0 && number < 1) return value(number);
  if (number >= 1 && number <= 100) return value(number / 100);
  return unreadable(`Helium ${shown(cell)}: it is 0 to 100 per cent.`);
}

/** Oxygen from one column and helium from another as one mix. */
export function withHelium(mix: Reading<Mixture>, helium: Reading<number>): Reading<Mixture> {
  if (helium.kind === "blank" || mix.kind === "blank") return mix;
  if (helium.kind !== "value")
    return helium.kind === "unreadable" ? unreadable(`The helium beside it: ${helium.why}`) : mix;
  if (mix.kind !== "value" || helium.value === 0) return mix;
  const together = attempt(() => mixture(mix.value.oxygen, helium.value));
  if (mix.value.helium === 0) return together;
  return Math.abs(mix.value.helium - helium.value) < 0.0005
    ? mix
    : ambiguous(
        [mix.value, ...(together.kind === "value" ? [together.value] : [])],
        `The mix says ${nameMix(mix.value)}, the helium beside it ${Number((helium.value * 100).toFixed(1))} %.`,
      );
}

function fromNumber(number: number, cell: Cell, dateOrder: DateOrder | undefined): Reading<Mixture> {
  if (number === 0) return unreadable("The mix is 0. Write which gas it is, such as air or EAN32.");
  if (number === 2) return zeroForO(shown(cell));
  if (showsTimeOnly(cell.format)) return fromTime(number);
  if (showsDate(cell.format) || number > 100) return fromDate(number, cell, dateOrder);
  return trimixWithDot(String(number)) ?? attempt(() => readMix(number));
}

/** 18.45 is more often 18/45 than an analysis to a hundredth, as nothing below air is filled but trimix. */
function trimixWithDot(text: string): Reading<Mixture> | undefined {
  const [, oxygen, helium] = /^(\d{1,2})[.,]([1-9]\d)$/.exec(text)?.map(Number) ?? [];
  if (oxygen === undefined || helium === undefined || oxygen < 5 || oxygen > 19) return undefined;
  return ambiguous(
    [mixture(oxygen / 100, helium / 100), mixture((oxygen + helium / 100) / 100)],
    `“${text}”: a trimix, or oxygen in per cent? Write TX ${oxygen}/${helium}, or the per cent with one decimal.`,
  );
}

/** 18:45 typed for 18/45 is kept as a time of day. */
function fromTime(number: number): Reading<Mixture> {
  const minutes = Math.round(number * 1440);
  const text = `TX ${Math.floor(minutes / 60)}/${minutes % 60}`;
  const read = attempt(() => readMix(text));
  return read.kind === "value"
    ? value(read.value, `${text}, which the spreadsheet had turned into a time of day`)
    : unreadable("A time of day stands where a mix belongs. Write the mix.");
}

/** 10/50 typed into a spreadsheet is kept as 1 October 1950, 12/25 as Christmas of the year of typing. */
function fromDate(serial: number, cell: Cell, dateOrder: DateOrder | undefined): Reading<Mixture> {
  const typed = trimixBehindDate(serial + (cell.dateSystem === 1904 ? DAYS_BETWEEN_SYSTEMS : 0));
  const mixes = typed.map(({ oxygen, helium }) => mixture(oxygen / 100, helium / 100));
  const [first, second] = mixes;
  if (!first) return unreadable(`A date stands where a mix belongs. Write the mix, such as TX 10/50.`);
  const chosen =
    second === undefined || dateOrder === "month first"
      ? first
      : dateOrder === "day first"
        ? second
        : undefined;
  return chosen
    ? value(chosen, `${nameMix(chosen)}, which the spreadsheet had turned into a date`)
    : ambiguous(
        mixes,
        "A trimix that the spreadsheet turned into a date; either number may be the oxygen. Write it as TX 10/50.",
      );
}

function zeroForO(text: string): Reading<Mixture> {
  return ambiguous([OXYGEN], `“${text}”: oxygen, typed with a zero? Write O2, or the mix.`);
}

const LEAST_NITROX = 20;

/** `32/68` may be oxygen and nitrogen; `31.8/32.1` two analyses; `30-32` a range. */
function twoReadings(text: string): Reading<Mixture> | undefined {
  const parts = /^(\d+(?:[.,]\d+)?)\s*%?\s*(\/|-)\s*(\d+(?:[.,]\d+)?)\s*%?$/.exec(text);
  if (!parts) return undefined;
  const [one, two] = [numbersIn(parts[1]!)[0]!, numbersIn(parts[3]!)[0]!];
  if (one <= 1 || one > 100 || two > 100) return undefined;
  const nitrox = (percent: number): Mixture => mixture(percent / 100);
  const trimix = one + two <= 100 ? [mixture(one / 100, two / 100)] : [];
  if (parts[2] === "-") {
    if (two <= one) return undefined;
    return one < LEAST_NITROX && trimix.length > 0
      ? ambiguous(
          [...trimix, nitrox(one), nitrox(two)],
          `“${text}”: a trimix, or a range? Write TX ${one}/${two}.`,
        )
      : ambiguous([nitrox(one), nitrox(two)], `“${text}” is a range, not a mix. Write what was analysed.`);
  }
  if (one + two === 100)
    return ambiguous(
      [nitrox(one), ...trimix],
      `“${text}”: oxygen and nitrogen, or oxygen and helium? Write EAN${one} or heliox ${one}.`,
    );
  const decimals = /[.,]/.test(text);
  if (decimals && Math.abs(one - two) <= 1.5 && Math.min(one, two) >= 20)
    return ambiguous(
      [nitrox(one), nitrox(two), ...trimix],
      `“${text}”: two analyses, or a trimix? Write TX before a trimix, or one analysis.`,
    );
  return undefined;
}

/** As the one mix reader has it; else in the words of the trade that say the same. */
function asWritten(tidied: string, text: string): Reading<Mixture> {
  const read = attempt(() => readMix(tidied));
  if (read.kind === "value") return read;
  const reworded = IN_OTHER_WORDS.reduce((words, [from, to]) => words.replace(from, to), text);
  return reworded === text
    ? read
    : firstValue(
        attempt(() => readMix(reworded)),
        read,
      );
}

function firstValue<T>(one: Reading<T>, other: Reading<T>): Reading<T> {
  return one.kind === "value" ? one : other;
}

/** Other languages, abbreviations, and words that add nothing. */
const IN_OTHER_WORDS: readonly (readonly [RegExp, string])[] = [
  [/^(?:compressed |breathing )?air(?: \(?2(?:1|0[.,]9\d?) ?%?\)?)?$/, "air"],
  [/^(?:pure |100 ?% ?)?(?:oxygen|o2)(?: 100 ?%?)?$/, "oxygen"],
  [/^\((.*)\)$/, "$1"],
  [/^(?:bank(?:ed)?|premix(?:ed)?) +|,? +(?:bank(?:ed)?|premix(?:ed)?|mix|gas|fill)$/g, ""],
  [/^(?:fo2|o2|oxygen|ppm o2) *[:=]? *(?=[\d.,]+ *%?$)/, ""],
  [/^([\d.,]+) *%? *(?:o2|oxygen|nitrox|ean|nx)$/, "$1 %"],
  [/^(?:tmx|trx|tri|t|helitrox|triox) *(?=\d)/, "tx "],
  [/^(\d[\d.,]*\/\d[\d.,]*) *(?:tx|tmx|trimix)$/, "tx $1"],
];

function attempt(act: () => Mixture): Reading<Mixture> {
  try {
    return value(act());
  } catch (thrown) {
    if (thrown instanceof Refusal) return unreadable(thrown.message);
    throw thrown;
  }
}
