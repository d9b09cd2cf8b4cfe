import type { CountryRules, CylinderRules } from "../../cylinders/countryRules";
import { cylinderRules, type CylinderKind } from "../../cylinders/cylinderClass";
import type { OxygenService } from "../../cylinders/oxygenService";
import { Refusal } from "../../gas/refusal";
import type { Cylinder } from "../../log/log";
import { BLANK, type Reading } from "../../log/reading";
import type { Place } from "../judge/verdict";
import { cleanings, hydros, visuals } from "./tests";
import type { TestHistory } from "./testHistory";

/** What the log says of one cylinder: in the fill's own row, in the register, or both. Worked out when asked for. */
export class CylinderOnRecord {
  #other: Cylinder | null | undefined;
  #rules: CylinderRules | Refusal | undefined;
  #hydros: TestHistory | undefined;
  #visuals: TestHistory | undefined;
  #cleanings: TestHistory | undefined;
  #service: OnRecord<OxygenService> | undefined;

  /** What rules have worked out of it, each in a place of its own: `oncePerCylinder`. */
  readonly workedOut: unknown[] = [];

  constructor(
    /** The fill's own row first. */
    readonly records: readonly Cylinder[],
    readonly country: CountryRules,
  ) {}

  /** The rules for its class, or the refusal that says why they are not known. */
  get rules(): CylinderRules | Refusal {
    return (this.#rules ??= rulesFor(this.records, this.country));
  }

  /** Nothing is written of its class, material or alloy: its rules are those of the country's usual cylinder. */
  get isOfUnknownKind(): boolean {
    return Object.values(kindOf(this.records)).every((said) => said === undefined);
  }

  /** A record of what must be another cylinder: made, classed, sized or rated otherwise under the same serial. */
  get other(): Cylinder | undefined {
    if (this.#other === undefined) this.#other = otherCylinder(this.records) ?? null;
    return this.#other ?? undefined;
  }

  /** Undefined where no hydro is asked for. */
  get hydros(): TestHistory | undefined {
    const { rules } = this;
    if (rules instanceof Refusal || rules.hydro === null) return undefined;
    return (this.#hydros ??= hydros(this.records, rules.hydro, this.country));
  }

  /** Undefined where no visual is asked for. */
  get visuals(): TestHistory | undefined {
    const { rules } = this;
    if (rules instanceof Refusal || rules.visual === null) return undefined;
    return (this.#visuals ??= visuals(this.records, rules, rules.visual, this.country));
  }

  get cleanings(): TestHistory {
    return (this.#cleanings ??= cleanings(this.records, this.country.oxygen.cleanMonths));
  }

  /** Its oxygen rating; where the log gives two, the stricter. */
  get oxygenService(): OnRecord<OxygenService> {
    return (this.#service ??= oxygenServiceOf(this.records));
  }
}

/** A reading, and where it stands. */
export interface OnRecord<T> {
  readonly reading: Reading<T>;
  readonly at: Place;
}

/** Of several values the strictest, as the sticker that was overlooked may be the true one; else the first doubt. */
function oxygenServiceOf(records: readonly Cylinder[]): OnRecord<OxygenService> {
  const field = "oxygenService";
  const places = records.map((record) => ({ reading: record.fields[field], at: { record, field } as const }));
  let found: OnRecord<OxygenService> = places[0] ?? { reading: BLANK, at: { field } };
  for (const place of places) {
    if (
      found.reading.kind === "blank" ||
      (found.reading.kind !== "value" && place.reading.kind === "value")
    ) {
      found = place;
    } else if (found.reading.kind === "value" && place.reading.kind === "value") {
      found = stricter(found.reading.value, place.reading.value) === place.reading.value ? place : found;
    }
  }
  return found;
}

function stricter(one: OxygenService, other: OxygenService): OxygenService {
  if (one.oxygenClean !== other.oxygenClean) return one.oxygenClean ? other : one;
  return (other.maxOxygen ?? 0) < (one.maxOxygen ?? 0) ? other : one;
}

/** Rows of the register with the same serial may be tests of one cylinder over time; these never change with a test. */
const UNCHANGING = ["made", "cylinderClass", "size", "servicePressure"] as const;

function otherCylinder(records: readonly Cylinder[]): Cylinder | undefined {
  return records.find((record, at) => {
    // A flat row and the register's tell of the same cylinder; two rows of one register should.
    const before = records.slice(0, at).filter(({ sheet }) => sheet === record.sheet);
    return before.some((one) =>
      UNCHANGING.some((field) => differs(identity(one, field), identity(record, field))),
    );
  });
}

function identity({ fields }: Cylinder, field: (typeof UNCHANGING)[number]): string | undefined {
  const reading = fields[field];
  if (reading.kind !== "value") return undefined;
  const { value } = reading;
  if (typeof value === "string") return value.toUpperCase().replace(/[^A-Z0-9]/g, "");
  if ("month" in value) return value.month.toString();
  return "waterVolumeL" in value ? String(value.waterVolumeL) : value.bar.toFixed(0);
}

function differs(one: string | undefined, other: string | undefined): boolean {
  return one !== undefined && other !== undefined && one !== other;
}

function rulesFor(records: readonly Cylinder[], country: CountryRules): CylinderRules | Refusal {
  try {
    return cylinderRules(country, kindOf(records));
  } catch (thrown) {
    if (thrown instanceof Refusal) return thrown;
    throw thrown;
  }
}

function kindOf(records: readonly Cylinder[]): CylinderKind {
  return {
    cylinderClass: textOf(records, "cylinderClass"),
    material: textOf(records, "material"),
    alloy: textOf(records, "alloy"),
  };
}

function textOf(
  records: readonly Cylinder[],
  field: "cylinderClass" | "material" | "alloy",
): string | undefined {
  for (const { fields } of records) {
    const reading = fields[field];
    if (reading.kind === "value") return reading.value;
  }
  return undefined;
}
