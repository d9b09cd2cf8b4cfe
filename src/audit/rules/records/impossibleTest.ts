import { dayNumber, firstDayOf, monthNumber } from "../../../cylinders/calendar";
import { stampText, type TestStamp } from "../../../cylinders/testStamp";
import type { TestField } from "../../../log/log";
import { testsOf } from "../../../log/register";
import { oncePerCylinder } from "../../record/readField";
import { PASS, type Place, type Rule, type Verdict } from "../../judge/rule";
import { withoutImpossibleStamp } from "../../record/tests";
import { fieldName } from "../../../words/fields";
import { dateText } from "../../../words/inSentences";

const TESTS: readonly TestField[] = ["hydro", "visual", "eddyCurrent", "oxygenCleaned"];

/** A test before the cylinder was made, or after today: one of the dates is wrong. Told once, in the register. */
export const impossibleTest: Rule = {
  id: "R03",
  rank: 44,
  title: "Test before manufacture, or in the future",
  needs: [["hydro", "visual", "eddyCurrent", "oxygenCleaned"]],
  judge({ cylinder }, { today }) {
    const { beforeMade, latest } = suspects(cylinder);
    if (beforeMade) return fault(beforeMade, `before it was made in ${beforeMade.made}`);
    if (latest === undefined || today === undefined || firstDay(latest.stamp) <= today) return PASS;
    return fault(latest, `after today, ${dateText(today)}`);
  },
};

interface Dated {
  readonly field: TestField;
  readonly stamp: TestStamp;
  readonly at: Place;
}

/** The first test before manufacture, and the latest of all. */
const suspects = oncePerCylinder(({ records }) => {
  let beforeMade: (Dated & { readonly made: string }) | undefined;
  let latest: Dated | undefined;
  for (const field of TESTS) {
    for (const { record, reading: written, column } of testsOf(records, field)) {
      const reading = withoutImpossibleStamp(written, record);
      if (reading.kind !== "value" || reading.value.means === "due") continue;
      const stamp = reading.value;
      const dated: Dated = { field, stamp, at: { record, field, ...(column !== undefined && { column }) } };
      const { made } = record.fields;
      if (made.kind === "value" && monthNumber(stamp.month) < monthNumber(made.value.month))
        beforeMade ??= { ...dated, made: stampText(made.value) };
      if (latest === undefined || firstDay(stamp) > firstDay(latest.stamp)) latest = dated;
    }
  }
  return { beforeMade, latest };
});

/** A stamp without a day counts from the first of its month. */
function firstDay({ day, month }: TestStamp): number {
  return day ? dayNumber(day) : firstDayOf(monthNumber(month));
}

function fault({ field, stamp, at }: Dated, when: string): Verdict {
  return {
    kind: "fault",
    severity: "breach",
    basis: "practice",
    source: "common practice, no source",
    message: `The ${fieldName(field)} ${stampText(stamp)} is ${when}: that cannot be.`,
    todo: "Look at the stamps on the cylinder, and correct the date that is wrong.",
    at,
  };
}
