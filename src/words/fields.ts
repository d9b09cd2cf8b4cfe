/** What the fields of a fill are called on screen. */
export const FILL_WORDS = {
  number: "Fill number",
  date: "Fill date",
  time: "Time",
  serial: "Serial",
  shopNumber: "Shop number",
  owner: "Owner",
  startPressure: "Start pressure",
  startMix: "Start mix",
  startHelium: "Start helium",
  orderedMix: "Ordered mix",
  orderedHelium: "Ordered helium",
  method: "Method",
  source: "Source",
  oxygenAdded: "Oxygen added",
  heliumAdded: "Helium added",
  endPressure: "End pressure",
  gasTemperatureK: "Gas temperature",
  settledPressure: "Settled pressure",
  analysedMix: "Analysed mix",
  analysedHelium: "Analysed helium",
  analysedBy: "Analysed by",
  modOnLabelM: "MOD on label",
  plannedDepthM: "Planned depth",
  filledBy: "Filled by",
  externalCheck: "External check",
  receivedBy: "Received by",
  certification: "Certification",
  consent: "Owner's consent",
  price: "Price",
  remarks: "Remarks",
} as const;

/** What the fields of a cylinder are called, where they are not those of a fill. */
export const CYLINDER_WORDS = {
  cylinderClass: "Class",
  material: "Material",
  alloy: "Alloy",
  made: "Made",
  size: "Size",
  servicePressure: "Service pressure",
  neckThread: "Neck thread",
  valveThread: "Valve thread",
  hydro: "Hydro",
  visual: "Visual",
  eddyCurrent: "Eddy current",
  oxygenCleaned: "Oxygen cleaned",
  oxygenService: "Oxygen rating",
  status: "Status",
} as const;

const WORDS = { ...FILL_WORDS, ...CYLINDER_WORDS };

/** The fields that have words: those of the log, which the compiler sees wherever one is named. */
type Field = keyof typeof WORDS;

export function fieldWord(field: Field): string {
  return WORDS[field];
}

export function isField(text: string): text is Field {
  return Object.hasOwn(WORDS, text);
}

/** How sure the reader is, in words. */
export function confidenceWord(confidence: number): "sure" | "likely" | "a guess" {
  if (confidence >= 0.9) return "sure";
  return confidence >= 0.6 ? "likely" : "a guess";
}

/** What the audit calls the fields its rules need, where the field's own name does not read so. */
const FIELD_NAMES: Partial<Record<Field, string>> = {
  date: "fill date",
  made: "manufacture date",
  oxygenService: "oxygen rating",
  oxygenCleaned: "oxygen cleaning",
  analysedMix: "analysis",
  orderedMix: "mix",
  cylinderClass: "class",
  modOnLabelM: "MOD",
  plannedDepthM: "planned depth",
  gasTemperatureK: "gas temperature",
  receivedBy: "signature",
  number: "fill number",
};

/** `start pressure`, from `startPressure`. */
export function fieldName(field: Field): string {
  return FIELD_NAMES[field] ?? field.replace(/[A-Z]/g, (capital) => ` ${capital.toLowerCase()}`);
}
