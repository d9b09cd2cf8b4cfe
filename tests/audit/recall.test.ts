import { Temporal } from "temporal-polyfill";
import { beforeAll, describe, expect, test } from "vitest";
import { audit } from "../../src/audit/audit";
import type { AuditResult } from "../../src/audit/judge/finding";
import { notToFillNext } from "../../src/audit/lists/recall";
import { readLog } from "../../src/log/readLog";
import { sheetOf, type FixtureCell } from "../log/sheets";
import { readSample, US } from "../reports/sample";

describe("the recall list of the sample log", () => {
  let result: AuditResult;
  beforeAll(async () => {
    const { log, settings } = await readSample();
    const { airTests, sources } = settings;
    result = audit(log, US, { airTests, sources, asOf: "2026-10-31" });
  });

  test("holds against each cylinder only what was found of that cylinder", () => {
    for (const { serial, findings } of [...result.recall, ...result.doNotFill])
      for (const finding of findings) expect(finding.serial).toBe(serial);
  });

  test("names no cylinder that nothing was found of, and each only once", () => {
    const found = new Set(result.findings.map(({ serial }) => serial));
    const recalled = result.recall.map(({ serial }) => serial);
    expect(recalled.filter((serial) => !found.has(serial))).toEqual([]);
    expect(new Set(recalled).size).toBe(recalled.length);
  });
});

describe("cylinders that the log knows by a shop number, or not at all", () => {
  const HEADINGS = [
    "Date",
    "Bottle no.",
    "Start psi",
    "End psi",
    "Mix",
    "Method",
    "Hydro",
    "Visual",
    "O2 rating",
  ];
  const fill = (day: string, number: string, hydro: string) =>
    [day, number, 500, 3000, "EAN32", "premix", hydro, "2026-03", "40"]; // prettier-ignore
  const recalled = (...rows: readonly (readonly FixtureCell[])[]) =>
    audit(readLog([sheetOf([HEADINGS, ...rows])], { asOf: Temporal.PlainDate.from("2026-10-31") }), US, {
      asOf: "2026-10-31",
    });

  test("are on the list, by their number, and a later fill of that number takes none off it", () => {
    const { recall, doNotFill, findings } = recalled(
      fill("2026-10-03", "12", "2019-06"),
      fill("2026-10-04", "12", "2024-06"),
      fill("2026-10-05", "", "2019-06"),
    );
    expect(recall.map(({ serial, fillDate }) => `${serial} ${fillDate}`)).toEqual([
      "no serial 2026-10-05",
      "12 2026-10-03",
    ]);
    const noLists = { asOf: "2026-10-31", outOfDate: [], dueWithin: [], notKnown: [] };
    expect(notToFillNext({ doNotFill }, noLists).map(({ serial, reasons }) => [serial, ...reasons])).toEqual([
      ["no serial", "Hydro 2019-06 was due by 30 June 2024; filled 5 October 2026."],
      ["12", "Hydro 2019-06 was due by 30 June 2024; filled 3 October 2026."],
    ]);
    expect(findings.filter(({ rule }) => rule === "V01").map(({ serial }) => serial)).toEqual(["12", ""]);
  });
});
