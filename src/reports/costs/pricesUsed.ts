import type { CostReport } from "../../costs/report";
import type { GasPrice, PriceList, VolumeCharge } from "../../costs/prices/priceList";
import { nameMix } from "../../gas/nameMix";
import { UNIT_NAMES, volume, type Units } from "../../gas/units";
import type { DraftCell, SheetDraft } from "../../sheet/draft/draft";
import type { TableColumn } from "../../sheet/draft/blocks";
import { FORMATS } from "../../sheet/draft/looks";
import { sheetOf } from "../../sheet/draft/sheetOf";
import { cellName } from "../../sheet/sheet";
import { costPage } from "./page";

/** What the price list came to, row by row with its cell, and what of it could not be used. */
export function pricesUsedSheet(report: CostReport): SheetDraft {
  const { prices, units } = report;
  const unit = UNIT_NAMES[units].volume;
  const gasColumns: readonly TableColumn[] = [
    { heading: "Gas" },
    { heading: "Paid", format: FORMATS.money },
    { heading: "Per" },
    { heading: `Usable (${unit})`, format: FORMATS.whole },
    { heading: "Losses", format: FORMATS.percent },
    { heading: `Costs per ${unit}`, format: "0.0000" },
    { heading: "Cell" },
  ];
  return sheetOf(
    "Prices used",
    [
      { kind: "title", lines: ["Prices used"] },
      { kind: "section", lines: ["Gas"] },
      {
        kind: "table",
        name: "Gas_prices",
        columns: gasColumns,
        rows: gasesOf(prices).map(([name, price]) => gasRow(name, price, units)),
        empty: "The price list has no price of a gas.",
      },
      { kind: "section", lines: ["An hour of the compressor, and what a fill costs besides"] },
      {
        kind: "table",
        name: "Other_prices",
        columns: [
          { heading: "What" },
          { heading: "Amount", format: "#,##0.00" },
          { heading: "How", mostCharacters: 60 },
        ],
        rows: otherRows(prices, units),
        empty: "The price list says nothing of them.",
      },
      { kind: "section", lines: ["What customers are charged"] },
      {
        kind: "quiet",
        lines: [chargedBy(report)],
      },
      {
        kind: "table",
        name: "Charges",
        columns: [
          { heading: "Charged for" },
          { heading: "Charge", format: "#,##0.00" },
          { heading: "For one" },
        ],
        rows: chargeRows(prices, units),
        empty: "The price list charges for nothing.",
      },
      { kind: "section", lines: ["Not used"] },
      {
        kind: "table",
        name: "Prices_not_used",
        columns: [{ heading: "Why", mostCharacters: 80 }, { heading: "Price list cell" }],
        rows: prices.doubts.map(({ cell, sentence }) => [
          sentence,
          { value: cellName(cell), link: { cell } },
        ]),
        empty: "Every row of the price list was understood.",
      },
    ],
    costPage(report),
  );
}

function gasesOf({ oxygen, helium, air, banked }: PriceList): readonly (readonly [string, GasPrice])[] {
  return [
    ...(oxygen ? [["oxygen", oxygen] as const] : []),
    ...(helium ? [["helium", helium] as const] : []),
    ...(air ? [["air", air] as const] : []),
    ...banked.map((price) => [nameMix(price.mix), price] as const),
  ];
}

function gasRow(
  name: string,
  { paid, usableL, losses, perL, cell }: GasPrice,
  units: Units,
): readonly DraftCell[] {
  return [
    name,
    paid.amount,
    paid.written,
    volume(usableL, units),
    losses,
    perL / volume(1, units),
    { value: cellName(cell), link: { cell } },
  ];
}

function otherRows(
  { compressor, booster, labour }: PriceList,
  units: Units,
): readonly (readonly DraftCell[])[] {
  const unit = UNIT_NAMES[units].volume;
  const rows: (readonly DraftCell[])[] = [];
  if (compressor) {
    const { energy, filter, service, perHour, litresPerHour } = compressor;
    if (energy !== undefined) rows.push(["Energy, an hour", energy, null]);
    if (filter)
      rows.push([
        "Filter, an hour",
        filter.perHour,
        `a cartridge lasts ${Number(filter.lifeHours.toFixed(1))} h; ${
          filter.weighted
            ? `an hour here counts for ${filter.hoursCounted.toFixed(2)} h, by the water that saturated air carries at its temperature`
            : "not weighted by temperature"
        }`,
      ]);
    if (service !== undefined) rows.push(["Service, an hour", service, null]);
    rows.push([
      "Compressor, an hour",
      perHour,
      `delivers ${Math.round(volume(litresPerHour, units))} ${unit} in it`,
    ]);
  }
  if (booster)
    rows.push([
      "Booster",
      booster.perFill || booster.perL / volume(1, units),
      booster.perFill ? "a fill" : `a ${unit} of oxygen or helium by partial pressure`,
    ]);
  if (labour) {
    rows.push(["Labour, a fill of air", labour.perFill.air, null]);
    rows.push(["Labour, a fill of nitrox", labour.perFill.nitrox, null]);
    rows.push(["Labour, a fill of trimix", labour.perFill.trimix, null]);
    if (labour.partialPressure !== undefined)
      rows.push(["Labour, nitrox by partial pressure", labour.partialPressure, null]);
  }
  return rows;
}

/** Which of the two says what was charged, and how often. */
function chargedBy({ log }: CostReport): string {
  const by = (of: "log" | "price list"): number =>
    log.costed.filter(({ charge }) => charge.kind === "charged" && charge.by === of).length;
  return `Charged by the price column of the log: ${by("log")} fills; by this list: ${by("price list")}.`;
}

function chargeRows({ charges }: PriceList, units: Units): readonly (readonly DraftCell[])[] {
  const { byMix, byKind, everyFill, byGas } = charges;
  const unit = UNIT_NAMES[units].volume;
  const kinds = Object.entries(byKind) as readonly (readonly [string, number])[];
  const gases = Object.entries(byGas) as readonly (readonly [string, VolumeCharge])[];
  return [
    ...byMix.map(({ mix, perFill }) => [nameMix(mix), perFill, "fill"]),
    ...kinds.map(([kind, perFill]) => [kind, perFill, "fill"]),
    ...(everyFill === undefined ? [] : [["every fill, besides", everyFill, "fill"]]),
    ...gases.map(([gas, { perL, inTheMix }]) => [
      gas,
      perL / volume(1, units),
      inTheMix ? `${unit} in the full cylinder` : `${unit} that went in`,
    ]),
  ];
}
