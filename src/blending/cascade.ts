import { added, contentAt, filledTo, pressureOf, type Content } from "../gas/content";
import type { EquationOfState } from "../gas/equationOfState";
import { checkedVolume } from "../gas/freeGas";
import { checkedPressure, checkedTemperature } from "../gas/limits";
import type { Mixture } from "../gas/mixture";
import { refuse } from "../gas/refusal";

/** One bottle of the bank; all hold the same gas. Pressure bar absolute. */
export interface BankBottle {
  readonly name: string;
  readonly waterVolumeL: number;
  readonly pressureBar: number;
}

/** A cylinder to be filled from the bank. */
export interface RowCylinder extends BankBottle {
  readonly mix: Mixture;
}

export interface RowOrder {
  readonly equation: EquationOfState;
  readonly temperatureK: number;
  /** What is in the bank. */
  readonly gas: Mixture;
  /** Settled pressure (bar absolute) that every cylinder is filled to. */
  readonly targetBar: number;
  readonly bank: readonly BankBottle[];
  /** In the order in which they are filled. */
  readonly cylinders: readonly RowCylinder[];
}

/** One bottle opened onto one cylinder: until both stand equal, or the cylinder is full. Bar absolute. */
export interface Opening {
  readonly cylinder: string;
  readonly bottle: string;
  readonly fromBar: number;
  readonly toBar: number;
  readonly bottleToBar: number;
}

export interface RowFilled {
  readonly openings: readonly Opening[];
  /** As they stand afterwards, in the order in which they were filled. */
  readonly cylinders: readonly (RowCylinder & { readonly full: boolean })[];
  readonly bank: readonly BankBottle[];
}

/** Readings closer than this are the same. */
const SAME_BAR = 0.05;
const HALVINGS = 60;

/**
 * Fills a row of cylinders from a bank: for each the lowest bottle that still stands above it first, then the next,
 * so that the full ones are kept for last. All readings settled.
 */
export function cascade(order: RowOrder): RowFilled {
  check(order);
  const { equation, temperatureK, gas, targetBar } = order;
  const bank = order.bank.map((bottle) => ({ ...bottle }));
  const openings: Opening[] = [];
  const cylinders = order.cylinders.map((cylinder) => {
    let content = contentAt(equation, cylinder.mix, cylinder.pressureBar, temperatureK);
    let pressureBar = cylinder.pressureBar;
    for (const bottle of [...bank].sort((one, other) => one.pressureBar - other.pressureBar)) {
      if (pressureBar >= targetBar - SAME_BAR) break;
      if (bottle.pressureBar <= pressureBar + SAME_BAR) continue;
      const fromBar = pressureBar;
      const moved = molMoved(order, bottle, { ...cylinder, content });
      content = added(content, gas, moved / cylinder.waterVolumeL);
      pressureBar = pressureOf(equation, content, temperatureK);
      bottle.pressureBar = afterGiving(order, bottle, moved);
      openings.push({
        cylinder: cylinder.name,
        bottle: bottle.name,
        fromBar,
        toBar: pressureBar,
        bottleToBar: bottle.pressureBar,
      });
    }
    return { ...cylinder, pressureBar, mix: content.mix, full: pressureBar >= targetBar - SAME_BAR };
  });
  return { openings, cylinders, bank };
}

/** The order of filling by which most of the row comes out full: as given, the fullest first, or the emptiest first. */
export function bestRowOrder(order: RowOrder): { readonly order: RowOrder; readonly filled: RowFilled } {
  const fullestFirst = [...order.cylinders].sort((one, other) => other.pressureBar - one.pressureBar);
  const rows = [order.cylinders, fullestFirst, [...fullestFirst].reverse()];
  const tries = rows.map((cylinders) => {
    const tried = { ...order, cylinders };
    return { order: tried, filled: cascade(tried) };
  });
  const full = ({ filled }: (typeof tries)[number]) => filled.cylinders.filter((each) => each.full).length;
  return tries.reduce((best, tried) => (full(tried) > full(best) ? tried : best));
}

/** How many more cylinders like this one the bank still fills before one comes out short; at most `most`. */
export function fillsLeft(order: Omit<RowOrder, "cylinders">, cylinder: RowCylinder, most = 200): number {
  let bank = order.bank;
  for (let fills = 0; fills < most; fills++) {
    const filled = cascade({ ...order, bank, cylinders: [cylinder] });
    if (!filled.cylinders[0]!.full) return fills;
    bank = filled.bank;
  }
  return most;
}

/** Amount that flows until the cylinder is full or both stand equal. */
function molMoved(
  order: RowOrder,
  bottle: BankBottle,
  cylinder: { readonly waterVolumeL: number; readonly content: Content },
): number {
  const { equation, temperatureK, gas, targetBar } = order;
  const { content, waterVolumeL } = cylinder;
  const full = filledTo(equation, content, gas, targetBar, temperatureK);
  const toFull = (full.molPerLitre - content.molPerLitre) * waterVolumeL;
  if (toFull <= molIn(order, bottle) && afterGiving(order, bottle, toFull) >= targetBar) return toFull;
  let less = 0;
  let more = Math.min(toFull, molIn(order, bottle));
  for (let halving = 0; halving < HALVINGS; halving++) {
    const moved = (less + more) / 2;
    const reached = pressureOf(equation, added(content, gas, moved / waterVolumeL), temperatureK);
    if (reached < afterGiving(order, bottle, moved)) less = moved;
    else more = moved;
  }
  return less;
}

function molIn({ equation, gas, temperatureK }: RowOrder, bottle: BankBottle): number {
  return equation.density(gas, bottle.pressureBar, temperatureK) * bottle.waterVolumeL;
}

/** Pressure (bar absolute) of a bottle that has given so many moles. */
function afterGiving(order: RowOrder, bottle: BankBottle, mol: number): number {
  if (mol === 0) return bottle.pressureBar;
  const molPerLitre = (molIn(order, bottle) - mol) / bottle.waterVolumeL;
  return order.equation.pressure(order.gas, molPerLitre, order.temperatureK);
}

function check({ bank, cylinders, targetBar, temperatureK }: RowOrder): void {
  checkedTemperature(temperatureK);
  checkedPressure(targetBar);
  if (bank.length === 0)
    refuse("The bank has no bottle: write at least one, with its water volume and pressure.");
  for (const each of [...bank, ...cylinders]) {
    checkedVolume(each.waterVolumeL);
    checkedPressure(each.pressureBar);
  }
}
