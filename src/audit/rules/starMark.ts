import { stampText } from "../../cylinders/testStamp";
import { DOES_NOT_APPLY, PASS, type Rule } from "../rule";
import { stateOn } from "../tests";
import { dateText } from "../words";

/**
 * The star behind a US test gives ten years, but not to cylinders for breathing under water (49 CFR 180.209(b), from
 * memory). Told once, at the stamp; the fills made past the usual interval are V01.
 */
export const starMark: Rule = {
  id: "V10",
  rank: 19,
  title: "Star taken for ten years",
  needs: [["hydro"], ["date"]],
  judge({ day, cylinder }, { rules }) {
    const { hydros } = cylinder;
    if (hydros === undefined || day === undefined) return DOES_NOT_APPLY;
    const state = stateOn(day, hydros);
    if (state.kind !== "past due" || !state.last.stamp.marks.includes("star")) return PASS;
    const { stamp, until, at } = state.last;
    return {
      kind: "fault",
      severity: "stop",
      basis: rules.country === "US" ? "law" : "practice",
      source: "49 CFR 180.209(b), from memory",
      message: `The star behind ${stampText(stamp)} gives no ten years to a cylinder for breathing under water: it held until ${dateText(until)}.`,
      todo: "Do not fill it before a hydro.",
      at,
    };
  },
};
