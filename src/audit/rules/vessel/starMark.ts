import { stampText } from "../../../cylinders/testStamp";
import { onItsDay } from "../../judge/eitherReading";
import { oncePerCylinder } from "../../record/readField";
import { DOES_NOT_APPLY, PASS, type FilledCylinder, type Rule, type Verdict } from "../../judge/rule";
import type { Test, TestHistory } from "../../record/testHistory";
import { dateText } from "../../../words/inSentences";

/**
 * The star behind a US test gives ten years, but not to cylinders for breathing under water (49 CFR 180.209(b), from
 * memory). Told once, at the stamp; the fills made past the usual interval are V01.
 */
export const starMark: Rule = {
  id: "V10",
  rank: 19,
  title: "Star taken for ten years",
  needs: [["hydro"], ["date"]],
  judge(filled) {
    const { hydros } = filled.cylinder;
    if (hydros === undefined || !isStarred(filled.cylinder)) return DOES_NOT_APPLY;
    return onItsDay(filled, judgeOn, hydros);
  },
};

function judgeOn(day: number, _filled: FilledCylinder, hydros: TestHistory): Verdict {
  const state = hydros.stateOn(day);
  if (state.kind !== "past due" || !hasStar(state.last)) return PASS;
  const { stamp, until, at } = state.last;
  return {
    kind: "fault",
    severity: "stop",
    basis: "practice",
    source: "49 CFR 180.209(b), unconfirmed: confirm with the requalifier",
    message: `The star behind ${stampText(stamp)} gives no ten years to a cylinder for breathing under water: it held until ${dateText(until)}.`,
    todo: "Do not fill it before a hydro.",
    at,
  };
}

const isStarred = oncePerCylinder(({ hydros }) => hydros?.tests.some(hasStar) === true);

function hasStar({ stamp }: Test): boolean {
  return stamp.marks.includes("star");
}
