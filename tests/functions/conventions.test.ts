import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/functions/evaluate";
import { cell, error, number, sentence } from "./calls";

describe("names", () => {
  it.each(["MOD", "mod", "BRIM.MOD", "brim.mod", "=BRIM.MOD", " MOD "])("%j finds the function", (name) => {
    expect(cell(name, 32, "m")).toBe(33.75);
  });
});

describe("units", () => {
  it.each(["psi", "ft", "us", "PSI", " Ft "])("%j is US", (units) => {
    expect(number("MOD", 32, units)).toBe(111.375);
  });
  it.each(["bar", "m", "metric", "BAR"])("%j is metric", (units) => {
    expect(number("MOD", 32, units)).toBe(33.75);
  });
});

describe("mixes", () => {
  it.each([
    0.32,
    32,
    "32",
    "0,32",
    "32%",
    "32 %",
    "EAN32",
    "ean 32",
    "EAN-32",
    "EANx32",
    "Nx32",
    "nitrox 32",
  ])("%j is EAN32", (mix) => {
    expect(cell("MIX", mix)).toBe("EAN32");
  });
  it.each(["18/45", "TX 18/45", "tx18/45", "trimix 18/45", "18/45/37", "TX 18 45", "trimix 18-45"])(
    "%j is TX 18/45",
    (mix) => {
      expect(cell("MIX", mix)).toBe("TX 18/45");
    },
  );
  it("only air is air; 21 is taken at its word", () => {
    expect(number("MIXPART", "air", "oxygen")).toBeCloseTo(20.9535, 4);
    expect(number("MIXPART", 21, "oxygen")).toBe(21);
    expect(number("MIXPART", "EAN21", "oxygen")).toBe(21);
  });
});

describe("pressures", () => {
  const settled = (pressure: string | number, units: string) =>
    number("SETTLED", pressure, "air", 20, 20, units);

  it("text with its own unit is believed and converted", () => {
    expect(settled("200 bar", "bar")).toBeCloseTo(200, 8);
    expect(settled("200BAR", "metric")).toBeCloseTo(200, 8);
    expect(number("SETTLED", "200 bar", "air", 70, 70, "psi")).toBeCloseTo(2900.755, 3);
    expect(settled("2900 psi", "bar")).toBeCloseTo(199.948, 3);
  });

  it("3,000 is three thousand, 207,5 a decimal comma", () => {
    expect(number("SETTLED", "3,000", "air", 70, 70, "psi")).toBeCloseTo(3000, 7);
    expect(number("SETTLED", "3,000 psi", "air", 70, 70, "psi")).toBeCloseTo(3000, 7);
    expect(settled("207,5", "bar")).toBeCloseTo(207.5, 8);
    expect(settled("207.5", "bar")).toBeCloseTo(207.5, 8);
  });

  it("temperatures default to 70 °F and 20 °C", () => {
    const us = ["oxygen", 500, "EAN32", 3000, "EAN36", "psi", "air"] as const;
    expect(number("STOPAT", ...us)).toBe(number("STOPAT", ...us, 70));
    const metric = ["oxygen", 50, "EAN32", 200, "EAN36", "bar", "air"] as const;
    expect(number("STOPAT", ...metric)).toBe(number("STOPAT", ...metric, 20));
    expect(number("STOPAT", ...metric)).not.toBe(number("STOPAT", ...metric, "0 °C"));
  });
});

describe("an empty cylinder", () => {
  const fill = (startPressure: string | number, startMix: string | number | null) =>
    ["oxygen", startPressure, startMix, 200, 32, "bar"] as const;

  it("needs no start mix, and holds one atmosphere of air", () => {
    const empty = number("STOPAT", ...fill("empty", null));
    expect(number("STOPAT", ...fill("EMPTY ", 0))).toBe(empty);
    expect(number("STOPAT", ...fill("empty", "air"))).toBe(empty);
    expect(number("STOPAT", ...fill(0, "air"))).toBe(empty);
  });

  it("at 0 with a mix is a vented cylinder that still holds an atmosphere of it", () => {
    expect(number("STOPAT", ...fill(0, "EAN50"))).toBeLessThan(number("STOPAT", ...fill("empty", null)));
    expect(cell("WHY", "STOPAT", ...fill(0, "EAN50"))).toContain("vented, with one atmosphere of EAN50 left");
  });
});

describe("optional arguments", () => {
  it("blank, empty text and 0 mean left out", () => {
    for (const nothing of [null, undefined, "", " ", 0, [[null]], [[0]], []] as const) {
      expect(number("MOD", "EAN32", "m", nothing)).toBe(33.75);
      if (nothing !== 0 && JSON.stringify(nothing) !== "[[0]]") {
        expect(number("END", 60, "18/45", "m", nothing)).toBe(28.5);
      }
      expect(number("MIXAFTER", 80, 32, 200, "air", "bar", nothing)).toBeCloseTo(25.59, 2);
    }
  });

  it("keywords stand in any case", () => {
    expect(number("MOD", 32, "m", null, "SALT")).toBe(33.75);
    expect(cell("MIXAFTER", 80, 32, 200, "air", "bar", "Mix")).toBe("EAN25.6");
  });

  it("the oxygen supply is a mix", () => {
    const fill = ["oxygen", "empty", null, 200, 32, "bar", null, null] as const;
    const with93 = number("STOPAT", ...fill, 93);
    expect(with93).toBeGreaterThan(number("STOPAT", ...fill));
    expect(number("STOPAT", ...fill, 0.93)).toBe(with93);
    expect(number("STOPAT", ...fill, "93%")).toBe(with93);
  });
});

describe("rulings on plans", () => {
  it("topping alone is the plan where it comes within 0.1 of the order", () => {
    expect(evaluate("FILLSTEPS", ["empty", null, 200, 21, "bar"]).map(([step]) => step)).toEqual([
      "Step",
      "top",
    ]);
    expect(cell("WHY", "STOPAT", "top", "empty", null, 200, 21, "bar")).toContain(
      "comes within 0.1 of the order",
    );
  });

  it("a start above the end is drained", () => {
    expect(number("STOPAT", "drain", 230, "EAN32", 200, "EAN32", "bar")).toBeCloseTo(200, 9);
  });

  it("a fill that is there already has a table without steps", () => {
    expect(evaluate("FILLSTEPS", [200, "EAN32", 200, "EAN32", "bar"])).toEqual([
      ["Step", "Gas", "Add", "Stop at"],
    ]);
  });

  it("FILLSTEPS takes single values only and says what does columns", () => {
    expect(sentence("FILLSTEPS", [[0], [50]], "air", 200, 32, "bar")).toBe(
      "startPressure: FILLSTEPS answers with a table and so takes single values. For columns use STOPAT or ADDGAS.",
    );
  });

  it("DRAINTO with a bank that is strong enough answers the start pressure", () => {
    expect(number("DRAINTO", 100, "EAN32", 200, "EAN32", "bar", "air", 150)).toBeCloseTo(100, 9);
  });

  it("pure oxygen on a vented cylinder is planned, and WHY says what it comes to", () => {
    // Ideal gas: 200 / 201.325 of oxygen and the rest air, 99.60 %.
    const fill = ["oxygen", "empty", null, 200, "O2", "bar"] as const;
    expect(number("STOPAT", ...fill)).toBeCloseTo(200, 9);
    expect(cell("WHY", "STOPAT", ...fill, null, null, null, null, "ideal")).toContain("99.6 % oxygen");
    expect(cell("WHY", "STOPAT", ...fill)).toContain("it comes to 99.63 % oxygen");
    expect(error("STOPAT", "oxygen", 50, "air", 200, "O2", "bar")).toContain("Drain to 0 bar (0 psi) first");
  });

  it("pure oxygen that comes to less than 99.5 % is refused with the best there is", () => {
    expect(error("STOPAT", "oxygen", "empty", null, 100, "O2", "bar")).toMatch(/^#VALUE! .*99\.2\d %/);
    expect(error("STOPAT", "oxygen", "empty", null, 200, "O2", "bar", null, null, 99.5)).toMatch(/^#VALUE! /);
  });
});
