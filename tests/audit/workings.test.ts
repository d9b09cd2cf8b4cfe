import { describe, expect, it } from "vitest";
import { workingsOf } from "../../src/audit/physics/workings";
import { shopOf, type Shop } from "../../src/audit/shop/shop";
import { walked } from "./walked";
import { countryRules } from "../../src/cylinders/countryRules";
import { AIR } from "../../src/gas/mixture";
import { nameMix } from "../../src/gas/nameMix";
import { ATMOSPHERE_BAR } from "../../src/gas/units";
import { logOf, onDay, without, type TestRow } from "./sheets";

const SHOP: Shop = {
  ...shopOf(countryRules("GB")),
  sources: [
    { name: "Compressor", mix: AIR },
    { name: "Bank 32", mix: { oxygen: 0.32, helium: 0 } },
    { name: "Trimix bank", mix: { oxygen: 0.18, helium: 0.45 } },
  ],
};

/** A trimix by partial pressure as a British shop writes it. */
const ROW: TestRow = {
  Date: onDay("2026-10-05"),
  Serial: "SB1001",
  Method: "partial pressure",
  Source: "Compressor",
  "Start bar": 20,
  "Start mix": "EAN32",
  "Ordered mix": "18/45",
  "He added bar": 90,
  "O2 added bar": 15,
  "End bar": 232,
};

/** What is made of the last row: gauge pressures, in words; or what is lacking. */
function readAs(change: TestRow, before: readonly TestRow[] = []): readonly string[] {
  const row = Object.fromEntries(Object.entries({ ...ROW, ...change }).filter(([, cell]) => cell !== GONE));
  const log = logOf([...before, row], [], { units: "metric", dateOrder: "day first" });
  const filled = walked(log, SHOP).at(-1)!;
  const ways = workingsOf(filled, SHOP);
  if ("kind" in ways) return [`${ways.why} (${ways.at.field})`];
  return ways.map(({ start, pure, top, end, endIsCold }) => {
    const gauge = (bar: number): string => String(Number((bar - ATMOSPHERE_BAR).toFixed(3)));
    const celsius = (kelvin: number): string => `${Math.round(kelvin - 273.15)} °C`;
    const tops = top.leanest === top.richest ? [top.leanest] : [top.leanest, top.richest];
    return [
      `${gauge(start.bar)} ${nameMix(start.mix)}`,
      ...pure.map(({ gas, bar }) => `${gas.helium > 0 ? "helium" : "oxygen"} to ${gauge(bar)}`),
      `${tops.map((mix) => nameMix(mix)).join("..")} to ${gauge(end.bar)} at ${celsius(end.temperatureK)}${endIsCold ? " cold" : ""}`,
    ].join(", ");
  });
}

/** A column that the sheet does not have. */
const GONE = "(no such column)";
const NO_HELIUM: TestRow = { "Ordered mix": "EAN32", "He added bar": null };

describe("what a row says of its fill", () => {
  it.each([
    ["amounts, one on the other", {}, ["20 EAN32, helium to 110, oxygen to 125, air to 232 at 15 °C"]],
    [
      "the end as settled",
      { "Settled bar": 225 },
      ["20 EAN32, helium to 110, oxygen to 125, air to 225 at 15 °C cold"],
    ],
    [
      "the end with its temperature",
      { "Gas temp C": 30 },
      ["20 EAN32, helium to 110, oxygen to 125, air to 232 at 30 °C cold"],
    ],
    [
      "settled: no temperature of the end matters",
      { "Settled bar": 225, "Gas temp C": 30 },
      ["20 EAN32, helium to 110, oxygen to 125, air to 225 at 15 °C cold"],
    ],
    [
      "both as the readings they stopped at, the lower first",
      { "He added bar": GONE, "O2 added bar": GONE, "O2 stop bar": 40, "He stop bar": 130 },
      ["20 EAN32, oxygen to 40, helium to 130, air to 232 at 15 °C"],
    ],
    [
      "headings that leave it open: both ways that rise",
      { "He added bar": GONE, "O2 added bar": GONE, "He bar": 90, "O2 bar": 105 },
      [
        "20 EAN32, helium to 110, oxygen to 215, air to 232 at 15 °C",
        "20 EAN32, helium to 90, oxygen to 105, air to 232 at 15 °C",
      ],
    ],
    [
      "one heading open, one not: what is open is read both ways",
      { "O2 added bar": GONE, "O2 bar": 30 },
      ["20 EAN32, helium to 110, oxygen to 140, air to 232 at 15 °C"],
    ],
    [
      "a bank's mix on top",
      { ...NO_HELIUM, Source: "Bank 32" },
      ["20 EAN32, oxygen to 35, EAN32 to 232 at 15 °C"],
    ],
    [
      "nothing added by partial pressure is none",
      { "O2 added bar": 0, "Ordered mix": "10/70" },
      ["20 EAN32, helium to 110, air to 232 at 15 °C"],
    ],
    [
      "air, whatever its source is called",
      { ...NO_HELIUM, Method: "air", "O2 added bar": null, Source: "Bank 32" },
      ["20 EAN32, air to 232 at 15 °C"],
    ],
    [
      "a premix",
      { ...NO_HELIUM, Method: "premix", "O2 added bar": null, Source: "Bank 32" },
      ["20 EAN32, EAN32 to 232 at 15 °C"],
    ],
    [
      "a stream: anything to 40 %",
      { ...NO_HELIUM, Method: "continuous", "O2 added bar": null },
      ["20 EAN32, air..EAN40 to 232 at 15 °C"],
    ],
    [
      "a membrane: the same",
      { ...NO_HELIUM, Method: "membrane", "O2 added bar": null },
      ["20 EAN32, air..EAN40 to 232 at 15 °C"],
    ],
    [
      "method not written, something added: air on top",
      { ...NO_HELIUM, Method: null },
      ["20 EAN32, oxygen to 35, air to 232 at 15 °C"],
    ],
    [
      "method not written, air ordered",
      { ...NO_HELIUM, Method: null, "O2 added bar": null, "Ordered mix": "air" },
      ["20 EAN32, air to 232 at 15 °C"],
    ],
    [
      "method not written, the bank known",
      { ...NO_HELIUM, Method: null, "O2 added bar": null, Source: "Bank 32" },
      ["20 EAN32, EAN32 to 232 at 15 °C"],
    ],
  ] as const)("%s", (_what, change, expected) => {
    expect(readAs(change)).toEqual(expected);
  });

  it.each([
    [
      "method not written, nothing added",
      { ...NO_HELIUM, Method: null, "O2 added bar": null },
      "method is blank (method)",
    ],
    [
      "a method nobody knows",
      { ...NO_HELIUM, Method: "magic", "O2 added bar": null },
      "the method “magic” is not known (method)",
    ],
    ["a trimix without helium written", { "He added bar": null }, "helium added is blank (heliumAdded)"],
    [
      "analysed as trimix, no helium written",
      { "Ordered mix": null, "Analysed mix": "18/45", "He added bar": null },
      "helium added is blank (heliumAdded)",
    ],
    ["helium that cannot be read", { "He added bar": "lots" }, "helium added cannot be read (heliumAdded)"],
    [
      "oxygen that cannot be read, though the method needs none",
      { ...NO_HELIUM, Method: "air", "O2 added bar": "lots" },
      "oxygen added cannot be read (oxygenAdded)",
    ],
    [
      "a premix of an unknown bank",
      { ...NO_HELIUM, Method: "premix", "O2 added bar": null },
      "what the bank holds is not known (source)",
    ],
    ["a start mix that cannot be read", { "Start mix": "??" }, "start mix cannot be read (startMix)"],
    ["an end that is the last stop", { "End bar": 125 }, NOT_RISING()],
    [
      "an end below the start",
      { ...NO_HELIUM, Method: "air", "O2 added bar": null, "End bar": 20 },
      NOT_RISING(),
    ],
    [
      "a stop that is the start",
      { "He added bar": GONE, "O2 added bar": GONE, "He stop bar": 20, "O2 stop bar": 30 },
      NOT_RISING(),
    ],
  ] as const)("%s: %s", (_what, change, lack) => {
    expect(readAs(change)).toEqual([lack]);
  });

  it("of the residue goes on from what the fill before left", () => {
    const before: TestRow = {
      ...without(ROW, "He added bar", "O2 added bar"),
      Date: onDay("2026-10-01"),
      Method: "premix",
      Source: "Trimix bank",
      "Analysed mix": "18/44",
    };
    const open: TestRow = { "Start mix": null };
    expect(readAs(open, [before])).toEqual([
      "20 TX 18/44, helium to 110, oxygen to 125, air to 232 at 15 °C",
    ]);
    expect(readAs(open)).toEqual([
      "start mix is not written, and no earlier fill of the cylinder is in the log (startMix)",
    ]);
    expect(readAs(open, [{ ...before, "End bar": 15 }])).toEqual([
      "start mix is not written, and the cylinder was filled elsewhere in between (startMix)",
    ]);
    expect(readAs(open, [{ ...before, Date: ROW.Date! }])).toEqual([
      "the cylinder was filled more than once that day, and times do not say in which order (startMix)",
    ]);
    expect(readAs(open, [{ ...before, "Analysed mix": "??" }])).toEqual([
      "start mix is not written, and what the fill before left is not known (startMix)",
    ]);
  });
});

function NOT_RISING(): string {
  return "the readings do not rise from the start over what was added to the end (endPressure)";
}
