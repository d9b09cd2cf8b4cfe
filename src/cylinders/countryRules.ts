import au from "#shared/rules/au.json";
import be from "#shared/rules/be.json";
import caNb from "#shared/rules/ca-nb.json";
import ca from "#shared/rules/ca.json";
import ch from "#shared/rules/ch.json";
import composite from "#shared/rules/composite.json";
import de from "#shared/rules/de.json";
import dk from "#shared/rules/dk.json";
import es from "#shared/rules/es.json";
import fi from "#shared/rules/fi.json";
import fr from "#shared/rules/fr.json";
import gb from "#shared/rules/gb.json";
import hk from "#shared/rules/hk.json";
import it from "#shared/rules/it.json";
import jp from "#shared/rules/jp.json";
import nl from "#shared/rules/nl.json";
import no from "#shared/rules/no.json";
import nz from "#shared/rules/nz.json";
import us from "#shared/rules/us.json";
import xx from "#shared/rules/xx.json";
import za from "#shared/rules/za.json";
import { refuse } from "../gas/refusal";
import type { Units } from "../gas/units";
import type { StampOrder } from "./readTestStamp";

/** Who says so: the law of the country, the practice of the trade, or this shop. */
export type Basis = "law" | "practice" | "house";

/** Up to which day a test holds: of the month that falls due, or to the day. */
export type DueRule = "end of month" | "first of month" | "exact date";

/** How often a test is due, and who says so. */
export interface Interval {
  /** 0: may not be filled at all. */
  readonly months: number;
  /** The first interval, counted from manufacture, where it is another. */
  readonly firstMonths?: number;
  readonly due: DueRule;
  /** Counted from the test itself, unless a country says otherwise. */
  readonly countsFrom?: "end of previous month";
  readonly basis: Basis;
  /** The published source, short, as findings name it. */
  readonly source: string;
  /** What the country itself says, where this interval is the shop's own. */
  readonly own?: Interval;
  /** Holds only while the visuals are unbroken; else so many months (France). */
  readonly withoutVisualsMonths?: number;
  /** Cylinders made before a month have a shorter interval (Japan). */
  readonly madeBefore?: { readonly month: string; readonly months: number };
}

/** What holds for one class of cylinder. */
export interface CylinderRules {
  readonly id: string;
  readonly name: string;
  /** Class marks it goes by, without `DOT`, `TC` or `ICC`; none for a rule that holds for all. */
  readonly classes: readonly string[];
  readonly materials?: readonly string[];
  readonly alloys?: readonly string[];
  /** `null`: no such test is asked for. */
  readonly hydro: Interval | null;
  readonly visual: Interval | null;
  /** Whether a hydro includes a visual. */
  readonly hydroCountsAsVisual: boolean;
  readonly eddyCurrent?: Interval;
  readonly serviceLifeMonths?: number;
  readonly maxFills?: number;
  /** A `+` behind the latest test allows 110 % of the service pressure. */
  readonly plusAllowed?: boolean;
  readonly oxygenMaxPercent?: number;
  readonly oxygenMaxSource?: string;
  /** Pure oxygen only up to this settled pressure, psi on the gauge. */
  readonly pureOxygenMaxPsi?: number;
  readonly pureOxygenSource?: string;
  /** Where it may not go under water: never, or only with this mark behind its class. */
  readonly underWater?: "never" | "only marked UW";
  readonly underWaterSource?: string;
  /** For exemptions and special permits of which no class here holds the number. */
  readonly anyPermit?: true;
  /** Where these rules were taken on trust for a cylinder: what is not known of it, and what to do. */
  readonly assumed?: string;
  /** Why a cylinder of this class has no place in a dive shop of the country, where it has none. */
  readonly notAuthorised?: string;
  readonly notAuthorisedSource?: string;
  readonly note?: string;
  /** Ids in shared/rules/sources.json. */
  readonly sources: readonly string[];
  readonly confidence: "low" | "medium" | "medium-high" | "high";
}

/** What a country, or else the trade, says about oxygen in cylinders. Percentages by volume. */
export interface OxygenRules {
  /** Richest mix for a cylinder marked "air only". */
  readonly airOnlyMaxPercent: number;
  readonly airOnlySource: string;
  /** Gas richer than this may only flow into a cylinder cleaned for oxygen. */
  readonly cleanAbovePercent: number;
  readonly cleanBasis: Basis;
  readonly cleanSource: string;
  /** How long an oxygen cleaning holds, to the end of the month. */
  readonly cleanMonths: number;
  readonly cleanMonthsSource: string;
  readonly note?: string;
  readonly sources: readonly string[];
}

/** What is usual in a country and no rule: common practice, no source. */
export interface Habits {
  readonly paper: "A4" | "Letter";
  /** Absent where both are used, or others (Japan gauges in MPa): there the log has to say. */
  readonly units?: Units;
  /** Absent where dates are written both ways. */
  readonly dateOrder?: "day first" | "month first";
  /** Codes of the languages that logs are kept in. */
  readonly languages: readonly string[];
  readonly spelling: "American" | "British";
}

/** A publisher whose texts a country has as its own. */
export interface Standard {
  /** How sources that it published begin. */
  readonly begins: string;
  /** Who is named where another country takes it. */
  readonly of: string;
  /** Set where the text is law in this country. */
  readonly law?: true;
}

/** The rules a shop fills under. A shop's own figures stand in the same shape, on the basis "house". */
export interface CountryRules {
  /** "US", "GB"; a province after a hyphen. */
  readonly country: string;
  readonly name: string;
  /** Other codes that people write for it. */
  readonly alsoCalled?: readonly string[];
  /** The name within a sentence, where it is another: `the United States`. */
  readonly inSentences?: string;
  readonly habits: Habits;
  /** Whose standards are its own. */
  readonly standards: readonly Standard[];
  /** How often air is tested, where the country says so or has a custom. */
  readonly airTest?: { readonly months: number; readonly source: string };
  /** Look inside where a cylinder comes in below this on the gauge, where gauges show psi. */
  readonly startMinimumPsi?: number;
  /** Who says that no test extends a service life, where it is not who says when to test. */
  readonly serviceLifeSource?: string;
  /** How a stamp such as 06/09 is to be read; absent where the country does not settle it. */
  readonly stampOrder?: StampOrder;
  /** Whether stamps show the test or, as in Germany, the next one. */
  readonly stampMeans: "test" | "due";
  /** Marks beside a date that show an inspection, not a pressure test: such a date is no hydro. */
  readonly visualMarks: readonly string[];
  /** Set where no rule of a country is behind these: what they are instead, and whom to ask. Never a bare OK. */
  readonly notLaw?: string;
  /** Years in which aluminium cylinders seen there may have been made of alloy 6351, both included. */
  readonly alloy6351Years: {
    readonly first: number;
    readonly last: number;
    readonly sources: readonly string[];
  };
  /** Temperature for which the service pressure is stamped. */
  readonly referenceTemperatureC: number;
  /** Who says that the service pressure is the limit; practice of the trade where absent. */
  readonly fillPressure?: { readonly basis: Basis; readonly source: string };
  /** A visual that was missed is made good by a hydro, not by another visual. */
  readonly missedVisualSource?: string;
  readonly note: string;
  /** By class; the first is the one to assume where the log names none. */
  readonly cylinders: readonly CylinderRules[];
  readonly oxygen: OxygenRules;
}

/**
 * Only countries for which a source was found, and last the guidance for all others, which has to be asked for;
 * shared/rules/sources.json says of each source whether it was read in full, in part or not.
 */
const WRITTEN = [
  us, ca, caNb, gb, au, be, ch, de, dk, es, fi, fr, hk, it, jp, nl, no, nz, za, xx,
] as readonly unknown[] as readonly CountryRules[]; // prettier-ignore

const ALL = WRITTEN.map(withComposite);

/**
 * A country whose rules say nothing of composites has them by the rule that is common to most: tested as often as its
 * metal cylinders, at most five years apart, and no longer than their service life.
 */
function withComposite(rules: CountryRules): CountryRules {
  const [metal] = rules.cylinders;
  if (metal === undefined || rules.cylinders.some(({ materials }) => materials?.includes("composite"))) {
    return rules;
  }
  const { hydroMonthsAtMost, hydroSource, ...common } = composite;
  const hydro: Interval =
    metal.hydro !== null && metal.hydro.months <= hydroMonthsAtMost
      ? metal.hydro
      : { months: hydroMonthsAtMost, due: "end of month", basis: "practice", source: hydroSource };
  const { hydroCountsAsVisual, visual } = metal;
  return {
    ...rules,
    cylinders: [
      ...rules.cylinders,
      {
        ...(common as Pick<CylinderRules, "name" | "classes" | "materials" | "sources" | "confidence">),
        id: `${rules.country}-COMPOSITE`,
        hydro,
        visual,
        hydroCountsAsVisual,
      },
    ],
  };
}

/** The countries whose rules can be chosen, for a list to pick from. */
export const COUNTRIES: readonly ({ readonly code: string } & Pick<CountryRules, "name" | "inSentences">)[] =
  ALL.map(({ country, name, inSentences = name }) => ({ code: country, name, inSentences }));

/** A country's name within a sentence: `the United States`, `Norway`. */
export function countryInWords({
  name,
  inSentences = name,
}: Pick<CountryRules, "name" | "inSentences">): string {
  return inSentences;
}

/**
 * The rules of a country, by its code (`US`, `gb`).
 * @throws Refusal when there are none for it, naming those there are.
 */
export function countryRules(code: string): CountryRules {
  const wanted = code.trim().toUpperCase();
  return ALL.find((rules) => rules.country === wanted) ?? refuse(noRulesFor(code.trim()));
}

function noRulesFor(code: string): string {
  if (code === "") return "No country's rules are chosen: write one, such as US or GB.";
  const wanted = code.toUpperCase();
  const meant = ALL.find((each) => each.alsoCalled?.includes(wanted) || each.name.toUpperCase() === wanted);
  return meant
    ? `There are no rules for "${code}": write ${meant.country} for ${countryInWords(meant)}.`
    : `There are no rules for "${code}". Write one of ${COUNTRIES.map((each) => each.code).join(", ")}.`;
}
