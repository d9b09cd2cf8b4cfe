import { withHelium } from "../cells/mix";
import { CYLINDER_FIELDS, FILL_FIELDS } from "../fieldKinds";
import type {
  Cylinder,
  CylinderField,
  CylinderFields,
  Field,
  Fill,
  FillField,
  FillFields,
  FurtherTest,
  RowPlace,
} from "../log";
import { BLANK } from "../reading";

/** The readings of one row by field; a field without a column is blank. */
export type RowReadings = FillFields & CylinderFields;

/** Readings of a row that says nothing. */
export function blankReadings(): RowReadings {
  return Object.fromEntries(
    [...FILL_FIELDS, ...CYLINDER_FIELDS].map((field) => [field, BLANK]),
  ) as unknown as RowReadings;
}

/**
 * Makes the records of one table from its rows. Of a million fills only the fields that have a column take room: all
 * others are blank for every record, and read so from what the records have in common.
 */
export class Records {
  readonly #fillFields: readonly FillField[];
  readonly #cylinderFields: readonly CylinderField[];

  constructor(withColumn: readonly Field[]) {
    this.#fillFields = FILL_FIELDS.filter((field) => withColumn.includes(field));
    this.#cylinderFields = CYLINDER_FIELDS.filter((field) => withColumn.includes(field));
  }

  /** The fill of a row. Helium from a column of its own is put into the mix beside it. */
  fill({ sheet, row: at }: RowPlace, row: RowReadings): Fill {
    const fields = keep<FillFields>(row, this.#fillFields);
    for (const [mix, helium] of HELIUM_BESIDE)
      if (row[helium] !== BLANK) fields[mix] = withHelium(row[mix], row[helium]);
    return { sheet, row: at, fields };
  }

  /** The fill of a row that says something of the cylinder too. */
  flatFill(place: RowPlace, row: RowReadings, further: readonly FurtherTest[]): Fill {
    return { ...this.fill(place, row), cylinderInRow: this.cylinder(place, row, further) };
  }

  /** The cylinder of a row. */
  cylinder({ sheet, row: at }: RowPlace, row: RowReadings, further: readonly FurtherTest[]): Cylinder {
    const fields = keep<CylinderFields>(row, this.#cylinderFields);
    // Where only the next test is written, or only the previous one, it is all there is.
    const standIns = new Set<FurtherTest>();
    for (const test of further) {
      if (fields[test.field].kind !== "blank") continue;
      fields[test.field] = test.reading;
      standIns.add(test);
    }
    const furtherTests = further.filter((test) => !standIns.has(test));
    return { sheet, row: at, fields, ...(furtherTests.length > 0 ? { furtherTests } : {}) };
  }
}

/** The same readings but for these. Spread out, they would lose what they have in common with others: the blank ones. */
export function readingsWith<Readings extends FillFields | CylinderFields>(
  fields: Readings,
  changes: Partial<Readings>,
): Readings {
  return Object.assign(Object.create(fields) as Readings, changes);
}

const HELIUM_BESIDE = [
  ["startMix", "startHelium"],
  ["orderedMix", "orderedHelium"],
  ["analysedMix", "analysedHelium"],
] as const;

const ALL_BLANK = blankReadings();

type Writable<Readings> = { -readonly [field in keyof Readings]: Readings[field] };

function keep<Readings extends FillFields | CylinderFields>(
  row: Readings,
  fields: readonly (keyof Readings)[],
): Writable<Readings> {
  const kept = Object.create(ALL_BLANK) as Writable<Readings>;
  for (const field of fields) kept[field] = row[field];
  return kept;
}
