import type { CylinderOnRecord } from "../../audit/record/cylinderOnRecord";
import type { TestHistory } from "../../audit/record/testHistory";
import { stampText } from "../../cylinders/testStamp";
import { Refusal } from "../../gas/refusal";
import type { DraftCell } from "../../sheet/draft/draft";
import { LOOKS } from "../../sheet/draft/looks";
import { dayCell } from "../cells";

/** What is on record of a test on a day: the last one by then, and how long it holds or why nobody knows. */
export interface TestOnDay {
  /** The last test by that day. */
  readonly last: DraftCell;
  /** How long it holds, or what is wrong. */
  readonly until: DraftCell;
}

export function testOnDay(cylinder: CylinderOnRecord, test: "hydros" | "visuals", day: number): TestOnDay {
  if (cylinder.rules instanceof Refusal) return unknown("class not known");
  if (cylinder.other) return unknown("two cylinders");
  const history: TestHistory | undefined = cylinder[test];
  if (history === undefined) return { last: "", until: "not asked for" };
  const state = history.stateOn(day);
  switch (state.kind) {
    case "in date":
    case "past due": {
      const { stamp, until, kind } = state.last;
      const made = kind === "manufacture" ? "made " : "";
      const last = `${made}${stampText(stamp)}${stamp.means === "due" ? " (due)" : ""}`;
      const day = dayCell(until);
      const shown = state.kind === "past due" ? { ...day, style: { ...day.style, ...LOOKS.stop } } : day;
      return { last, until: shown };
    }
    case "in doubt":
      return unknown("in doubt");
    case "only later":
      return unknown("only later");
    case "none":
      return unknown("not on record");
  }
}

function unknown(why: string): TestOnDay {
  return { last: "", until: { value: why, style: LOOKS.warn } };
}
