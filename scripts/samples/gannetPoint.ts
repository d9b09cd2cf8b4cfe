import ExcelJS from "exceljs";
import { writeBlendBoard } from "./blendBoard";
import { isoOf } from "./cells";
import { Chance } from "./chance";
import { CylinderMaker, MODELS, type Rating, type SampleCylinder } from "./cylinders";
import { FillMaker, RECIPES, type Recipe, type SampleFill } from "./fills";
import { fillColumnNumber, writeFills, type FillLayout } from "./fillSheets";
import type { KeyCell, PlantedFault, PlantedLack, SampleKey, SampleShop } from "./key";
import { Mess } from "./mess";
import { FIRST_DAY, LAST_DAY, plant } from "./planted";
import { UNTESTED_DAY } from "./plantedRecords";
import type { Planted } from "./planter";
import { writePriceLists } from "./priceLists";
import { REGISTER, registerColumnNumber, writeRegister, type RegisterLayout } from "./registerSheet";

const FILLS = 600;
const CYLINDERS = 140;

interface Sample {
  readonly workbook: ExcelJS.Workbook;
  readonly key: SampleKey;
  /** What the workbook keeps of the shop; country and units are for whoever opens it to say. */
  readonly settings: SampleShop & { readonly version: 1 };
}

/** The air of the shop was tested in time but for one day; a compressor on the boat failed. */
const SHOP: SampleShop = {
  airTests: [
    { date: "2026-02-11", passed: true },
    { date: "2026-08-13", passed: true },
    { date: "2026-08-28", passed: true, source: "Boat compressor" },
    { date: "2026-09-18", passed: false, source: "Boat compressor" },
  ],
  sources: [
    { name: "Air bank", oxygenCompatible: false, mix: { oxygen: 0.209535, helium: 0 } },
    { name: "Clean air bank", oxygenCompatible: true, mix: { oxygen: 0.209535, helium: 0 } },
    { name: "Bank 32", oxygenCompatible: true, mix: { oxygen: 0.32, helium: 0 } },
    { name: "Bank 50", oxygenCompatible: true, mix: { oxygen: 0.5, helium: 0 } },
    { name: "Compressor", oxygenCompatible: true },
    { name: "Boat compressor", oxygenCompatible: false, mix: { oxygen: 0.209535, helium: 0 } },
  ],
};

/** Gannet Point Dive Works, an invented shop: three months of fills, US units and rules. */
export function gannetPoint(): Sample {
  const chance = new Chance(20_260_801);
  const cylinderMaker = new CylinderMaker(chance);
  const fillMaker = new FillMaker(chance);
  const planted = plant(cylinderMaker, fillMaker);
  const sound = soundCylinders(cylinderMaker, chance, CYLINDERS - planted.cylinders.length);
  const fills = inOrder([
    ...planted.fills,
    ...soundFills(fillMaker, chance, sound, FILLS - planted.fills.length),
  ]).map((fill): SampleFill => (fill.day === UNTESTED_DAY ? untested(fill) : fill));

  const workbook = new ExcelJS.Workbook();
  workbook.creator = "Gannet Point Dive Works";
  workbook.created = workbook.modified = new Date(Date.UTC(2026, 9, 31));
  const log = writeFills(workbook, fills, new Mess(chance));
  const everyCylinder = [...sound.flatMap(({ set }) => set), ...planted.cylinders];
  const register = writeRegister(workbook, chanceOrder(everyCylinder));
  writeBlendBoard(workbook);
  writePriceLists(workbook);
  return { workbook, key: keyOf(planted, fills, log, register), settings: { version: 1, ...SHOP } };
}

/** Cylinders that are always filled alike, as those of a shop's regulars are. */
interface Regular {
  readonly set: readonly SampleCylinder[];
  readonly recipes: readonly Recipe[];
}

function soundCylinders(maker: CylinderMaker, chance: Chance, count: number): readonly Regular[] {
  const regulars: Regular[] = [];
  const customer = (): string => `C-${String(chance.whole(1, 90)).padStart(3, "0")}`;
  const add = (
    times: number,
    model: keyof typeof MODELS,
    rating: Rating,
    owner: () => string,
    ...recipes: Recipe[]
  ) => {
    for (let nth = 0; nth < times; nth++)
      regulars.push({ set: [maker.make(MODELS[model], rating, owner())], recipes });
  };
  const shop = (): string => "Shop";
  for (let pair = 0; pair < 6; pair++) {
    const owner = customer();
    const [left, right] = [0, 1].map(() => maker.make(MODELS.LP85, "oxygen clean", owner));
    const { trimix2135, trimix1845, trimix1050, trimix1265 } = RECIPES;
    const recipe = [trimix2135, trimix1845, trimix1050, trimix1265, trimix2135, trimix1845][pair]!;
    if (left && right) regulars.push({ set: [left, right], recipes: [recipe] });
  }
  add(5, "AL40", "oxygen clean", customer, RECIPES.blend50);
  add(9, "HP100", "oxygen clean", customer, RECIPES.blend32);
  add(4, "AL80", "40", customer, RECIPES.stream36);
  add(12, "AL80", "air", customer, RECIPES.air);
  const soFar = regulars.reduce((sum, { set }) => sum + set.length, 0);
  add(count - soFar, "AL80", "40", shop, RECIPES.bank32);
  return regulars;
}

/** Spread over the days on which the shop is open: closed on Mondays, twice as busy at weekends. */
function soundFills(
  maker: FillMaker,
  chance: Chance,
  regulars: readonly Regular[],
  count: number,
): readonly SampleFill[] {
  const days: number[] = [];
  for (let day = FIRST_DAY; day <= LAST_DAY; day++) {
    const weekday = new Date(`${isoOf(day)}T00:00:00Z`).getUTCDay();
    if (weekday !== 1) days.push(...(weekday === 0 || weekday === 6 ? [day, day] : [day]));
  }
  const taken = new Set<string>();
  const free = (): readonly [day: number, regular: Regular] => {
    const [day, regular] = [chance.of(days), chance.of(regulars)];
    const key = `${day} ${regular.set[0]?.serial}`;
    if (taken.has(key)) return free();
    taken.add(key);
    return [day, regular];
  };
  return Array.from({ length: count }, () => {
    const [day, { set, recipes }] = free();
    return maker.make(day, set, chance.of(recipes));
  });
}

/** Filled on the day on which the air test was a day too old. */
function untested(fill: SampleFill): SampleFill {
  return { ...fill, faults: [...fill.faults, { rule: "A01", severity: "breach", column: "date" }] };
}

/** Rules for which the log has no column, and those fills of which an addition would have to be known. */
function withoutColumn(fills: readonly SampleFill[]): readonly PlantedLack[] {
  const lack = (rule: string, heading: string, of: readonly unknown[] = fills): PlantedLack => ({
    rule,
    why: `the log has no column for ${heading}`,
    fills: of.length,
    cells: [],
  });
  const blended = fills.filter(
    ({ recipe, faults, lacks }) =>
      recipe.method === "partial pressure" && ![...faults, ...lacks].some(({ rule }) => rule === "G01"),
  );
  return [
    lack("G13", "planned depth"),
    lack("R09", "consent"),
    lack("V14", "neck thread"),
    lack(
      "G12",
      "helium added",
      blended.filter(({ recipe }) => recipe.helium > 0),
    ),
    lack(
      "G12",
      "oxygen added",
      blended.filter(({ recipe }) => recipe.helium === 0),
    ),
  ];
}

function inOrder(fills: readonly SampleFill[]): readonly SampleFill[] {
  return [...fills].sort((one, other) => one.day - other.day);
}

/** Faults must not stand together at the end of the register. */
function chanceOrder(cylinders: readonly SampleCylinder[]): readonly SampleCylinder[] {
  return [...cylinders].sort((one, other) =>
    one.serial < other.serial ? -1 : one.serial > other.serial ? 1 : 0,
  );
}

function keyOf(
  planted: Planted,
  fills: readonly SampleFill[],
  log: FillLayout,
  register: RegisterLayout,
): SampleKey {
  const inFill = (fill: SampleFill, column: number): KeyCell => {
    const { sheet, row } = log.placeOf.get(fill)!;
    return { sheet, cell: cellName(row, column) };
  };
  const inRegister = (cylinder: SampleCylinder, column: number): KeyCell => ({
    sheet: REGISTER,
    cell: cellName(register.rowOf.get(cylinder)!, column),
  });
  const ofFills = fills.flatMap((fill) =>
    fill.faults.map(({ rule, severity, column, serial }): PlantedFault => ({
      rule,
      severity,
      ...inFill(fill, fillColumnNumber(column)),
      serial: serial ?? fill.cylinders[0]!.serial,
      fillDate: isoOf(fill.day),
    })),
  );
  const ofRegister = planted.registerFaults.map(({ cylinder, column, rule, severity }): PlantedFault => ({
    rule,
    severity,
    ...inRegister(cylinder, registerColumnNumber(column)),
    serial: cylinder.serial,
    fillDate: "",
  }));
  const lacks = new Map<string, { rule: string; why: string; fills: number; cells: KeyCell[] }>();
  for (const fill of fills) {
    for (const { rule, why, at } of fill.lacks) {
      const cell =
        "cylinder" in at
          ? inRegister(at.cylinder, registerColumnNumber(at.column))
          : inFill(fill, fillColumnNumber(at.column));
      const lack = lacks.get(`${rule} ${why}`) ?? { rule, why, fills: 0, cells: [] };
      lacks.set(`${rule} ${why}`, lack);
      lack.fills += 1;
      if (!lack.cells.some((other) => other.sheet === cell.sheet && other.cell === cell.cell))
        lack.cells.push(cell);
    }
  }
  const notChecked: readonly PlantedLack[] = [...lacks.values(), ...withoutColumn(fills)];
  return {
    about:
      "What is wrong in the sample on purpose, as the script that made it planted it. A check by these rules finds these faults and no other, and cannot judge these fills and no other.",
    file: "gannet-point.xlsx",
    country: "US",
    units: "us",
    asOf: isoOf(LAST_DAY),
    sheets: [...log.sheets, REGISTER],
    rows: {
      total: log.rows.total + register.rows.total,
      fills: log.rows.fills,
      cylinders: register.rows.cylinders,
      blank: log.rows.blank + register.rows.blank,
      headings: log.rows.headings + register.rows.headings,
      totals: log.rows.totals,
      unreadable: 0,
    },
    findings: [...ofFills, ...ofRegister],
    notChecked,
  };
}

function cellName(row: number, column: number): string {
  return `${String.fromCharCode(64 + column)}${row}`;
}
