import { beforeAll, describe, expect, test } from "vitest";
import { audit } from "../../src/audit/audit";
import type { AuditResult } from "../../src/audit/finding";
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
