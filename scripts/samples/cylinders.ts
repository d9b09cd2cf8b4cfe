import type { Chance } from "./chance";
import { dateCell, MONTHS, type Written } from "./cells";

export type Rating = "air" | "40" | "oxygen clean";

/** What is written of a cylinder in the register, and how it is filled. */
export interface SampleCylinder {
  readonly serial: string;
  readonly owner: string;
  readonly size: string;
  readonly cylinderClass: string;
  readonly servicePsi: Written;
  readonly fullPsi: number;
  readonly rating: Rating;
  readonly made: Written;
  readonly hydro: Written;
  readonly visual: Written;
  readonly ratingWritten: Written;
  readonly cleaned: Written;
  readonly alloy: Written;
  readonly eddy: Written;
  readonly status: Written;
  readonly remarks?: string;
}

interface Model {
  readonly size: string;
  readonly cylinderClass: string;
  readonly servicePsi: Written;
  readonly fullPsi: number;
  readonly plus?: boolean;
}

export const MODELS = {
  AL80: { size: "AL80", cylinderClass: "3AL", servicePsi: 3000, fullPsi: 3000 },
  AL40: { size: "AL40", cylinderClass: "3AL", servicePsi: 3000, fullPsi: 2900 },
  HP100: { size: "HP100", cylinderClass: "DOT-SP steel", servicePsi: 3442, fullPsi: 3440 },
  LP85: { size: "LP85", cylinderClass: "3AA", servicePsi: "2400+", fullPsi: 2640, plus: true },
  composite: { size: "7 L", cylinderClass: "SP12479", servicePsi: 4500, fullPsi: 4400 },
  aircraft: { size: "7 L", cylinderClass: "3HT", servicePsi: 1850, fullPsi: 1800 },
  foreign: { size: "12 L", cylinderClass: "CE", servicePsi: 3360, fullPsi: 3300 },
} as const satisfies Record<string, Model>;

/** Ways in which people write the same three ratings. */
const RATINGS: Readonly<Record<Rating, readonly Written[]>> = {
  air: ["AIR", "AIR", "Air only"],
  "40": [40, "40", "EAN40 max", { value: 0.4, format: "0%" }, "Nitrox 40"],
  "oxygen clean": ["O2 clean", "O2 clean", "O2 CLEAN", 100],
};

/** Makes cylinders that are in date over the whole log, unless told otherwise. */
export class CylinderMaker {
  readonly #serials = new Set<string>();

  constructor(private readonly chance: Chance) {}

  make(model: Model, rating: Rating, owner: string, told: Partial<SampleCylinder> = {}): SampleCylinder {
    const { chance } = this;
    const { size, cylinderClass, servicePsi, fullPsi, plus = false } = model;
    return {
      serial: this.#serial(size),
      owner,
      size,
      cylinderClass,
      servicePsi,
      fullPsi,
      rating,
      made: `${chance.whole(2005, 2019)}/${two(chance.whole(1, 12))}`,
      hydro: this.#stamp(chance.whole(2022, 2025), chance.whole(1, 12), plus),
      visual: this.#sticker(),
      ratingWritten: chance.of(RATINGS[rating]),
      cleaned: rating === "oxygen clean" ? `2026/${two(chance.whole(1, 7))}` : null,
      alloy: cylinderClass === "3AL" ? "6061" : null,
      eddy: null,
      status: null,
      ...told,
    };
  }

  /** Letters and digits as stamped on shoulders; some begin with zeros. */
  #serial(size: string): string {
    const { chance } = this;
    const digits = (count: number): string =>
      Array.from({ length: count }, () => String(chance.whole(0, 9))).join("");
    for (;;) {
      const serial = size.startsWith("AL")
        ? chance.of([`P${digits(6)}`, `S${digits(6)}`, `K${digits(5)}`])
        : chance.of([`HK${digits(5)}`, `DV${digits(5)}`, `00${digits(5)}`]);
      // Apart by more than one character, so that a slip of the pen never meets another cylinder.
      if ([...this.#serials].every((other) => distance(serial, other) > 2)) {
        this.#serials.add(serial);
        return serial;
      }
    }
  }

  /** A hydro as people copy it from the shoulder. */
  #stamp(year: number, month: number, plus: boolean): Written {
    const yy = two(year % 100);
    const sign = plus ? "+" : "";
    return this.chance.of<Written>([
      `${month} A1 23 ${yy}${sign}`,
      `${month}-A123-${yy}${sign}`,
      `${year}/${two(month)}${sign}`,
      `${two(month)}-${year}${sign}`,
      `${two(month)}/${yy}${sign}`,
      plus ? `${two(month)} ${yy}+` : dateCell(`${year}-${two(month)}-01`, "mmm yyyy"),
    ]);
  }

  /** A visual within the year before the log ends, as written from its sticker. */
  #sticker(): Written {
    const { chance } = this;
    const [year, month] = chance.happens(0.25) ? [2025, chance.whole(10, 12)] : [2026, chance.whole(1, 7)];
    return chance.of<Written>([
      `${month}/${year % 100}`,
      `${year}/${two(month)}`,
      `${MONTHS[month - 1]?.slice(0, 3)}-${year % 100}`,
      dateCell(`${year}-${two(month)}-01`, "mmm yyyy"),
    ]);
  }
}

export function two(number: number): string {
  return String(number).padStart(2, "0");
}

function distance(one: string, other: string): number {
  if (one.length !== other.length) return Math.abs(one.length - other.length) + 2;
  return [...one].filter((character, at) => character !== other[at]).length;
}
