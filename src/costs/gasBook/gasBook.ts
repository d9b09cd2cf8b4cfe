import { contentAt } from "../../gas/content";
import { realGas } from "../../gas/equationOfState";
import { freeVolumeL } from "../../gas/freeGas";
import { ATMOSPHERE_BAR, DEFAULT_TEMPERATURE_K, type Units } from "../../gas/units";
import { litresPerKg } from "../prices/gasPrice";
import type { PriceDoubt, PriceSheet, SupplyBottle } from "../prices/priceSheet";
import type { CostedLog } from "../costLog";
import {
  BOOKED_GASES,
  PURE_GAS,
  type BookedGas,
  type StockEvent,
  type StockRow,
  type StockSheet,
} from "./stockSheet";

/** One gas over the time that is booked; litres at 1 atm. */
export interface GasAccount {
  readonly gas: BookedGas;
  /** ISO dates: after the first day, up to and with the last. */
  readonly from: string;
  readonly to: string;
  /** Counted on the first day; 0 where the book begins with a delivery. */
  readonly openingL: number;
  readonly deliveredL: number;
  readonly sentBackL: number;
  /** Counted on the last day; absent where nobody has counted since. */
  readonly closingL?: number;
  /** By the fills that are costed. */
  readonly usedL: number;
  /** What should still be there, by the book. */
  readonly shouldBeL: number;
  /** What is gone and in no fill: leaks, analysing, fills that are not in the log or not costed. */
  readonly missingL?: number;
  /** Fills that are not costed, or have no readable date: what they took is part of what is missing. */
  readonly fillsLeftOut: number;
}

export interface GasBook {
  readonly accounts: readonly GasAccount[];
  readonly doubts: readonly PriceDoubt[];
}

/**
 * Sets what fills took against what came in. The book of a gas runs from its first stock count to its last; without
 * two counts from its first row to the last fill, and then says only what should be there. Counts are taken at the
 * end of their day.
 */
export function gasBook(stock: StockSheet, prices: PriceSheet, log: CostedLog, units: Units): GasBook {
  const doubts: PriceDoubt[] = [...stock.doubts];
  const accounts = BOOKED_GASES.flatMap((gas) => {
    const bottle = prices.rows.find(({ item }) => item.kind === gas)?.bottle ?? {};
    const rows = stock.rows
      .filter((row) => row.gas === gas)
      .flatMap((row) => {
        const volumeL = volumeOf(row, bottle, units);
        if (typeof volumeL === "number") return [{ ...row, volumeL }];
        doubts.push({ cell: row.cell, sentence: volumeL.why });
        return [];
      });
    return rows.length === 0 ? [] : [accountOf(gas, rows, log)];
  });
  return { accounts, doubts };
}

type Booked = StockRow & { readonly volumeL: number };

function accountOf(gas: BookedGas, rows: readonly Booked[], log: CostedLog): GasAccount {
  const days = rows.map(({ day }) => day).sort();
  const counted = rows
    .filter(({ event }) => event === "in stock")
    .map(({ day }) => day)
    .sort();
  const opening = counted[0] !== undefined && counted[0] <= days[0]! ? counted[0] : undefined;
  // A book that begins with a delivery begins before that day.
  const from = opening ?? days[0]!;
  const isAfterStart = (day: string): boolean => (opening === undefined ? day >= from : day > from);
  const last = counted.at(-1);
  const closing = last !== undefined && last !== opening ? last : undefined;
  const to = closing ?? [...days, ...log.costed.map(({ metered }) => dayOf(metered))].sort().at(-1)!;
  const within = (day: string): boolean => isAfterStart(day) && day <= to;
  const sum = (event: StockEvent, on: (day: string) => boolean): number =>
    rows.filter((row) => row.event === event && on(row.day)).reduce((so, { volumeL }) => so + volumeL, 0);
  const openingL = opening === undefined ? 0 : sum("in stock", (day) => day === opening);
  const deliveredL = sum("delivered", within);
  const sentBackL = sum("sent back", within);
  const usedL = log.costed
    .filter(({ metered }) => within(dayOf(metered)))
    .reduce((so, { expense }) => so + expense.quantities[gas === "oxygen" ? "oxygenL" : "heliumL"], 0);
  const shouldBeL = openingL + deliveredL - sentBackL - usedL;
  const closingL = closing === undefined ? undefined : sum("in stock", (day) => day === closing);
  return {
    gas,
    from,
    to,
    openingL,
    deliveredL,
    sentBackL,
    usedL,
    shouldBeL,
    ...(closingL !== undefined && { closingL, missingL: shouldBeL - closingL }),
    fillsLeftOut:
      log.notCosted.filter((each) => dayOf(each) === "" || within(dayOf(each))).length +
      log.costed.filter(({ metered }) => dayOf(metered) === "").length,
  };
}

function dayOf({ fill }: CostedLog["notCosted"][number] | CostedLog["costed"][number]["metered"]): string {
  const { date } = fill.fields;
  return date.kind === "value" ? date.value.toString() : "";
}

/** Litres in so many bottles, down to 0 on their gauge; or so many cu ft, L or kg. */
function volumeOf(
  { gas, amount, unit, pressureBar }: StockRow,
  { waterVolumeL, holdsL, fullBar }: SupplyBottle,
  units: Units,
): number | { readonly why: string } {
  const temperatureK = DEFAULT_TEMPERATURE_K[units];
  const mix = PURE_GAS[gas];
  if (unit.kind === "volume") return amount * unit.size;
  if (unit.kind === "mass") return amount * unit.size * litresPerKg(mix, temperatureK);
  const above = (bar: number): number =>
    contentAt(realGas, mix, bar, temperatureK).molPerLitre -
    contentAt(realGas, mix, ATMOSPHERE_BAR, temperatureK).molPerLitre;
  const standing = pressureBar ?? fullBar;
  if (waterVolumeL !== undefined && standing !== undefined)
    return amount * unit.size * freeVolumeL(realGas, mix, above(standing) * waterVolumeL, temperatureK);
  if (holdsL !== undefined && pressureBar === undefined) return amount * unit.size * holdsL;
  if (holdsL !== undefined && pressureBar !== undefined && fullBar !== undefined)
    return (amount * unit.size * holdsL * above(pressureBar)) / above(fullBar);
  return {
    why: `The price list does not say how much ${gas} a bottle holds: write its water volume and full pressure there. This row is not used.`,
  };
}
