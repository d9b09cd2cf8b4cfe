import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import type { LogContext } from "../../src/log/context";
import { readColumn, said } from "./reading";
import type { FixtureCell } from "./sheets";

/** Spellings besides those of the messy inputs (common practice, no source). */
const US: LogContext = {
  units: "us",
  dateOrder: "month first",
  stampOrder: "month first",
  asOf: Temporal.PlainDate.from("2026-10-31"),
};
const nitrox = (oxygen: number) => ({ oxygen, helium: 0 });
const psi = (value: number): unknown => expect.objectContaining({ written: { value, unit: "psi" } });

function saidOf(heading: string, cells: readonly FixtureCell[], of: "fills" | "register" = "fills") {
  return readColumn(heading, cells, US, { of }).map(said);
}

describe("mixes", () => {
  it("a trimix typed with a dot or a dash is a doubt, not eighteen and a half per cent", () => {
    const trimix = { oxygen: 18, helium: 45 };
    expect(saidOf("Ordered mix", ["18.45", 18.45, "18,45", "18-45"])).toEqual([
      { either: [trimix, nitrox(18.45)] },
      { either: [trimix, nitrox(18.45)] },
      { either: [trimix, nitrox(18.45)] },
      { either: [trimix, nitrox(18), nitrox(45)] },
    ]);
    expect(saidOf("O2 %", ["20.95", 31.85, "30-32", 19.5])).toEqual([
      nitrox(20.95),
      nitrox(31.85),
      { either: [nitrox(30), nitrox(32)] },
      nitrox(19.5),
    ]);
  });

  it("in the words of other languages", () => {
    expect(saidOf("Ordered mix", ["Luft", "Sauerstoff", "oxygène", "aire", "Pressluft"])).toEqual([
      expect.objectContaining({ helium: 0 }),
      nitrox(100),
      nitrox(100),
      expect.objectContaining({ helium: 0 }),
      expect.objectContaining({ helium: 0 }),
    ]);
  });
});

describe("pressures", () => {
  it("keep a clear number with its unit, whatever words stand behind it, and say so", () => {
    const [ok] = readColumn("End PSI", ["200 bar ok"], US);
    expect(said(ok!)).toEqual({ bar: 200, written: { value: 200, unit: "bar" } });
    expect(ok!.note).toContain("“ok” beside it is not read");
  });

  it("of which somebody was not sure are a doubt", () => {
    expect(saidOf("End PSI", ["2950?", "2950 psi ??"])).toEqual([
      { either: [psi(2950)] },
      { either: [psi(2950)] },
    ]);
  });

  it("without a clear number are not guessed", () => {
    const cells = ["full", "3k", "3000 - topped", "3OOO", "1/2 full", "3000 PSI @ 80F"];
    expect(saidOf("End PSI", cells)).toEqual(cells.map(() => "unreadable"));
  });

  it("in a column of psi that say bar are bar, and the other way round", () => {
    expect(saidOf("End PSI", [3000, "207 bar"])).toEqual([
      psi(3000),
      { bar: 207, written: { value: 207, unit: "bar" } },
    ]);
    expect(saidOf("End bar", [200, "3000 psi"])[1]).toEqual(psi(3000));
  });

  it("a warm reading says so, a pair keeps the cold one", () => {
    expect(readColumn("End PSI", ["3000 hot"], US)[0]!.note).toContain("warm");
    expect(saidOf("End PSI", ["3300 hot / 3000 cold", "3000 psi / 207 bar"])).toEqual([psi(3000), psi(3000)]);
  });
});

describe("stamps", () => {
  it("say what falls due before or behind the date", () => {
    const readings = readColumn("Hydro", ["exp 10/27", "10/27 exp", "due 10/27", "10/27 (due)"], US, {
      of: "register",
    });
    for (const reading of readings)
      expect(reading).toMatchObject({ value: "2027-10", stamp: { means: "due" } });
  });

  it("that no calendar has, or that lack the month, are not guessed", () => {
    const cells = ["13/19", "00/19", "99/99", "2019", "1019", "Q4 2019", "new"];
    expect(saidOf("Hydro", cells, "register")).toEqual(cells.map(() => "unreadable"));
  });
});

describe("days", () => {
  it("without a year, or past the end of a month, are not guessed", () => {
    const cells = ["8/3", "Aug 3", "yesterday", "8/32/2026", "2/30/2026"];
    expect(saidOf("Date", cells)).toEqual(cells.map(() => "unreadable"));
  });

  it("come with weekdays, times, words and formats lost", () => {
    expect(saidOf("Date", ["Mon 8/3/2026", "8/3/2026 14:30", "3 Aug 26", "20260803", 46237])).toEqual(
      Array<string>(5).fill("2026-08-03"),
    );
  });
});

describe("sizes", () => {
  it("in litres and by name, single and twin", () => {
    expect(saidOf("Size", ["12 litre", "12L", "D12", "2 x 12L", "AL-80"], "register")).toEqual([
      expect.objectContaining({ waterVolumeL: 12, count: 1 }),
      expect.objectContaining({ waterVolumeL: 12, count: 1 }),
      expect.objectContaining({ waterVolumeL: 24, count: 2 }),
      expect.objectContaining({ waterVolumeL: 24, count: 2 }),
      expect.objectContaining({ waterVolumeL: 11.1, count: 1 }),
    ]);
  });
});

describe("ratings", () => {
  it("yes to nitrox, and no to oxygen, leave open how rich", () => {
    expect(saidOf("O2 rating", ["Y", "N"], "register")).toEqual([
      {
        either: [
          { maxOxygen: 40, oxygenClean: false },
          { maxOxygen: 100, oxygenClean: true },
        ],
      },
      {
        either: [
          { maxOxygen: "air only", oxygenClean: false },
          { maxOxygen: 40, oxygenClean: false },
        ],
      },
    ]);
  });
});
