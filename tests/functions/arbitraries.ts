import fc from "fast-check";
import type { CatalogueEntry } from "../../src/functions/catalogue";
import type { Argument } from "../../src/typed/cells";

/** Cells that a column of each argument may hold, good ones and slips alike. */
const CELLS: Readonly<Record<string, readonly unknown[]>> = {
  mix: ["EAN32", 32, 0.36, "air", "18/45", "TX 10/50", "heliox 21", 3, "argon", 18537],
  units: ["psi", "bar", "ft", "m", "us", "metric", "feet"],
  pressure: [0, 50, 100, 200, 232, 3000, "200 bar", "2900 psi", "3,000", "empty", -1, 900, 9000, "full"],
  temperature: [0, 20, 45, 70, 120, "20", 200],
  depth: [0, 10, 33, 60, 100, -1, "30 m"],
  partialPressure: [0.16, 1.2, 1.4, 1.6, 4, "1,4"],
  cylinder: ["AL80", 12, "D12", "12L232", 11.1, 80, "AL999"],
  stamp: ["2021/10", "9 A1 32 06", "06/09", "Sep-06", 45000, 46327, "soon"],
  words: [
    "oxygen",
    "helium",
    "top",
    "drain",
    "mix",
    "nitrogen",
    "salt",
    "fresh",
    "real",
    "ideal",
    "helium first",
  ],
  other: [
    true,
    false,
    "US",
    "GB",
    "XX",
    "O2 clean",
    40,
    "air",
    "partial pressure",
    "premix",
    "3AL",
    "due",
    "R.",
    250,
  ],
};
const KIND_OF: readonly (readonly [RegExp, keyof typeof CELLS])[] = [
  [/units/, "units"],
  [/ppo2/i, "partialPressure"],
  [/mix|supply/i, "mix"],
  [/pressure/i, "pressure"],
  [/temperature/i, "temperature"],
  [/depth/, "depth"],
  [/cylinder|volume/i, "cylinder"],
  [/date|stamp|last|hydro|visual/i, "stamp"],
  [/gas|part|answer|water|order|model/i, "words"],
];
const NOTHING = [null, "", 0, undefined, { error: "#N/A" }];

/** A cell for this argument: usually of its kind, sometimes blank or an error, sometimes of any kind. */
export function cellFor(name: string): fc.Arbitrary<unknown> {
  const kind = KIND_OF.find(([pattern]) => pattern.test(name))?.[1] ?? "other";
  return fc.oneof(
    { arbitrary: fc.constantFrom(...CELLS[kind]!), weight: 12 },
    { arbitrary: fc.constantFrom(...NOTHING), weight: 2 },
    { arbitrary: fc.constantFrom(...Object.values(CELLS).flat()), weight: 1 },
  );
}

const STEP_ROWS = fc.array(fc.tuple(cellFor("mix"), cellFor("pressure"), cellFor("temperature")), {
  maxLength: 4,
});
const PRICE_ROWS = fc.array(
  fc.tuple(fc.constantFrom("oxygen", "helium", "top", "per fill"), fc.double({ min: 0, max: 9 })),
  {
    maxLength: 4,
  },
);

export function tableFor(name: string): fc.Arbitrary<Argument> {
  return (name === "steps" ? STEP_ROWS : PRICE_ROWS) as unknown as fc.Arbitrary<Argument>;
}

/** Some rows of arguments, and which of the arguments are columns; the others are those of the first row. */
export interface Rows {
  readonly rows: readonly (readonly Argument[])[];
  readonly columns: readonly boolean[];
}

export function rowsFor({ parameters }: CatalogueEntry): fc.Arbitrary<Rows> {
  const row = fc.tuple(
    ...parameters.map(({ name, table }) =>
      table ? tableFor(name) : (cellFor(name) as fc.Arbitrary<Argument>),
    ),
  );
  return fc
    .record({
      rows: fc.array(row, { minLength: 2, maxLength: 6 }),
      columns: fc.tuple(...parameters.map(({ table }) => (table ? fc.constant(false) : fc.boolean()))),
    })
    .map(({ rows, columns }) => ({
      columns,
      rows: rows.map((cells) => cells.map((cell, index) => (columns[index] ? cell : rows[0]![index]))),
    }));
}

/** Anything a host, a script or a hurried hand could hand over. */
export const ANYTHING: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom(...Object.values(CELLS).flat(), ...NOTHING),
  fc.string({ unit: "binary", maxLength: 30 }),
  fc.double(),
  fc.integer(),
  fc.boolean(),
  fc.constantFrom(
    "#N/A",
    "#VALUE!",
    "#REF!",
    { code: "#NUM!", type: "Error" },
    { basicValue: 32 },
    {},
    Symbol.iterator,
  ),
  fc.array(
    fc.array(fc.oneof(fc.constantFrom(...Object.values(CELLS).flat(), null), fc.string(), fc.double()), {
      maxLength: 3,
    }),
    {
      maxLength: 4,
    },
  ),
  fc.array(fc.double(), { maxLength: 3 }),
);
