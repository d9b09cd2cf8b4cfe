import { unknown } from "../gas/refusal";
import { readClassStamp, type ClassStamp, type Material } from "./classStamp";
import { countryInWords, type CountryRules, type CylinderRules } from "./countryRules";
import { readMaterial } from "./material";

/** What a log may say of the kind of cylinder; blank or absent where it says nothing. */
export interface CylinderKind {
  readonly cylinderClass?: string | undefined;
  readonly material?: string | undefined;
  readonly alloy?: string | undefined;
}

/**
 * The rules for this kind of cylinder: by its stamp where one is written, else by alloy or material, else those of the
 * country's usual cylinder. Of a dual stamp the stricter. Where rules had to be taken on trust (a permit that is in no
 * table, a class that cannot be read in a country that tells none apart), `assumed` says so.
 * @throws Refusal `unknown` where a class is written that the country's rules do not name.
 */
export function cylinderRules(rules: CountryRules, kind: CylinderKind = {}): CylinderRules {
  const written = (kind.cylinderClass ?? "").trim();
  const stamp = readClassStamp(written);
  const alloy = byAlloy(rules, `${kind.alloy ?? ""} ${stamp?.alloy ?? ""}`);
  if (alloy) return alloy;
  if (written !== "") {
    const found =
      byName(rules, written) ??
      (stamp && byStamp(rules, stamp, kind.material)) ??
      byMaterial(rules, readMaterial(written)) ??
      untold(rules, written);
    return stamp?.unlimitedLife ? withoutServiceLife(found) : found;
  }
  return byMaterial(rules, readMaterial(kind.material ?? "")) ?? usual(rules);
}

function byAlloy(rules: CountryRules, alloy: string): CylinderRules | undefined {
  return rules.cylinders.find((cylinder) => cylinder.alloys?.some((name) => alloy.includes(name)));
}

/** A class that is a word of the country (`TIV`), not a stamp. */
function byName(rules: CountryRules, written: string): CylinderRules | undefined {
  const plain = plainName(written);
  return rules.cylinders.find(({ classes }) => classes.some((name) => plainName(name) === plain));
}

function plainName(name: string): string {
  return name
    .toUpperCase()
    .replace(/^(?:(?:DOT|TC|ICC|CTC)[-/ ]*)+/, "")
    .replace(/[-/ ]/g, "");
}

/** Metal made of nothing that the country tells apart goes by its usual cylinder. */
function byMaterial(rules: CountryRules, material: Material | undefined): CylinderRules | undefined {
  if (material === undefined) return undefined;
  const own = rules.cylinders.find(({ materials }) => materials?.includes(material));
  return own ?? (material !== "composite" && tellsNoneApart(rules) ? usual(rules) : undefined);
}

function byStamp(rules: CountryRules, stamp: ClassStamp, writtenMaterial = ""): CylinderRules | undefined {
  const specific = stamp.marks.filter((mark) => !AUTHORITIES.has(mark));
  for (const marks of [specific, stamp.marks]) {
    const named = rules.cylinders.filter((cylinder) => marks.some((mark) => marksOf(cylinder).has(mark)));
    const strictest = strictestOf(named);
    if (strictest) return strictest;
  }
  const material = stamp.material ?? readMaterial(writtenMaterial);
  if (stamp.permit !== undefined) return byPermit(rules, stamp.permit, material);
  const ofMaterial = rules.cylinders.find(({ classes }) => classes.includes(material?.toUpperCase() ?? ""));
  return ofMaterial ?? (tellsNoneApart(rules) ? (byMaterial(rules, material) ?? usual(rules)) : undefined);
}

/** The terms of a permit that no table holds are not known: the country's general interval is the longest it can have. */
function byPermit(
  rules: CountryRules,
  permit: string,
  material: Material | undefined,
): CylinderRules | undefined {
  const found =
    material === "composite"
      ? byMaterial(rules, material)
      : (rules.cylinders.find(({ anyPermit }) => anyPermit === true) ??
        (tellsNoneApart(rules) ? usual(rules) : undefined));
  return (
    found && {
      ...found,
      assumed: `What permit ${permit} asks for isn't in our table. It is judged by the general interval of ${countryInWords(rules)}: read the permit, which may ask for more.`,
    }
  );
}

/** Marks that say who approved it, or by whose standards it was made, and nothing of the kind. */
const AUTHORITIES: ReadonlySet<string> = new Set(["UN", "CE", "PI", "EN", "BS", "AS"]);

function marksOf(cylinder: CylinderRules): ReadonlySet<string> {
  let marks = MARKS.get(cylinder);
  if (marks === undefined) {
    const stamps = cylinder.classes.flatMap((name) => readClassStamp(name) ?? { marks: [name] });
    marks = new Set(stamps.flatMap((stamp) => ("alloy" in stamp ? [] : stamp.marks)));
    for (const authority of cylinder.notAuthorised === undefined ? AUTHORITIES : []) marks.delete(authority);
    MARKS.set(cylinder, marks);
  }
  return marks;
}
const MARKS = new WeakMap<CylinderRules, Set<string>>();

/** The alloy that cracks before all else; what may be filled before what may not; then the shorter interval. */
function strictestOf(cylinders: readonly CylinderRules[]): CylinderRules | undefined {
  const cracks = cylinders.find(({ eddyCurrent }) => eddyCurrent !== undefined);
  const authorised = cylinders.filter(({ notAuthorised }) => notAuthorised === undefined);
  const months = ({ hydro }: CylinderRules) => hydro?.months ?? Number.POSITIVE_INFINITY;
  const from = authorised.length > 0 ? authorised : cylinders;
  return cracks ?? [...from].sort((one, other) => months(one) - months(other))[0];
}

/** A country that tells no classes of metal apart has one rule for all, whatever class is written. */
function tellsNoneApart(rules: CountryRules): boolean {
  return usual(rules).classes.length === 0;
}

function withoutServiceLife(cylinder: CylinderRules): CylinderRules {
  const { serviceLifeMonths: ended, ...rest } = cylinder;
  return ended === undefined ? cylinder : rest;
}

function untold(rules: CountryRules, written: string): CylinderRules {
  if (!tellsNoneApart(rules)) return unknownClass(rules, written);
  return {
    ...usual(rules),
    assumed: `The class "${written}" isn't known: it is judged as a metal cylinder. Write it as stamped, such as EN 1964 or EN 12245.`,
  };
}

function unknownClass(rules: CountryRules, mark: string): never {
  return unknown(
    `The rules of ${countryInWords(rules)} name no class "${mark}": write it as stamped, such as ${usual(rules).classes[0]}.`,
  );
}

function usual(rules: CountryRules): CylinderRules {
  const [first] = rules.cylinders;
  return first ?? unknown(`The rules of ${countryInWords(rules)} name no cylinder.`);
}
