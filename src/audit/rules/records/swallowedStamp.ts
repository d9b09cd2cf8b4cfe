import { stampText } from "../../../cylinders/testStamp";
import { PASS, type Rule, type Verdict } from "../../judge/rule";
import type { DoubtfulTest } from "../../record/testHistory";

/**
 * A stamp such as 10/19 that the spreadsheet took for 19 October of the year of typing, so that an old test looks
 * fresh. How spreadsheets read such text is common practice, no source.
 */
export function swallowedStamp(field: "hydro" | "visual"): Rule {
  const isSwallowed = ({ reading, at }: DoubtfulTest): boolean =>
    at.field === field && reading.kind === "ambiguous" && reading.doubt === "swallowed stamp";
  return {
    id: "R04",
    rank: 27,
    title: `${field === "hydro" ? "Hydro" : "Visual"} stamp that the spreadsheet turned into a date`,
    needs: [],
    judge({ cylinder }) {
      const history = field === "hydro" ? cylinder.hydros : cylinder.visuals;
      const swallowed = history?.doubts.find(isSwallowed);
      return swallowed ? fault(swallowed) : PASS;
    },
  };
}

function fault({ reading, at }: DoubtfulTest): Verdict {
  const choices = reading.kind === "ambiguous" ? reading.choices.map(stampText) : [];
  const [likely = "", ...others] = choices;
  return {
    kind: "fault",
    severity: "breach",
    basis: "practice",
    source: "common practice, no source",
    message: `The ${at.field} date is probably ${likely}, typed as month and year${others.length > 0 ? `; the spreadsheet holds ${others.join(", ")}` : ""}.`,
    todo: `Look at the stamp on the cylinder and write it with a four-digit year, such as ${likely.replace("-", "/")}.`,
    at,
  };
}
