import type { Concept } from "./headings";
import type { HeadingMeaning } from "./headingText";
import type { Field } from "../log";

/** What a heading may stand for before its cells and its neighbours are looked at. */
export type Role =
  | Field
  /** A pressure, a mix or a gas, but nothing says at which moment. */
  | "some pressure"
  | "some mix"
  | "some oxygen"
  | "some helium"
  /** A moment, and nothing says of what. */
  | "start of something"
  | "end of something"
  /** The pressure reached, or the working pressure. */
  | "some full pressure"
  /** A due date of nobody knows which test. */
  | "some due date"
  /** A test, and nothing says which: hydro or visual. */
  | "some test"
  /** Oxygen cleaning or oxygen rating. */
  | "oxygen clean"
  /** Understood, and of no use to the audit: test pressure, hour meter. */
  | "nothing we read";

interface Rule {
  readonly all: readonly Concept[];
  readonly none?: readonly Concept[];
  readonly role: Role;
  readonly confidence: number;
}

/** The first rule that fits decides. */
const RULES: readonly Rule[] = [
  { all: ["stock"], role: "nothing we read", confidence: 0.8 },
  { all: ["mod"], role: "modOnLabelM", confidence: 0.95 },
  { all: ["depth"], role: "plannedDepthM", confidence: 0.8 },
  { all: ["external check"], role: "externalCheck", confidence: 0.9 },
  { all: ["consent"], role: "consent", confidence: 0.85 },
  { all: ["valve thread"], role: "valveThread", confidence: 0.9 },
  { all: ["neck thread"], role: "neckThread", confidence: 0.85 },
  { all: ["eddy"], role: "eddyCurrent", confidence: 0.95 },
  { all: ["limit", "oxygen"], role: "oxygenService", confidence: 0.9 },
  { all: ["grade"], none: ["pressure"], role: "oxygenService", confidence: 0.9 },
  { all: ["clean"], role: "oxygen clean", confidence: 0.9 },
  { all: ["oxygen", "service"], none: ["pressure"], role: "oxygen clean", confidence: 0.85 },
  { all: ["test", "pressure"], none: ["hydro"], role: "nothing we read", confidence: 0.9 },
  { all: ["service", "pressure"], role: "servicePressure", confidence: 0.95 },
  { all: ["limit", "pressure"], role: "servicePressure", confidence: 0.8 },
  { all: ["made"], role: "made", confidence: 0.9 },
  { all: ["hydro"], role: "hydro", confidence: 0.95 },
  { all: ["visual"], role: "visual", confidence: 0.9 },
  { all: ["some test", "pressure"], role: "nothing we read", confidence: 0.8 },
  { all: ["some test"], role: "some test", confidence: 0.6 },
  // What was wanted, what stood on the bank's hour meter, or went on top, is no reading of the cylinder.
  { all: ["ordered", "pressure"], role: "nothing we read", confidence: 0.8 },
  { all: ["added", "mix"], role: "nothing we read", confidence: 0.7 },
  { all: ["source", "counter"], role: "nothing we read", confidence: 0.7 },
  { all: ["test", "last"], none: ["pressure"], role: "hydro", confidence: 0.7 },
  { all: ["test", "earlier"], none: ["pressure"], role: "hydro", confidence: 0.7 },
  { all: ["test", "due"], none: ["pressure"], role: "hydro", confidence: 0.7 },
  { all: ["test", "date"], none: ["pressure"], role: "hydro", confidence: 0.6 },
  { all: ["signature"], role: "receivedBy", confidence: 0.9 },
  { all: ["certification"], role: "certification", confidence: 0.9 },
  { all: ["analysed", "by"], role: "analysedBy", confidence: 0.95 },
  { all: ["analysed", "person"], role: "analysedBy", confidence: 0.9 },
  { all: ["fill", "by"], role: "filledBy", confidence: 0.95 },
  { all: ["serial"], role: "serial", confidence: 0.95 },
  { all: ["owner"], role: "owner", confidence: 0.9 },
  { all: ["person"], role: "filledBy", confidence: 0.7 },
  { all: ["name"], role: "owner", confidence: 0.5 },
  { all: ["status"], role: "status", confidence: 0.85 },
  { all: ["alloy"], role: "alloy", confidence: 0.95 },
  { all: ["material"], role: "material", confidence: 0.9 },
  { all: ["class"], role: "cylinderClass", confidence: 0.85 },
  { all: ["inspected"], role: "date", confidence: 0.4 },
  { all: ["settled", "temperature"], role: "nothing we read", confidence: 0.7 },
  { all: ["start", "temperature"], role: "nothing we read", confidence: 0.7 },
  { all: ["settled"], none: ["oxygen", "helium", "mix"], role: "settledPressure", confidence: 0.9 },
  { all: ["added", "oxygen"], role: "oxygenAdded", confidence: 0.9 },
  { all: ["added", "helium"], role: "heliumAdded", confidence: 0.9 },
  { all: ["start", "helium"], role: "startHelium", confidence: 0.9 },
  { all: ["ordered", "helium"], role: "orderedHelium", confidence: 0.9 },
  { all: ["analysed", "helium"], role: "analysedHelium", confidence: 0.95 },
  { all: ["end", "helium"], role: "analysedHelium", confidence: 0.9 },
  { all: ["start", "oxygen"], role: "startMix", confidence: 0.9 },
  { all: ["ordered", "oxygen"], role: "orderedMix", confidence: 0.9 },
  { all: ["start", "mix"], role: "startMix", confidence: 0.95 },
  { all: ["ordered", "mix"], role: "orderedMix", confidence: 0.95 },
  { all: ["start", "nitrox"], role: "startMix", confidence: 0.8 },
  { all: ["ordered", "nitrox"], role: "orderedMix", confidence: 0.8 },
  { all: ["analysed", "oxygen"], role: "analysedMix", confidence: 0.95 },
  { all: ["end", "oxygen"], role: "analysedMix", confidence: 0.9 },
  { all: ["analysed", "mix"], role: "analysedMix", confidence: 0.9 },
  { all: ["end", "mix"], role: "analysedMix", confidence: 0.85 },
  { all: ["end", "nitrox"], role: "analysedMix", confidence: 0.8 },
  { all: ["ordered", "number"], role: "number", confidence: 0.5 },
  { all: ["ordered", "by"], role: "owner", confidence: 0.5 },
  { all: ["source"], role: "source", confidence: 0.8 },
  { all: ["method"], role: "method", confidence: 0.9 },
  { all: ["temperature"], role: "gasTemperatureK", confidence: 0.85 },
  { all: ["start", "pressure"], role: "startPressure", confidence: 0.95 },
  { all: ["end", "pressure", "full"], role: "some full pressure", confidence: 0.95 },
  { all: ["end", "pressure"], role: "endPressure", confidence: 0.95 },
  { all: ["fill", "pressure"], role: "endPressure", confidence: 0.9 },
  { all: ["fill", "number"], role: "number", confidence: 0.9 },
  { all: ["cylinder", "number"], role: "shopNumber", confidence: 0.9 },
  { all: ["money"], role: "price", confidence: 0.9 },
  { all: ["remarks"], role: "remarks", confidence: 0.9 },
  { all: ["size"], none: ["pressure"], role: "size", confidence: 0.8 },
  { all: ["counter"], role: "nothing we read", confidence: 0.7 },
  { all: ["due"], role: "some due date", confidence: 0.4 },
  { all: ["analysed", "date"], role: "date", confidence: 0.5 },
  { all: ["analysed", "time"], role: "time", confidence: 0.5 },
  { all: ["date"], role: "date", confidence: 0.95 },
  { all: ["time"], role: "time", confidence: 0.9 },
  { all: ["helium"], role: "some helium", confidence: 0.7 },
  { all: ["oxygen"], role: "some oxygen", confidence: 0.7 },
  { all: ["mix"], role: "some mix", confidence: 0.7 },
  { all: ["nitrox"], role: "some mix", confidence: 0.6 },
  { all: ["pressure"], role: "some pressure", confidence: 0.7 },
  { all: ["ordered"], role: "orderedMix", confidence: 0.7 },
  { all: ["analysed"], role: "analysedMix", confidence: 0.7 },
  { all: ["start"], role: "start of something", confidence: 0.6 },
  { all: ["end"], role: "end of something", confidence: 0.6 },
  { all: ["cylinder"], role: "shopNumber", confidence: 0.6 },
  { all: ["number"], role: "number", confidence: 0.5 },
  { all: ["by"], none: ["test"], role: "filledBy", confidence: 0.5 },
];

/** What a heading may stand for, and how sure that is; undefined where its words say nothing known. */
export function roleOf(
  meaning: HeadingMeaning,
): { readonly role: Role; readonly confidence: number } | undefined {
  const rule = RULES.find(
    ({ all, none = [] }) =>
      all.every((concept) => meaning.concepts.has(concept)) &&
      !none.some((concept) => meaning.concepts.has(concept)),
  );
  // Half a dozen strange words around a known one make a sentence, not a heading.
  return (
    rule && { role: rule.role, confidence: rule.confidence * Math.min(1, 0.4 + 0.6 * meaning.understood) }
  );
}
