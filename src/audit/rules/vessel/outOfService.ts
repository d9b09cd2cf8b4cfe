import { Temporal } from "temporal-polyfill";
import { dayNumber } from "../../../cylinders/calendar";
import { inFill } from "../../judge/lacks";
import { onItsDay } from "../../judge/eitherReading";
import { isLack, known } from "../../record/readField";
import {
  notJudged,
  PASS,
  type Fault,
  type FilledCylinder,
  type Place,
  type Rule,
  type Verdict,
} from "../../judge/rule";
import type { StatusMeaning } from "../../../log/vocabularies/meanings";
import { basisHere } from "../../shop/citation";
import type { Shop } from "../../shop/shop";

const DATE = /\b((?:19|20)\d{2})[-/.](\d{1,2})(?:[-/.](\d{1,2}))?\b/;

/** The register says that the cylinder may never be filled: 49 CFR 180.205(h), (i). */
export const outOfService: Rule = {
  id: "V02",
  rank: 3,
  title: "Filled though condemned, rejected or retired",
  needs: [["status"]],
  judge: (filled, shop) =>
    judgeStatus(filled, "out of service", (status, at) => ({
      kind: "fault",
      severity: "stop",
      ...whoSays(shop, "49 CFR 180.205(h), (i)"),
      message: `The register has it as “${status}”, and it was filled.`,
      todo: "Empty it, and take it out of use; where the register is wrong, correct it.",
      at,
    })),
};

/** After heat, fire, a fall or dents a cylinder is tested before its next use: 49 CFR 180.205(d). */
export const damagedUntested: Rule = {
  id: "V08",
  rank: 15,
  title: "Filled after damage, without a test since",
  needs: [["status"]],
  judge: (filled, shop) =>
    judgeStatus(filled, "damaged", (status, at, dated) => {
      const { hydros } = filled.cylinder;
      const state = dated && hydros && hydros.stateOn(dated.day);
      const testedSince =
        state?.kind === "in date" && state.last.kind === "hydro" && state.last.from >= dated!.since;
      if (testedSince) return PASS;
      return {
        kind: "fault",
        severity: "stop",
        ...whoSays(shop, "49 CFR 180.205(d)"),
        message: `The register has it as “${status}”, and no test since is on record.`,
        todo: "Empty it, and have it tested before any further use, whatever the date of its last test.",
        at,
      };
    }),
};

/** The day that a status names, and that of the fill. */
interface DatedStatus {
  readonly since: number;
  readonly day: number;
}

/**
 * The status is undated as a rule: then it counts for every fill; with a date, from that day on. One that waits for a
 * test, or is away, says nothing of earlier fills, nor that this one was in order.
 */
function judgeStatus(
  filled: FilledCylinder,
  meaning: StatusMeaning,
  says: (status: string, at: Place, dated?: DatedStatus) => Verdict,
): Verdict {
  const status = known(filled, "status");
  if (isLack(status)) return status.blank === true && status.at.field === "status" ? PASS : status;
  const { written, meaning: meant } = status.value;
  if (OPEN_SINCE.includes(meant))
    return notJudged(`the status “${written}” does not say since when`, status.at);
  if (meant !== meaning) return PASS;
  const since = dayIn(written);
  const at = inFill(filled, status.at);
  if (since === undefined) return says(written, at);
  return onItsDay(filled, (day) => (day < since ? PASS : says(written, at, { since, day })));
}

const OPEN_SINCE: readonly StatusMeaning[] = ["test due", "away"];

/** First day that a date in the text can mean. */
function dayIn(text: string): number | undefined {
  const [, year, month, day = "1"] = DATE.exec(text) ?? [];
  if (year === undefined || Number(month) < 1 || Number(month) > 12) return undefined;
  return dayNumber(Temporal.PlainDate.from({ year: Number(year), month: Number(month), day: Number(day) }));
}

function whoSays({ rules }: Shop, source: string): Pick<Fault, "basis" | "source"> {
  return { basis: basisHere(rules, source), source };
}
