import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type ShopSettings,
  NO_SETTINGS,
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
    for (const lack of [{ reason: "" }, { by: "" }, { on: "yesterday" }, { cell: "row 4" }])
      expect(understandSettings({ ...settings, accepted: [{ ...accepted[0], ...lack }] }).notice).toMatch(
        /could not be read/,
      );
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

  it("that cannot be read give a notice, and are set aside word for word when new ones are written", async () => {
    const workbook = settingsOnly({ version: 1, country: "US", units: "furlongs", sheets: [] });
    const { settings, notice } = await readShopSettings(workbook);
    expect(notice).toMatch(/could not be read/);
    expect(settings.country).toBeUndefined();
    await writeShopSettings(workbook, { ...settings, country: "US", units: "us" });
    const after = await readShopSettings(workbook);
    expect(after.notice).toBeUndefined();
    expect(after.settings.setAside).toEqual({ version: 1, country: "US", units: "furlongs", sheets: [] });
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
        if (notice !== undefined) expect({ ...settings, setAside: undefined }).toEqual(NO_SETTINGS);
      }),
    );
  });
});
