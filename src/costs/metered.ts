import type { Mixture } from "../gas/mixture";
import type { Field, Fill, FillMethod } from "../log/log";
import type { FillState, GasIn } from "./gasIn";
import type { MixKind } from "./prices/priceList";

/** A fill whose gas is known. */
export interface MeteredFill {
  readonly fill: Fill;
  readonly method: FillMethod;
  /** What customers call it: as ordered, else as analysed. */
  readonly mix: Mixture;
  readonly kind: MixKind;
  /** The cylinder, as the log names its size: `AL80`, `2 x LP85`, `12 L`. */
  readonly size: string;
  /** As the log has it, else as the register has it; empty where neither names one. */
  readonly customer: string;
  /** `2026-10`; empty where the date cannot be read. */
  readonly month: string;
  readonly state: FillState;
  readonly gas: GasIn;
  /** What was taken for granted, in the words of `ASSUMED`. */
  readonly assumed: readonly Assumption[];
}

export type Assumption = "start mix" | "settled" | "helium as ordered" | "drained";

/** What is taken for granted where the log does not say, and how much it can move a figure. */
export const ASSUMED: Readonly<Record<Assumption, string>> = {
  "start mix":
    "No start mix is written: what was there is taken for the gas that went on top. After air or nitrox this moves the amount by less than 1 %, after trimix by up to 10 %.",
  settled: "No settled pressure and no gas temperature is written: the end pressure is taken as read cold.",
  "helium as ordered": "The helium was not analysed: it is taken as ordered.",
  drained: "The mix can only have come about if gas was let out first: counted is what went in after that.",
};

/** What the log has columns for: without one, nothing can be told from its being blank. */
export interface MeteredLogColumns {
  readonly price: boolean;
  readonly customer: boolean;
}

/** A fill that cannot be costed, and why: a short reason that many may share. */
export interface NotCosted {
  readonly fill: Fill;
  readonly why: string;
  /** The field whose cell says so. */
  readonly field: Field;
  readonly month: string;
}
