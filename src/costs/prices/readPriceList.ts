import { AIR, HELIUM, OXYGEN, type Mixture } from "../../gas/mixture";
import { nameMix } from "../../gas/nameMix";
import { DEFAULT_TEMPERATURE_K, kelvin, type Units } from "../../gas/units";
import type { Sheet } from "../../sheet/sheet";
import { filterHours } from "./filterHeat";
import { gasPrice } from "./gasPrice";
import type { PlainItem } from "./item";
import type {
  BankedPrice,
  Charges,
  CompressorPrice,
  FilterPrice,
  GasPrice,
  LabourPrice,
  MixKind,
  PriceList,
  VolumeCharge,
} from "./priceList";
import {
  readPriceSheet,
  type ListAmount,
  type PriceDoubt,
  type PriceRow,
  type PriceSheet,
} from "./priceSheet";
import type { UnitKind } from "./unit";

/** The price list of a sheet: what its rows come to, with a doubt for everything that could not be used. */
export function readPriceList(sheet: Sheet, units: Units): PriceList {
  return priceListOf(readPriceSheet(sheet, units), units);
}

export function priceListOf(sheet: PriceSheet, units: Units): PriceList {
  return new ListMaker(sheet, units).list();
}

const TIMES = ["time", "time for nitrox", "time for trimix", "time for partial pressure"] as const;

const NO_LABOUR = "Not used: add a row “Labour” with what an hour costs.";
const NO_FILTER = "Not used: add a row “Filter” with what a cartridge costs, per the hours it lasts.";
const NEEDED_BESIDE: readonly (readonly [PlainItem, PlainItem, string])[] = [
  ...TIMES.map((time) => [time, "labour", NO_LABOUR] as const),
  ["room temperature", "filter", NO_FILTER],
  ["filter temperature", "filter", NO_FILTER],
];

class ListMaker {
  private readonly doubts: PriceDoubt[];

  constructor(
    private readonly sheet: PriceSheet,
    private readonly units: Units,
  ) {
    this.doubts = [...sheet.doubts];
  }

  list(): PriceList {
    const oxygen = this.gas("oxygen", OXYGEN);
    const helium = this.gas("helium", HELIUM);
    const air = this.gas("air", AIR);
    const compressor = this.compressor();
    const booster = this.booster();
    const labour = this.labour();
    this.doubtMisplaced();
    this.doubtLonely();
    return {
      ...(oxygen && { oxygen }),
      ...(helium && { helium }),
      ...(air && { air }),
      banked: this.banked(),
      ...(compressor && { compressor }),
      ...(booster && { booster }),
      ...(labour && { labour }),
      charges: this.charges(),
      doubts: this.doubts,
    };
  }

  private gas(item: "oxygen" | "helium" | "air", gas: Mixture): GasPrice | undefined {
    const row = this.rows(item).find(({ pay }) => pay !== undefined);
    return row && this.priced(row, gas);
  }

  private priced(row: PriceRow, gas: Mixture): GasPrice | undefined {
    const price = gasPrice(row, gas, DEFAULT_TEMPERATURE_K[this.units]);
    return price && "why" in price ? this.doubt(row, price.why) : price;
  }

  private banked(): readonly BankedPrice[] {
    return this.sheet.rows.flatMap((row) => {
      if (row.item.kind !== "mix" || !row.pay) return [];
      const { mix } = row.item;
      const price = this.priced(row, mix);
      return price ? [{ ...price, mix }] : [];
    });
  }

  private compressor(): CompressorPrice | undefined {
    const flow = this.amount("flow", "flow");
    const litresPerHour = flow && flow.amount * flow.unit.size;
    const energy = this.energy();
    const service = this.perHour("service");
    const filter = this.filter(litresPerHour);
    const parts = [energy, filter?.perHour, service].filter((part) => part !== undefined);
    const [row] = [...this.rows("energy"), ...this.rows("filter"), ...this.rows("service")];
    if (parts.length === 0) return undefined;
    if (litresPerHour === undefined || litresPerHour <= 0)
      return (
        row &&
        this.doubt(
          row,
          "The compressor's costs are by the hour, and nothing says how much it delivers: add a row “Compressor delivers” in cu ft/min or L/min.",
        )
      );
    return {
      litresPerHour,
      ...(energy !== undefined && { energy }),
      ...(filter && { filter }),
      ...(service !== undefined && { service }),
      perHour: parts.reduce((sum, part) => sum + part, 0),
    };
  }

  /** By the hour, or by the kilowatt hour and the motor's power. */
  private energy(): number | undefined {
    const perHour = this.find("energy", "time");
    if (perHour) return perHour.pay!.amount / perHour.pay!.unit.size;
    const perKwh = this.find("energy", "energy");
    if (!perKwh) return undefined;
    const power = this.find("energy", "power")?.pay;
    return power
      ? (perKwh.pay!.amount / perKwh.pay!.unit.size) * power.amount * power.unit.size
      : this.doubt(perKwh, "By the kWh: add a row “Compressor power” with the motor's kW.");
  }

  private perHour(item: "service"): number | undefined {
    const amount = this.amount(item, "time");
    return amount && amount.amount / amount.unit.size;
  }

  /** A cartridge lasts so many hours, or for so much air, at the temperature it is rated for. */
  private filter(litresPerHour: number | undefined): FilterPrice | undefined {
    const row = this.rows("filter").find(({ pay }) => pay !== undefined);
    if (!row) return undefined;
    const { amount, unit } = row.pay!;
    const lifeHours =
      unit.kind === "time"
        ? unit.size
        : unit.kind === "volume" && litresPerHour !== undefined
          ? unit.size / litresPerHour
          : undefined;
    if (lifeHours === undefined)
      return this.doubt(
        row,
        "Write for how many hours a cartridge lasts, such as “40 hours”, or for how much air.",
      );
    const room = this.temperature("room temperature");
    const rated = this.temperature("filter temperature");
    const weighted = room !== undefined && rated !== undefined;
    const hoursCounted = weighted ? filterHours(room, rated) : 1;
    return { perHour: (amount / lifeHours) * hoursCounted, lifeHours, hoursCounted, weighted };
  }

  private temperature(item: "room temperature" | "filter temperature"): number | undefined {
    const amount = this.amount(item, "temperature");
    if (!amount) return undefined;
    const temperatureK = kelvin(amount.amount, amount.unit.fahrenheit === true ? "us" : "metric");
    // Where a compressor can stand; beyond, the unit is wrong.
    if (temperatureK >= 253.15 && temperatureK <= 333.15) return temperatureK;
    return this.doubt(
      this.rows(item)[0]!,
      "No compressor stands at this temperature: check the number and the unit.",
    );
  }

  private booster(): PriceList["booster"] {
    const row = this.rows("booster").find(({ pay }) => pay !== undefined);
    if (!row) return undefined;
    const { amount, unit } = row.pay!;
    if (unit.kind === "volume") return { perL: amount / unit.size, perFill: 0 };
    if (unit.kind === "fill") return { perL: 0, perFill: amount / unit.size };
    return this.doubt(row, "Write what boosting costs for a cu ft or L of oxygen or helium, or for a fill.");
  }

  private labour(): LabourPrice | undefined {
    const row = this.rows("labour").find(({ pay }) => pay !== undefined);
    if (!row) return undefined;
    const { amount, unit } = row.pay!;
    if (unit.kind === "fill") {
      const perFill = amount / unit.size;
      return { perFill: { air: perFill, nitrox: perFill, trimix: perFill } };
    }
    if (unit.kind !== "time" && unit.kind !== "minutes")
      return this.doubt(row, "Write what an hour costs, or what a fill does.");
    const perMinute = amount / (unit.kind === "time" ? unit.size * 60 : unit.size);
    const [any, nitrox, trimix, partial] = TIMES.map((item) => {
      const time = this.amount(item, "minutes");
      return time && time.amount * time.unit.size * perMinute;
    });
    if (any === undefined)
      return this.doubt(
        row,
        "By the hour: add a row “Time per fill” in min/fill, to know what a fill takes.",
      );
    return {
      perFill: { air: any, nitrox: nitrox ?? any, trimix: trimix ?? nitrox ?? any },
      ...(partial !== undefined && { partialPressure: partial }),
    };
  }

  /** What only customers pay, standing where the shop's own costs stand. */
  private doubtMisplaced(): void {
    for (const item of ["nitrox", "trimix", "fill"] as const)
      for (const row of this.rows(item))
        if (row.pay)
          this.doubt(
            row,
            "What customers pay belongs under “We charge”. Gas of a bank that is paid for is named by its mix, such as “EAN32 bank”.",
          );
  }

  /** Rows that are of no use alone. */
  private doubtLonely(): void {
    for (const [item, needed, sentence] of NEEDED_BESIDE) {
      const [row] = this.rows(item);
      if (row && this.rows(needed).every(({ pay }) => pay === undefined)) this.doubt(row, sentence);
    }
    const power = this.find("energy", "power");
    if (power && !this.find("energy", "energy") && !this.find("energy", "time"))
      this.doubt(power, "Not used: add a row “Electricity” with what a kWh costs.");
  }

  private charges(): Charges {
    const byMix: { mix: Mixture; perFill: number }[] = [];
    const byKind: Partial<Record<MixKind, number>> = {};
    const byGas: Partial<Record<"oxygen" | "helium" | "air", VolumeCharge>> = {};
    let everyFill: number | undefined;
    for (const row of this.sheet.rows) {
      if (!row.charge) continue;
      const { item, charge } = row;
      const { amount, unit } = charge;
      const { kind } = item;
      if (unit.kind === "fill") {
        const perFill = amount / unit.size;
        if (kind === "mix") byMix.push({ mix: item.mix, perFill });
        else if (kind === "air" || kind === "nitrox" || kind === "trimix") byKind[kind] = perFill;
        else if (kind === "fill") everyFill = perFill;
        else if (kind === "oxygen") byMix.push({ mix: OXYGEN, perFill });
        else this.doubt(row, "Nobody is charged for this by the fill.");
      } else if (unit.kind === "volume" && (kind === "oxygen" || kind === "helium" || kind === "air")) {
        byGas[kind] = { perL: amount / unit.size, inTheMix: unit.inTheMix === true };
      } else
        this.doubt(row, "Customers are charged by the fill, or by the cu ft or L of oxygen, helium or air.");
    }
    return { byMix, byKind, byGas, ...(everyFill !== undefined && { everyFill }) };
  }

  private rows(item: PlainItem): readonly PriceRow[] {
    return this.sheet.rows.filter((row) => row.item.kind === item);
  }

  private find(item: PlainItem, unit: UnitKind): PriceRow | undefined {
    return this.rows(item).find(({ pay }) => pay?.unit.kind === unit);
  }

  /** The amount of an item in a unit of this kind; in another it is a doubt. */
  private amount(item: PlainItem, kind: UnitKind): ListAmount | undefined {
    const row = this.rows(item).find(({ pay }) => pay !== undefined);
    if (!row?.pay) return undefined;
    if (row.pay.unit.kind === kind) return row.pay;
    if (kind === "minutes" && row.pay.unit.kind === "time")
      return { ...row.pay, unit: { kind: "minutes", size: row.pay.unit.size * 60 } };
    return this.doubt(row, `“${row.pay.written}” does not fit here: write ${FITTING[kind] ?? kind}.`);
  }

  private doubt(row: PriceRow, sentence: string): undefined {
    const name = row.item.kind === "mix" ? nameMix(row.item.mix) : row.item.kind;
    this.doubts.push({ cell: row.cell, sentence: `${name}: ${sentence}` });
    return undefined;
  }
}

const FITTING: Partial<Record<UnitKind, string>> = {
  flow: "cu ft/min, L/min or m³/h",
  time: "hours",
  temperature: "°F or °C",
  minutes: "min/fill",
};
