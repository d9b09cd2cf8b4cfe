import type { CellValue, Sheet, SheetRow } from "../src/sheet/sheet";

/** A log of so many fills, an eightieth as many cylinders, as a busy shop would have it; every number is made up. */
export function madeUpSheets(fills: number): readonly Sheet[] {
  return [fillSheet(fills), registerSheet(cylinderCount(fills))];
}

/** The same, with a price list. */
export function madeUpSheetsAndPrices(fills: number): readonly Sheet[] {
  return [...madeUpSheets(fills), priceSheet()];
}

const cylinderCount = (fills: number): number => Math.max(50, Math.round(fills / 80));
/** 1 January 2025, as spreadsheets count. */
export const FIRST_DAY = 45_658;

const FILL_HEADINGS = [
  "No.", "Date", "Time", "Serial", "Start psi", "Start mix", "Ordered mix", "Method", "Source", "O2 added psi",
  "End psi", "Gas temp F", "Analysed O2 %", "Analysed by", "MOD (ft)", "Filled by", "Signature",
]; // prettier-ignore
const FILL_FORMATS = [undefined, "yyyy-mm-dd", "h:mm"];

interface Recipe {
  readonly mix: string;
  readonly method: string;
  readonly source: string;
  /** Oxygen to let in, for each psi from start to end. */
  readonly oxygen: number | null;
  readonly analysed: number | null;
}

/** Eleven air fills, four from a bank of 32, five blends by partial pressure in twenty. */
const RECIPES: readonly Recipe[] = [
  ...Array.from({ length: 11 }, (_, at): Recipe => ({ mix: "air", method: "air", source: at < 6 ? "Bank A" : "Compressor", oxygen: null, analysed: null })),
  ...Array.from({ length: 4 }, (): Recipe => ({ mix: "EAN32", method: "premix", source: "Bank 32", oxygen: null, analysed: 32 })),
  ...Array.from({ length: 4 }, (): Recipe => ({ mix: "EAN32", method: "partial pressure", source: "Bank A", oxygen: 0.1365, analysed: 32 })),
  { mix: "EAN36", method: "partial pressure", source: "Bank A", oxygen: 0.184, analysed: 36 },
]; // prettier-ignore

const BANKED = RECIPES.find(({ method }) => method === "premix")!;

function sourceOf(method: string, { source }: Recipe): string {
  return method === "premix" ? BANKED.source : source;
}

function fillSheet(fills: number): Sheet {
  const cylinders = cylinderCount(fills);
  const rows: SheetRow[] = [{ values: FILL_HEADINGS }];
  for (let at = 0; at < fills; at++) {
    const chance = (at * 2_654_435_761) % 4_294_967_296;
    const cylinder = (at * 7919) % cylinders;
    const recipe = RECIPES[chance % RECIPES.length]!;
    // Two cylinders in three are clean for oxygen; a hundredth of what goes into the others should not.
    const { mix, method, oxygen, analysed } =
      recipe.oxygen !== null && cylinder % 3 === 0 && at % 100 > 0 ? BANKED : recipe;
    const source = recipe.mix === "air" && at % 500 === 0 ? "Old compressor" : sourceOf(method, recipe);
    const start = 100 + ((chance >>> 4) % 16) * 50;
    const end = 2900 + ((chance >>> 12) % 10) * 10;
    const off = ((chance >>> 8) % 9) / 10 - 0.4;
    const measured =
      analysed === null ? null : Number((analysed + off + (at % 997 === 0 ? 5 : 0)).toFixed(1));
    rows.push({
      values: [
        4100 + at,
        FIRST_DAY + Math.floor((at * 300) / fills),
        (9 + ((at * 8) / fills) * 300 - Math.floor((at * 300) / fills) * 8) / 24,
        serialOf(cylinder),
        start,
        mix,
        mix,
        method,
        source,
        oxygen === null ? null : Math.round(oxygen * (end - start)),
        end,
        70,
        measured,
        measured === null ? null : "R.",
        measured === null ? null : Math.floor(33 * (140 / measured - 1)),
        at % 3 === 0 ? "T." : "R.",
        measured === null ? null : "signed",
      ],
      formats: FILL_FORMATS,
    });
  }
  return sheetOf("Fills", rows);
}

function registerSheet(cylinders: number): Sheet {
  const rows: SheetRow[] = [
    {
      values: [
        "Serial",
        "Owner",
        "Class",
        "Made",
        "Service psi",
        "Hydro",
        "Visual",
        "O2 rating",
        "O2 cleaned",
      ],
    },
  ];
  for (let at = 0; at < cylinders; at++) {
    rows.push({
      values: [
        serialOf(at), `C-${at % 400}`, "3AL", "2014/03", 3000, `202${at % 50 === 0 ? 0 : 1 + (at % 4)}/${1 + (at % 12)}`,
        `2025/${1 + (at % 3)}`, at % 3 === 0 ? "40" : "O2 clean", "2025/01",
      ],
    }); // prettier-ignore
  }
  return sheetOf("Cylinders", rows);
}

function serialOf(cylinder: number): string {
  return `GP${String(10_000 + cylinder)}`;
}

function sheetOf(name: string, rows: readonly SheetRow[]): Sheet {
  return { name, hidden: false, dateSystem: 1900, merges: [], rows };
}

/** Enough of a price list to cost every fill by. */
function priceSheet(): Sheet {
  const rows: readonly (readonly CellValue[])[] = [
    ["What", "We pay", "Per", "We charge", "For one"],
    ["Oxygen", 0.6, "cu ft", null, null],
    ["Compressor", 12, "hour", null, null],
    ["Air", null, null, 8, "fill"],
    ["EAN32", null, null, 14, "fill"],
    ["EAN36", null, null, 18, "fill"],
  ];
  return sheetOf(
    "Prices",
    rows.map((values) => ({ values })),
  );
}
