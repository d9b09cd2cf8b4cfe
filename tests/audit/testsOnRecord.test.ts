import { describe, expect, it } from "vitest";
import { dateOf } from "../../src/cylinders/calendar";
import { countryRules } from "../../src/cylinders/countryRules";
import { CylinderOnRecord } from "../../src/audit/record/cylinderOnRecord";
import { LogColumns } from "../../src/audit/judge/logColumns";
import type { TestHistory } from "../../src/audit/record/testHistory";
import { cellName } from "../../src/sheet/sheet";
import { logOf, onDay, type TestRow } from "./sheets";

/* Which tests of a cylinder the register holds, from when and until when each counts, and in which cell it stands. */

const FILL: TestRow = { Date: onDay("2026-10-02"), Serial: "GP1001", "Start psi": 500, "End psi": 3000 };
/** Beside it, so that every column is known for what it is. */
const OTHER: TestRow = {
  Serial: "GP1002",
  Made: "2015/01",
  Hydro: onDay("2024-03-14"),
  Visual: onDay("2026-03-20"),
  "O2 cleaned": onDay("2026-01-10"),
};

/** Rows of a register that writes its hydros as months. */
const IN_MONTHS = ["2022/03", "2022/07", "2023/01", "2024/10"].map((Hydro, at) => ({
  ...OTHER,
  Serial: `GP200${at}`,
  Hydro,
}));

function recorded(cylinder: TestRow, country = "US", others: readonly TestRow[] = [OTHER]) {
  const log = logOf([FILL], [{ Serial: "GP1001", ...cylinder }, ...others]);
  const onRecord = new CylinderOnRecord(log.cylinders.slice(0, 1), countryRules(country));
  const columns = new LogColumns(log);
  /** `hydro 2024-03-14 to 2029-03-31, E2`: each test, and each doubt with what it may be. */
  const inWords = ({ tests, doubts }: TestHistory) => [
    ...tests.map(({ kind, from, until, at }) =>
      [kind, `${dateOf(from).toString()} to ${dateOf(until).toString()},`, cellName(columns.cell(at, FILL_PLACE))].join(" "),
    ),
    ...doubts.map(({ reading, choices, at }) =>
      `${reading.kind}, ${choices.length} ways, ${cellName(columns.cell(at, FILL_PLACE))}: ${reading.why}`,
    ),
  ]; // prettier-ignore
  return {
    hydros: inWords(onRecord.hydros!),
    visuals: onRecord.visuals ? inWords(onRecord.visuals) : undefined,
    cleanings: inWords(onRecord.cleanings),
  };
}

const FILL_PLACE = { sheet: "Fills", row: 1 };

describe("hydros", () => {
  it("count from their day, to the end of the month five years on (49 CFR 180.205, Table 1)", () => {
    expect(recorded({ Hydro: onDay("2022-05-17") }).hydros).toEqual(["hydro 2022-05-17 to 2027-05-31, B2"]);
    expect(recorded({ Hydro: "2022/05" }).hydros).toEqual(["hydro 2022-05-01 to 2027-05-31, B2"]);
  });

  it("written in several columns all count, each in its own cell", () => {
    const both = { Hydro: onDay("2022-05-17"), "Previous hydro": onDay("2017-04-03") };
    expect(recorded(both).hydros).toEqual([
      "hydro 2022-05-17 to 2027-05-31, B2",
      "hydro 2017-04-03 to 2022-04-30, C2",
    ]);
  });

  it("there are none: the cylinder counts from its manufacture", () => {
    expect(recorded({ Made: "2023/08", Hydro: null }).hydros).toEqual([
      "manufacture 2023-08-01 to 2028-08-31, B2",
    ]);
    expect(recorded({ Made: "???", Hydro: null }).hydros[0]).toMatch(/^unreadable, 0 ways, B2: /);
  });

  it("the first interval is another in Norway (36 months), and only the first", () => {
    expect(recorded({ Made: "2023/08", Hydro: null }, "NO").hydros).toEqual([
      "manufacture 2023-08-01 to 2026-08-31, B2",
    ]);
    // The maker's own test, in the month of making.
    expect(recorded({ Made: "2023/08", Hydro: "2023/08" }, "NO").hydros).toEqual([
      "hydro 2023-08-01 to 2026-08-31, C2",
    ]);
    expect(recorded({ Made: "2023/08", Hydro: "2023/09" }, "NO").hydros).toEqual([
      "hydro 2023-09-01 to 2025-09-30, C2",
    ]);
    expect(recorded({ Hydro: "2023/09" }, "NO").hydros).toEqual(["hydro 2023-09-01 to 2025-09-30, B2"]);
  });

  it("are asked for more often of cylinders made before April 1989 in Japan", () => {
    expect(recorded({ Made: "1989/03", Hydro: "2023/09" }, "JP").hydros).toEqual([
      "hydro 2023-09-01 to 2026-09-30, C2",
    ]);
    expect(recorded({ Made: "1989/04", Hydro: "2023/09" }, "JP").hydros).toEqual([
      "hydro 2023-09-01 to 2028-09-30, C2",
    ]);
  });

  it("that are inspections are none, and say so", () => {
    expect(recorded({ Hydro: "2024/05 E", Made: "2015/01" }).hydros).toEqual([
      "unreadable, 0 ways, B2: 2024-05 E is an inspection, not a hydro. Write the date of the last hydro.",
    ]);
  });

  it("typed 10/19 and kept as a day are doubts, unless the cylinder is younger than that month", () => {
    const of = (Made: string) => recorded({ Hydro: onDay("2026-10-19"), Made }, "US", IN_MONTHS).hydros;
    expect(of("2015/01")[0]).toMatch(/^ambiguous, 2 ways, B2: The spreadsheet holds 2026-10-19/);
    expect(of("2019/10")[0]).toMatch(/^ambiguous, 2 ways, B2: /);
    expect(of("2019/11")).toEqual(["hydro 2026-10-19 to 2031-10-31, B2"]);
  });
});

describe("visuals", () => {
  it("are the visuals and the hydros, as a hydro includes one (49 CFR 180.205(f))", () => {
    expect(recorded({ Hydro: onDay("2022-05-17"), Visual: onDay("2025-11-04") }).visuals).toEqual([
      "visual 2025-11-04 to 2026-11-30, C2",
      "hydro 2022-05-17 to 2023-05-31, B2",
    ]);
  });

  it("stamped among the hydros count where they stand; of those from outside only (E) the inside knows nothing", () => {
    expect(recorded({ Hydro: "2024/05 V", Made: "2015/01" }, "DE").visuals).toContain(
      "visual 2024-05-01 to 2026-11-30, B2",
    );
    expect(recorded({ Hydro: "2024/05 E", Made: "2015/01" }).visuals).toEqual([]);
  });

  it("may be a hydro in doubt, but not one that nobody can read", () => {
    const doubtful = { Hydro: onDay("2026-10-19"), Made: "2015/01", Visual: null };
    const { visuals } = recorded(doubtful, "US", IN_MONTHS);
    expect(visuals).toHaveLength(1);
    expect(visuals![0]).toMatch(/^ambiguous, 2 ways, B2/);
    expect(recorded({ Hydro: "see sticker", Visual: onDay("2025-11-04") }).visuals).toEqual([
      "visual 2025-11-04 to 2026-11-30, C2",
    ]);
  });

  it("are not asked for in every country", () => {
    expect(recorded({ Hydro: onDay("2022-05-17") }, "NL").visuals).toBeUndefined();
  });
});

describe("oxygen cleanings", () => {
  it("hold to the end of the month, a year on in the US, two in Finland", () => {
    expect(recorded({ "O2 cleaned": onDay("2025-07-08") }).cleanings).toEqual([
      "oxygen cleaning 2025-07-08 to 2026-07-31, B2",
    ]);
    expect(recorded({ "O2 cleaned": onDay("2025-07-08") }, "FI").cleanings).toEqual([
      "oxygen cleaning 2025-07-08 to 2027-07-31, B2",
    ]);
  });
});
