import { serialOf } from "./cells";
import { RECIPES } from "./fills";
import { faults, type Planter } from "./planter";

/** Faults of the records themselves. */
export function plantRecords(planter: Planter): void {
  const { bank32, air } = RECIPES;

  // R03: a visual older than the cylinder. The hydro includes one, so that nothing else is wrong.
  for (const [day, visual] of [
    ["2026-08-19", "2013/05"],
    ["2026-10-02", "2015/11"],
  ] as const) {
    const impossible = planter.cylinder("40", { made: "2016/03", hydro: "2026/02", visual });
    planter.inRegister(impossible, "R03", "breach", "visual");
    planter.fill(day, impossible, bank32);
  }

  // R06: bar in the column of psi.
  const inBar = planter.cylinder("40");
  for (const [day, endPsi] of [
    ["2026-09-15", 207],
    ["2026-10-16", 205],
  ] as const) {
    planter.fill(day, inBar, bank32, {
      ...faults("R06 warn endPsi"),
      startPsi: 60,
      endPsi,
      written: { temperature: null },
    });
  }

  // R07: no higher at the end than at the start, and twice within minutes.
  const unfilled = planter.cylinder("air", {}, "C-072");
  const twice = planter.cylinder("40");
  for (const day of ["2026-08-11", "2026-09-24"]) {
    planter.fill(day, unfilled, air, {
      ...faults("R07 warn endPsi"),
      startPsi: 2900,
      endPsi: 2900,
      written: { temperature: null },
    });
    planter.fill(day, twice, bank32, { written: { time: at(9, 5) } });
    planter.fill(day, twice, bank32, { ...faults("R07 warn"), startPsi: 450, written: { time: at(9, 20) } });
  }

  // R11: it came back with more than it left with.
  for (const [first, second] of [
    ["2026-08-06", "2026-08-27"],
    ["2026-09-03", "2026-10-08"],
  ] as const) {
    const away = planter.cylinder("40", {}, "C-073");
    planter.fill(first, away, bank32, { endPsi: 1500 });
    planter.fill(second, away, bank32, { ...faults("R11 note startPsi"), startPsi: 2300 });
  }
}

function at(hour: number, minute: number) {
  return { value: (hour * 60 + minute) / 1440, format: "h:mm" };
}

/** The day on which the last air test of the shop was a day too old. */
export const UNTESTED_DAY = serialOf("2026-08-12");
