import type { Chance } from "./chance";
import { serialOf, type Written } from "./cells";
import type { SampleCylinder } from "./cylinders";

/** The columns of the log, by what stands in them. */
export type FillColumn =
  | "number"
  | "date"
  | "time"
  | "serial"
  | "customer"
  | "startPsi"
  | "startMix"
  | "orderedMix"
  | "method"
  | "endPsi"
  | "oxygen"
  | "helium"
  | "analysedBy"
  | "mod"
  | "filledBy"
  | "received"
  | "check"
  | "source"
  | "certification"
  | "temperature"
  | "remarks";

export type RegisterColumn =
  | "serial"
  | "owner"
  | "size"
  | "class"
  | "alloy"
  | "made"
  | "servicePsi"
  | "hydro"
  | "visual"
  | "eddy"
  | "rating"
  | "cleaned"
  | "status"
  | "remarks";

export type Severity = "stop" | "breach" | "warn" | "note";

/** A fault planted in a fill; it shows at this column of its row. */
export interface FillFault {
  readonly rule: string;
  readonly severity: Severity;
  readonly column: FillColumn;
  /** Which cylinder of a twin set. */
  readonly serial?: string;
}

/** What cannot be judged of a fill: the reason stands in its row, or in the register. */
export interface FillLack {
  readonly rule: string;
  readonly why: string;
  readonly at:
    { readonly column: FillColumn } | { readonly cylinder: SampleCylinder; readonly column: RegisterColumn };
}

export interface SampleFill {
  /** Day as spreadsheets count it. */
  readonly day: number;
  readonly cylinders: readonly SampleCylinder[];
  readonly recipe: Recipe;
  readonly startPsi: number;
  readonly endPsi: number;
  readonly oxygen: number;
  /** What stands in the row instead of the plain way to write it. */
  readonly written: Partial<Record<FillColumn, Written>>;
  readonly faults: readonly FillFault[];
  readonly lacks: readonly FillLack[];
}

/** What is filled, and how. */
export interface Recipe {
  readonly mix: string;
  readonly oxygen: number;
  readonly helium: number;
  readonly method: "air" | "bank" | "continuous" | "partial pressure";
}

const recipe = (mix: string, oxygen: number, method: Recipe["method"], helium = 0): Recipe => ({
  mix,
  oxygen,
  helium,
  method,
});

export const RECIPES = {
  air: recipe("air", 20.9, "air"),
  bank32: recipe("EAN32", 32, "bank"),
  stream36: recipe("EAN36", 36, "continuous"),
  stream40: recipe("EAN40", 40, "continuous"),
  stream42: recipe("EAN42", 42, "continuous"),
  blend32: recipe("EAN32", 32, "partial pressure"),
  blend36: recipe("EAN36", 36, "partial pressure"),
  blend50: recipe("EAN50", 50, "partial pressure"),
  bank50: recipe("EAN50", 50, "bank"),
  trimix2135: recipe("21/35", 21, "partial pressure", 35),
  trimix1845: recipe("TX 18/45", 18, "partial pressure", 45),
  trimix1050: recipe("10/50", 10, "partial pressure", 50),
  trimix1265: recipe("12/65", 12, "partial pressure", 65),
} as const;

export class FillMaker {
  constructor(private readonly chance: Chance) {}

  /** A fill as it should be: cylinders empty enough to need one, filled to a little below full, analysed near the order. */
  make(
    day: number | string,
    cylinders: SampleCylinder | readonly SampleCylinder[],
    made: Recipe,
    told: Partial<SampleFill> = {},
  ): SampleFill {
    const { chance } = this;
    const set = "serial" in cylinders ? [cylinders] : cylinders;
    const full = Math.min(...set.map(({ fullPsi }) => fullPsi));
    return {
      day: typeof day === "number" ? day : serialOf(day),
      cylinders: set,
      recipe: made,
      startPsi: chance.whole(5, 22) * 50,
      endPsi: full - chance.whole(0, 8) * 10,
      oxygen:
        made.mix === "air"
          ? chance.of([20.9, 20.9, 21, 20.8])
          : tenth(made.oxygen + chance.whole(-4, 4) / 10),
      written: {},
      faults: [],
      lacks: [],
      ...told,
    };
  }
}

function tenth(number: number): number {
  return Math.round(number * 10) / 10;
}
