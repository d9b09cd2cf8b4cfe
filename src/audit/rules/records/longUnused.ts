import { DOES_NOT_APPLY, PASS, type Rule } from "../../judge/rule";

const A_YEAR = 365;

/** A cylinder that stood for a year, and was filled on a look inside from before: stored cylinders rust (from memory). */
export const longUnused: Rule = {
  id: "R10",
  rank: 49,
  title: "Filled after a year unused, without a look inside since",
  needs: [["date"], ["visual"]],
  judge({ day, past, cylinder }) {
    const before = past.last?.day;
    if (day === undefined || before === undefined || cylinder.visuals === undefined) return DOES_NOT_APPLY;
    if (day - before <= A_YEAR) return PASS;
    const state = cylinder.visuals.stateOn(day);
    if (state.kind !== "in date" || state.last.from > before) return PASS;
    return {
      kind: "fault",
      severity: "note",
      basis: "practice",
      source: "common practice, no source",
      message: "It was not filled for over a year, and nobody looked inside since.",
      todo: "Look inside at the next occasion.",
      at: { field: "date" },
    };
  },
};
