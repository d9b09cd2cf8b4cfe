import { lacking } from "../../judge/lacks";
import { richInflow } from "../../record/oxygen";
import { DOES_NOT_APPLY, notJudged, PASS, type Rule } from "../../judge/rule";
import { noSourcesTold, sourceOf } from "../../shop/gasSources";

/**
 * Oxygen topped with air that is not oxygen compatible: oil at most 0.1 mg/m³ is what the trade asks for on top of pure
 * oxygen. 29 CFR 1910 subpart T app. C 6(e).
 */
export const sourceNotProven: Rule = {
  id: "A03",
  rank: 10,
  title: "Oxygen topped from a source that is not oxygen compatible",
  needs: [["source"], ["method", "oxygenAdded"]],
  unable: noSourcesTold,
  judge(filled, shop) {
    const { fill } = filled;
    const inflow = richInflow(filled, shop);
    // A rich mix from one bank meets no other gas.
    if (inflow === undefined || (inflow.at.field !== "method" && inflow.at.field !== "oxygenAdded"))
      return DOES_NOT_APPLY;
    const { source } = fill.fields;
    if (source.kind !== "value") return lacking(source, { field: "source" });
    const isCompatible = sourceOf(fill, shop)?.oxygenCompatible;
    if (isCompatible === undefined)
      return notJudged("nobody has said whether the source is oxygen compatible", { field: "source" });
    if (isCompatible) return PASS;
    return {
      kind: "fault",
      severity: "stop",
      basis: "practice",
      source: "29 CFR 1910 subpart T app. C 6(e)",
      message: `${inflow.how} into the cylinder, topped from ${source.value}, which is not oxygen compatible.`,
      todo: "Call the cylinder back and clean it; top oxygen only from a source that is tested for oil.",
      at: { field: "source" },
    };
  },
};
