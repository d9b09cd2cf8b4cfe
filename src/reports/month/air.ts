import { Temporal } from "temporal-polyfill";
import { dateOf, dayNumber } from "../../cylinders/calendar";
import type { Shop } from "../../audit/shop/shop";
import { dateText } from "../../words/inSentences";
import type { Block } from "../../sheet/draft/blocks";
import { LOOKS } from "../../sheet/draft/looks";
import { isoDayCell } from "../cells";
import type { Period } from "./period";

/** The air tests that the shop has entered, and room for what Brimbook keeps no record of. */
export function airBlocks({ airTests, figures }: Shop, { last, iso }: Period): readonly Block[] {
  const tests = (airTests ?? []).filter(({ date }) => dayNumber(Temporal.PlainDate.from(date)) <= last);
  const filter: Block = {
    kind: "facts",
    facts: [
      ["Filter changed on", { value: null, style: LOOKS.fillIn }],
      ["Hours since then", { value: null, style: LOOKS.fillIn }],
    ],
  };
  const months = figures.airTestMonths;
  return [
    { kind: "section", lines: ["Air"] },
    {
      kind: "table",
      name: `Air_tests_${iso}`,
      columns: [
        { heading: "Air test on" },
        { heading: "Of" },
        { heading: "Result" },
        { heading: "Next due by" },
      ],
      rows: tests.map(({ date, source, passed }) => [
        isoDayCell(date),
        source ?? "all air",
        passed ? "passed" : { value: "failed", style: LOOKS.stop },
        isoDayCell(Temporal.PlainDate.from(date).add({ months }).toString()),
      ]),
      empty: `No air test up to ${dateText(dateOf(last))} is entered under "Rules & shop": keep the paper with this report.`,
    },
    filter,
  ];
}
