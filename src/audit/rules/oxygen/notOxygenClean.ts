import { lacking, lackingOnRecord, onlyLater, twoCylinders } from "../../judge/lacks";
import { onItsDay } from "../../judge/eitherReading";
import { possibleServices, richInflow } from "../../record/oxygen";
import { PASS, type FilledCylinder, type Rule, type Verdict } from "../../judge/rule";
import { ratingText } from "../../../words/inSentences";

/**
 * Pure oxygen, or any gas above the limit, put into a cylinder that is not clean for oxygen: it burns, whatever the
 * final mix. NOAA Diving Manual ch. 15; Code du sport art. A322-92; Tukes. In every country, listed there or not.
 */
export const notOxygenClean: Rule = {
  id: "O01",
  rank: 1,
  title: "Oxygen into a cylinder that is not oxygen clean",
  needs: [["oxygenService"], ["method", "oxygenAdded"]],
  judge(filled, shop) {
    const { fill, cylinder } = filled;
    const doubt = twoCylinders(filled);
    if (doubt) return doubt;
    const { reading, at } = cylinder.oxygenService;
    const services = possibleServices(filled);
    const mayBeClean = services.some((service) => service.oxygenClean);
    const inflow = richInflow(filled, shop);
    if (inflow !== undefined && services.length > 0 && !mayBeClean) {
      return {
        kind: "fault",
        severity: "stop",
        basis: shop.rules.oxygen.cleanBasis,
        source: shop.rules.oxygen.cleanSource,
        message: `${inflow.how} into a cylinder that is not oxygen clean (rated ${services.map(ratingText).join(" or ")}).`,
        todo: "Call the cylinder back; put no oxygen on it until it is cleaned for oxygen, and fill it from a premix within its rating.",
        at: inflow.at,
      };
    }
    if (reading.kind !== "value") return lackingOnRecord(filled, reading, at);
    if (inflow === undefined && fill.fields.method.kind !== "value") {
      return lacking(fill.fields.method, { field: "method" });
    }
    return inflow === undefined || cylinder.cleanings.tests.length === 0
      ? PASS
      : onItsDay(filled, judgeCleanings);
  },
};

function judgeCleanings(day: number, { cylinder: { cleanings } }: FilledCylinder): Verdict {
  return cleanings.stateOn(day).kind === "only later" ? onlyLater("oxygenCleaned", cleanings) : PASS;
}
