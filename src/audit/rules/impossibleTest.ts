import { dateOf, firstDayOf, lastDayOf, monthNumber } from "../../cylinders/calendar";
import { stampText, type TestStamp } from "../../cylinders/testStamp";
import type { TestField } from "../../log/log";
import { testsOf } from "../../log/register";
import type { CylinderOnRecord } from "../cylinderOnRecord";
import { PASS, type Place, type Rule, type Verdict } from "../rule";
import { dateText, fieldName } from "../words";

const TESTS: readonly TestField[] = ["hydro", "visual", "eddyCurrent", "oxygenCleaned"];

/** A test before the cylinder was made, or after today: one of the dates is wrong. Told once, in the register. */
export const impossibleTest: Rule = {
  id: "R03",
  rank: 44,
  title: "Test before manufacture, or in the future",
  needs: [["hydro", "visual", "eddyCurrent", "oxygenCleaned"]],
  judge: ({ cylinder }, { today }) => cylinder.once(impossibleTest, () => judgeTests(cylinder, today)),
};

function judgeTests({ records }: CylinderOnRecord, today: number | undefined): Verdict {
  for (const field of TESTS) {
    for (const { record, reading, column } of testsOf(records, field)) {
      if (reading.kind !== "value" || reading.value.means === "due") continue;
      const at: Place = { record, field, ...(column !== undefined && { column }) };
      const { made } = record.fields;
      if (made.kind === "value" && monthNumber(reading.value.month) < monthNumber(made.value.month))
        return fault(field, reading.value, `before it was made in ${stampText(made.value)}`, at);
      if (today !== undefined && firstDay(reading.value) > lastDayAt(today, reading.value))
        return fault(field, reading.value, `after today, ${dateText(today)}`, at);
    }
  }
  return PASS;
}

function firstDay({ day, month }: TestStamp): number {
  return day ? firstDayOf(monthNumber(day)) + day.day - 1 : firstDayOf(monthNumber(month));
}

/** A stamp without a day may be of any day of this month. */
function lastDayAt(today: number, { day }: TestStamp): number {
  return day ? today : lastDayOf(monthNumber(dateOf(today)));
}

function fault(field: TestField, stamp: TestStamp, when: string, at: Place): Verdict {
  const name = fieldName(field);
  return {
    kind: "fault",
    severity: "breach",
    basis: "practice",
    source: "common practice, no source",
    message: `The ${name} ${stampText(stamp)} is ${when}: that cannot be.`,
    todo: "Look at the stamps on the cylinder, and correct the date that is wrong.",
    at,
  };
}
