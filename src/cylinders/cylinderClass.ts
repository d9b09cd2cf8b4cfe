import { unknown } from "../gas/refusal";
import { countryInWords, type CountryRules, type CylinderRules } from "./countryRules";

/** What a log may say of the kind of cylinder; blank or absent where it says nothing. */
export interface CylinderKind {
  readonly cylinderClass?: string | undefined;
  readonly material?: string | undefined;
  readonly alloy?: string | undefined;
}

/**
 * The rules for this kind of cylinder: by class where one is written, else by alloy or material, else those of the
 * country's usual cylinder.
 * @throws Refusal `unknown` where a class is written that the country's rules do not name.
 */
export function cylinderRules(rules: CountryRules, kind: CylinderKind = {}): CylinderRules {
  const alloy = byAlloy(rules, kind.alloy);
  if (alloy) return alloy;
  const mark = (kind.cylinderClass ?? "").trim();
  if (mark !== "") return byClass(rules, mark) ?? unknownClass(rules, mark);
  return byMaterial(rules, kind.material) ?? usual(rules);
}

function byAlloy(rules: CountryRules, alloy = ""): CylinderRules | undefined {
  return rules.cylinders.find((cylinder) => cylinder.alloys?.some((name) => alloy.includes(name)));
}

function byMaterial(rules: CountryRules, material = ""): CylinderRules | undefined {
  const name = MATERIALS.find(([pattern]) => pattern.test(material))?.[1];
  return rules.cylinders.find((cylinder) => name !== undefined && cylinder.materials?.includes(name));
}

/** A country that tells no classes apart has one rule for all, whatever class is written. */
function byClass(rules: CountryRules, mark: string): CylinderRules | undefined {
  const plain = plainMark(mark);
  return (
    rules.cylinders.find((cylinder) => cylinder.classes.some((name) => plainMark(name) === plain)) ??
    byMaterial(rules, mark) ??
    (usual(rules).classes.length === 0 ? usual(rules) : undefined)
  );
}

function unknownClass(rules: CountryRules, mark: string): never {
  return unknown(
    `The rules of ${countryInWords(rules)} name no class "${mark}": write it as stamped, such as ${usual(rules).classes[0]}.`,
  );
}

/** `DOT-3AL3000`, `dot 3al`, `TC/3ALM207`: the authority before the class and the pressure behind it are not the class. */
function plainMark(mark: string): string {
  return mark
    .toUpperCase()
    .replace(/^(?:(?:DOT|TC|ICC|CTC)[-/ ]*)+/, "")
    .replace(/(3ALM?|3AAM?|3HT|3A)[- ]*(?!6351)\d{3,4}\+?$/, "$1")
    .replace(/[-/ ]/g, "");
}

function usual(rules: CountryRules): CylinderRules {
  const [first] = rules.cylinders;
  return first ?? unknown(`The rules of ${countryInWords(rules)} name no cylinder.`);
}

const MATERIALS: readonly (readonly [RegExp, string])[] = [
  [/alum|^al$|alu$/i, "aluminium"],
  [/steel|^st$|^fe$|stahl|acier|acero|acciaio/i, "steel"],
  [/comp|carbon|kevlar|aramid|fib/i, "composite"],
];
