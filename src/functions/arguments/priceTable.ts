import { CHARGED_GASES, type ChargedGas, type GasPrices } from "../../costs/fillCost";
import { refuse } from "../../gas/refusal";
import { litres, type Units } from "../../gas/units";
import type { CellValue } from "../../sheet/sheet";
import { isBlankCell, numberIn } from "../../typed/cells";
import { TableReader } from "../../typed/reader";
import { orList } from "../../typed/readers";

const PER_FILL = "per fill";
const ROWS = [...CHARGED_GASES, PER_FILL];

/** The `prices` of FILLCOST: rows of gas and price for a cubic foot or litre, and of what every fill costs. */
export function priceTable() {
  return new TableReader(
    'Rows in any order: "oxygen", "helium", "top" with the price per cu ft or L, and "per fill".',
    pricesIn,
  );
}

function pricesIn(rows: readonly (readonly CellValue[])[], units: Units): GasPrices {
  const prices: { -readonly [Key in keyof GasPrices]: GasPrices[Key] } = { perFill: 0 };
  const seen = new Set<string>();
  for (const [index, row] of rows.entries()) {
    if (row.every((cell) => isBlankCell(cell) || cell === 0)) continue;
    const place = `row ${index + 1}: `;
    if (row.length !== 2) refuse("give two columns: what is priced, and its price.");
    const [name, price] = row;
    const key = String(name ?? "")
      .trim()
      .toLowerCase();
    if (!ROWS.includes(key))
      refuse(`${place}"${String(name ?? "").trim()}" is not priced: write ${orList(ROWS)}.`);
    if (seen.has(key)) refuse(`${place}"${key}" stands there twice: leave one.`);
    seen.add(key);
    if (isBlankCell(price ?? null)) continue;
    const amount = typeof price === "string" ? numberIn(price) : price;
    if (typeof amount !== "number" || amount < 0) {
      refuse(`${place}the price of "${key}" is not an amount: write a number, 0 or more.`);
    }
    if (key === PER_FILL) prices.perFill = amount;
    else prices[key as ChargedGas] = amount / litres(1, units);
  }
  return prices;
}
