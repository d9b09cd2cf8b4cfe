import { countryInWords, type CountryRules } from "../../cylinders/countryRules";
import type { Fault } from "../judge/rule";

/** Where EN standards are the country's own. */
const EUROPE = ["BE", "CH", "DE", "DK", "ES", "FI", "FR", "GB", "IT", "NL", "NO"];

/** By their first words, whose each published source is; what is in no line here belongs to the trade as a whole. */
const WHOSE: readonly {
  readonly begins: RegExp;
  readonly countries: readonly string[];
  readonly name: string;
}[] = [
  { begins: /^\d\d CFR|^NOAA|^US /, countries: ["US"], name: "United States" },
  { begins: /^CGA/, countries: ["US", "CA"], name: "United States" },
  { begins: /^Code du sport/, countries: ["FR"], name: "France" },
  { begins: /^Tukes/, countries: ["FI"], name: "Finland" },
  { begins: /^Arbeidstilsynet/, countries: ["NO"], name: "Norway" },
  { begins: /^WorkSafe New Zealand/, countries: ["NZ"], name: "New Zealand" },
  { begins: /^Queensland/, countries: ["AU"], name: "Australia" },
  { begins: /^New Brunswick/, countries: ["CA"], name: "Canada" },
  { begins: /^UK /, countries: ["GB"], name: "United Kingdom" },
  { begins: /^German/, countries: ["DE"], name: "Germany" },
  { begins: /^Dutch/, countries: ["NL"], name: "Netherlands" },
  { begins: /^EN \d|^BS EN /, countries: EUROPE, name: "European standard" },
];

/**
 * The source of a fault as a shop of this country may read it: of several, its own. Where a custom has none there, it
 * says that no rule of the country was found, and whose was taken.
 */
export function sourceFor(rules: CountryRules, { basis, source }: Pick<Fault, "basis" | "source">): string {
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
  const parts = source
    .split("; ")
    .map((part) => ({ part, whose: WHOSE.find(({ begins }) => begins.test(part)) }));
  const foreign = parts.filter(({ whose }) => whose && !whose.countries.includes(rules.country.slice(0, 2)));
  if (foreign.length === 0) return { own: source, taken: source };
  const own = parts.filter((each) => !foreign.includes(each));
  const named = parts.map(({ part, whose }) => (whose ? `${part} (${whose.name})` : part));
  return {
    own: own.some(({ whose }) => whose) ? own.map(({ part }) => part).join("; ") : undefined,
    taken: `no rule of ${countryInWords(rules)} found; taken from ${named.join("; ")}`,
  };
}
