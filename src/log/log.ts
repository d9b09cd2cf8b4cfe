import type { Temporal } from "temporal-polyfill";
import type { OxygenService } from "../cylinders/oxygenService";
import type { TestStamp } from "../cylinders/testStamp";
import type { CylinderSize } from "../cylinders/size";
import type { Mixture } from "../gas/mixture";
import type { Sheet } from "../sheet/sheet";
import type { Reading } from "./reading";
import type { FillMethod, StatusMeaning } from "./vocabularies/meanings";

/** How a fill was made. Partial pressure is the one that puts pure oxygen into the cylinder. */
export type { FillMethod };

/** What is said of a cylinder's state. */
export interface CylinderStatus {
  readonly meaning: StatusMeaning;
  /** As it stands, with the day since when it is so, where one is given. */
  readonly written: string;
}

/** A look at the outside that was made. */
export interface ExternalCheck {
  readonly passed: boolean;
  readonly written: string;
}

/** A gauge reading, already absolute. */
export interface PressureReading {
  readonly bar: number;
  /** The number and unit as they stand in the log, for the sentences. */
  readonly written: { readonly value: number; readonly unit: "psi" | "bar" };
  /** Read while warm, where the cell gives a hot / cold pair; `bar` is then the cold one. */
  readonly hotBar?: number;
  /** A plus sign stood behind it. */
  readonly plus?: boolean;
  /** Test pressure, where the cell gives service / test. */
  readonly testBar?: number;
}

/** What the log may say of a fill. A field without a column is absent from `LogColumns`, and reads blank. */
export interface FillFields {
  readonly number: Reading<string>;
  readonly date: Reading<Temporal.PlainDate>;
  readonly time: Reading<Temporal.PlainTime>;
  /** One serial, or those of a twin set. */
  readonly serial: Reading<readonly string[]>;
  readonly shopNumber: Reading<string>;
  readonly owner: Reading<string>;
  readonly startPressure: Reading<PressureReading>;
  readonly startMix: Reading<Mixture>;
  /** Helium as a mole fraction, where it has a column of its own; it is already in the mix beside it. */
  readonly startHelium: Reading<number>;
  readonly orderedMix: Reading<Mixture>;
  readonly orderedHelium: Reading<number>;
  readonly method: Reading<FillMethod>;
  readonly source: Reading<string>;
  readonly oxygenAdded: Reading<PressureReading>;
  readonly heliumAdded: Reading<PressureReading>;
  readonly endPressure: Reading<PressureReading>;
  readonly gasTemperatureK: Reading<number>;
  readonly settledPressure: Reading<PressureReading>;
  /** The analysis as one mix where it has one column; helium from its own column is already in it. */
  readonly analysedMix: Reading<Mixture>;
  readonly analysedHelium: Reading<number>;
  readonly analysedBy: Reading<string>;
  readonly modOnLabelM: Reading<number>;
  readonly plannedDepthM: Reading<number>;
  readonly filledBy: Reading<string>;
  /** That the cylinder was looked over before the fill. */
  readonly externalCheck: Reading<ExternalCheck>;
  readonly receivedBy: Reading<string>;
  readonly certification: Reading<string>;
  /** That the owner agreed to the fill. */
  readonly consent: Reading<string>;
  readonly price: Reading<number>;
  readonly remarks: Reading<string>;
}

/** What the register, or the fill's own row, may say of a cylinder. */
export interface CylinderFields {
  readonly serial: Reading<readonly string[]>;
  readonly shopNumber: Reading<string>;
  readonly owner: Reading<string>;
  readonly cylinderClass: Reading<string>;
  readonly material: Reading<string>;
  readonly alloy: Reading<string>;
  readonly made: Reading<TestStamp>;
  readonly size: Reading<CylinderSize>;
  readonly servicePressure: Reading<PressureReading>;
  /** As stamped on the neck, such as M25x2, and as on the valve. */
  readonly neckThread: Reading<string>;
  readonly valveThread: Reading<string>;
  readonly hydro: Reading<TestStamp>;
  readonly visual: Reading<TestStamp>;
  readonly eddyCurrent: Reading<TestStamp>;
  readonly oxygenCleaned: Reading<TestStamp>;
  readonly oxygenService: Reading<OxygenService>;
  readonly status: Reading<CylinderStatus>;
}

export type FillField = keyof FillFields;
export type CylinderField = keyof CylinderFields;
/** A field that one heading can stand for; both kinds may stand in one flat row. */
export type Field = FillField | CylinderField;

/** Where a row stands; rows count from 0. */
export interface RowPlace {
  readonly sheet: string;
  readonly row: number;
}

/** A row of the register, or the cylinder's part of a flat row. */
export interface Cylinder extends RowPlace {
  readonly fields: CylinderFields;
  /** Tests that stand in the same row besides those in `fields`: further columns, or several dates in one cell. */
  readonly furtherTests?: readonly FurtherTest[];
}

export type TestField = "hydro" | "visual" | "eddyCurrent" | "oxygenCleaned";

export interface FurtherTest {
  readonly field: TestField;
  readonly column: number;
  readonly reading: Reading<TestStamp>;
}

export interface Fill extends RowPlace {
  readonly fields: FillFields;
  /** What the fill's own row says of the cylinder, where the log is flat. */
  readonly cylinderInRow?: Cylinder;
}

/** How one column was understood. */
export interface LogColumn {
  readonly column: number;
  /** First and last row it holds for, where the sheet has more than one table, each with headings of its own. */
  readonly rows?: { readonly first: number; readonly last: number };
  /** A further column of a test (previous hydro, next one due): what stands there is in `furtherTests`. */
  readonly further?: boolean;
  /** What an added gas is given as, where the heading says: how much was added, or the gauge reading it stopped at. */
  readonly adds?: "increment" | "stop";
  readonly heading: string;
  readonly field: Field | undefined;
  readonly unit: "psi" | "bar" | "°F" | "°C" | "ft" | "m" | undefined;
  /** 0 to 1. */
  readonly confidence: number;
  readonly examples: readonly string[];
  /** What has to be asked before the column can be read for certain. */
  readonly question?: ColumnQuestion;
  /** What was taken as usual where the rules hold, as neither the log nor anybody says: a sentence. */
  readonly assumed?: string;
}

export interface ColumnQuestion {
  readonly about: "field" | "unit" | "date order" | "stamp means" | "stamp order";
  readonly sentence: string;
  readonly choices: readonly string[];
}

/** Every physical row is of one kind, so that rows reconcile to the sheet. */
export type RowKind =
  "fill" | "cylinder" | "not filled" | "struck out" | "blank" | "heading" | "totals" | "unreadable";

/** What a sheet holds: fills, cylinders (a register), both in one row (flat), or neither. */
export type SheetKind = "fills" | "register" | "flat" | "neither";

export interface LogSheet {
  readonly name: string;
  readonly kind: SheetKind;
  /** What it was taken for and why, in a sentence, where it is neither. */
  readonly why?: string;
  /** It is neither, and the workbook has a log besides or Brimbook wrote it: its rows are not part of the log, nor counted. */
  readonly leftOut?: boolean;
  readonly columns: readonly LogColumn[];
  readonly rowKinds: readonly RowKind[];
  readonly hiddenRows: number;
  /** Choices were remembered for this sheet, but its headings have changed since: offer them again. */
  readonly headingsChanged: boolean;
  /** The cells as they stand, for raw text and examples. */
  readonly source: Sheet;
}

export interface RowCounts {
  readonly total: number;
  readonly fills: number;
  readonly cylinders: number;
  /** Rows that say themselves that nothing was filled; absent where there are none. */
  readonly notFilled?: number;
  /** Rows that somebody struck out; absent where there are none. */
  readonly struckOut?: number;
  readonly blank: number;
  readonly headings: number;
  readonly totals: number;
  readonly unreadable: number;
}

/** A row that could not be read, and why. */
export interface UnreadableRow extends RowPlace {
  readonly column: number;
  readonly why: string;
}

/** A log, read: nothing judged yet, nothing lost. */
export interface Log {
  readonly sheets: readonly LogSheet[];
  readonly fills: readonly Fill[];
  readonly cylinders: readonly Cylinder[];
  readonly rows: RowCounts;
  readonly unreadable: readonly UnreadableRow[];
}
