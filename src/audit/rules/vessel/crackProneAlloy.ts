import { Refusal } from "../../../gas/refusal";
import type { Interval } from "../../../cylinders/countryRules";
import { testsOf } from "../../../log/register";
import { inFill, lackingOnRecord } from "../../judge/lacks";
import type { CylinderOnRecord } from "../../record/cylinderOnRecord";
import { byEveryHistory, onItsDay } from "../../judge/eitherReading";
import { classRules, isLack, oncePerCylinder, read } from "../../record/readField";
import { DOES_NOT_APPLY, PASS, type FilledCylinder, type Rule, type Verdict } from "../../judge/rule";
import { historyOf } from "../../record/tests";
import type { TestHistory } from "../../record/testHistory";
import { dateText } from "../../../words/inSentences";
import { BLANK } from "../../../log/reading";

/** Aluminium of these years may be the alloy (a New Zealand note; the years are about right). */
const SUSPECT_YEARS = { first: 1972, last: 1988 };

/**
 * Aluminium 6351-T6 cracks under sustained load, and has burst: an eddy-current test (VE) within 60 months before the
 * fill (49 CFR 180.205(f)(4), Part 180 Appendix C). Where the alloy is not proven, the rule is not known to be kept.
 */
export const crackProneAlloy: Rule = {
  id: "V05",
  rank: 7,
  title: "Alloy 6351 without an eddy-current test",
  needs: [["cylinderClass", "material", "alloy"]],
  judge(filled, { rules: country }) {
    const rules = classRules(filled);
    if (isLack(rules)) return rules;
    const interval =
      rules.eddyCurrent ??
      country.cylinders.find(({ eddyCurrent }) => eddyCurrent !== undefined)?.eddyCurrent;
    if (interval === undefined) return DOES_NOT_APPLY;
    const alloy = alloyOf(filled.cylinder);
    if (alloy === "another") return DOES_NOT_APPLY;
    const history = eddyCurrents(filled.cylinder, interval);
    return onItsDay(filled, judgeOn, interval, history, alloy);
  },
};

type Alloy = "6351" | "unproven" | "another";
type Suspect = Exclude<Alloy, "another">;

function judgeOn(
  day: number,
  filled: FilledCylinder,
  interval: Interval,
  history: TestHistory,
  alloy: Suspect,
): Verdict {
  const state = history.stateOn(day);
  switch (state.kind) {
    case "in date":
      return PASS;
    case "in doubt":
      return byEveryHistory(history, state.doubt, (read) => judgeOn(day, filled, interval, read, alloy));
    case "past due":
      return fault(filled, interval, alloy, state.last.until);
    case "only later":
    case "none":
      if (filled.register === "not found") return lackingOnRecord(filled, BLANK, { field: "eddyCurrent" });
      return fault(filled, interval, alloy, undefined);
  }
}

const alloyOf = oncePerCylinder((cylinder): Alloy => {
  const text = (field: "alloy" | "cylinderClass" | "material"): string => {
    const { reading } = read(cylinder, field);
    return reading.kind === "value" ? reading.value : "";
  };
  const alloy = text("alloy");
  const kind = `${text("cylinderClass")} ${text("material")}`;
  if (`${alloy} ${kind}`.includes("6351")) return "6351";
  if (alloy !== "") return "another";
  const { rules } = cylinder;
  if (!(rules instanceof Refusal) && rules.eddyCurrent !== undefined) return "unproven";
  const { reading: made } = read(cylinder, "made");
  const year = made.kind === "value" ? made.value.month.year : 0;
  return /3AL|alu/i.test(kind) && year >= SUSPECT_YEARS.first && year <= SUSPECT_YEARS.last
    ? "unproven"
    : "another";
});

/** Tests of a column of their own, and hydros that carry the mark VE. */
function eddyCurrents({ records }: CylinderOnRecord, interval: Interval): TestHistory {
  const marked = testsOf(records, "hydro").filter(
    ({ reading }) => reading.kind === "value" && reading.value.marks.includes("VE"),
  );
  return historyOf("eddyCurrent", [...testsOf(records, "eddyCurrent"), ...marked], interval);
}

function fault(
  filled: FilledCylinder,
  { basis, source }: Interval,
  alloy: Suspect,
  lastUntil: number | undefined,
): Verdict {
  const { at } = read(filled.cylinder, "eddyCurrent");
  const last = lastUntil === undefined ? "none is on record" : `the last held until ${dateText(lastUntil)}`;
  const isProven = alloy === "6351";
  return {
    kind: "fault",
    ...(lastUntil === undefined && { blank: at }),
    severity: isProven ? "stop" : "breach",
    basis,
    source,
    message: isProven
      ? `Alloy 6351 cracks under load, and it was filled without an eddy-current test in date: ${last}.`
      : `Its alloy is not proven and may be 6351, which cracks under load; of eddy-current tests ${last}.`,
    todo: isProven
      ? "Empty it, and do not fill it again before an eddy-current test; keep people away while it is full."
      : "Find out the alloy and write it down; do not fill it before, unless an eddy-current test is in date.",
    at: inFill(filled, at),
  };
}
