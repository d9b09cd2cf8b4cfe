import type { Content } from "../gas/content";
import { nitrogenOf, type Mixture } from "../gas/mixture";
import type { FillOrder } from "./fillOrder";

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

/** What can be added, besides helium. */
interface Gases {
  readonly supply: Mixture;
  readonly top: Mixture;
  /** Positive where the supply is the richer of the two in oxygen to its nitrogen. */
  readonly determinant: number;
  /**
   * False where oxygen supply and helium already give all that the top gas does: topped with pure oxygen, helium or
   * heliox, say. Then nothing brings nitrogen apart from the supply's own share.
   */
  readonly topIsOwnGas: boolean;
}

export interface Balance {
  readonly gases: Gases;
  /** What the ordered content is worth. */
  readonly wanted: GasAmounts;
  /** What the start content is worth. */
  readonly there: GasAmounts;
  /** The shares of the start content from which the order can be made by adding alone; none where most < least. */
  readonly least: number;
  readonly most: number;
}

/** Below this the supply and the top gas are one gas but for helium. */
const SAME_GAS = 1e-9;
/** Amounts this small, relative to the full cylinder, are float noise. */
export const NEGLIGIBLE = 1e-10;

/** Weighs what is there against what is wanted. */
export function balanceOf(order: FillOrder, start: Content, target: Content): Balance {
  const gases = gasesOf(order);
  const wanted = worthOf(target, gases);
  const there = worthOf(start, gases);
  const slack = NEGLIGIBLE * target.molPerLitre;
  let least = 0;
  let most = Number.POSITIVE_INFINITY;
  const noneTakenOut = (wantedAmount: number, amountThere: number): void => {
    const bound = (wantedAmount + slack) / amountThere;
    if (amountThere > 0) most = Math.min(most, bound);
    else if (amountThere < 0) least = Math.max(least, bound);
    else if (wantedAmount < -slack) most = -1;
  };
  noneTakenOut(wanted.helium, there.helium);
  noneTakenOut(wanted.oxygen, there.oxygen);
  noneTakenOut(wanted.top, there.top);
  // Nitrogen that nothing can bring must be exactly what the kept content holds of it.
  if (!gases.topIsOwnGas) noneTakenOut(-wanted.top, -there.top);
  return { gases, wanted, there, least, most };
}

/** What has to be added to the kept share of the start content: never negative within its bounds. */
export function amountsToAdd({ gases, wanted, there }: Balance, share: number): GasAmounts {
  const helium = Math.max(0, wanted.helium - share * there.helium);
  const oxygen = Math.max(0, wanted.oxygen - share * there.oxygen);
  if (gases.topIsOwnGas) return { helium, oxygen, top: Math.max(0, wanted.top - share * there.top) };

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

function gasesOf({ oxygenSupply, topMix }: FillOrder): Gases {
  const determinant = oxygenSupply.oxygen * nitrogenOf(topMix) - nitrogenOf(oxygenSupply) * topMix.oxygen;
  return { supply: oxygenSupply, top: topMix, determinant, topIsOwnGas: Math.abs(determinant) > SAME_GAS };
}

/**
 * What a content is worth in helium, supply and top gas. Without a top gas of its own, `top` is the nitrogen that
 * neither of the other two accounts for, which nothing can bring.
 */
function worthOf(content: Content, { supply, top, determinant, topIsOwnGas }: Gases): GasAmounts {
  const oxygen = content.mix.oxygen * content.molPerLitre;
  const helium = content.mix.helium * content.molPerLitre;
  const nitrogen = nitrogenOf(content.mix) * content.molPerLitre;
  if (!topIsOwnGas) {
    const fromSupply = oxygen / supply.oxygen;
    return { helium, oxygen: fromSupply, top: nitrogen - fromSupply * nitrogenOf(supply) };
  }
  const fromTop = (supply.oxygen * nitrogen - nitrogenOf(supply) * oxygen) / determinant;
  return {
    helium: helium - fromTop * top.helium,
    oxygen: (oxygen * nitrogenOf(top) - nitrogen * top.oxygen) / determinant,
    top: fromTop,
  };
}
