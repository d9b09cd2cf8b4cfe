import { describe, expect, it } from "vitest";
import type { Field } from "../../src/log/log";
import { readTable, understood } from "./reading";
import type { FixtureCell } from "./sheets";

/** Headings beyond those of the messy inputs; trade usage and plain translations, no source. */
const OF_A_FILL: readonly (readonly [heading: string, field: Field | null, cells: readonly FixtureCell[]])[] = [
  ["Beg PSI", "startPressure", [500, 700]],
  ["PSI before", "startPressure", [500, 700]],
  ["Pression avant", "startPressure", [50, 60]],
  ["Presión antes", "startPressure", [50, 60]],
  ["Filled to", "endPressure", [3000, 2900]],
  ["PSI cold", "settledPressure", [2950, 2900]],
  ["Sollgemisch", "orderedMix", ["Nx32", "Luft"]],
  ["Mélange souhaité", "orderedMix", ["32", "air"]],
  ["Mezcla obtenida", "analysedMix", [31.8, 32.1]],
  ["O2-Gehalt", "analysedMix", [31.8, 32.1]],
  ["Heliumanteil", "analysedHelium", [35, 36]],
  ["Temp F", "gasTemperatureK", [85, 90]],
  ["End °F", "gasTemperatureK", [85, 90]],
  ["°C", "gasTemperatureK", [29, 32]],
  ["Date de remplissage", "date", ["2026-10-03", "2026-10-04"]],
  ["Kunde", "owner", ["C-014", "C-015"]],
  ["Recibido por", "receivedBy", ["C-014", "C-015"]],
  ["Planned depth", "plannedDepthM", [100, 90]],
  ["Pre-fill check", "externalCheck", ["ok", "ok"]],
  ["Owner consent", "consent", ["yes", "yes"]],
  // What was wanted, used or measured outside is no reading of the cylinder.
  ["Target PSI", null, [3000, 3000]],
  ["Drain to", null, [500, 400]],
  ["Top mix", null, ["air", "EAN32"]],
  ["Ambient temp", null, [85, 90]],
  ["Ambient °F", null, [85, 90]],
  ["Start °F", null, [85, 90]],
  ["Settled °F", null, [85, 90]],
  ["Compressor hours", null, [120, 121]],
]; // prettier-ignore

const OF_A_CYLINDER: readonly (readonly [
  heading: string,
  field: Field | null,
  cells: readonly FixtureCell[],
])[] = [
  ["Working PSI", "servicePressure", [3000, 2400]],
  ["O2 rated", "oxygenService", ["40%", "AIR"]],
  ["Nitrox", "oxygenService", ["Y", "N"]],
  ["O2?", "oxygenService", ["Y", "N"]],
  ["O2 clean exp", "oxygenCleaned", ["2027-03", "2027-04"]],
  ["Dernière visite", "visual", ["2026-03", "2026-04"]],
  ["Inspección visual", "visual", ["2026-03", "2026-04"]],
  ["Nächste Prüfung", "hydro", ["2027-03", "2028-04"]],
  ["Próxima prueba", "hydro", ["2027-03", "2028-04"]],
  ["Baujahr", "made", ["2014-03", "2015-04"]],
  ["Flaschengröße", "size", ["12 L", "D12"]],
  ["Thread", "neckThread", ["M25x2", "3/4 NPSM"]],
  ["Valve thread", "valveThread", ["M25x2", "3/4 NPSM"]],
  ["Burst disc", null, ["2025-03", "2025-04"]],
];

describe("what a heading stands for", () => {
  it.each(OF_A_FILL)("in a fill log: %s is %s", (heading, field, cells) => {
    expect(understood(heading, cells).field ?? null).toBe(field);
  });

  it.each(OF_A_CYLINDER)("in a register: %s is %s", (heading, field, cells) => {
    expect(understood(heading, cells, {}, { of: "register" }).field ?? null).toBe(field);
  });

  it("says how sure it is, by the words and by the cells", () => {
    const sure = understood("Hydro", ["2022-03", "2023-04"], {}, { of: "register" });
    const doubtful = understood("Hydro", ["blue", "red", "2023-04"], {}, { of: "register" });
    expect(sure.confidence).toBe(0.95);
    expect(doubtful.confidence).toBeLessThan(0.7);
    expect(doubtful.confidence).toBeGreaterThan(0);
    expect(understood("Colour", ["blue", "red"]).confidence).toBe(0);
  });

  it("shows what stands below it", () => {
    expect(understood("Date", ["2026-10-03", { v: 46298, f: "m/d/yyyy" }]).examples).toEqual([
      "2026-10-03",
      "2026-10-03",
    ]);
  });

  it("by its unit, or asks for it", () => {
    expect(understood("End pressure (bar)", [200])).toMatchObject({ unit: "bar" });
    expect(understood("End PSI", [3000])).toMatchObject({ unit: "psi" });
    expect(understood("End pressure", [3000, 2900])).toMatchObject({ unit: "psi" });
    const open = understood("End pressure", [200, 210]);
    expect(open.unit).toBeUndefined();
    expect(open.question).toMatchObject({ about: "unit", choices: ["psi", "bar"] });
  });

  it("a mix beside an analysis is the one that was ordered", () => {
    const { columns } = readTable(
      ["Serial", "Start psi", "End psi", "Gas", "Analysis"],
      [["A10001", 500, 3000, 32, 31.8]],
    );
    expect(columns.map(({ field }) => field)).toEqual([
      "serial",
      "startPressure",
      "endPressure",
      "orderedMix",
      "analysedMix",
    ]);
  });
});

it("a mix in per cent is the analysis where it stands alone, and the order beside an analysis", () => {
  const fieldsOf = (...headings: string[]) =>
    readTable(["Date", "Serial", ...headings], [["2026-08-03", "A10001", 32, 31.8]])
      .columns.slice(2, 2 + headings.length)
      .map(({ field }) => field);
  expect(fieldsOf("Mix %")).toEqual(["analysedMix"]);
  for (const mix of ["Mix %", "EAN", "O2 %"])
    for (const analysis of ["Analyzed", "Analysed O2 %", "gemessen"]) {
      expect(fieldsOf(mix, analysis)).toEqual(["orderedMix", "analysedMix"]);
      expect(fieldsOf(analysis, mix)).toEqual(["analysedMix", "orderedMix"]);
    }
  expect(fieldsOf("Ordered", "Analysed O2 %", "O2 %")).toEqual(["orderedMix", "analysedMix", null]);
});

it("By alone is who filled, where nothing else says so", () => {
  const fieldsOf = (...headings: string[]) =>
    readTable(headings, [["2026-08-03", "A10001", 500, 3000, "R.", "T."]]).columns.map(({ field }) => field);
  for (const by of ["By", "By whom", "Who"])
    expect(fieldsOf("Date", "Serial", "Start psi", "End psi", by).at(4)).toBe("filledBy");
  expect(fieldsOf("Date", "Serial", "Start psi", "End psi", "By", "Filled by").slice(4)).toEqual([
    null,
    "filledBy",
  ]);
});
