import type { Mixture } from "../../gas/mixture";
import { lacking } from "../judge/lacks";
import { notJudged, type FilledCylinder, type NotJudged } from "../judge/rule";
import type { Shop } from "../shop/shop";
import { isFilledElsewhere } from "../walk/filledElsewhere";

/** What was in the cylinder before the fill, and who says so. */
export interface Residue {
  readonly mix: Mixture;
  readonly by: "log" | "fill before" | "assumed";
}

/**
 * What was in the cylinder before the fill: the start mix of the row, else what the fill before left in it, as breathing
 * takes pressure and not the mix. A fill made elsewhere in between leaves it unknown.
 */
export function residueOf(filled: FilledCylinder, { figures }: Shop): Residue | NotJudged {
  const { startMix } = filled.fill.fields;
  const at = { field: "startMix" } as const;
  if (startMix.kind === "value") return { mix: startMix.value, by: "log" };
  if (startMix.kind !== "blank") return lacking(startMix, at);
  const { last, orderOnTrust } = filled.past;
  if (last === undefined)
    return notJudged("start mix is not written, and no earlier fill of the cylinder is in the log", at);
  if (isFilledElsewhere(filled, figures) === true)
    return notJudged("start mix is not written, and the cylinder was filled elsewhere in between", at);
  if (orderOnTrust !== undefined) return notJudged(orderOnTrust, at);
  if (last.mix === undefined)
    return notJudged("start mix is not written, and what the fill before left is not known", at);
  return { mix: last.mix, by: "fill before" };
}
