import { refuse, unknown } from "../gas/refusal";
import type { OxygenService } from "./oxygenService";

/**
 * A cylinder's oxygen rating as shops write it: `AIR`, `EAN40 max`, `40`, `40 %`, `0.4`, `23.5`, `G1`, `G2`,
 * `O2 clean`, `100`. Grades follow the NOAA Diving Manual ch. 15 (oxygen service, or premix to 40 %) and the French
 * and German marks.
 *
 * @throws Refusal `unknown` for what leaves the limit open (`nitrox`, `Y`); `unusable` for what is no rating.
 */
export function readOxygenService(rating: string | number): OxygenService {
  if (typeof rating === "number") return ofPercent(rating, String(rating));
  const text = rating.normalize("NFC").replace(/\s+/g, " ").trim();
  const plain = text
    .slice(0, LONGEST)
    .toLowerCase()
    .replace(/[._-]/g, (mark) => (mark === "." ? "." : " "));
  const grade = GRADES.find(([pattern]) => pattern.test(plain))?.[1];
  if (grade) return grade;
  const doubt = DOUBTS.find(([pattern]) => pattern.test(plain))?.[1];
  if (doubt) return unknown(`"${text}" ${doubt}: ${WRITE}.`);
  const number = LIMIT.exec(plain.replace(/(\d),(\d)/g, "$1.$2"))?.[1];
  return number === undefined
    ? refuse(`"${text.slice(0, LONGEST)}" is not an oxygen rating: ${WRITE}.`)
    : ofPercent(Number(number), text);
}

const LONGEST = 60;
const WRITE = "write AIR, 40 or O2 clean";

const AIR_ONLY: OxygenService = { maxOxygen: undefined, oxygenClean: false };
const TO_FORTY: OxygenService = { maxOxygen: 0.4, oxygenClean: false };
const OXYGEN_CLEAN: OxygenService = { maxOxygen: 1, oxygenClean: true };

const GRADES: readonly (readonly [RegExp, OxygenService])[] = [
  [/^(compressed )?air( only)?$|^air use( only)?$|^druckluft( tg)?$|^pressluft$/, AIR_ONLY],
  [/^(g|group|groupe|gr) ?2$/, TO_FORTY],
  [/^(g|group|groupe|gr) ?1$/, OXYGEN_CLEAN],
  [
    /^(o2|oxygen|o₂)( ?(clean(ed)?|serv(ice)?|compatible|ok|100 ?%?))?$|^oc$|^sauerstoff( tg)?$/,
    OXYGEN_CLEAN,
  ],
];

/** What shops write that says less than it seems to. */
const DOUBTS: readonly (readonly [RegExp, string])[] = [
  [/^0 ?2/, "may be oxygen typed with a zero"],
  [/^(y|yes|ja|oui|si|sí|ok|x|✓|✔|true)$/, "does not say how rich: oxygen clean, or nitrox to 40 %"],
  [/^(n|no|nein|non|none|false)$/, "does not say how rich: air only, or nitrox without pure oxygen"],
  [/^(nitrox|ean|eanx|nx|clean)$/, "does not say how rich"],
  [/^not? .*clean|^unclean|^dirty/, "says what it is not, and no limit"],
];

/** One number with what usually stands around it, and nothing else. */
const LIMIT =
  /^(?:suitable for |max(?:imum)? |up to |<=? ?|≤ ?|ean ?x? ?|nx ?|nitrox |premix )*(\d{1,3}(?:\.\d+)?) ?(?:%|percent|per cent)?(?: ?(?:o2|max(?:imum)?|only|nitrox|premix))*$/;

function ofPercent(number: number, written: string): OxygenService {
  const percent = number >= 0.05 && number <= 1 ? number * 100 : number;
  if (!(percent >= 20 && percent <= 100)) {
    return refuse(`An oxygen rating of ${written} cannot be: ${WRITE}.`);
  }
  if (percent <= 21) return AIR_ONLY;
  return percent === 100
    ? OXYGEN_CLEAN
    : { maxOxygen: Number((percent / 100).toFixed(6)), oxygenClean: false };
}
