import { lacking } from "../../judge/lacks";
import { PASS, type Rule } from "../../judge/rule";

/** A fill that ends no higher than it began: one of the readings is wrong, or nothing was filled. */
export const endNotAboveStart: Rule = {
  id: "R07",
  rank: 47,
  title: "End pressure not above the start",
  needs: [["startPressure"], ["endPressure"]],
  judge({ fill }) {
    const { startPressure, endPressure } = fill.fields;
    if (startPressure.kind !== "value") return lacking(startPressure, { field: "startPressure" });
    if (endPressure.kind !== "value") return lacking(endPressure, { field: "endPressure" });
    const [start, end] = [startPressure.value, endPressure.value];
    if (end.bar > start.bar) return PASS;
    return {
      kind: "fault",
      severity: "warn",
      basis: "practice",
      source: "common practice, no source",
      message: `It ended at ${end.written.value} ${end.written.unit} and began at ${start.written.value} ${start.written.unit}: nothing was filled, or a reading is wrong.`,
      todo: "Look whether the two are swapped, or stand in another row.",
      at: { field: "endPressure" },
    };
  },
};
