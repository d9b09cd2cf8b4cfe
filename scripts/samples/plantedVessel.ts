import { RECIPES } from "./fills";
import { faults, type Planter } from "./planter";

/** Faults of the pressure vessel. */
export function plantVessel(planter: Planter): void {
  const { bank32, air, stream40 } = RECIPES;

  // V02 and V08: what the register says of its state.
  const condemned = planter.cylinder("40", { status: "Condemned 2026/07" }, "C-055");
  planter.fill("2026-08-15", condemned, bank32, faults("V02 stop"));
  planter.fill(
    "2026-10-03",
    planter.cylinder("air", { status: "rejected at hydro" }, "C-021"),
    air,
    faults("V02 stop"),
  );
  const dropped = planter.cylinder("40", { status: "dropped 2026/08", hydro: "2025/02" });
  planter.fill("2026-08-02", dropped, bank32, faults("V08 stop"));
  planter.fill(
    "2026-09-06",
    planter.cylinder("40", { status: "dented in van" }, "C-009"),
    bank32,
    faults("V08 stop"),
  );

  // V03: above what it may hold, within what a gauge may be off, and beyond.
  const overfilled = planter.cylinder("40", {}, "C-047");
  for (const [day, endPsi, temperature] of [
    ["2026-08-23", 3450, 75],
    ["2026-10-04", 3500, null],
  ] as const) {
    planter.fill(day, overfilled, bank32, {
      ...faults("V03 stop endPsi"),
      endPsi,
      written: { temperature },
    });
  }
  planter.fill("2026-09-27", planter.cylinder("air", {}, "C-033"), air, {
    ...faults("V03 warn endPsi"),
    endPsi: 3060,
    written: { temperature: null },
  });
  planter.fill(
    "2026-10-18",
    planter.cylinder("oxygen clean", { hydro: "05/24+" }, "C-018", "LP85"),
    RECIPES.blend32,
    {
      ...faults("V03 warn endPsi"),
      endPsi: 2700,
      written: { temperature: null },
    },
  );

  // V07: the pressure of a plus without one. A retest earns it again, or does not.
  const plus = { endPsi: 2640, written: { temperature: 70 } };
  const earned = planter.cylinder("oxygen clean", { hydro: "10/22+" }, "C-064", "LP85");
  planter.fill("2026-09-12", earned, RECIPES.blend32, plus);
  const lost = planter.cylinder("oxygen clean", { hydro: "2024/05" }, "C-065", "LP85");
  planter.fill("2026-09-13", lost, RECIPES.blend32, { ...plus, ...faults("V07 stop endPsi") });
  planter.fill("2026-10-10", planter.cylinder("40", {}, "C-066"), bank32, {
    ...plus,
    ...faults("V07 stop endPsi"),
    endPsi: 3250,
  });

  // V04, V12, V13: classes with an end, or no place under water or in the shop.
  for (const [day, made] of [
    ["2026-09-01", "2011/08"],
    ["2026-10-20", "2010/05"],
  ] as const) {
    planter.fill(
      day,
      planter.cylinder("40", { made, hydro: "2024/05" }, "C-070", "composite"),
      bank32,
      faults("V04 stop"),
    );
  }
  planter.fill(
    "2026-08-30",
    planter.cylinder("40", { made: "2011/08", hydro: "2024/06" }, "C-070", "composite"),
    bank32,
  );
  for (const day of ["2026-08-16", "2026-09-19"]) {
    const apparatus = { cylinderClass: "SP10915", hydro: "2024/05", made: "2014/06" };
    planter.fill(day, planter.cylinder("oxygen clean", apparatus, "C-041", "composite"), stream40, {
      ...faults("V12 stop", "O09 breach oxygen"),
      oxygen: 40.2,
    });
  }
  planter.fill(
    "2026-09-20",
    planter.cylinder("air", { hydro: "2025/03" }, "C-022", "aircraft"),
    air,
    faults("V13 breach"),
  );
  planter.fill("2026-10-24", planter.cylinder("air", {}, "C-023", "foreign"), air, faults("V13 breach"));

  // V05: an alloy that cracks, and one of its years of which nobody knows.
  planter.fill(
    "2026-08-22",
    planter.cylinder("air", { alloy: "6351", made: "1986/05" }, "C-030"),
    air,
    faults("V05 stop"),
  );
  planter.fill(
    "2026-09-01",
    planter.cylinder("air", { alloy: "6351-T6", made: "1984/02", eddy: "2021/08" }, "C-030"),
    air,
    faults("V05 stop"),
  );
  planter.fill(
    "2026-08-30",
    planter.cylinder("air", { alloy: "6351", made: "1984/02", eddy: "2021/08" }, "C-030"),
    air,
  );
  planter.fill(
    "2026-09-26",
    planter.cylinder("air", { cylinderClass: "E6498", alloy: null, made: "1981/09" }, "C-031"),
    air,
    faults("V05 breach"),
  );
  planter.fill(
    "2026-10-11",
    planter.cylinder("air", { alloy: null, made: "1987/04" }, "C-032"),
    air,
    faults("V05 breach"),
  );

  // V10 and V11: a star, and an external visual, taken for a hydro.
  for (const [day, hydro] of [
    ["2026-09-05", "8 A1 23 20*"],
    ["2026-10-17", "2019/11*"],
  ] as const) {
    const starred = planter.cylinder("40", { hydro, visual: "2026/04" });
    planter.inRegister(starred, "V10", "stop", "hydro");
    planter.fill(day, starred, bank32, faults("V01 stop"));
  }
  for (const [day, hydro] of [
    ["2026-08-29", "2024/10 E"],
    ["2026-10-25", "06/25 E"],
  ] as const) {
    const external = planter.cylinder("40", { hydro, made: "2012/03", visual: "2026/04" });
    planter.inRegister(external, "V11", "stop", "hydro");
    planter.fill(day, external, bank32, {
      lacks: [{ rule: "V01", why: "hydro cannot be read", at: { cylinder: external, column: "hydro" } }],
    });
  }

  // V17 and V18: as it came in.
  const empty = planter.cylinder("40", { visual: "2026/03", hydro: "2024/03" }, "C-039");
  for (const [day, startPsi] of [
    ["2026-09-18", 0],
    ["2026-10-08", 30],
  ] as const) {
    planter.fill(day, empty, bank32, { ...faults("V17 warn startPsi"), startPsi });
  }
  const unseen = planter.cylinder("40");
  for (const day of ["2026-08-21", "2026-09-25"])
    planter.fill(day, unseen, bank32, {
      ...faults("V18 warn check"),
      written: { check: null },
    });
}
