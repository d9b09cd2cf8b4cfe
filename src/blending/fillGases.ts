import type { Content } from "../gas/content";
import { nitrogenOf, type Mixture } from "../gas/mixture";

/*
 * Mixing adds amounts: oxygen, helium and atmospheric nitrogen each balance. So any content can be written as so much
 * helium, oxygen supply and top gas (negative where it cannot be made of them), and what has to be added is what the
 * wanted content is worth less what the kept part of the start content is worth. All of it is linear.
 */

/** Amounts of the three gases there are to fill with, mol per litre of water volume. */
export interface GasAmounts {
  readonly helium: number;
  readonly oxygen: number;
  readonly top: number;
}

/**
 * What can be added. `topIsOwnGas` is false where oxygen supply and helium already give all that the top gas does:
 * topped with pure oxygen, helium or heliox, say. Then nothing brings nitrogen apart from the supply's own share.
 */
export interface FillGases {
  readonly supply: Mixture;
  readonly top: Mixture;
  readonly topIsOwnGas: boolean;
  readonly determinant: number;
}

/** Below this the supply and the top gas are one gas but for helium. */
const SAME_GAS = 1e-9;
/** Amounts this small, relative to the full cylinder, are float noise. */
export const NEGLIGIBLE = 1e-10;

export function fillGases(supply: Mixture, top: Mixture): FillGases {
  const determinant = supply.oxygen * nitrogenOf(top) - nitrogenOf(supply) * top.oxygen;
  return { supply, top, determinant, topIsOwnGas: Math.abs(determinant) > SAME_GAS };
}

/**
 * What a content is worth in helium, supply and top gas. Without a top gas of its own, `top` is the nitrogen that
 * neither of the other two accounts for, which nothing can bring.
 */
export function worthOf(content: Content, gases: FillGases): GasAmounts {
  const oxygen = content.mix.oxygen * content.molPerLitre;
  const helium = content.mix.helium * content.molPerLitre;
  const nitrogen = nitrogenOf(content.mix) * content.molPerLitre;
  const { supply, top } = gases;
  if (!gases.topIsOwnGas) {
    const fromSupply = oxygen / supply.oxygen;
    return { helium, oxygen: fromSupply, top: nitrogen - fromSupply * nitrogenOf(supply) };
  }
  const fromTop = (supply.oxygen * nitrogen - nitrogenOf(supply) * oxygen) / gases.determinant;
  return {
    helium: helium - fromTop * top.helium,
    oxygen: (oxygen * nitrogenOf(top) - nitrogen * top.oxygen) / gases.determinant,
    top: fromTop,
  };
}

/** The shares of the start content from which the wanted content can be made by adding alone; empty if most < least. */
export interface KeptShare {
  readonly least: number;
  readonly most: number;
}

/** How much of the start content may be kept so that no gas would have to be taken out. */
export function keptShare(wanted: GasAmounts, start: GasAmounts, gases: FillGases, slack: number): KeptShare {
  let least = 0;
  let most = Number.POSITIVE_INFINITY;
  const noneTakenOut = (wantedAmount: number, startAmount: number): void => {
    const bound = (wantedAmount + slack) / startAmount;
    if (startAmount > 0) most = Math.min(most, bound);
    else if (startAmount < 0) least = Math.max(least, bound);
    else if (wantedAmount < -slack) most = -1;
  };
  noneTakenOut(wanted.helium, start.helium);
  noneTakenOut(wanted.oxygen, start.oxygen);
  noneTakenOut(wanted.top, start.top);
  // Nitrogen that nothing can bring must be exactly what the start content holds of it.
  if (!gases.topIsOwnGas) noneTakenOut(-wanted.top, -start.top);
  return { least, most };
}

/** What has to be added to the kept share of the start content: never negative within its bounds. */
export function amountsToAdd(
  wanted: GasAmounts,
  start: GasAmounts,
  share: number,
  gases: FillGases,
): GasAmounts {
  const helium = Math.max(0, wanted.helium - share * start.helium);
  const oxygen = Math.max(0, wanted.oxygen - share * start.oxygen);
  if (gases.topIsOwnGas) return { helium, oxygen, top: Math.max(0, wanted.top - share * start.top) };

  // The top gas is supply and helium in one: as much as possible comes from it.
  const supplyInTop = gases.top.oxygen / gases.supply.oxygen;
  const heliumInTop = gases.top.helium;
  const top = Math.min(
    supplyInTop > SAME_GAS ? oxygen / supplyInTop : Number.POSITIVE_INFINITY,
    heliumInTop > SAME_GAS ? helium / heliumInTop : Number.POSITIVE_INFINITY,
  );
  return {
    helium: Math.max(0, helium - top * heliumInTop),
    oxygen: Math.max(0, oxygen - top * supplyInTop),
    top,
  };
}
