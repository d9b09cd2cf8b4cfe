import type { CylinderSize } from "../../cylinders/size";
import type { Mixture } from "../../gas/mixture";
import type { Cylinder, Fill, FillFields, Log, LogSheet, PressureReading, RowKind } from "../../log/log";
import type { Reading } from "../../log/reading";
import { cylindersOf, joinRegister, type CylinderMatch, type RegisterIndex } from "../../log/register";
import { lacking } from "../../audit/judge/lacks";
import { CylinderOnRecord } from "../../audit/record/cylinderOnRecord";
import { read } from "../../audit/record/readField";
import type { Shop } from "../../audit/shop/shop";
import { fieldName } from "../../words/fields";
import { dateText } from "../../words/inSentences";

/** What a row of the log or of the register says of a cylinder that is to be filled. Plain values. */
export interface WaitingCylinder {
  readonly serial: string;
  /** From 0. */
  readonly row: number;
  readonly size: CylinderSize | undefined;
  /** The pressure left in it, number and unit as the log has them. */
  readonly left: PressureReading["written"] | undefined;
  readonly mix: Mixture | undefined;
  /** What the row orders, where it says so. */
  readonly ordered: Mixture | undefined;
  /** What is still to be found out, and why: "start mix is blank". */
  readonly lacks: readonly string[];
}

export interface RowNotTaken {
  readonly row: number;
  readonly why: string;
}

export interface Waiting {
  readonly sheet: string;
  readonly cylinders: readonly WaitingCylinder[];
  readonly notTaken: readonly RowNotTaken[];
}

/** What these rows of a sheet say of cylinders that wait to be filled, as the audit reads them; no row is dropped. */
export function waitingIn(log: Log, { rules }: Shop, sheet: string, rows: readonly number[]): Waiting {
  const reading = log.sheets.find(({ name }) => name === sheet);
  const unused = whyUnused(reading);
  if (!reading || unused !== undefined)
    return { sheet, cylinders: [], notTaken: rows.map((row) => ({ row, why: unused ?? NOT_READ })) };
  const register = joinRegister(log);
  const at = (row: number) => (each: Cylinder | Fill) => each.sheet === sheet && each.row === row;
  const cylinders: WaitingCylinder[] = [];
  const notTaken: RowNotTaken[] = [];
  for (const row of rows) {
    const fill = log.fills.find(at(row));
    const cylinder = log.cylinders.find(at(row));
    const told = fill
      ? ofFill(fill, register, rules)
      : cylinder
        ? ofCylinder(cylinder, rules)
        : (log.unreadable.find((each) => each.sheet === sheet && each.row === row)?.why ??
          KIND_WORDS[reading.rowKinds[row] ?? "blank"]);
    if (typeof told === "string") notTaken.push({ row, why: told });
    else cylinders.push(...told);
  }
  return { sheet, cylinders, notTaken };
}

const NOT_READ = "This sheet was not read as a part of the log.";

const KIND_WORDS: Readonly<Record<RowKind, string>> = {
  fill: NOT_READ,
  cylinder: NOT_READ,
  "struck out": "It is struck out.",
  "not filled": "It says that nothing was filled.",
  blank: "A blank row.",
  heading: "A heading.",
  totals: "A row of totals.",
  unreadable: "It cannot be read.",
};

function whyUnused(sheet: LogSheet | undefined): string | undefined {
  if (!sheet || sheet.kind === "neither" || sheet.leftOut === true) return sheet?.why ?? NOT_READ;
  return undefined;
}

function ofFill(
  fill: Fill,
  register: RegisterIndex,
  country: Shop["rules"],
): readonly WaitingCylinder[] | string {
  const { fields } = fill;
  const matches = cylindersOf(fill, register);
  if (matches.some(({ serial }) => serial === "")) return noSerial(fields, matches);
  const gas = leftIn(fields);
  return matches.map(({ serial, records }) => {
    const size = sizeOf(records, country, matches.length);
    return { serial, row: fill.row, ...size, ...gas, lacks: [...size.lacks, ...gas.lacks] };
  });
}

function noSerial({ serial }: FillFields, [match]: readonly CylinderMatch[]): string {
  if (match?.note !== undefined) return match.note;
  const lack = serial.kind === "value" ? undefined : lacking(serial, { field: "serial" });
  return sentence(lack?.detail ?? lack?.why ?? "serial is blank");
}

/** A row of the register knows the cylinder, and nothing of what is left in it. */
function ofCylinder(cylinder: Cylinder, country: Shop["rules"]): readonly WaitingCylinder[] | string {
  const { serial, shopNumber } = cylinder.fields;
  if (serial.kind !== "value" && shopNumber.kind !== "value") {
    const { detail, why } = lacking(serial, { field: "serial" });
    return sentence(detail ?? why);
  }
  const names =
    serial.kind === "value" ? serial.value : shopNumber.kind === "value" ? [shopNumber.value] : [];
  return names.map((each) => {
    const size = sizeOf([cylinder], country, names.length);
    const lacks = [...size.lacks, "the register does not say what is left in it"];
    return {
      serial: each,
      row: cylinder.row,
      ...size,
      left: undefined,
      mix: undefined,
      ordered: undefined,
      lacks,
    };
  });
}

type Sized = Pick<WaitingCylinder, "size" | "lacks">;

/** Of one cylinder: a twin set that is named by both its serials is two. */
function sizeOf(records: readonly Cylinder[], country: Shop["rules"], serials: number): Sized {
  const cylinder = new CylinderOnRecord(records, country);
  if (cylinder.other) return { size: undefined, lacks: ["its serial stands for two cylinders"] };
  const { reading } = read(cylinder, "size");
  if (reading.kind !== "value") return { size: undefined, lacks: lacksOf(reading, "size") };
  const { count, waterVolumeL } = reading.value;
  const isTwinSet = serials > 1 && count === serials;
  return {
    size: isTwinSet ? { waterVolumeL: waterVolumeL / count, count: 1 } : reading.value,
    lacks: [],
  };
}

const ONCE_MADE = ["endPressure", "settledPressure", "analysedMix"] as const;

/** The entry that a row has only once its fill is made; what was left in before is then gone. */
export function madeBy(fields: FillFields): (typeof ONCE_MADE)[number] | undefined {
  return ONCE_MADE.find((field) => fields[field].kind !== "blank");
}

function leftIn(fields: FillFields): Pick<WaitingCylinder, "left" | "mix" | "ordered" | "lacks"> {
  const made = madeBy(fields);
  if (made !== undefined) {
    const on = fields.date.kind === "value" ? ` on ${dateText(fields.date.value)}` : "";
    const lack = `filled${on}, as its ${fieldName(made)} says: what is left in it now is not known`;
    return { left: undefined, mix: undefined, ordered: undefined, lacks: [lack] };
  }
  const { startPressure, startMix, orderedMix } = fields;
  return {
    left: startPressure.kind === "value" ? startPressure.value.written : undefined,
    mix: startMix.kind === "value" ? startMix.value : undefined,
    ordered: orderedMix.kind === "value" ? orderedMix.value : undefined,
    lacks: [...lacksOf(startPressure, "startPressure"), ...lacksOf(startMix, "startMix")],
  };
}

function lacksOf(reading: Reading<unknown>, field: "size" | "startPressure" | "startMix"): readonly string[] {
  if (reading.kind === "value") return [];
  const { detail, why } = lacking(reading, { field });
  return [detail ?? why];
}

function sentence(words: string): string {
  const capital = words.charAt(0).toUpperCase() + words.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
