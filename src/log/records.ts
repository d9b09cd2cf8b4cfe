import { withHelium } from "./cells/mix";
import { CYLINDER_FIELDS, FILL_FIELDS } from "./fieldKinds";
import type { Cylinder, CylinderFields, Fill, FillFields, FurtherTest, RowPlace } from "./log";
import { BLANK } from "./reading";

/** The readings of one row by field; a field without a column is blank. */
export type RowReadings = FillFields & CylinderFields;

/** Readings of a row that says nothing. */
export function blankReadings(): RowReadings {
  return Object.fromEntries(
    [...FILL_FIELDS, ...CYLINDER_FIELDS].map((field) => [field, BLANK]),
  ) as unknown as RowReadings;
}

/** The fill of a row, with what its row says of the cylinder where the log is flat. */
export function fillOf(
  place: RowPlace,
  row: RowReadings,
  further: readonly FurtherTest[],
  isFlat: boolean,
): Fill {
  const { sheet, row: at } = place;
  const fields = fillFields(row);
  return isFlat
    ? { sheet, row: at, fields, cylinderInRow: cylinderOf(place, row, further) }
    : { sheet, row: at, fields };
}

/** The cylinder of a row. */
export function cylinderOf(place: RowPlace, row: RowReadings, further: readonly FurtherTest[]): Cylinder {
  const fields = cylinderFields(row);
  if (further.length === 0) return { sheet: place.sheet, row: place.row, fields };
  // Where only the next test is written, or only the previous one, it is all there is.
  const standIns = new Set<FurtherTest>();
  const filled: { -readonly [field in keyof CylinderFields]: CylinderFields[field] } = { ...fields };
  for (const test of further) {
    if (filled[test.field].kind !== "blank") continue;
    filled[test.field] = test.reading;
    standIns.add(test);
  }
  const furtherTests = further.filter((test) => !standIns.has(test));
  return {
    sheet: place.sheet,
    row: place.row,
    fields: filled,
    ...(furtherTests.length > 0 ? { furtherTests } : {}),
  };
}

/** Written out, as a hundred thousand of them are made. */
function fillFields(row: RowReadings): FillFields {
  return {
    number: row.number,
    date: row.date,
    time: row.time,
    serial: row.serial,
    shopNumber: row.shopNumber,
    owner: row.owner,
    startPressure: row.startPressure,
    startMix: withHelium(row.startMix, row.startHelium),
    startHelium: row.startHelium,
    orderedMix: withHelium(row.orderedMix, row.orderedHelium),
    orderedHelium: row.orderedHelium,
    method: row.method,
    source: row.source,
    oxygenAdded: row.oxygenAdded,
    heliumAdded: row.heliumAdded,
    endPressure: row.endPressure,
    gasTemperatureK: row.gasTemperatureK,
    settledPressure: row.settledPressure,
    analysedMix: withHelium(row.analysedMix, row.analysedHelium),
    analysedHelium: row.analysedHelium,
    analysedBy: row.analysedBy,
    modOnLabelM: row.modOnLabelM,
    plannedDepthM: row.plannedDepthM,
    filledBy: row.filledBy,
    externalCheck: row.externalCheck,
    receivedBy: row.receivedBy,
    certification: row.certification,
    consent: row.consent,
    price: row.price,
    remarks: row.remarks,
  };
}

function cylinderFields(row: RowReadings): CylinderFields {
  return {
    serial: row.serial,
    shopNumber: row.shopNumber,
    owner: row.owner,
    cylinderClass: row.cylinderClass,
    material: row.material,
    alloy: row.alloy,
    made: row.made,
    size: row.size,
    servicePressure: row.servicePressure,
    neckThread: row.neckThread,
    valveThread: row.valveThread,
    hydro: row.hydro,
    visual: row.visual,
    eddyCurrent: row.eddyCurrent,
    oxygenCleaned: row.oxygenCleaned,
    oxygenService: row.oxygenService,
    status: row.status,
  };
}
