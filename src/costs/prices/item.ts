import { readMix } from "../../gas/readMix";
import { nameMix } from "../../gas/nameMix";
import { Refusal } from "../../gas/refusal";
import type { Mixture } from "../../gas/mixture";
import { plain } from "../../log/cells/cell";
import { wordsOf } from "../../log/headings/headingWords";

/** What a row of a price list is about, banked gas apart. */
export type PlainItem =
  | "oxygen"
  | "helium"
  | "air"
  | "nitrox"
  | "trimix"
  | "fill"
  | "energy"
  | "filter"
  | "service"
  | "flow"
  | "room temperature"
  | "filter temperature"
  | "labour"
  | "time"
  | "time for nitrox"
  | "time for trimix"
  | "time for partial pressure"
  | "booster";

export type Item = { readonly kind: PlainItem } | { readonly kind: "mix"; readonly mix: Mixture };

const ITEMS: readonly (readonly [PlainItem, string])[] = [
  ["oxygen", "oxygen|o2|sauerstoff|oxygene|oxigeno"],
  ["helium", "helium|he|helio"],
  ["air", "air|top gas|compressed air|air fill|air fills|luft|aire"],
  ["nitrox", "nitrox|nitrox fill|nitrox fills|any nitrox|eanx"],
  ["trimix", "trimix|trimix fill|trimix fills|any trimix"],
  ["fill", "fill|any fill|every fill|each fill|filling fee|handling|handling fee"],
  ["energy", "energy|electricity|power|fuel|compressor energy|compressor electricity|compressor power|compressor fuel|motor|strom|electricite|electricidad"],
  ["filter", "filter|filters|filter cartridge|filter cartridges|compressor filter|cartridge|filter life|filtre|filtro"],
  ["service", "service|compressor service|maintenance|wear|oil and service|wartung|entretien|mantenimiento"],
  ["flow", "compressor|compressor flow|compressor delivers|flow|charging rate|delivers|kompressor|compresseur|compresor"],
  ["room temperature", "room|room temperature|compressor room|compressor room temperature|ambient|ambient temperature"],
  ["filter temperature", "filter rated at|filter life holds at|filter life at|filter temperature"],
  ["labour", "labour|labor|staff|wage|wages|staff time|lohn|salaire|personal"],
  ["time", "time|time per fill|fill time|minutes per fill|time for a fill|time for an air fill"],
  ["time for nitrox", "time per nitrox fill|time for a nitrox fill|nitrox time"],
  ["time for trimix", "time per trimix fill|time for a trimix fill|trimix time"],
  ["time for partial pressure", "time per partial pressure fill|time for a partial pressure fill|partial pressure time|blending time"],
  ["booster", "booster|booster pump|boosting"],
]; // prettier-ignore

const BY_WORDS = new Map(
  ITEMS.flatMap(([item, words]) => words.split("|").map((each) => [each, item] as const)),
);
const BANKED = /^(?:bank(?:ed)?|premix(?:ed)?) +|,? +(?:from the bank|bank(?:ed)?|premix(?:ed)?|fills?)$/g;

/** What a cell names that can be priced; undefined for anything else. */
export function itemOf(text: string): Item | undefined {
  const kind = BY_WORDS.get(wordsOf(text).join(" "));
  if (kind) return { kind };
  try {
    return { kind: "mix", mix: readMix(plain(text).replace(BANKED, "")) };
  } catch (thrown) {
    if (thrown instanceof Refusal) return undefined;
    throw thrown;
  }
}

/** One name for one item: two rows with the same name speak of the same thing. */
export function itemName(item: Item): string {
  return item.kind === "mix" ? nameMix(item.mix) : item.kind;
}
