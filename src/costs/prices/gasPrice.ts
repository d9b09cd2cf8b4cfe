import { contentAt } from "../../gas/content";
import { realGas } from "../../gas/equationOfState";
import { freeVolumeL } from "../../gas/freeGas";
import type { Mixture } from "../../gas/mixture";
import { nitrogenOf } from "../../gas/mixture";
import { ATMOSPHERE_BAR } from "../../gas/units";
import type { GasPrice } from "./priceList";
import type { PriceRow, SupplyBottle } from "./priceSheet";

/** Grams per mole: IUPAC standard atomic weights; atmospheric nitrogen with its argon is 28.15. */
const MOLAR_MASS = { oxygen: 31.998, helium: 4.0026, nitrogen: 28.15 };

/** A price that cannot be made of what its row says, and why. */
export interface NoPrice {
  readonly why: string;
}

/** What a litre of gas costs that reaches a cylinder, by volume, weight or bottle, with losses and residue. */
export function gasPrice(row: PriceRow, gas: Mixture, temperatureK: number): GasPrice | NoPrice | undefined {
  const { pay, losses = 0, cell } = row;
  if (!pay) return undefined;
  const usable = usableL(row, gas, temperatureK);
  if (typeof usable !== "number") return usable;
  return { perL: pay.amount / (usable * (1 - losses)), paid: pay, usableL: usable, losses, cell };
}

function usableL({ pay, bottle }: PriceRow, gas: Mixture, temperatureK: number): number | NoPrice {
  const { kind, size } = pay!.unit;
  if (kind === "volume") return size;
  if (kind === "mass") return size * litresPerKg(gas, temperatureK);
  if (kind !== "bottle")
    return { why: "A gas is bought by the bottle, cu ft, L, m³ or kg: write one of them." };
  const one = usableOfBottle(bottle, gas, temperatureK);
  return typeof one === "number" ? one * size : one;
}

/**
 * Litres that one supply bottle gives from full to where it goes back, by real gas: from its water volume, or from
 * what it is sold as holding.
 */
export function usableOfBottle(bottle: SupplyBottle, gas: Mixture, temperatureK: number): number | NoPrice {
  const { waterVolumeL, holdsL, fullBar, leftBar = ATMOSPHERE_BAR } = bottle;
  const molPerLitre = (pressureBar: number) => contentAt(realGas, gas, pressureBar, temperatureK).molPerLitre;
  if (fullBar !== undefined && leftBar >= fullBar)
    return { why: "What is left in the bottle is no less than when it is full: check the two pressures." };
  if (waterVolumeL !== undefined && fullBar !== undefined)
    return freeVolumeL(
      realGas,
      gas,
      (molPerLitre(fullBar) - molPerLitre(leftBar)) * waterVolumeL,
      temperatureK,
    );
  if (holdsL === undefined)
    return { why: "By the bottle: write what a full one holds, or its water volume and full pressure." };
  if (bottle.leftBar === undefined) return holdsL;
  if (fullBar === undefined)
    return { why: "Something is left in the bottle: write its full pressure too, to know how much." };
  return holdsL * (1 - molPerLitre(leftBar) / molPerLitre(fullBar));
}

/** Litres of gas at 1 atm in a kilogram. */
export function litresPerKg(gas: Mixture, temperatureK: number): number {
  return freeVolumeL(realGas, gas, 1000 / molarMass(gas), temperatureK);
}

function molarMass(gas: Mixture): number {
  return (
    gas.oxygen * MOLAR_MASS.oxygen + gas.helium * MOLAR_MASS.helium + nitrogenOf(gas) * MOLAR_MASS.nitrogen
  );
}
