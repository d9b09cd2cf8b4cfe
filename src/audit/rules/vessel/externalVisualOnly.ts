import { lastDayOf, monthNumber } from "../../../cylinders/calendar";
import { stampText, type TestStamp } from "../../../cylinders/testStamp";
import { Refusal } from "../../../gas/refusal";
import { testsOf, type RecordedTest } from "../../../log/register";
import { onItsDay } from "../../judge/eitherReading";
import { basisHere } from "../../shop/citation";
import { oncePerCylinder, read } from "../../record/readField";
import {
  DOES_NOT_APPLY,
  notJudged,
  PASS,
  type FilledCylinder,
  type Rule,
  type Verdict,
} from "../../judge/rule";
import { dateText } from "../../../words/inSentences";

const SOURCE = "49 CFR 180.213(f)";

/**
 * An E behind a US date is an external visual, no test of pressure, and no cylinder for diving lives on it
 * (49 CFR 180.213(f)). Counted are the 60 months since the last hydro that was one, else since manufacture.
 */
export const externalVisualOnly: Rule = {
  id: "V11",
  rank: 28,
  title: "External visual taken for a hydro",
  needs: [["hydro"], ["date"]],
  judge(filled, { rules: country }) {
    const { rules, hydros } = filled.cylinder;
    if (hydros === undefined || rules instanceof Refusal || !rules.hydro) return DOES_NOT_APPLY;
    if (!country.visualMarks.includes("E")) return DOES_NOT_APPLY;
    const external = lastExternal(filled.cylinder);
    if (external === undefined) return PASS;
    const { months } = rules.hydro;
    return onItsDay(filled, judgeOn, external, months);
  },
};

function judgeOn(day: number, { cylinder }: FilledCylinder, external: External, months: number): Verdict {
  const { record, stamp, column } = external;
  const until = lastValidDay({ cylinder }, day, months);
  const at = { record, field: "hydro", ...(column !== undefined && { column }) } as const;
  if (until === undefined)
    return notJudged("only an external visual is on record, and no manufacture date", at);
  if (day <= until) return PASS;
  return {
    kind: "fault",
    severity: "stop",
    basis: basisHere(cylinder.country, SOURCE),
    source: SOURCE,
    message: `${stampText(stamp)} E is an external visual, not a hydro; the last that counts held until ${dateText(until)}.`,
    todo: "Do not fill it before a hydro.",
    at,
  };
}

interface External extends RecordedTest {
  readonly stamp: TestStamp;
}

const lastExternal = oncePerCylinder(({ records }): External | undefined =>
  testsOf(records, "hydro")
    .flatMap((test): External[] =>
      test.reading.kind === "value" && test.reading.value.marks.includes("E")
        ? [{ ...test, stamp: test.reading.value }]
        : [],
    )
    .at(-1),
);

/** Last day by the latest hydro up to then, else by manufacture. */
function lastValidDay(
  { cylinder }: Pick<FilledCylinder, "cylinder">,
  day: number,
  months: number,
): number | undefined {
  const held = (cylinder.hydros?.tests ?? []).filter(({ from }) => from <= day).map(({ until }) => until);
  if (held.length > 0) return Math.max(...held);
  const { reading: made } = read(cylinder, "made");
  return made.kind === "value" ? lastDayOf(monthNumber(made.value.month) + months) : undefined;
}
