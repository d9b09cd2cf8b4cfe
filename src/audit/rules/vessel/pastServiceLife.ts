import { lastDayOf, monthNumber } from "../../../cylinders/calendar";
import { stampText, type TestStamp } from "../../../cylinders/testStamp";
import { inFill, lackingOnRecord } from "../../judge/lacks";
import { byEveryReading, onItsDay } from "../../judge/eitherReading";
import { classRules, isLack, read } from "../../record/readField";
import { DOES_NOT_APPLY, PASS, type Rule, type Verdict } from "../../judge/rule";
import { dateText } from "../../../words/inSentences";

/**
 * Composites and aircraft cylinders have a service life that no test can lengthen: 49 CFR 173.301(a)(7), 180.205;
 * some also a number of fills, of which the log shows how many there were at least.
 */
export const pastServiceLife: Rule = {
  id: "V04",
  rank: 6,
  title: "Filled past its service life",
  needs: [["cylinderClass", "material"]],
  judge(filled, { rules: country }) {
    const rules = classRules(filled);
    if (isLack(rules)) return rules;
    const { serviceLifeMonths, maxFills, hydro } = rules;
    if (serviceLifeMonths === undefined) return DOES_NOT_APPLY;
    const basis = hydro?.basis === "law" ? "law" : "practice";
    const source = country.serviceLifeSource ?? hydro?.source ?? "";
    const todo = "Take it out of service, and tell the owner: no test extends its life.";
    const fills = filled.past.fills + 1;
    if (maxFills !== undefined && fills > maxFills) {
      return {
        kind: "fault",
        severity: "stop",
        basis,
        source,
        message: `This was its fill ${fills} in the log; it may have ${maxFills} in its life.`,
        todo,
        at: { field: "serial" },
      };
    }
    const made = read(filled.cylinder, "made");
    if (made.reading.kind === "blank") return lackingOnRecord(filled, made.reading, made.at);
    const judge = (stamp: TestStamp, day: number): Verdict => {
      const lastDay = lastDayOf(monthNumber(stamp.month) + serviceLifeMonths);
      if (day <= lastDay) return PASS;
      return {
        kind: "fault",
        severity: "stop",
        basis,
        source,
        message: `Made ${stampText(stamp)}: its service life of ${serviceLifeMonths / 12} years ended on ${dateText(lastDay)}.`,
        todo,
        at: inFill(filled, made.at),
      };
    };
    return onItsDay(filled, (day) => byEveryReading(made, (stamp) => judge(stamp, day), stampText));
  },
};
