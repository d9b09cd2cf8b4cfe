import { monthNumber } from "../../../cylinders/calendar";
import { ATMOSPHERE_BAR } from "../../../gas/units";
import { lacking } from "../../judge/lacks";
import { PASS, type FilledCylinder, type Rule } from "../../judge/rule";
import { dateOf } from "../../../cylinders/calendar";

/**
 * A cylinder that comes in empty may have drawn water: it wants a look inside, unless it comes from one (in the month of
 * the fill or the month before). Arbeidstilsynet regulation 25-15; German filling practice.
 */
export const lowStart: Rule = {
  id: "V17",
  rank: 21,
  title: "Came in empty",
  needs: [["startPressure"]],
  judge(filled, { figures }) {
    const { startPressure } = filled.fill.fields;
    if (startPressure.kind !== "value") return lacking(startPressure, { field: "startPressure" });
    const { bar, written } = startPressure.value;
    if (bar - ATMOSPHERE_BAR >= figures.startMinimumBar || comesFromLook(filled)) return PASS;
    return {
      kind: "fault",
      severity: "warn",
      basis: "practice",
      source: "Arbeidstilsynet regulation 25-15; German filling practice",
      message: `It came in with ${written.value} ${written.unit}: water may have got in.`,
      todo: "Look inside before the next fill.",
      at: { field: "startPressure" },
    };
  },
};

function comesFromLook({ day, cylinder }: FilledCylinder): boolean {
  if (day === undefined) return false;
  const month = monthNumber(dateOf(day));
  const { visuals, hydros } = cylinder;
  return [...(visuals?.tests ?? []), ...(hydros?.tests ?? [])].some(
    ({ kind, from, stamp }) =>
      kind !== "manufacture" &&
      from <= day &&
      stamp.means === "test" &&
      monthNumber(stamp.month) >= month - 1,
  );
}
