import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type ShopSettings,
  readShopSettings,
  understandSettings,
  writeShopSettings,
} from "../../src/workbook/settings";
import type { Workbook } from "../../src/workbook/workbook";

/** A workbook that keeps settings as JSON text, as files and Excel do. */
function settingsOnly(stored: unknown = null) {
  const kept = new Map<string, string>([["brimbook", JSON.stringify(stored)]]);
  return {
    readSetting: (key: string) => Promise.resolve(JSON.parse(kept.get(key) ?? "null") as unknown),
    writeSetting: (key: string, value: unknown) => Promise.resolve(void kept.set(key, JSON.stringify(value))),
  } as unknown as Workbook;
}

describe("settings kept in the workbook", () => {
  it("assumes neither country nor units where nothing is stored", async () => {
    const { settings, notice } = await readShopSettings(settingsOnly());
    expect(settings).toEqual({ version: 1, sheets: [] });
    expect(notice).toBeUndefined();
  });

  it("come back as they were written", async () => {
    const workbook = settingsOnly();
    const settings: ShopSettings = {
      version: 1,
      country: "US",
      units: "us",
      sheets: [
        {
          sheet: "October",
          use: true,
          columns: [
            { heading: "Out", nth: 1, field: "endPressure", answers: { unit: "psi" } },
            { heading: "Locker", nth: 0, field: null, answers: {} },
          ],
        },
      ],
    };
    await writeShopSettings(workbook, settings);
    expect(await readShopSettings(workbook)).toEqual({ settings });
  });

  it("keep accepted findings with reason, name and day, and take nothing for one that lacks them", async () => {
    const workbook = settingsOnly();
    const accepted = [
      {
        rule: "V01",
        serial: "GP1002",
        fillDate: "",
        sheet: "Cylinders",
        cell: "C4",
        evidence: "a1",
        reason: "Certificate seen",
        by: "R.",
        on: "2026-10-31",
      },
    ];
    const settings: ShopSettings = { version: 1, sheets: [], accepted };
    await writeShopSettings(workbook, settings);
    expect(await readShopSettings(workbook)).toEqual({ settings });
    for (const lack of [{ reason: "" }, { by: "" }, { on: "yesterday" }, { cell: "row 4" }]) {
      const faulty = { ...accepted[0], ...lack };
      const reading = understandSettings({ ...settings, accepted: [...accepted, faulty] });
      expect(reading.notice).toMatch(/could not be read: 1 of 2 accepted findings\./);
      expect(reading.settings.accepted).toEqual(accepted);
      expect(reading.settings.setAside).toEqual({ accepted: [faulty] });
    }
  });

  it("keep what a later Brimbook adds of its own", async () => {
    const workbook = settingsOnly({ version: 1, country: "GB", sheets: [], novelty: [{ rule: "V06" }] });
    const { settings } = await readShopSettings(workbook);
    await writeShopSettings(workbook, { ...settings, units: "metric" });
    expect((await readShopSettings(workbook)).settings).toMatchObject({
      units: "metric",
      novelty: [{ rule: "V06" }],
    });
  });

  it("that can be read in part are used in part, say which part is not, and lose nothing by being written", async () => {
    const stored = {
      version: 1,
      country: "US",
      units: "furlongs",
      sheets: [{ sheet: "October" }, { sheet: 7 }, null],
      house: { hydroMonths: { least: 60 } },
      airTests: "none",
      novelty: { of: "a later one" },
      setAside: { units: "leagues" },
    };
    const workbook = settingsOnly(stored);
    const { settings, notice } = await readShopSettings(workbook);
    expect(notice).toBe(
      "Some settings in this workbook could not be read: units, 2 of 3 choices of sheets and columns, " +
        "house figures, air tests. Enter them again. The old settings are kept in the workbook.",
    );
    expect(settings).toMatchObject({
      country: "US",
      sheets: [{ sheet: "October" }],
      novelty: stored.novelty,
    });
    expect(settings.units).toBeUndefined();
    await writeShopSettings(workbook, { ...settings, units: "us" });
    const after = await readShopSettings(workbook);
    expect(after.notice).toBeUndefined();
    expect(after.settings.setAside).toEqual({
      units: "furlongs",
      sheets: [{ sheet: 7 }, null],
      house: stored.house,
      airTests: "none",
      setAside: { units: "leagues" },
    });
  });

  it.each([
    ["a list", [1, 2]],
    ["a number", 7],
    ["no version", { country: "US" }],
    ["text", "US"],
  ])("that are %s give a notice, and are set aside word for word", async (_, stored) => {
    const workbook = settingsOnly(stored);
    const { settings, notice } = await readShopSettings(workbook);
    expect(notice).toMatch(/could not be read/);
    await writeShopSettings(workbook, { ...settings, country: "US" });
    const after = await readShopSettings(workbook);
    expect(after).toEqual({ settings: { version: 1, country: "US", sheets: [], setAside: stored } });
  });

  it("take nothing from a prototype that a file brings along", () => {
    const text = `{"version":1,"sheets":[],"__proto__":{"country":"US","accepted":[]},"house":{"__proto__":{"hydroMonths":600}}}`;
    const { settings } = understandSettings(text);
    expect(settings.country).toBeUndefined();
    expect(settings.accepted).toBeUndefined();
    expect(settings.house?.["hydroMonths"]).toBeUndefined();
    expect(({} as { country?: string }).country).toBeUndefined();
  });

  it("of any size end with the limit in the sentence", () => {
    const { settings, notice } = understandSettings(`{"version":1,"country":"${"U".repeat(5_000_000)}"}`);
    expect(notice).toMatch(/over the limit of 5 million characters/);
    expect(settings.country).toBeUndefined();
  });

  it("of a newer version are named as such", () => {
    expect(understandSettings({ version: 2, shop: {} }).notice).toMatch(/newer Brimbook/);
  });

  it("are read from JSON text as well as from a document", () => {
    const text = '{"version":1,"country":"US","units":"us","sheets":[]}';
    expect(understandSettings(text).settings.country).toBe("US");
    expect(understandSettings("{broken").notice).toMatch(/could not be read/);
  });

  it("never throw and never pick a country, whatever is stored", () => {
    fc.assert(
      fc.property(fc.anything(), (stored) => {
        const { settings, notice } = understandSettings(stored);
        expect(settings.version).toBe(1);
        if (notice !== undefined) expect(settings.setAside).toBeDefined();
        const { country } = (stored ?? {}) as { country?: unknown };
        expect(settings.country).toBe(
          typeof country === "string" && notice === undefined ? country : undefined,
        );
      }),
    );
  });
});
