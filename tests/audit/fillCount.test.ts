import { Temporal } from "temporal-polyfill";
import { expect, it } from "vitest";
import { auditOf, onDay } from "./sheets";

it("V04: an aircraft cylinder after 4,380 fills, however young it is and whichever way the log runs", () => {
  // 49 CFR 180.205: a 3HT ends after 24 years or 4,380 fills; one each day from 2014 on, the 4,381st on the last row.
  const first = Temporal.PlainDate.from("2014-11-20");
  const rows = Array.from({ length: 4381 }, (_, at) => ({
    Date: onDay(first.add({ days: at }).toString()),
    Serial: "HT1",
    Class: "3HT",
    Made: "2013/06",
    "End psi": 1850,
  }));
  for (const [log, row] of [
    [rows, 4381],
    [rows.toReversed(), 1],
  ] as const) {
    const found = auditOf(log).findings.filter(({ rule }) => rule === "V04");
    expect(found.map(({ severity, message, cell }) => [severity, cell.row, message])).toEqual([
      ["stop", row, "This was its fill 4381 in the log; it may have 4380 in its life."],
    ]);
  }
  expect(auditOf(rows.slice(1)).findings.filter(({ rule }) => rule === "V04")).toEqual([]);
});
