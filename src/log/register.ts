import { serialKey } from "./cells/serial";
import type { Cylinder, CylinderFields, Fill, Log, TestField } from "./log";
import type { Reading } from "./reading";

/** Every cylinder record of a log, to be found by serial or by shop number. */
export interface RegisterIndex {
  /** By `serialKey`. */
  readonly bySerial: ReadonlyMap<string, readonly Cylinder[]>;
  /** Each serial as the log writes it: in the register, else in the first fill. */
  readonly written: ReadonlyMap<string, string>;
  /** Each shop number as the log writes it first, by the form in which numbers are compared. */
  readonly writtenNumbers: ReadonlyMap<string, string>;
  readonly byShopNumber: ReadonlyMap<string, readonly Cylinder[]>;
  /** Serials by the form in which characters that look alike are one. */
  readonly lookalikes: ReadonlyMap<string, readonly string[]>;
  /** Serials by what is left when one character is taken out, to find those one character off. */
  readonly oneOff: () => ReadonlyMap<string, readonly string[]>;
}

/** How a fill's cylinder was found, or why not. */
export type MatchedBy = "serial" | "shop number" | "own row" | "nothing";

/** The records that apply to one cylinder of a fill. */
export interface CylinderMatch {
  /**
   * As the log writes it first, the register before the fills; of a cylinder without one its shop number, which is what
   * the shop tells it from others by; empty where the fill gives neither that can be read.
   */
  readonly serial: string;
  readonly by: MatchedBy;
  /** The fill's own row first, then the register's records in their order. */
  readonly records: readonly Cylinder[];
  /** A serial of the register that the fill's may be a slip of. */
  readonly suggestion?: string;
  /** What a reader should know: matched by shop number only, number held by two cylinders. */
  readonly note?: string;
}

/** Makes the register of a log findable. */
export function joinRegister({ cylinders, fills }: Pick<Log, "cylinders" | "fills">): RegisterIndex {
  const bySerial = new Map<string, Cylinder[]>();
  const byShopNumber = new Map<string, Cylinder[]>();
  const written = new Map<string, string>();
  const writtenNumbers = new Map<string, string>();
  for (const cylinder of cylinders) {
    for (const serial of valueOf(cylinder.fields.serial) ?? []) {
      push(bySerial, serialKey(serial), cylinder);
      remember(serial, written);
    }
    const number = valueOf(cylinder.fields.shopNumber);
    if (number === undefined) continue;
    push(byShopNumber, shopNumberKey(number), cylinder);
    remember(number, writtenNumbers, shopNumberKey);
  }
  // Readings of equal cells are shared, so that each is looked at once.
  for (const serials of new Set(fills.map(({ fields }) => fields.serial)))
    for (const serial of valueOf(serials) ?? []) remember(serial, written);
  for (const reading of new Set(fills.map(({ fields }) => fields.shopNumber))) {
    const number = valueOf(reading);
    if (number !== undefined) remember(number, writtenNumbers, shopNumberKey);
  }
  const serials = [...bySerial.keys()];
  let oneOff: Map<string, string[]> | undefined;
  return {
    bySerial,
    byShopNumber,
    written,
    writtenNumbers,
    lookalikes: grouped(serials, (serial) => [lookalike(serial)]),
    oneOff: () => (oneOff ??= grouped(serials, withOneLess)),
  };
}

function remember(name: string, written: Map<string, string>, keyOf = serialKey): void {
  const key = keyOf(name);
  if (!written.has(key)) written.set(key, name);
}

/** The cylinders of a fill: one, or each of a twin set; one entry without serial where the fill names none. */
export function cylindersOf(fill: Fill, index: RegisterIndex): readonly CylinderMatch[] {
  const own = fill.cylinderInRow ? [fill.cylinderInRow] : [];
  const serials = valueOf(fill.fields.serial) ?? [];
  if (serials.length === 0) return matchByShopNumber(fill, own, index);
  return serials.map((written): CylinderMatch => {
    const key = serialKey(written);
    const serial = index.written.get(key) ?? written;
    const records = index.bySerial.get(key);
    if (records) return { serial, by: "serial", records: [...own, ...records] };
    const suggestion = likeliest(key, index);
    return {
      serial,
      by: own.length > 0 ? "own row" : "nothing",
      records: own,
      ...(suggestion === undefined ? {} : { suggestion: index.written.get(suggestion) ?? suggestion }),
    };
  });
}

/** Two people's cylinders can have the same number: found by number alone, a cylinder comes with a warning. */
function matchByShopNumber(
  fill: Fill,
  own: readonly Cylinder[],
  index: RegisterIndex,
): readonly CylinderMatch[] {
  const unmatched: CylinderMatch = { serial: "", by: own.length > 0 ? "own row" : "nothing", records: own };
  const number = valueOf(fill.fields.shopNumber);
  if (number === undefined) return [unmatched];
  const name = index.writtenNumbers.get(shopNumberKey(number)) ?? number;
  const held = index.byShopNumber.get(shopNumberKey(number));
  if (held === undefined) {
    const records = index.bySerial.get(serialKey(number));
    if (records === undefined) return [{ ...unmatched, serial: name }];
    const note = `Number ${number} is a serial of the register.`;
    return [
      {
        serial: index.written.get(serialKey(number)) ?? number,
        by: "serial",
        records: [...own, ...records],
        note,
      },
    ];
  }
  const [serials, ...others] = new Map(
    held.map(({ fields }) => valueOf(fields.serial) ?? []).map((each) => [each.map(serialKey).join(), each]),
  ).values();
  if (others.length > 0)
    return [
      { ...unmatched, note: `Shop number ${number} is held by more than one cylinder. Write the serial.` },
    ];
  const records = [...own, ...held];
  const note = `Found by shop number ${number} only. Write the serial beside it.`;
  if (serials === undefined || serials.length === 0) return [{ serial: name, by: "shop number", records }];
  return serials.map((serial) => ({
    serial: index.written.get(serialKey(serial)) ?? serial,
    by: "shop number",
    records,
    note,
  }));
}

/** A test reading and where it stands. */
export interface RecordedTest {
  readonly record: Cylinder;
  readonly field: TestField | "made";
  readonly reading: CylinderFields[TestField];
  /** The column, where it is not the field's own. */
  readonly column?: number;
}

/** Every test of one kind in these records, blank ones left out. */
export function testsOf(records: readonly Cylinder[], field: TestField): readonly RecordedTest[] {
  return records.flatMap((record): RecordedTest[] => [
    ...(record.fields[field].kind === "blank" ? [] : [{ record, field, reading: record.fields[field] }]),
    ...(record.furtherTests ?? [])
      .filter((test) => test.field === field)
      .map(({ reading, column }) => ({ record, field, reading, column })),
  ]);
}

/** O and 0, I, L and 1, S and 5, B and 8, Z and 2 are taken for each other; so is a zero in front for none. */
function lookalike(serial: string): string {
  return serial
    .replace(/[OQ]/g, "0")
    .replace(/[IL]/g, "1")
    .replace(/S/g, "5")
    .replace(/B/g, "8")
    .replace(/Z/g, "2")
    .replace(/^0+(?=.)/, "");
}

/** Shorter serials are too close to one another for one character to mean a slip. */
const SHORTEST_TO_COMPARE = 5;

function likeliest(serial: string, index: RegisterIndex): string | undefined {
  const alike = index.lookalikes.get(lookalike(serial));
  if (alike) return alike.length === 1 ? alike[0] : undefined;
  if (serial.length < SHORTEST_TO_COMPARE) return undefined;
  const near = new Set<string>();
  for (const less of withOneLess(serial)) {
    for (const known of index.oneOff().get(less) ?? []) if (isOneOff(serial, known)) near.add(known);
  }
  return near.size === 1 ? [...near][0] : undefined;
}

/** The serial itself, and the serial with each of its characters taken out. */
function withOneLess(serial: string): readonly string[] {
  if (serial.length < SHORTEST_TO_COMPARE - 1 || serial.length > 40) return [];
  return [serial, ...Array.from(serial, (_, at) => serial.slice(0, at) + serial.slice(at + 1))];
}

/** One character more, less, other, or two neighbours swapped. */
function isOneOff(one: string, other: string): boolean {
  if (Math.abs(one.length - other.length) > 1) return false;
  let start = 0;
  while (start < one.length && one[start] === other[start]) start++;
  let [end, otherEnd] = [one.length, other.length];
  while (end > start && otherEnd > start && one[end - 1] === other[otherEnd - 1]) {
    end--;
    otherEnd--;
  }
  const [left, right] = [one.slice(start, end), other.slice(start, otherEnd)];
  return (left.length <= 1 && right.length <= 1) || (left.length === 2 && left === right[1]! + right[0]!);
}

function shopNumberKey(number: string): string {
  return number.toUpperCase().replace(/\s+/g, "");
}

function valueOf<T>(reading: Reading<T>): T | undefined {
  return reading.kind === "value" ? reading.value : undefined;
}

function push<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const values = map.get(key);
  if (values) values.push(value);
  else map.set(key, [value]);
}

function grouped(
  serials: readonly string[],
  keysOf: (serial: string) => readonly string[],
): Map<string, string[]> {
  const groups = new Map<string, string[]>();
  for (const serial of serials) for (const key of keysOf(serial)) push(groups, key, serial);
  return groups;
}
