import type { Receipt } from "../../audit/receive";
import {
  bestRowOrder,
  fillsLeft,
  type BankBottle,
  type RowCylinder,
  type RowFilled,
  type RowOrder,
} from "../../blending/cascade";
import { readCylinderSize } from "../../cylinders/readCylinderSize";
import { numberIn } from "../../functions/cells";
import { endPressure, mix, pressure, settledTemperature } from "../../functions/readers";
import { realGas } from "../../gas/equationOfState";
import { AIR } from "../../gas/mixture";
import { readMix } from "../../gas/readMix";
import { Refusal, refuse } from "../../gas/refusal";
import { DEFAULT_TEMPERATURE_K } from "../../gas/units";
import { FormReader, type Problems } from "./reading";
import { writtenIn, type FieldName, type FillForm } from "./form";

/** A row of cylinders, and the bank that it is filled from, as worked out. */
export interface RowModel {
  readonly problems: Problems;
  /** Left out: the records say do not fill. */
  readonly refused: readonly string[];
  /** Not looked up, or not known to be in order. */
  readonly notKnown: readonly string[];
  readonly order: RowOrder | undefined;
  readonly filled: RowFilled | undefined;
  /** How many more cylinders like the last of the row the bank fills afterwards. */
  readonly more: number | undefined;
}

/**
 * Reads a row as it is typed: a line for each cylinder (serial, size, pressure, mix) and for each bottle of the bank
 * (name, size, pressure), the parts apart by commas, semicolons or tabs.
 */
export function rowModel(form: FillForm, receipts: readonly Receipt[] = []): RowModel {
  const reader = new FormReader(form);
  const gas = reader.read("rowGas", mix()) ?? AIR;
  const targetBar = reader.read("rowTarget", endPressure());
  const temperatureK = reader.read("temperature", settledTemperature()) ?? DEFAULT_TEMPERATURE_K[form.units];
  const bank = linesIn(reader, "rowBank", (parts): BankBottle => bottleOf(parts, reader, "rowBank"));
  const written = linesIn(reader, "row", (parts): RowCylinder => {
    const holds = parts[3] ?? "";
    return {
      ...bottleOf(parts, reader, "row"),
      mix:
        holds === ""
          ? refuse(`“${parts[0] ?? ""}”: write the mix in it too, as its fourth part.`)
          : readMix(numberIn(holds) ?? holds),
    };
  });
  const verdictOf = (name: string) => receipts.find(({ asked }) => asked === name)?.verdict;
  const refused = (written ?? []).filter(({ name }) => verdictOf(name) === "do not fill");
  const cylinders = written?.filter((each) => !refused.includes(each));
  const order =
    targetBar !== undefined && bank && cylinders && cylinders.length > 0 && bank.length > 0
      ? { equation: realGas, temperatureK, gas, targetBar, bank, cylinders }
      : undefined;
  const best = order && reader.noting("row", () => bestRowOrder(order));
  const last = cylinders?.at(-1);
  return {
    problems: reader.problems,
    refused: refused.map(({ name }) => name),
    notKnown: (cylinders ?? []).map(({ name }) => name).filter((name) => verdictOf(name) !== "fill"),
    order: best?.order,
    filled: best?.filled,
    more: best && last && fillsLeft({ ...best.order, bank: best.filled.bank }, last),
  };
}

function bottleOf(parts: readonly string[], reader: FormReader, field: FieldName): BankBottle {
  const [name = "", size = "", reading = ""] = parts;
  if (size === "" || reading === "") refuse(`“${name}”: write name, size and pressure, apart by commas.`);
  const { units } = writtenIn(reader.form, field);
  return {
    name,
    // A bank bottle is larger than any cylinder for diving: its litres are believed.
    waterVolumeL: (field === "rowBank" ? numberIn(size) : undefined) ?? readCylinderSize(size).waterVolumeL,
    pressureBar: pressure("").read(numberIn(reading) ?? reading, units),
  };
}

/** Every line read, or undefined where one could not be, with the line named. */
function linesIn<T>(
  reader: FormReader,
  name: FieldName,
  read: (parts: readonly string[]) => T,
): readonly T[] | undefined {
  const lines = reader
    .text(name)
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== "");
  return reader.noting(name, () =>
    lines.map((line, index) => {
      try {
        return read(line.split(/[\t;,]/).map((part) => part.trim()));
      } catch (thrown) {
        if (!(thrown instanceof Refusal)) throw thrown;
        return refuse(`Line ${index + 1}: ${thrown.message}`);
      }
    }),
  );
}
