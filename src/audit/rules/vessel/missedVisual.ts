import { stampText } from "../../../cylinders/testStamp";
import { inFill, lacking, twoCylinders } from "../../judge/lacks";
import { onItsDay } from "../../judge/eitherReading";
import {
  DOES_NOT_APPLY,
  notJudged,
  PASS,
  type FilledCylinder,
  type Rule,
  type Verdict,
} from "../../judge/rule";
import { dateText } from "../../../words/inSentences";
import type { Test, TestHistory } from "../../record/testHistory";

/**
 * Where a visual was missed, the next test has to be a hydro; another visual does not make it good (UK test-centre
 * practice). It shows only where consecutive visuals are on record.
 */
export const missedVisual: Rule = {
  id: "V15",
  rank: 32,
  title: "Missed visual made good by a visual",
  needs: [["visual"], ["date"]],
  judge(filled, { rules: { missedVisualSource: source } }) {
    const { visuals } = filled.cylinder;
    if (source === undefined || visuals === undefined) return DOES_NOT_APPLY;
    const doubt = twoCylinders(filled);
    if (doubt) return doubt;
    return onItsDay(filled, judgeOn, visuals, source);
  },
};

function judgeOn(day: number, filled: FilledCylinder, visuals: TestHistory, source: string): Verdict {
  const [before, ...since] = sinceLastHydro(day, visuals);
  if (before === undefined || since.length === 0) return PASS;
  const gap = since.findIndex(({ from }, at) => from > (since[at - 1] ?? before).until);
  if (gap < 0) return PASS;
  const [unclear] = visuals.doubts;
  if (unclear !== undefined) return lacking(unclear.reading, unclear.at);
  const late = since[gap]!;
  const missed = since[gap - 1] ?? before;
  // The register may hold the last visual only: between it and the hydro there may have been others.
  if (missed.kind !== "visual") return notJudged("the visuals before the last are not on record", late.at);
  return {
    kind: "fault",
    severity: "breach",
    basis: "practice",
    source,
    message: `The visual due by ${dateText(missed.until)} was missed; ${stampText(late.stamp)} should have been a hydro, and was a visual.`,
    todo: "Send it for a hydro before the next fill.",
    at: inFill(filled, late.at),
  };
}

/** The last hydro up to then, or the making, and the visuals after it, in order of time. */
function sinceLastHydro(day: number, { tests }: TestHistory): readonly Test[] {
  const made = tests.filter(({ from }) => from <= day).sort((one, other) => one.from - other.from);
  const hydro = made.findLastIndex(({ kind }) => kind !== "visual");
  return hydro < 0 ? made : made.slice(hydro);
}
