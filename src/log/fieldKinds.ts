import { Temporal } from "temporal-polyfill";
import { readCylinderSize } from "../cylinders/readCylinderSize";
import type { CylinderSize } from "../cylinders/size";
import { Refusal } from "../gas/refusal";
import { isTooLong, ofNoUse, plain, sayingNothing, shown, tidy, type Cell } from "./cells/cell";
import { readDate, readTime, type DateColumn } from "./cells/date";
import { readHelium, readMixCell } from "./cells/mix";
import { readOxygenServiceCell, type OxygenServiceColumn } from "./cells/oxygenService";
import { readPressure, type PressureColumn } from "./cells/pressure";
import { readDepth, readTemperature, type DepthUnit, type TemperatureUnit } from "./cells/quantity";
import { readSerial } from "./cells/serial";
import { readStamp, type StampColumn } from "./cells/stamp";
import { readLabel, readPrice, readRemark, readText } from "./cells/text";
import {
  readCard,
  readConsent,
  readExternalCheck,
  readMethod,
  readSignature,
  readStatus,
  readTestWord,
} from "./cells/words";
import { wordsIn, type LogWords } from "./vocabularies/logWords";
import { LANGUAGES } from "./vocabularies/languages";
import type { CylinderField, Field, FillField, TestField } from "./log";
import { unreadable, value, type Reading } from "./reading";
import type { TestStamp } from "../cylinders/testStamp";

/** What kind of thing a field's cells hold. */
export type Kind =
  | "label"
  | "text"
  | "remark"
  | "external check"
  | "signature"
  | "card"
  | "consent"
  | "status"
  | "serial"
  | "date"
  | "time"
  | "stamp"
  | "pressure"
  | "mix"
  | "helium"
  | "temperature"
  | "depth"
  | "method"
  | "oxygen service"
  | "size"
  | "price";

export const FILL_KINDS: Readonly<Record<FillField, Kind>> = {
  number: "label",
  date: "date",
  time: "time",
  serial: "serial",
  shopNumber: "label",
  owner: "text",
  startPressure: "pressure",
  startMix: "mix",
  startHelium: "helium",
  orderedMix: "mix",
  orderedHelium: "helium",
  method: "method",
  source: "text",
  oxygenAdded: "pressure",
  heliumAdded: "pressure",
  endPressure: "pressure",
  gasTemperatureK: "temperature",
  settledPressure: "pressure",
  analysedMix: "mix",
  analysedHelium: "helium",
  analysedBy: "text",
  modOnLabelM: "depth",
  plannedDepthM: "depth",
  filledBy: "text",
  externalCheck: "external check",
  receivedBy: "signature",
  certification: "card",
  consent: "consent",
  price: "price",
  remarks: "remark",
};

export const CYLINDER_KINDS: Readonly<Record<CylinderField, Kind>> = {
  serial: "serial",
  shopNumber: "label",
  owner: "text",
  cylinderClass: "text",
  material: "text",
  alloy: "text",
  made: "stamp",
  size: "size",
  servicePressure: "pressure",
  neckThread: "text",
  valveThread: "text",
  hydro: "stamp",
  visual: "stamp",
  eddyCurrent: "stamp",
  oxygenCleaned: "stamp",
  oxygenService: "oxygen service",
  status: "status",
};

export const KINDS: Readonly<Record<Field, Kind>> = { ...FILL_KINDS, ...CYLINDER_KINDS };
export const FILL_FIELDS = Object.keys(FILL_KINDS) as FillField[];
export const CYLINDER_FIELDS = Object.keys(CYLINDER_KINDS) as CylinderField[];
export const TEST_FIELDS: readonly TestField[] = ["hydro", "visual", "eddyCurrent", "oxygenCleaned"];

/** Fields that only a fill has, or only a cylinder; a serial both have. */
export function isFillOnly(field: Field): field is Exclude<FillField, CylinderField> {
  return !Object.hasOwn(CYLINDER_KINDS, field);
}

export function isCylinderOnly(field: Field): field is Exclude<CylinderField, FillField> {
  return !Object.hasOwn(FILL_KINDS, field);
}

export function isField(text: string): text is Field {
  return Object.hasOwn(KINDS, text);
}

/** Everything a column can say about how its cells are to be read. */
export interface ColumnSettings {
  readonly pressure: PressureColumn;
  readonly date: DateColumn;
  readonly stamp: StampColumn;
  readonly oxygenService: OxygenServiceColumn;
  readonly temperatureUnit: TemperatureUnit | undefined;
  readonly depthUnit: DepthUnit | undefined;
  /** The words of the log; absent where nothing is known of it: then those of every language. */
  readonly words?: LogWords;
}

/** A column about which nothing is known yet. */
export const UNSETTLED: ColumnSettings = {
  pressure: { unit: undefined, stated: false, pairs: undefined, full: false },
  date: { order: undefined, swapped: false, latestYear: 2099 },
  stamp: {
    means: "test",
    stampOrder: undefined,
    dateOrder: undefined,
    holdsMonths: false,
    latest: new Temporal.PlainYearMonth(2099, 12),
  },
  oxygenService: { asks: "grade" },
  temperatureUnit: undefined,
  depthUnit: undefined,
};

const READERS: Readonly<Record<Kind, (cell: Cell, column: ColumnSettings) => Reading<unknown>>> = {
  label: readLabel,
  text: readText,
  remark: readRemark,
  "external check": (cell, column) => readExternalCheck(cell, wordsOf(column)),
  signature: (cell, column) => readSignature(cell, wordsOf(column)),
  card: (cell, column) => readCard(cell, wordsOf(column)),
  consent: (cell, column) => readConsent(cell, wordsOf(column)),
  status: (cell, column) => readStatus(cell, wordsOf(column)),
  serial: readSerial,
  date: (cell, column) => readDate(cell, column.date),
  time: readTime,
  stamp: (cell, column) => readTestCell(cell, column),
  pressure: (cell, column) => readPressure(cell, column.pressure),
  mix: (cell, column) =>
    readMixCell(
      cell,
      { dateOrder: column.date.order === "both" ? undefined : column.date.order },
      wordsOf(column).mix,
    ),
  helium: readHelium,
  temperature: (cell, column) => readTemperature(cell, column.temperatureUnit),
  depth: (cell, column) => readDepth(cell, column.depthUnit),
  method: (cell, column) => readMethod(cell, wordsOf(column).method),
  "oxygen service": (cell, column) =>
    readOxygenServiceCell(cell, column.oxygenService, wordsOf(column).rating),
  size: readSize,
  price: readPrice,
};

function wordsOf({ words = wordsIn(LANGUAGES) }: ColumnSettings): LogWords {
  return words;
}

/** A test: what its words say, else its date. */
export function readTestCell(cell: Cell, column: ColumnSettings): Reading<TestStamp> {
  const { test, unsaid } = wordsOf(column);
  const isUnsaid =
    typeof cell.value === "string" &&
    (sayingNothing(plain(cell.value)) !== undefined || unsaid.meaningsOf(cell.value).length > 0);
  return (isUnsaid ? undefined : readTestWord<TestStamp>(cell, test)) ?? readStamp(cell, column.stamp);
}

/** Reads one cell as what its column holds. */
export function readCell(cell: Cell, kind: Kind, column: ColumnSettings): Reading<unknown> {
  if (isTooLong(cell.value) && kind !== "remark")
    return unreadable(`“${shown(cell)}…”: this text is far too long for what belongs here. Shorten it.`);
  return READERS[kind](cell, column);
}

/** Sizes as people write them, in the form of the table: `12 litre`, `AL-80`. */
function asListed(size: string): string {
  return size.replace(/(?<=\d) ?(?:lit(?:er|re)s?|ltrs?)\b/i, "L").replace(/^(al|lp|hp|s)-(?=\d)/i, "$1");
}

function readSize(cell: Cell): Reading<CylinderSize> {
  if (typeof cell.value !== "string" && typeof cell.value !== "number")
    return ofNoUse(cell, "a size such as AL80 or 12 L");
  try {
    if (typeof cell.value === "number") return value(readCylinderSize(cell.value));
    return sayingNothing(plain(cell.value)) ?? value(readCylinderSize(asListed(tidy(cell.value))));
  } catch (thrown) {
    if (thrown instanceof Refusal) return unreadable(thrown.message);
    throw thrown;
  }
}
