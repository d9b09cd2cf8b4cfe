import type { Mixture } from "../gas/mixture";
import { withHelium } from "./cells/mix";
import { CYLINDER_FIELDS, FILL_FIELDS, isCylinderOnly } from "./fieldKinds";
import type { Cylinder, CylinderFields, Field, Fill, FillFields, FurtherTest, RowPlace } from "./log";
import { BLANK, type Reading } from "./reading";
import type { RowReadings } from "./rowKind";

type Fields = Record<string, Reading<unknown>>;

const NO_FILL_FIELDS = Object.fromEntries(FILL_FIELDS.map((field) => [field, BLANK])) as Fields;
const NO_CYLINDER_FIELDS = Object.fromEntries(CYLINDER_FIELDS.map((field) => [field, BLANK])) as Fields;

const HELIUM_OF = [
  ["startMix", "startHelium"],
  ["orderedMix", "orderedHelium"],
  ["analysedMix", "analysedHelium"],
] as const;

/** Makes the records of the rows of one table, whose columns are these. */
export class RecordMaker {
  readonly #fillFields: readonly Field[];
  readonly #cylinderFields: readonly Field[];
  readonly #helium: (typeof HELIUM_OF)[number][];
  readonly #flat: boolean;

  constructor(fields: readonly Field[]) {
    this.#fillFields = fields.filter((field) => (FILL_FIELDS as readonly Field[]).includes(field));
    this.#cylinderFields = fields.filter((field) => (CYLINDER_FIELDS as readonly Field[]).includes(field));
    this.#helium = HELIUM_OF.filter(([, helium]) => fields.includes(helium));
    this.#flat = fields.some(isCylinderOnly);
  }

  fill(place: RowPlace, readings: RowReadings, further: readonly FurtherTest[]): Fill {
    const fields = picked(NO_FILL_FIELDS, this.#fillFields, readings);
    for (const [mix, helium] of this.#helium) {
      fields[mix] = withHelium(fields[mix] as Reading<Mixture>, fields[helium] as Reading<number>);
    }
    const fill: Fill = { ...place, fields: fields as unknown as FillFields };
    return this.#flat ? { ...fill, cylinderInRow: this.cylinder(place, readings, further) } : fill;
  }

  cylinder(place: RowPlace, readings: RowReadings, further: readonly FurtherTest[]): Cylinder {
    const fields = picked(NO_CYLINDER_FIELDS, this.#cylinderFields, readings);
    const rest = further.filter((test) => {
      // Where only the next test is written, or only the previous one, it is all there is.
      if (fields[test.field]!.kind !== "blank") return true;
      fields[test.field] = test.reading;
      return false;
    });
    const cylinder: Cylinder = { ...place, fields: fields as unknown as CylinderFields };
    return rest.length > 0 ? { ...cylinder, furtherTests: rest } : cylinder;
  }
}

function picked(none: Fields, names: readonly Field[], readings: RowReadings): Fields {
  const fields = { ...none };
  for (const name of names) fields[name] = readings[name] ?? BLANK;
  return fields;
}
