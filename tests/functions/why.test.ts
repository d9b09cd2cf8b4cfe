import { describe, expect, it } from "vitest";
import { WORKSHEET_FUNCTIONS } from "../../src/functions/catalogue";
import { cell, number } from "./calls";

const why = (...given: Parameters<typeof cell> extends [string, ...infer A] ? A : never) =>
  cell("WHY", ...given) as string;

describe("WHY", () => {
  it("gives the sentence behind an error", () => {
    expect(why("MOD", 3, "ft")).toBe("mix: Oxygen 3: write 0.32, 32 or EAN32.");
    expect(why("BRIM.TESTDATE", "06/09")).toMatch(/^"06\/09" can be 2006-09 or 2009-06/);
    expect(why("STOPAT", "oxygen", 0, 0, 3000, 32, "psi")).toMatch(/^startMix: blank\./);
  });

  it("says in words what it cannot explain itself", () => {
    expect(why("NOSUCH", 1)).toMatch(/^There is no worksheet function "NOSUCH"/);
    expect(why(null)).toMatch(/^function: name one in quotation marks/);
    expect(why("WHY", "MOD", "EAN32", "ft")).toMatch(/^WHY explains the other functions/);
  });

  it("says how a stop came about: order, steps, assumptions, reach, and how far a slip moves the mix", () => {
    expect(why("STOPAT", "oxygen", "empty", null, 3000, 32, "psi")).toBe(
      "STOPAT: 404.96 psi. From empty (one atmosphere of air) to 3000 psi of EAN32 (32 % oxygen). " +
        "Steps: oxygen to 404.96 psi (+404.96); top with air to 3000 psi (+2595.04). " +
        "Assumed: air (20.95 % oxygen) on top, an oxygen supply of 100 %, every reading settled at 70 °F, " +
        "one atmosphere in the cylinder at 0 on the gauge. GERG-2008 is good to about 0.1 % for this mix. " +
        "As an ideal gas it would stop oxygen at 421.29 psi. " +
        "Oxygen stop 1 % higher: 32.11 % oxygen; with the gas 5 °C (9 °F) warmer: 31.79 % oxygen. " +
        "A plan is not a measurement: analyse the gas. " +
        "How it moves: endPressure read 1 % higher: 408.44 psi (+3.49); temperature 5 °C (9 °F) higher: 403.76 psi (-1.19).",
    );
  });

  it("the movements are those of the function itself", () => {
    const text = why("MIXAFTER", 80, "EAN32", 200, "air", "bar");
    const moved = number("MIXAFTER", 80.8, "EAN32", 200, "air", "bar");
    expect(text).toContain(`startPressure read 1 % higher: ${moved.toFixed(2)} %`);
    const warm = number("MIXAFTER", 80, "EAN32", 200, "air", "bar", null, 20, 25);
    expect(text).toContain(`With gas 5 °C (9 °F) warmer at the end: ${warm.toFixed(2)} % oxygen`);
  });

  it("names the weak corner of the model, the ideal gas, and the extended range", () => {
    expect(why("ZFACTOR", 200, "heliox 50", "bar")).toContain("about 1 %");
    expect(why("ZFACTOR", 400, "air", "bar")).toContain("extended range");
    expect(why("SETTLED", 200, "air", 40, 20, "bar", "ideal")).toContain("Ideal gas");
    expect(why("STOPAT", "oxygen", "empty", null, 232, "18/45", "bar")).toMatch(
      /At the oxygen stop: .*about 1 %/,
    );
  });

  it("what looks like a slip is answered, and said so: a trimix the wrong way round, °C for °F", () => {
    expect(why("MOD", "50/10", "m")).toContain("TX 50/10 (50 % oxygen, 10 % helium; oxygen stands first)");
    for (const mix of ["10/50", "18/45", "21/20", "32"])
      expect(why("MOD", mix, "m", 1.4)).not.toContain("stands first");
    expect(why("STOPAT", "oxygen", 0, "air", 200, 32, "bar", "air", 70)).toContain(
      "settled at 70 °C (or °F?)",
    );
    for (const temperature of [20, 45])
      expect(why("STOPAT", "oxygen", 0, "air", 200, 32, "bar", "air", temperature)).not.toContain("°F?");
  });

  it("a reading in another unit than the rest is told in the units asked for", () => {
    expect(why("STOPAT", "oxygen", 60, "EAN28", "232 bar", "EAN32", "psi")).toContain(
      "From 60 psi of EAN28 to 3364.88 psi of EAN32",
    );
  });

  it("a drain, a vented cylinder and topping alone are told", () => {
    expect(why("STOPAT", "drain", 150, "EAN50", 200, "EAN32", "bar")).toMatch(
      /Steps: drain to [\d.]+ bar \(-[\d.]+\)/,
    );
    expect(why("STOPAT", "oxygen", 0, "EAN50", 200, 32, "bar")).toContain(
      "vented, with one atmosphere of EAN50 left",
    );
    expect(why("STOPAT", "top", "empty", null, 200, 21, "bar")).toContain(
      "air alone comes within 0.1 of the order",
    );
  });

  it("dates and texts are told too", () => {
    expect(why("HYDRODUE", "2021/10", "US")).toMatch(
      /^May be filled up to 2026-10-31\. Read as tested 2021-10\. Rules: United States\./,
    );
    expect(why("HYDRODUE", "2021/10", "DE")).toBe(
      'May be filled up to 2021-10-31. Read as due 2021-10. Rules: Germany. Stamps in Germany show the next date. Give "test" as stampMeans where this one shows the last. The answer is a spreadsheet date: format the cell as one.',
    );
    expect(why("FILLCHECK", "2026-10-31", "2022/10", null, 40, 32, "premix", "US")).toMatch(
      /^FILLCHECK: UNKNOWN: .*visual/,
    );
  });

  it.each(WORKSHEET_FUNCTIONS.filter(({ id }) => id !== "WHY").map((entry) => [entry.id, entry] as const))(
    "explains every example of %s in one cell of whole sentences",
    (id, { examples }) => {
      for (const given of examples) {
        const text = why(id, ...given);
        expect(text).toMatch(/^\S.*\.$/s);
        expect(text).not.toMatch(/\n|undefined|NaN|\.\.| {2}|\. \./);
        expect(text.length).toBeLessThan(1600);
      }
    },
  );
});
