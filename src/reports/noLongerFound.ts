import type { Acceptance } from "../audit/judge/acceptance";
import { ruleInWords } from "../audit/rules/ruleInWords";
import type { Block } from "../sheet/draft/blocks";
import { isoDayCell } from "./cells";

/** A table of what the shop accepted earlier and the check does not find now; none where it finds it all. */
export function noLongerFoundBlocks(name: string, acceptances: readonly Acceptance[]): readonly Block[] {
  if (acceptances.length === 0) return [];
  return [
    {
      kind: "section",
      lines: ["Accepted, no longer found: mended, in another row, or judged otherwise now"],
    },
    {
      kind: "table",
      name,
      columns: [
        { heading: "Rule", mostCharacters: 30 },
        { heading: "Cylinder" },
        { heading: "Filled on" },
        { heading: "Cell then", mostCharacters: 24 },
        { heading: "Reason", mostCharacters: 36 },
        { heading: "Accepted by" },
        { heading: "On" },
      ],
      rows: acceptances.map(({ rule, serial, fillDate, sheet, cell, reason, by, on }) => [
        ruleInWords(rule),
        serial,
        isoDayCell(fillDate),
        `${sheet}!${cell}`,
        reason,
        by,
        isoDayCell(on),
      ]),
      empty: "",
    },
  ];
}
