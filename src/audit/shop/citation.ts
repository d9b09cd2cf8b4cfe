import {
  countryInWords,
  COUNTRIES,
  countryRules,
  type Basis,
  type CountryRules,
  type Standard,
} from "../../cylinders/countryRules";

/** What a fault or a figure rests on. */
export interface Said {
  readonly basis: Basis;
  readonly source: string;
}

/** Every standard that is some country's own. */
const STANDARDS = COUNTRIES.flatMap(({ code }) => countryRules(code).standards);

/** Whether a source that is law in some countries is so here; where it is not, what it says is practice. */
export function basisHere({ standards }: CountryRules, source: string): Basis {
  const law = standards.filter(({ law }) => law);
  return source.split("; ").some((part) => published(part, law)) ? "law" : "practice";
}

/** Who published this; what none of them did belongs to the trade as a whole. */
function published(part: string, by: readonly Standard[]): Standard | undefined {
  return by.find(({ begins }) => part.startsWith(begins));
}

/**
 * The source of a fault as a shop of this country may read it: of several, its own. Where a custom has none there, it
 * says that no rule of the country was found, and whose was taken.
 */
export function sourceFor(rules: CountryRules, { basis, source }: Said): string {
  const { own, taken } = known(source, rules);
  return own ?? (basis === "practice" ? taken : source);
}

/** The parts of a source that are the country's own, where any is; and the words for having taken them from elsewhere. */
interface Read {
  readonly own: string | undefined;
  readonly taken: string;
}

/** Many findings have few sources. */
const KNOWN = new WeakMap<CountryRules, Map<string, Read>>();

function known(source: string, rules: CountryRules): Read {
  let bySource = KNOWN.get(rules);
  if (bySource === undefined) KNOWN.set(rules, (bySource = new Map()));
  let found = bySource.get(source);
  if (found === undefined) bySource.set(source, (found = read(source, rules)));
  return found;
}

function read(source: string, rules: CountryRules): Read {
  const parts = source.split("; ").map((part) => ({ part, whose: published(part, STANDARDS) }));
  const foreign = parts.filter(({ part, whose }) => whose && !published(part, rules.standards));
  if (foreign.length === 0) return { own: source, taken: source };
  const own = parts.filter((each) => !foreign.includes(each));
  const named = parts.map(({ part, whose }) => (whose ? `${part} (${whose.of})` : part));
  return {
    own: own.some(({ whose }) => whose) ? own.map(({ part }) => part).join("; ") : undefined,
    taken: `no rule of ${countryInWords(rules)} found; taken from ${named.join("; ")}`,
  };
}
