import { read } from "../../record/readField";
import { BLANK } from "../../../log/reading";
import { stampText } from "../../../cylinders/testStamp";
import { lacking, lackingOnRecord, twoCylinders } from "../../judge/lacks";
import { onItsDay } from "../../judge/eitherReading";
import { possibleServices, richInflow, type RichInflow } from "../../record/oxygen";
import {
  DOES_NOT_APPLY,
  notJudged,
  PASS,
  type FilledCylinder,
  type Rule,
  type Verdict,
} from "../../judge/rule";
import { noSourcesTold, sourceOf } from "../../shop/gasSources";
import type { Shop } from "../../shop/shop";
import type { PastFill } from "../../walk/past";
import { dateText } from "../../../words/inSentences";

const SOURCE = "NOAA Diving Manual ch. 15; 29 CFR 1910 subpart T app. C 6(e)";

/**
 * A cylinder that was clean for oxygen loses that by a fill of air that may carry oil, until it is cleaned again: oxygen
 * on top of an oil film burns. A source of which nobody said what it gives takes no status away.
 */
export const cleanLost: Rule = {
  id: "O03",
  rank: 10,
  title: "Oxygen-clean status lost",
  needs: [["source"], ["oxygenService"]],
  unable: noSourcesTold,
  judge(filled, shop) {
    const services = possibleServices(filled);
    if (services.length > 0 && !services.some(({ oxygenClean }) => oxygenClean)) return DOES_NOT_APPLY;
    const doubt = twoCylinders(filled);
    if (doubt) return doubt;
    const { reading, at } = filled.cylinder.oxygenService;
    if (reading.kind !== "value") return lackingOnRecord(filled, reading, at);
    const inflow = richInflow(filled, shop);
    return inflow ? judgeOxygenFill(filled, inflow) : judgeOtherFill(filled, shop);
  },
};

/** Where the oil may come in. */
function judgeOtherFill({ fill }: FilledCylinder, shop: Shop): Verdict {
  const { source } = fill.fields;
  if (source.kind !== "value") return lacking(source, { field: "source" });
  const isCompatible = sourceOf(fill, shop)?.oxygenCompatible;
  if (isCompatible === undefined)
    return notJudged("nobody has said whether the source is oxygen compatible", { field: "source" });
  if (isCompatible) return PASS;
  return {
    kind: "fault",
    severity: "warn",
    basis: "practice",
    source: SOURCE,
    message: `An oxygen-clean cylinder was filled from ${source.value}, which is not oxygen compatible: it is no longer clean.`,
    todo: "Take the oxygen-clean mark off, and put no oxygen on it before it is cleaned.",
    at: { field: "source" },
  };
}

/** Where the oxygen meets it. */
function judgeOxygenFill(filled: FilledCylinder, inflow: RichInflow): Verdict {
  const { lastOily } = filled.past;
  if (lastOily === undefined) return PASS;
  return onItsDay(filled, judgeOxygenOn, lastOily, inflow);
}

function judgeOxygenOn(day: number, filled: FilledCylinder, lastOily: PastFill, inflow: RichInflow): Verdict {
  if (lastOily.day === undefined)
    return notJudged("its fill from a source that is not oxygen compatible has no date that can be read", {
      field: "serial",
    });
  const oilyDay = lastOily.day;
  const { cleanings } = filled.cylinder;
  const [doubtful] = cleanings.doubts;
  if (doubtful) return lacking(doubtful.reading, doubtful.at);
  const done = cleanings.tests.filter(({ from }) => from <= day);
  if (done.some(({ from }) => from > oilyDay)) return PASS;
  const last = done.sort((one, other) => one.from - other.from).at(-1);
  if (last === undefined) return lackingOnRecord(filled, BLANK, read(filled.cylinder, "oxygenCleaned").at);
  return {
    kind: "fault",
    severity: "stop",
    basis: "practice",
    source: SOURCE,
    message: `${inflow.how} into a cylinder filled from ${sourceName(lastOily)}, not oxygen compatible, on ${dateText(oilyDay)}; last cleaned ${stampText(last.stamp)}.`,
    todo: "Call the cylinder back, and put no more oxygen on it before it is cleaned again.",
    at: inflow.at,
  };
}

function sourceName({ fill }: PastFill): string {
  const { source } = fill.fields;
  return source.kind === "value" ? source.value : "a source";
}
