import { refuse } from "../gas/refusal";
import { ATMOSPHERE_BAR, gaugeInWords } from "../gas/units";
import { readClassStamp } from "./classStamp";
import { countryInWords, type CountryRules, type CylinderRules } from "./countryRules";
import { cylinderRules } from "./cylinderClass";
import { isInspection } from "./inspectionMarks";
import { PLUS_FACTOR, servicePressure, type ServicePressure } from "./servicePressure";
import { stampText, type TestStamp } from "./testStamp";

/**
 * The highest settled pressure (bar absolute) for a service pressure (bar absolute): as stamped, or 110 % of it where
 * the class allows a plus rating and the latest test carries the `+`.
 */
export function pressureLimitBar(
  servicePressureBar: number,
  cylinder: CylinderRules,
  latestTest?: TestStamp,
): number {
  const plus = cylinder.plusAllowed === true && latestTest?.plus === true;
  return (servicePressureBar - ATMOSPHERE_BAR) * (plus ? PLUS_FACTOR : 1) + ATMOSPHERE_BAR;
}

/** What is known of one cylinder when its limit is asked for. */
export interface LimitQuestion {
  readonly rules: CountryRules;
  /** Class as stamped; a pressure in it counts. */
  readonly cylinderClass?: string | undefined;
  /** Service pressure as written, bar absolute. */
  readonly servicePressureBar?: number | undefined;
  readonly latestTest?: TestStamp | undefined;
}

export interface PressureLimit {
  readonly cylinder: CylinderRules;
  readonly service: ServicePressure;
  /** Settled at the country's reference temperature, bar absolute. */
  readonly limitBar: number;
  readonly plus: boolean;
}

/**
 * The settled pressure not to pass: the service pressure, or with the plus where class and latest test allow it. Of stamp
 * and figure the lower counts.
 * @throws Refusal where neither says a pressure, both differ by more than 1 bar or 15 psi, the class is not known or may
 * not be filled, and where the latest test is an inspection.
 */
export function pressureLimit(question: LimitQuestion): PressureLimit {
  const { rules, cylinderClass = "", servicePressureBar: figureBar, latestTest } = question;
  const cylinder = cylinderRules(rules, { cylinderClass });
  if (cylinder.hydro?.months === 0) {
    refuse(`A cylinder of this kind may not be filled in ${countryInWords(rules)}: ${cylinder.name}.`);
  }
  if (latestTest && isInspection(latestTest, rules)) {
    refuse(
      `${stampText(latestTest)} ${latestTest.marks.join(" ")} is an inspection, not a hydro: write the last hydro.`,
    );
  }
  const stamp = readClassStamp(cylinderClass);
  if (stamp?.pressuresDiffer) {
    refuse(`"${cylinderClass.trim()}" holds two service pressures that differ: read the stamp again.`);
  }
  const service = servicePressure({ figureBar, stamp });
  if (!service) {
    return refuse(
      "Neither class nor servicePressure says a pressure: write the one stamped on the cylinder.",
    );
  }
  const [other] = service.contradicted;
  if (other) {
    refuse(
      `The ${other.from} says ${gaugeInWords(other.bar)}, the ${service.from} ${gaugeInWords(service.bar)}: read the stamp on the cylinder again.`,
    );
  }
  const limitBar = pressureLimitBar(service.bar, cylinder, latestTest);
  return { cylinder, service, limitBar, plus: limitBar > service.bar };
}
