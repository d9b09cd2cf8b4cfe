import type { Basis } from "../../cylinders/countryRules";
import type { Shop } from "./shop";

/** One figure that a shop can set: what it is, how it comes, and who says so. */
export interface HouseSetting {
  readonly id: string;
  readonly group: string;
  readonly name: string;
  readonly unit: string;
  readonly basis: Basis;
  /** The published source, short. */
  readonly source: string;
  readonly limits: Limits | Choices;
  /** What holds in this shop. */
  of(shop: Shop): number | string;
  /** The same shop with another figure. */
  set(shop: Shop, value: number | string): Shop;
}

export interface Limits {
  readonly least: number;
  readonly most: number;
}

export interface Choices {
  readonly choices: readonly string[];
}
