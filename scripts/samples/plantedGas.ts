import type { SampleCylinder } from "./cylinders";
import { RECIPES } from "./fills";
import { faults, lacks, type Planter } from "./planter";

/** Faults of oxygen service, analysis and labels. */
export function plantGas(planter: Planter): void {
  const { air, bank32, blend32, blend50, stream36, stream42, trimix2135, trimix1050 } = RECIPES;
  const clean = (cleaned: string | null, owner = "C-014", told: Partial<SampleCylinder> = {}) =>
    planter.cylinder("oxygen clean", { cleaned, ...told }, owner, "HP100");
  // The same few cylinders of the shop serve for all faults that are the fill's alone.
  const pool = (make: () => SampleCylinder, count: number) => {
    const cylinders = Array.from({ length: count }, make);
    let next = 0;
    return () => cylinders[next++ % count]!;
  };
  const ordinary = pool(() => planter.cylinder("40"), 6);
  const cleanOne = pool(() => clean("2026/03"), 4);

  // O03: air from a bank that may carry oil, then oxygen on top of it; A03: both in one fill.
  for (const [first, second] of [
    ["2026-08-13", "2026-09-03"],
    ["2026-09-08", "2026-10-15"],
  ] as const) {
    const cylinder = clean("2026/05");
    planter.fill(first, cylinder, air, faults("O03 warn source"));
    planter.fill(second, cylinder, blend32, { ...faults("O03 stop method"), written: { startMix: "air" } });
    planter.fill(second, clean("2026/06"), blend32, {
      ...faults("A03 stop source"),
      written: { source: "Air bank" },
    });
  }

  // O04: cleaned a year and a month ago; on the last day of the year it still held. O05: and a hydro since.
  const lapsed = clean("2025/08", "C-014", { hydro: "2025/10+" });
  planter.fill("2026-08-30", lapsed, blend32, faults("O05 breach method"));
  planter.fill("2026-09-04", lapsed, blend32, faults("O04 stop method", "O05 breach method"));
  planter.fill("2026-08-08", clean("2025/07"), blend50, faults("O04 stop method"));

  // O11: oxygen clean, and nobody knows since when; filled from a premix it does no harm.
  for (const day of ["2026-08-14", "2026-10-02"]) {
    const undated = clean(null, "C-015");
    planter.inRegister(undated, "O11", "warn", "cleaned");
    planter.fill(day, undated, bank32);
  }

  for (const [day, oxygen] of [
    ["2026-09-11", 41.8],
    ["2026-10-21", 41.9],
  ] as const) {
    planter.fill(day, cleanOne(), stream42, { ...faults("O07 stop oxygen"), oxygen });
  }

  // O08: no rating at all.
  for (const day of ["2026-08-27", "2026-09-30"]) {
    const unrated = planter.cylinder("40", { ratingWritten: null }, "C-036");
    planter.fill(day, unrated, bank32, {
      ...faults("O08 breach oxygen"),
      lacks: lacks(["O01", "O02", "O03"], "oxygen rating is blank", { cylinder: unrated, column: "rating" }),
    });
  }

  // O10: air on top of nitrox.
  for (const [day, startPsi] of [
    ["2026-09-10", 1500],
    ["2026-10-22", 1200],
  ] as const) {
    planter.fill(day, ordinary(), air, {
      ...faults("O10 breach startMix"),
      startPsi,
      written: { startMix: "EAN32", temperature: null },
    });
  }

  // G01: handed over without an analysis.
  for (const [day, recipe, mod] of [
    ["2026-08-18", bank32, 111],
    ["2026-09-29", stream36, 95],
  ] as const) {
    planter.fill(day, ordinary(), recipe, {
      ...faults("G01 stop oxygen"),
      written: { oxygen: null, analysedBy: null, mod },
      lacks: lacks(["G03"], "analysis is blank", { column: "oxygen" }),
    });
  }

  // G02: the label goes by 1.6, or is of another mix.
  for (const [day, mod] of [
    ["2026-08-28", 132],
    ["2026-10-01", 121],
  ] as const) {
    planter.fill(day, ordinary(), bank32, { ...faults("G02 stop mod"), oxygen: 32, written: { mod } });
  }

  // G03: off by more than a point, and by more than three.
  for (const [day, oxygen] of [
    ["2026-08-20", 34.7],
    ["2026-09-16", 37.2],
  ] as const) {
    planter.fill(day, ordinary(), stream36, { ...faults("G03 breach oxygen"), oxygen });
  }
  for (const [day, oxygen] of [
    ["2026-08-26", 32.8],
    ["2026-10-06", 39.4],
  ] as const) {
    planter.fill(day, ordinary(), stream36, { ...faults("G03 stop oxygen"), oxygen });
  }

  // G04: air that is not; the readings do not allow it either.
  for (const [day, oxygen] of [
    ["2026-09-02", 24.6],
    ["2026-10-09", 25.1],
  ] as const) {
    planter.fill(day, ordinary(), air, {
      ...faults("G04 stop oxygen", "G12 warn oxygen"),
      written: { oxygen },
    });
  }

  // G05 and G10: no card on file.
  for (const day of ["2026-08-22", "2026-10-23"]) {
    const written = { certification: null };
    planter.fill(day, cleanOne(), blend50, { ...faults("G05 breach certification"), written });
    planter.fill(day, cleanOne(), trimix1050, {
      ...faults("G05 stop certification"),
      oxygen: 10.2,
      written,
    });
    planter.fill(day, ordinary(), bank32, { ...faults("G10 breach certification"), written });
  }

  // G06, G09, G11, P01: what is not written.
  for (const day of ["2026-08-25", "2026-09-22"]) {
    planter.fill(day, cleanOne(), trimix2135, {
      ...faults("G06 breach helium"),
      written: { helium: null },
    });
    planter.fill(day, ordinary(), bank32, {
      ...faults("G09 breach analysedBy"),
      written: { analysedBy: null },
    });
    planter.fill(day, ordinary(), bank32, { ...faults("G09 breach received"), written: { received: null } });
    planter.fill(day, ordinary(), bank32, { ...faults("G11 warn mod"), written: { mod: null } });
    planter.fill(day, ordinary(), bank32, { ...faults("P01 breach filledBy"), written: { filledBy: null } });
  }

  // G12: topped from the bank on a residue of air, and the analysis of the bank written down.
  for (const [day, startPsi] of [
    ["2026-09-17", 1600],
    ["2026-10-13", 1900],
  ] as const) {
    planter.fill(day, ordinary(), bank32, {
      ...faults("G12 warn oxygen"),
      startPsi,
      oxygen: 32,
      written: { startMix: "air", temperature: null },
    });
  }

  // A02: a compressor that failed its test; the fill before its last good test is sound.
  const boat = { written: { source: "Boat compressor" } };
  const onBoard = planter.cylinder("air", {}, "C-050");
  planter.fill("2026-08-22", onBoard, air, boat);
  for (const day of ["2026-09-05", "2026-09-12"])
    planter.fill(day, onBoard, air, { ...boat, ...faults("A02 stop date") });
}
