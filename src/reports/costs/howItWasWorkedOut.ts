import { ASSUMED, type Assumption } from "../../costs/metered";
import type { CostReport } from "../../costs/report";
import { UNIT_NAMES } from "../../gas/units";

/** What a reader has to know to believe the figures: what was taken for granted, and how often. */
export function howItWasWorkedOut({ log, units, prices }: CostReport): readonly string[] {
  const counts = new Map<Assumption, number>();
  for (const { metered } of log.costed)
    for (const assumed of metered.assumed) counts.set(assumed, (counts.get(assumed) ?? 0) + 1);
  return [
    `Gas that went in: by real gas (GERG-2008), from what was there and what is there now, in ${UNIT_NAMES[units].volume} at 1 atm and ${units === "us" ? "70 °F" : "20 °C"}. Gas let out is neither charged nor credited.`,
    "Air, bank and membrane put one gas on top, the bank's as the shop has told of it, else as ordered; blends go by the analysis where there is one, else by the order.",
    "Margin: charged less cost, of the fills whose charge is known; an unbilled fill is charged 0.",
    ...(prices.compressor?.filter && !prices.compressor.filter.weighted
      ? [
          "Filter hours are not weighted by temperature: the price list gives no room temperature, or none that the filter is rated at.",
        ]
      : []),
    ...[...counts].map(
      ([assumed, fills]) => `${ASSUMED[assumed]} (${fills} ${fills === 1 ? "fill" : "fills"})`,
    ),
  ];
}
