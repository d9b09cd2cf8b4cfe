import { serialOf, type Written } from "./cells";
import type { Chance } from "./chance";
import type { FillColumn, SampleFill } from "./fills";

const PSI_PER_BAR = 14.5037738;

/** The usual mess of a log kept by hand: all of it can be read for what it means. */
export class Mess {
  constructor(private readonly chance: Chance) {}

  /** What stands in this row instead of the plain way; `above` is the fill in the row above, if there is one. */
  of(fill: SampleFill, above: SampleFill | undefined): Partial<Record<FillColumn, Written>> {
    // What is planted stands out by its fault, not by its spelling.
    if (fill.faults.length > 0 || fill.lacks.length > 0) return this.#mixes(fill);
    return {
      ...this.#mixes(fill),
      ...this.#date(fill, above),
      ...this.#pressures(fill),
      ...this.#oxygen(fill),
      ...this.#serial(fill),
      ...(this.chance.happens(0.02) && { remarks: this.chance.of(REMARKS) }),
    };
  }

  #date({ day }: SampleFill, above: SampleFill | undefined): Partial<Record<FillColumn, Written>> {
    const sameDay = above !== undefined && above.day === day && above.written.date === undefined;
    if (sameDay && this.chance.happens(0.3)) return { date: '"' };
    if (!this.chance.happens(0.05)) return {};
    const iso = new Date((day - 25_569) * 86_400_000).toISOString().slice(0, 10);
    const [year = "", month = "", date = ""] = iso.split("-");
    return { date: this.chance.of([`${Number(month)}/${Number(date)}/${year}`, iso]) };
  }

  /** Spellings of a mix; a trimix such as 10/50 becomes 1 October 1950 as soon as the spreadsheet sees it. */
  #mixes({ recipe }: SampleFill): Partial<Record<FillColumn, Written>> {
    const asDates: Readonly<Record<string, string>> = { "10/50": "1950-10-01", "12/65": "1965-12-01" };
    const swallowed = asDates[recipe.mix];
    if (swallowed !== undefined) {
      const date = { value: serialOf(swallowed), format: "mmm-yy" };
      return { orderedMix: date, startMix: date };
    }
    if (!this.chance.happens(0.3)) return {};
    return { orderedMix: this.chance.of(SPELLINGS[recipe.mix] ?? [recipe.mix]) };
  }

  #pressures({ endPsi }: SampleFill): Partial<Record<FillColumn, Written>> {
    if (!this.chance.happens(0.08)) return {};
    const grouped = `${Math.floor(endPsi / 1000)},${String(endPsi % 1000).padStart(3, "0")}`;
    return {
      endPsi: this.chance.of([
        `${Math.round(endPsi / PSI_PER_BAR)} bar`,
        `${grouped} psi`,
        ` ${endPsi} `,
        `${endPsi}#`,
        `${endPsi + 250}/${endPsi}`,
      ]),
    };
  }

  #oxygen({ recipe, oxygen }: SampleFill): Partial<Record<FillColumn, Written>> {
    if (recipe.mix === "air") return this.chance.happens(0.2) ? { oxygen } : {};
    if (!this.chance.happens(0.1)) return {};
    const share = { value: Number((oxygen / 100).toFixed(4)), format: "0.0%" };
    return {
      oxygen: this.chance.of<Written>([`${oxygen}%`, `${oxygen} %`, share, String(oxygen).replace(".", ",")]),
    };
  }

  #serial({ cylinders }: SampleFill): Partial<Record<FillColumn, Written>> {
    const [only] = cylinders;
    if (only === undefined || cylinders.length > 1 || !this.chance.happens(0.06)) return {};
    const { serial } = only;
    const apart = serial.replace(/^([A-Z]+)(\d)/, "$1 $2");
    return { serial: this.chance.of([serial.toLowerCase(), `${serial} `, apart, apart.replace(" ", "-")]) };
  }
}

const SPELLINGS: Readonly<Record<string, readonly Written[]>> = {
  air: ["Air", "AIR", "air "],
  EAN32: ["EANx32", "nitrox 32", "32%", 32, "Nx32", { value: 0.32, format: "0%" }, "ean 32"],
  EAN36: ["EANx36", "36", "nitrox 36"],
  EAN50: ["50%", "EAN 50", 50],
  "21/35": ["TX 21/35", "trimix 21/35", "Tx21/35"],
  "TX 18/45": ["18/45", "trimix 18/45"],
};

const REMARKS = [
  "new O-ring",
  "filled twice, cooled in between",
  "valve stiff, told the owner",
  "for Saturday's boat",
  "rental",
];
