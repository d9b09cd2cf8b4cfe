import { serialOf, type Written } from "./cells";
import type { Chance } from "./chance";

export type SkerryColumn =
  | "date"
  | "member"
  | "serial"
  | "size"
  | "made"
  | "workingBar"
  | "hydro"
  | "visualBefore"
  | "visual"
  | "rating"
  | "cleaned"
  | "gas"
  | "method"
  | "startBar"
  | "startMix"
  | "endBar"
  | "oxygen"
  | "mod"
  | "depth"
  | "filledBy"
  | "signed";

/** The columns of the book; fill and cylinder stand in one row. */
export const COLUMNS: readonly {
  readonly column: SkerryColumn;
  readonly heading: string;
  readonly width: number;
}[] = [
  { column: "date", heading: "Date", width: 12 },
  { column: "member", heading: "Member", width: 9 },
  { column: "serial", heading: "Serial no.", width: 12 },
  { column: "size", heading: "Size", width: 7 },
  { column: "made", heading: "Made", width: 10 },
  { column: "workingBar", heading: "Working pressure bar", width: 10 },
  { column: "hydro", heading: "Last hydro", width: 10 },
  { column: "visualBefore", heading: "Previous visual", width: 10 },
  { column: "visual", heading: "Last visual", width: 10 },
  { column: "rating", heading: "O2 rating", width: 10 },
  { column: "cleaned", heading: "O2 cleaned", width: 10 },
  { column: "gas", heading: "Gas ordered", width: 10 },
  { column: "method", heading: "Method", width: 15 },
  { column: "startBar", heading: "Start bar", width: 8 },
  { column: "startMix", heading: "Start mix", width: 8 },
  { column: "endBar", heading: "End bar", width: 8 },
  { column: "oxygen", heading: "Analysed O2 %", width: 10 },
  { column: "mod", heading: "MOD (m)", width: 8 },
  { column: "depth", heading: "Planned depth (m)", width: 9 },
  { column: "filledBy", heading: "Filled by", width: 8 },
  { column: "signed", heading: "Signature", width: 9 },
];

export interface SkerryFill {
  readonly day: number;
  readonly cells: Readonly<Record<Exclude<SkerryColumn, "date">, Written>>;
  /** Each a rule, a severity and the column where it shows. */
  readonly faults: readonly string[];
  readonly lacks: readonly SkerryLack[];
}

export interface SkerryLack {
  readonly rules: readonly string[];
  readonly why: string;
  /** Absent where the book has no such column. */
  readonly column?: SkerryColumn;
}

type Cells = SkerryFill["cells"];
type Told = Partial<Pick<SkerryFill, "faults" | "lacks">> & { readonly cells?: Partial<Cells> };

const AIR = {
  gas: "air",
  startMix: "air",
  method: "air",
  oxygen: null,
  mod: null,
  depth: null,
  signed: null,
  rating: "AIR",
};
/** Nitrox that the club's membrane gives, for cylinders to 40 %. */
const NITROX = {
  gas: "EAN32",
  startMix: "EAN32",
  method: "membrane",
  oxygen: 32,
  mod: 33,
  depth: 30,
  signed: "yes",
  rating: "40",
};
/** Nitrox blended by partial pressure, for cylinders clean for oxygen. */
const BLEND = { ...NITROX, method: "partial pressure", rating: "O2 clean", cleaned: "2026/01" };

/** Plants what is wrong in the book of Skerry Bay, and what is as it should be. */
export class SkerryPlanter {
  readonly fills: SkerryFill[] = [];
  #serial = 1000;

  constructor(private readonly chance: Chance) {}

  /** A cylinder in date over the whole book, and one fill of it, unless told otherwise. */
  #fill(
    date: string | number,
    gas: Partial<Cells>,
    { cells = {}, faults = [], lacks = [] }: Told = {},
  ): void {
    const { chance } = this;
    const all: Cells = {
      member: `M-${10 + chance.whole(1, 60)}`,
      serial: this.#newSerial(),
      size: "12 L",
      made: "2012/04",
      workingBar: 232,
      hydro: "2024/02",
      visualBefore: null,
      visual: "2026/02",
      cleaned: null,
      startBar: chance.whole(6, 12) * 5,
      endBar: 232 - chance.whole(0, 4) * 2,
      filledBy: chance.of(["A.", "K."]),
      oxygen: null,
      mod: null,
      depth: null,
      signed: null,
      rating: null,
      gas: null,
      method: null,
      startMix: null,
      ...gas,
      ...cells,
    };
    const blended = all.method === "partial pressure";
    const unadded: readonly SkerryLack[] = blended
      ? [{ rules: ["G12"], why: "the log has no column for oxygen added" }]
      : [];
    this.fills.push({
      day: typeof date === "number" ? date : serialOf(date),
      cells: all,
      faults,
      lacks: [...lacks, ...unadded],
    });
  }

  #newSerial(): string {
    this.#serial += 37;
    return `SB/${this.#serial}`;
  }

  sound(count: number, first: number, last: number): void {
    const regulars = Array.from({ length: 14 }, (_, nth) => ({
      gas: nth < 7 ? AIR : nth < 11 ? NITROX : BLEND,
      serial: this.#newSerial(),
      next: first + nth,
    }));
    for (let nth = 0; nth < count; nth++) {
      const regular = regulars[nth % regulars.length]!;
      const day = Math.min(last, regular.next + this.chance.whole(0, 6));
      regular.next = day + 20;
      const oxygen = regular.gas === AIR ? null : 32 + this.chance.whole(-4, 4) / 10;
      const mod = oxygen === null ? null : Math.floor(10 * (140 / oxygen - 1) + 1e-9);
      this.#fill(day, regular.gas, { cells: { serial: regular.serial, oxygen, mod } });
    }
  }

  plant(): void {
    const twice = (dates: readonly [string, string], gas: Partial<Cells>, told: Told): void => {
      for (const date of dates) this.#fill(date, gas, told);
    };
    // V01 is law, five years; V06 too, thirty months, to the last day of the month.
    const old = { hydro: "2021/05", visual: "2025/02", visualBefore: "2023/03" };
    this.#fill("2026-05-31", AIR, { cells: old });
    twice(["2026-06-01", "2026-08-15"], AIR, { cells: old, faults: ["V01 stop hydro"] });
    const unseen = { hydro: "2022/01", visual: "2023/10" };
    this.#fill("2026-04-30", NITROX, { cells: unseen });
    twice(["2026-05-01", "2026-07-04"], NITROX, { cells: unseen, faults: ["V06 stop visual"] });
    // V15: the visual of July 2024 was missed, and another visual came instead of the hydro.
    const missed = { hydro: "2022/02", visualBefore: "2022/01", visual: "2025/09" };
    const late = { ...missed, hydro: "2021/12", visualBefore: "2022/01" };
    twice(["2026-03-14", "2026-10-10"], AIR, { cells: late, faults: ["V15 breach visual"] });
    this.#fill("2026-06-20", AIR, {
      cells: { ...missed, hydro: "2022/02", visualBefore: null },
      lacks: [{ rules: ["V15"], why: "the visuals before the last are not on record", column: "visual" }],
    });
    // R05: which is the month? V01: whichever it is, the hydro is long past due.
    for (const [date, hydro] of [
      ["2026-04-11", "11/10"],
      ["2026-09-05", "09/11"],
    ] as const) {
      this.#fill(date, AIR, {
        cells: { hydro, made: "2005/03" },
        faults: ["R05 warn hydro", "V01 stop hydro"],
      });
    }
    // O01 and O02; the UK takes a cylinder marked air for one of 22 %.
    twice(
      ["2026-05-16", "2026-09-26"],
      { ...BLEND, rating: "40", cleaned: null },
      { faults: ["O01 stop method"] },
    );
    twice(["2026-06-06", "2026-08-29"], { ...NITROX, rating: "AIR" }, { faults: ["O02 stop oxygen"] });
    twice(
      ["2026-06-07", "2026-10-03"],
      { ...NITROX, rating: null },
      {
        faults: ["O08 warn oxygen"],
        lacks: [{ rules: ["O01", "O02"], why: "oxygen rating is blank", column: "rating" }],
      },
    );
    // O04: fifteen months, to the end of the month.
    this.#fill("2026-04-30", BLEND, { cells: { cleaned: "2025/01" } });
    twice(["2026-05-02", "2026-07-11"], BLEND, {
      cells: { cleaned: "2025/01" },
      faults: ["O04 stop method"],
    });
    twice(
      ["2026-05-03", "2026-09-12"],
      { ...BLEND, cleaned: null },
      {
        lacks: [{ rules: ["O04"], why: "oxygen cleaning is blank", column: "cleaned" }],
        faults: ["O11 warn cleaned"],
      },
    );
    // G02, G13: too deep on the label, too deep in the plan.
    twice(["2026-05-09", "2026-08-01"], NITROX, { cells: { mod: 40 }, faults: ["G02 stop mod"] });
    twice(["2026-05-10", "2026-08-02"], NITROX, { cells: { depth: 37 }, faults: ["G13 breach depth"] });
    twice(["2026-06-13", "2026-09-19"], NITROX, { cells: { depth: 42 }, faults: ["G13 stop depth"] });
    // V03 and R06: over its pressure, and psi in the column of bar.
    twice(["2026-04-18", "2026-07-25"], AIR, { cells: { endBar: 280 }, faults: ["V03 stop endBar"] });
    twice(["2026-04-19", "2026-07-26"], AIR, { cells: { endBar: 236 }, faults: ["V03 warn endBar"] });
    twice(["2026-06-27", "2026-10-17"], AIR, {
      cells: { endBar: 3000 },
      faults: ["R06 warn endBar"],
      lacks: [
        {
          rules: ["V03", "V07", "R07"],
          why: "end pressure can be read in more than one way",
          column: "endBar",
        },
      ],
    });
    twice(["2026-06-28", "2026-10-18"], AIR, { cells: { startBar: 2 }, faults: ["V17 warn startBar"] });
    // R10: in the loft for over a year, and nobody looked inside since.
    for (const [first, second] of [
      ["2025-03-08", "2026-04-04"],
      ["2025-05-10", "2026-08-22"],
    ] as const) {
      const stored = { serial: this.#newSerial(), visual: "2024/11", hydro: "2022/10" };
      this.#fill(first, AIR, { cells: stored });
      this.#fill(second, AIR, { cells: stored, faults: ["R10 note date"] });
    }
  }
}
