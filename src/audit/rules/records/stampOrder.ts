import { stampText } from "../../../cylinders/testStamp";
import type { DoubtfulTest } from "../../record/testHistory";
import { PASS, type Rule } from "../../judge/rule";

/** A stamp of two numbers, either of which may be the month: UK marks turned round in 2002, German ones vary. */
export const stampOrder: Rule = {
  id: "R05",
  rank: 45,
  title: "Stamp that can be read either way round",
  needs: [["hydro", "visual"]],
  judge({ cylinder }) {
    const doubts = [...(cylinder.hydros?.doubts ?? []), ...(cylinder.visuals?.doubts ?? [])];
    const open = doubts.find(isOpen);
    if (open?.reading.kind !== "ambiguous") return PASS;
    const choices = open.reading.choices.map(stampText);
    return {
      kind: "fault",
      severity: "warn",
      basis: "practice",
      source: "UK marks since 2002; German stamps",
      message: `The ${open.at.field} date can be ${choices.join(" or ")}.`,
      todo: `Look at the stamp, and write the year with four digits, such as ${choices[0]?.replace("-", "/")}.`,
      at: open.at,
    };
  },
};

function isOpen({ reading }: DoubtfulTest): boolean {
  return reading.kind === "ambiguous" && reading.doubt === "stamp order";
}
