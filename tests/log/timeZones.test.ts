import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { describeAll } from "./describeFixtures";

/** Month stamps live on the first of the month: one day early would be one month early. */
const ZONES = ["America/New_York", "America/Sao_Paulo", "Asia/Shanghai", "Europe/Berlin"];

function describedIn(zone: string): { offset: number; described: unknown } {
  const script = fileURLToPath(new URL("describeFixtures.ts", import.meta.url));
  const output = execFileSync(process.execPath, ["--import", "tsx", script], {
    env: { ...process.env, TZ: zone },
    encoding: "utf8",
    maxBuffer: 1 << 26,
  });
  return JSON.parse(output) as { offset: number; described: unknown };
}

describe("reading in different time zones", () => {
  const readings = ZONES.map(describedIn);

  it("takes place in different time zones", () => {
    expect(new Set(readings.map(({ offset }) => offset)).size).toBe(4);
  });

  it.each(ZONES)("gives the same log in %s", (zone) => {
    expect(readings[ZONES.indexOf(zone)]!.described).toEqual(JSON.parse(JSON.stringify(describeAll())));
  });

  it("keeps every day and month", () => {
    const [first] = readings[0]!.described as [
      { sheets: { rows: { fields: Record<string, { value?: string }> }[] }[] },
    ];
    const values = (sheet: number, field: string) =>
      first.sheets[sheet]!.rows.slice(1).map(({ fields }) => fields[field]?.value);
    expect(values(0, "date")).toEqual([
      "2019-10-01",
      "2019-10-01",
      "2024-03-10",
      "2019-10-01",
      "2019-10-01",
      "2026-10-31",
      "2019-10-01",
      "2019-10-01",
      "2019-10-01",
      "2019-10-01",
    ]);
    expect(values(1, "hydro")).toEqual([...Array<string>(7).fill("2019-10"), "2006-09"]);
  });
});
