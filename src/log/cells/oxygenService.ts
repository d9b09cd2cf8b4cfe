import type { OxygenService } from "../../cylinders/oxygenService";
import { readOxygenService } from "../../cylinders/readOxygenService";
import { Refusal } from "../../gas/refusal";
import { showsDate } from "../../sheet/numberFormat";
import { ambiguous, BLANK, unknownWord, unreadable, value, type Reading } from "../reading";
import type { RatingMeaning } from "../vocabularies/meanings";
import { NOTHING, type Vocabulary } from "../vocabularies/vocabulary";
import { ofNoUse, plain, sayingNothing, tidy, type Cell } from "./cell";

const YES = /^(?:y|yes|j|ja|oui|o|si|kylla|ok|x|✓|✔|true)$/;
const NO = /^(?:n|no|nein|non|nee|nej|nei|ei|false|✗|✘)$/;

const OXYGEN_CLEAN: OxygenService = { maxOxygen: 1, oxygenClean: true };
const AIR_ONLY: OxygenService = { maxOxygen: undefined, oxygenClean: false };
const TO_FORTY: OxygenService = { maxOxygen: 0.4, oxygenClean: false };

/** What a yes in this column says: that the cylinder is clean for oxygen, or only that it takes nitrox. */
export interface OxygenServiceColumn {
  readonly asks: "oxygen clean" | "nitrox" | "grade";
}

/** Reads a cylinder's oxygen rating; a plain yes or no as the column's heading asks. */
export function readOxygenServiceCell(
  cell: Cell,
  column: OxygenServiceColumn,
  words: Vocabulary<RatingMeaning>,
): Reading<OxygenService> {
  if (typeof cell.value === "object") return ofNoUse(cell, "an oxygen rating");
  if (typeof cell.value === "number") {
    if (showsDate(cell.format))
      return unreadable("A date stands where the oxygen rating belongs. Write AIR, 40 or O2 clean.");
    return rating(cell.value);
  }
  const text = plain(String(cell.value));
  if (YES.test(text)) {
    if (column.asks === "oxygen clean") return value(OXYGEN_CLEAN);
    return ambiguous(
      [TO_FORTY, OXYGEN_CLEAN],
      "Yes to nitrox: premixed up to 40 %, or cleaned for oxygen? Write 40 or O2 clean.",
    );
  }
  if (NO.test(text)) {
    if (column.asks === "nitrox") return value(AIR_ONLY);
    return ambiguous(
      [AIR_ONLY, TO_FORTY],
      "Not cleaned for oxygen, but nothing says how rich it may be filled. Write AIR or 40.",
    );
  }
  const written = tidy(String(cell.value));
  const meanings = words.meaningsOf(written);
  if (meanings.length > 0) return byMeaning(meanings, written);
  return sayingNothing(text) ?? byFigure(written, words);
}

const SERVICE_OF: Readonly<Record<RatingMeaning, OxygenService>> = {
  "oxygen clean": OXYGEN_CLEAN,
  "up to 40": TO_FORTY,
  "air only": AIR_ONLY,
};

function byMeaning(
  meanings: readonly (RatingMeaning | typeof NOTHING)[],
  written: string,
): Reading<OxygenService> {
  const services = meanings.flatMap((meaning) => (meaning === NOTHING ? [] : [SERVICE_OF[meaning]]));
  const [first, second] = services;
  if (first === undefined) return BLANK;
  return second === undefined
    ? value(first)
    : ambiguous(services, `“${written}” does not say how rich: ${meanings.join(" or ")}? Write AIR, 40 or O2 clean.`, "word"); // prettier-ignore
}

/** One figure, as the country's readers have it; else a figure with words of the table around it, if they agree. */
function byFigure(written: string, words: Vocabulary<RatingMeaning>): Reading<OxygenService> {
  const alone = rating(written);
  if (alone.kind === "value") return alone;
  const figures = written.match(FIGURE) ?? [];
  const around = tidy(written.replace(FIGURE, " ").replace(/[()[\]:,;/%≤<=-]+/g, " "));
  const [figure] = figures;
  if (figure === undefined) return unknownWord(written);
  const byFigureAlone = rating(figure.replace(/\s*%/, ""));
  const meanings = words.meaningsOf(around);
  if (figures.length > 1 || byFigureAlone.kind !== "value" || meanings.length === 0) return /[a-z]/i.test(around) ? unknownWord(written) : alone; // prettier-ignore
  const said = meanings.flatMap((meaning) => (meaning === NOTHING ? [] : [SERVICE_OF[meaning]]));
  const agrees = said.some(
    ({ maxOxygen, oxygenClean }) =>
      maxOxygen === byFigureAlone.value.maxOxygen && oxygenClean === byFigureAlone.value.oxygenClean,
  );
  return agrees
    ? byFigureAlone
    : ambiguous([byFigureAlone.value, ...said], `“${written}”: the figure and the words say two things. Write AIR, 40 or O2 clean.`, "word"); // prettier-ignore
}

const FIGURE = /\b\d{1,3}(?:[.,]\d+)?\s*%?/g;

function rating(written: string | number): Reading<OxygenService> {
  try {
    return value(readOxygenService(written));
  } catch (thrown) {
    if (thrown instanceof Refusal) return unreadable(thrown.message);
    throw thrown;
  }
}
