import { dateCell, serialOf } from "./cells";
import type { CylinderMaker } from "./cylinders";
import type { FillMaker } from "./fills";
import { RECIPES, type FillFault, type FillLack } from "./fills";
import { plantGas } from "./plantedGas";
import { plantRecords } from "./plantedRecords";
import { plantVessel } from "./plantedVessel";
import { faults, lacks, NEED_THE_CYLINDER, Planter, type Planted } from "./planter";

/**
 * Plants every kind of fault that a check can find so far, each at least twice, and every reason for which it cannot
 * judge. Dates are chosen to stand on the edge: the last day of a month that falls due, and the first day after it.
 */
export function plant(cylinderMaker: CylinderMaker, fillMaker: FillMaker): Planted {
  const planter = new Planter(cylinderMaker, fillMaker);
  const cylinder: Planter["cylinder"] = (...told) => planter.cylinder(...told);
  const fill: Planter["fill"] = (...told) => {
    planter.fill(...told);
  };
  const fault = (rule: string, severity: FillFault["severity"], column: FillFault["column"] = "serial") => ({
    faults: [{ rule, severity, column }],
  });
  const lack = (rule: string, why: string, at: FillLack["at"]): FillLack => ({ rule, why, at });

  // V01: past its hydro, at the edge and far beyond, by manufacture, and one half of a twin set.
  const { bank32, air } = RECIPES;
  const rental = cylinder("40", { hydro: "2021/08", visual: "2026/03" });
  fill("2026-08-30", rental, bank32);
  fill("2026-09-12", rental, bank32, fault("V01", "stop"));
  fill("2026-10-17", rental, bank32, fault("V01", "stop"));
  fill(
    "2026-08-08",
    cylinder("oxygen clean", { hydro: "6 A1 23 20" }, "C-031", "HP100"),
    RECIPES.blend32,
    fault("V01", "stop"),
  );
  const edge = cylinder("40", { hydro: "09/21", visual: "5/26" });
  fill("2026-09-30", edge, bank32);
  fill("2026-10-01", edge, bank32, fault("V01", "stop"));
  fill(
    "2026-08-15",
    cylinder("air", { hydro: null, made: "2021/07", visual: "10/25" }, "C-044"),
    air,
    fault("V01", "stop"),
  );
  const left = cylinder("oxygen clean", {}, "C-007", "LP85");
  const right = cylinder("oxygen clean", { hydro: "04 21+" }, "C-007", "LP85");
  fill("2026-09-19", [left, right], RECIPES.trimix2135, {
    faults: [{ rule: "V01", severity: "stop", column: "serial", serial: right.serial }],
  });

  // V06: past its visual; a hydro counts as one until it is a year old itself.
  fill("2026-08-05", cylinder("40", { hydro: "2024/05", visual: "7/25" }), bank32, fault("V06", "breach"));
  const sticker = cylinder("40", { hydro: "2023/11", visual: "Sep-25" });
  fill("2026-09-30", sticker, bank32);
  fill("2026-10-03", sticker, bank32, fault("V06", "breach"));
  const lookedInto = cylinder("air", { hydro: "8 A1 23 25", visual: "2024/06" }, "C-052");
  fill("2026-08-29", lookedInto, air);
  fill("2026-09-05", lookedInto, air, fault("V06", "breach"));

  // O01 and O02: oxygen into cylinders that are not clean for it, and mixes above the rating.
  fill("2026-08-22", cylinder("40", {}, "C-019"), RECIPES.blend32, fault("O01", "stop", "method"));
  fill("2026-09-26", cylinder("air", {}, "C-023"), RECIPES.blend36, {
    faults: [
      { rule: "O01", severity: "stop", column: "method" },
      { rule: "O02", severity: "stop", column: "oxygen" },
    ],
  });
  fill("2026-10-10", cylinder("40", {}), RECIPES.bank50, {
    faults: [
      { rule: "O01", severity: "stop", column: "oxygen" },
      { rule: "O02", severity: "stop", column: "oxygen" },
    ],
  });
  fill("2026-08-16", cylinder("air", {}), bank32, fault("O02", "stop", "oxygen"));
  fill("2026-10-24", cylinder("air", {}, "C-060"), bank32, {
    ...faults("O02 stop orderedMix", "G01 stop oxygen"),
    written: { oxygen: null, analysedBy: null, mod: 111 },
    lacks: lacks(["G03"], "analysis is blank", { column: "oxygen" }),
  });
  for (const [day, oxygen] of [
    ["2026-08-23", 40.3],
    ["2026-10-11", 40.5],
  ] as const) {
    // G02: the label is that of 40 %, rounded down from 82.5 ft; 40.3 % ends at 81.6, 40.5 % at 81.1.
    fill(day, cylinder("40", {}, "C-012"), RECIPES.stream40, {
      ...faults("O02 warn oxygen", "G02 warn mod"),
      oxygen,
      written: { mod: 82 },
    });
  }

  // V09: neither a hydro nor a manufacture date.
  for (const day of ["2026-08-09", "2026-09-20"]) {
    const bare = cylinder("40", { hydro: null, made: null, visual: "2026/02" });
    planter.inRegister(bare, "V09", "breach", "hydro");
    fill(day, bare, bank32, { lacks: [lack("V01", "hydro is blank", { cylinder: bare, column: "hydro" })] });
  }

  // R01: a slip of the pen, a cylinder nobody entered, and one serial that stands for two cylinders.
  const notThere = {
    ...fault("R01", "breach"),
    lacks: lacks(NEED_THE_CYLINDER, "serial is not in the register", { column: "serial" }),
  };
  const misread = { ...rental, serial: withLastDigit(rental.serial) };
  fill("2026-08-12", misread, bank32, notThere);
  fill("2026-10-18", { ...rental, serial: "F0077-X", owner: "C-066" }, air, notThere);
  const twice = cylinder("40", { serial: "P500318", hydro: "2023/02" });
  const other = cylinder("40", { ...twice, owner: "C-071", size: "AL40", made: "2016/09", hydro: "11/24" });
  planter.inRegister(other, "R01", "breach", "serial");
  fill("2026-09-13", twice, bank32, {
    lacks: lacks(TOLD_APART, "serial stands for two cylinders in the register", {
      cylinder: other,
      column: "serial",
    }),
  });

  // R04: 10/19 and 3/22 typed for a hydro, 11/24 for a visual; the spreadsheet made days of this year of them.
  const readTwoWays = "can be read in more than one way";
  for (const [day, swallowed] of [
    ["2026-08-26", "2026-10-19"],
    ["2026-10-09", "2026-03-22"],
  ] as const) {
    const old = cylinder("40", { made: "2012/03", hydro: dateCell(swallowed), visual: "2026/04" });
    planter.inRegister(old, "R04", "breach", "hydro");
    fill(day, old, bank32, {
      lacks: [lack("V01", `hydro ${readTwoWays}`, { cylinder: old, column: "hydro" })],
    });
  }
  const overlooked = cylinder("air", { hydro: "2023/08", visual: dateCell("2026-11-24") }, "C-038");
  planter.inRegister(overlooked, "R04", "breach", "visual");
  fill("2026-09-11", overlooked, air, {
    lacks: [lack("V06", `visual ${readTwoWays}`, { cylinder: overlooked, column: "visual" })],
  });

  // Not checked, for a reason that stands in the register.
  for (const [day, hydro] of [
    ["2026-08-19", "see sticker"],
    ["2026-10-14", "??"],
  ] as const) {
    const unread = cylinder("40", { hydro, visual: "2026/01" });
    fill(day, unread, bank32, {
      lacks: [lack("V01", "hydro cannot be read", { cylinder: unread, column: "hydro" })],
    });
  }
  for (const day of ["2026-08-28", "2026-09-24"]) {
    const unseen = cylinder("air", { hydro: "2024/03", visual: null }, "C-027");
    fill(day, unseen, air, {
      lacks: [lack("V06", "visual is blank", { cylinder: unseen, column: "visual" })],
    });
  }
  const vague = cylinder("40", { ratingWritten: "nitrox" });
  fill("2026-10-21", vague, bank32, {
    lacks: lacks(["O01", "O02", "O03"], "oxygen rating can be read in more than one way", {
      cylinder: vague,
      column: "rating",
    }),
  });
  for (const day of ["2026-08-14", "2026-09-02"]) {
    // Tested again since, and the old date was overwritten: good for October, no proof for the fill before.
    const retested = cylinder("40", { hydro: "10/26", visual: "2026/02" });
    fill(day, retested, bank32, {
      lacks: [
        lack("V01", "the only hydro on record is later than the fill", {
          cylinder: retested,
          column: "hydro",
        }),
      ],
    });
    fill("2026-10-23", retested, bank32);
  }

  // Not checked, for a reason that stands in the fill's own row.
  const sound = cylinder("40", {});
  const unclean = cylinder("air", {}, "C-015");
  const here = (rules: readonly string[], why: string, column: FillFault["column"]) => ({
    lacks: lacks(rules, why, { column }),
  });
  fill("2026-08-20", sound, bank32, {
    written: { method: null },
    ...here(["O01", "O07"], "method is blank", "method"),
  });
  fill("2026-09-09", unclean, air, {
    written: { method: null },
    ...here(["O01", "O07"], "method is blank", "method"),
  });
  const needTheDay = ["V01", "V06", "A01", "A02"];
  // Whether it was filled twice that day nobody can say of it, nor of the fill after it.
  const dateless = lacks(["R07"], "a fill of the cylinder has no date that can be read", { column: "date" });
  fill("2026-09-16", sound, bank32, {
    written: { date: null },
    lacks: [...here(needTheDay, "fill date is blank", "date").lacks, ...dateless],
  });
  fill("2026-10-07", sound, bank32, {
    written: { date: "10/32/2026" },
    lacks: [...here(needTheDay, "fill date cannot be read", "date").lacks, ...dateless],
  });
  fill("2026-09-23", sound, bank32, {
    written: { oxygen: "??" },
    lacks: [
      ...here(["O02", "G01", "G02", "G03", "G12"], "analysis cannot be read", "oxygen").lacks,
      ...dateless,
    ],
  });
  fill("2026-10-16", unclean, air, {
    written: { serial: null },
    ...here([...NEED_THE_CYLINDER, "R01"], "serial is blank", "serial"),
  });
  plantVessel(planter);
  plantGas(planter);
  plantRecords(planter);
  return planter;
}

/** Two cylinders of one serial are both there, and neither is oxygen clean. */
const TOLD_APART = NEED_THE_CYLINDER.filter((rule) => rule !== "V09" && rule !== "O03");

/** The same serial with its last digit one higher. */
function withLastDigit(serial: string): string {
  return serial.slice(0, -1) + String((Number(serial.at(-1)) + 1) % 10);
}

/** First and last day of the log. */
export const FIRST_DAY = serialOf("2026-08-01");
export const LAST_DAY = serialOf("2026-10-31");
