import { Temporal } from "temporal-polyfill";
import type { LogContext } from "../../src/log/context";
import { describeLog } from "../../src/log/describeLog";
import { readLog } from "../../src/log/readLog";
import { sheetFrom, sheetOf, type FixtureSheet } from "./sheets";
import club1904 from "./fixtures/hand-club-1904.json" with { type: "json" };
import germanFlat from "./fixtures/hand-german-flat.json" with { type: "json" };
import twoRowUs from "./fixtures/hand-two-row-us.json" with { type: "json" };

/** Every kind of date and stamp, and the hand-written logs, read and described: for comparing time zones. */
const DATES = [
  { v: 43739, f: "m/d/yyyy" },
  { v: 43739.9999, f: "m/d/yyyy h:mm" },
  { v: 45361, f: "m/d/yyyy" },
  "2019-10-01",
  "2019-10-01T00:00:00Z",
  "10/31/2026",
  "1 Oct 2019",
  "Oct 1, 2019 11:59 pm",
  43739,
  20191001,
];
const STAMPS = [
  "10/19",
  "Oct-19",
  "2019-10",
  "2019/10",
  "10-2019",
  { v: 43739, f: "mmm-yy" },
  43739,
  "9 A1 32 06",
];

export function describeAll(): unknown {
  const asOf = Temporal.PlainDate.from("2026-10-31");
  const fills = sheetOf([["Date", "Serial", "Method"], ...DATES.map((date) => [date, "A10001", "air"])]);
  const stamps = sheetOf([["Serial", "Hydro"], ...STAMPS.map((stamp) => ["A10001", stamp])], {
    name: "Register",
  });
  const logs = [twoRowUs, germanFlat, club1904] as unknown as {
    context: Record<string, string>;
    sheets: FixtureSheet[];
  }[];
  return [
    describeLog(readLog([fills, stamps], { asOf, dateOrder: "month first", stampOrder: "month first" })),
    ...logs.map(({ context, sheets }) =>
      describeLog(
        readLog(sheets.map(sheetFrom), {
          ...context,
          asOf: Temporal.PlainDate.from(context["asOf"]!),
        } as LogContext),
      ),
    ),
  ];
}

if (process.argv[1]?.endsWith("describeFixtures.ts")) {
  const offset = new Date(2026, 9, 31).getTimezoneOffset();
  process.stdout.write(JSON.stringify({ offset, described: describeAll() }));
}
