import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import type { LogContext } from "../../src/log/context";
import { describeLog, type ReadingDescription } from "../../src/log/describeLog";
import type { Field } from "../../src/log/log";
import { readLog } from "../../src/log/readLog";
import messy from "./fixtures/messy-inputs.json";
import { sheetOf, type FixtureCell } from "./sheets";

/**
 * Every cell of the file, in a sheet of its own under a usual heading, against the meaning the file gives it.
 * `normalised` null means that the cell must not pass as a value; the table below says what it is instead.
 */
interface MessyCell {
  readonly raw: string | number;
  readonly column: string;
  readonly meaning: string;
  readonly normalised: Readonly<Record<string, unknown>> | null;
}

const AS_OF = Temporal.PlainDate.from("2026-10-31");
const METRIC: LogContext = { units: "metric", asOf: AS_OF };
const US: LogContext = { units: "us", dateOrder: "month first", stampOrder: "month first", asOf: AS_OF };

/** Under which heading, and knowing what, a cell of each column is read. */
const COLUMNS: Readonly<Record<string, readonly [heading: string, field: Field, context: LogContext]>> = {
  mix: ["Ordered mix", "orderedMix", US],
  o2_rating: ["O2 rating", "oxygenService", US],
  pressure: ["End pressure", "endPressure", US],
  working_pressure: ["Working pressure", "servicePressure", US],
  hydro: ["Hydro", "hydro", US],
  hydro_DE: ["TÜV", "hydro", { ...METRIC, stampMeans: "due" }],
  visual: ["Visual", "visual", US],
  fill_date: ["Date", "date", { units: "us", asOf: AS_OF }],
  serial: ["Serial", "serial", US],
  cylinder_id: ["Tank #", "shopNumber", US],
  type: ["Size", "size", US],
  price: ["Price", "price", US],
};

/** Cells that mean something only to a shop that works in bar. */
const IN_BAR = new Set(["232", "200/300"]);

type Outcome =
  "unreadable" | "blank" | { readonly choices: readonly unknown[] } | { readonly value: unknown };

/** What the file calls a doubt, spelt out. */
const DOUBTS: Readonly<Record<string, Outcome>> = {
  "mix Normoxic": "unreadable",
  "mix 02": { choices: [{ oxygen: 100, helium: 0 }] },
  "pressure 3.000": {
    choices: expect.arrayContaining([
      { bar: 206.843, written: { value: 3000, unit: "psi" } },
      { bar: 3, written: { value: 3, unit: "bar" } },
    ]) as unknown[],
  },
  "pressure -": "blank",
  "hydro_DE 09/11": { choices: ["2009-11", "2011-09"] },
  // The sheet says which system it counts in, so the doubt of the file is settled: see the test of 1904 below.
  "hydro 42277": { value: "2015-09" },
  "fill_date 03/04/2024": { choices: ["2024-04-03", "2024-03-04"] },
  "fill_date 02/29/2023": "unreadable",
  "fill_date 1/5/15": { choices: ["2015-05-01", "2015-01-05"] },
  "hydro OUT": "unreadable",
  "hydro N/A": "unreadable",
  "hydro see sticker": "unreadable",
  "hydro ??": "unreadable",
  "serial UNREADABLE": "unreadable",
  "serial GONE": "unreadable",
  "type S80 / LP85 / HP100": "unreadable",
  "type 15 LB": "unreadable",
};

function wanted(cell: MessyCell): Outcome {
  const { normalised: meant, column } = cell;
  if (meant === null || (column === "hydro_DE" && meant["due"] === undefined)) {
    const doubt = DOUBTS[`${column} ${String(cell.raw).trim()}`];
    if (doubt === undefined) throw new Error(`No outcome is written down for ${column} ${cell.raw}`);
    return doubt;
  }
  switch (column) {
    case "mix":
      return { value: { oxygen: meant["o2"], helium: meant["he"] } };
    case "o2_rating": {
      const rating = meant["max_o2"];
      return { value: { maxOxygen: rating, oxygenClean: meant["pp"] ?? false } };
    }
    case "pressure":
    case "working_pressure":
      return { value: expect.objectContaining(pressureMeant(meant)) };
    case "hydro":
    case "hydro_DE":
    case "visual":
      if (meant["status"] === "expired") return "unreadable";
      return { value: meant["month"] ?? meant["due"] };
    case "fill_date":
      return { value: meant["date"] };
    case "serial":
      return { value: meant["serial"] };
    case "cylinder_id":
      return { value: meant["id"] };
    case "type": {
      const count = (meant["count"] as number | undefined) ?? 1;
      return {
        value: expect.objectContaining({ waterVolumeL: (meant["water_L"] as number) * count, count }),
      };
    }
    case "price":
      return { value: meant["amount"] };
    default:
      throw new Error(`Nobody said how to read ${column}`);
  }
}

function pressureMeant(meant: Readonly<Record<string, unknown>>): object {
  const unit = meant["unit"] as "psi" | "bar";
  const inBar = (value: unknown): unknown =>
    expect.closeTo((value as number) * (unit === "psi" ? 0.0689475729 : 1), 2);
  return {
    written: { value: meant["value"] ?? meant["cold"] ?? meant["ps"], unit },
    ...(meant["plus"] === undefined ? {} : { plus: true }),
    ...(meant["hot"] === undefined ? {} : { hotBar: inBar(meant["hot"]) }),
    ...(meant["pt"] === undefined ? {} : { testBar: inBar(meant["pt"]) }),
  };
}

function readAlone(raw: FixtureCell, column: string, dateSystem: 1900 | 1904 = 1900): ReadingDescription {
  const [heading, field, usual] = COLUMNS[column]!;
  const context = IN_BAR.has(String(raw)) ? METRIC : usual;
  const registerField = ["servicePressure", "hydro", "visual", "oxygenService", "size"].includes(field);
  const around: readonly [string, FixtureCell][] = registerField
    ? [["Serial no.", "A10001"], ["Owner", "C-014"]]
    : [["Filled by", "R."], ["Analysed O2 %", 31.8], ["Start pressure", 50]]; // prettier-ignore
  const sheet = sheetOf(
    [
      [...around.map(([name]) => name), heading],
      [...around.map(([, value]) => value), raw],
    ],
    { dateSystem },
  );
  const { sheets } = describeLog(readLog([sheet], context));
  const found = sheets[0]!.rows[1]!;
  expect(found.kind).toBe(registerField ? "cylinder" : "fill");
  return found.fields[field] ?? { raw: "" };
}

describe("the messy inputs, cell by cell", () => {
  const cells = messy.cells as unknown as readonly MessyCell[];
  it.each(cells.map((cell) => [cell.column, cell.raw, cell.meaning, cell] as const))(
    "%s: %s is %s",
    (_column, _raw, _meaning, cell) => {
      const outcome = wanted(cell);
      const found = readAlone(cell.raw, cell.column);
      if (outcome === "unreadable") {
        expect(found.unreadable).toMatch(/\.$/);
        expect(found).not.toHaveProperty("value");
      } else if (outcome === "blank") {
        expect(found).toEqual({ raw: cell.raw });
      } else {
        expect(found).toMatchObject(outcome);
        expect("value" in found).toBe("value" in outcome);
      }
    },
  );

  it("keeps what else a stamp says", () => {
    expect(readAlone("03 23+", "hydro").stamp).toMatchObject({ plus: true, means: "test" });
    expect(readAlone("2021/03 V", "visual").stamp).toMatchObject({ marks: ["V"] });
    expect(readAlone("exp 10/24", "hydro").stamp).toMatchObject({ means: "due" });
    expect(readAlone("13/7", "hydro_DE").stamp).toMatchObject({ means: "due" });
  });

  it("says where a mix came back from a date", () => {
    expect(readAlone(18537, "mix").note).toContain("date");
    expect(readAlone({ v: 24077, f: "mmm-yy" }, "mix").note).toContain("date");
  });

  it("counts days as the workbook does", () => {
    expect(readAlone(42277, "hydro", 1904).value).toBe("2019-10");
    expect(readAlone({ v: 42277, f: "mmm-yy" }, "hydro", 1904).value).toBe("2019-10");
    expect(readAlone(42277, "hydro", 1900).value).toBe("2015-09");
  });

  it("reads each of the size names alone", () => {
    expect(readAlone("S80", "type").value).toMatchObject({ count: 1 });
    expect(readAlone("LP85", "type").value).toMatchObject({ count: 1 });
    expect(readAlone("HP100", "type").value).toMatchObject({ count: 1 });
  });
});

describe("the headings of the messy inputs", () => {
  /** The field that each group of headings stands for; several where its cells decide. */
  const FIELDS: Readonly<Record<string, readonly (Field | null)[]>> = {
    "cylinder_id (shop or club number)": ["shopNumber"],
    serial: ["serial"],
    "owner / customer": ["owner"],
    "cylinder type / size": ["size"],
    "working pressure": ["servicePressure"],
    "test pressure": [null],
    "last hydro": ["hydro"],
    "next hydro due": ["hydro"],
    "last visual": ["visual"],
    "O2 service / cleanliness": ["oxygenService", "oxygenCleaned"],
    "fill date": ["date"],
    "start pressure": ["startPressure"],
    "start mix": ["startMix"],
    "target mix": ["orderedMix"],
    "O2 added": ["oxygenAdded"],
    "He added": ["heliumAdded"],
    "final pressure": ["endPressure", "settledPressure"],
    "analysed O2": ["analysedMix"],
    "analysed He": ["analysedHelium"],
    MOD: ["modOnLabelM"],
    "analysed by / filled by": ["filledBy", "analysedBy"],
    "customer sign-off": ["receivedBy", "certification"],
    "compressor / counters": [null, "source"],
    price: ["price"],
    remarks: ["remarks"],
  };
  /** Cells that fit the group, to stand below the heading. */
  const CELLS: Readonly<Record<string, readonly FixtureCell[]>> = {
    "O2 added": [380, 410],
    "He added": [900, 1100],
    "O2 service / cleanliness": ["EAN40 max", "O2 clean"],
    "start pressure": [500, 700],
    "final pressure": [3000, 2950],
    "start mix": ["air", "EAN32"],
    "target mix": ["EAN32", "EAN36"],
    "analysed O2": [31.8, 35.7],
    "last visual": ["2026-03", "2026-04"],
    "last hydro": ["2022-03", "2023-04"],
    "next hydro due": ["2027-03", "2028-04"],
    "fill date": ["2026-10-03", "2026-10-04"],
  };
  /** Headings of which one word alone says too little; what they are taken for by themselves. */
  const ALONE_TOO_LITTLE: Readonly<Record<string, Field | null>> = {
    Due: null,
    Expires: null,
    "Exp.": null,
    "Valid until": null,
    "Test by": null,
    "Location #": "shopNumber",
    "DRUCKLUFT-TG": "oxygenService",
    "SAUERSTOFF-TG": "oxygenService",
    "Testing pressures (PS and PT)": null,
  };
  const groups = messy.header_groups as readonly {
    readonly meaning: string;
    readonly seen: readonly { readonly header: string }[];
    readonly variants_from_memory: readonly string[];
  }[];
  const headings = groups.flatMap((group) =>
    [...group.seen.map(({ header }) => header), ...group.variants_from_memory].map(
      (heading) => [group.meaning, heading] as const,
    ),
  );

  it.each(headings)("%s: %s", (meaning, heading) => {
    const cells = CELLS[meaning] ?? [];
    const sheet = sheetOf([
      ["Ser. no.", "Fill method", heading],
      ["A10001", "air", cells[0]],
      ["A10002", "PP", cells[1]],
    ]);
    const log = readLog([sheet], US);
    const column = log.sheets[0]!.columns[2]!;
    if (meaning === "serial")
      return expect(readLog([sheetOf([["Hydro", heading]])], US).sheets[0]!.columns[1]!.field).toBe("serial");
    const alone = ALONE_TOO_LITTLE[heading];
    const fits = alone !== undefined ? [alone] : FIELDS[meaning]!;
    expect(fits).toContain(column.field ?? null);
  });
});
