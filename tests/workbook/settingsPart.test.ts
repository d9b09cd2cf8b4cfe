import fc from "fast-check";
import { expect, test } from "vitest";
import { readSettingsPart, settingsPart } from "../../src/workbook/settingsPart";

test("any settings come back as they were written, and nothing but plain ASCII is written", () => {
  const anything = fc.jsonValue({ stringUnit: "binary" });
  fc.assert(
    fc.property(fc.dictionary(fc.stringMatching(/^[a-z][a-z .<>"'&-]*$/), anything), (settings) => {
      const part = settingsPart(new Map(Object.entries(settings)));
      expect(part).toMatch(/^[\x20-\x7e]*$/);
      const stored = JSON.parse(JSON.stringify(settings)) as object;
      expect(Object.fromEntries(readSettingsPart(part))).toEqual(stored);
    }),
  );
});

test("another program may have written the same part with a prefix, a declaration and CDATA", () => {
  const part =
    '<?xml version="1.0" encoding="utf-8"?>\r\n<b:settings xmlns:b="urn:brimbook:settings">' +
    '<b:setting key=\'brimbook\'><![CDATA[{"country":"US"}]]></b:setting></b:settings>';
  expect(readSettingsPart(part)).toEqual(new Map([["brimbook", { country: "US" }]]));
});

test("what is stored but is not JSON comes as it stands, to be set aside and not lost", () => {
  const part =
    '<settings xmlns="urn:brimbook:settings"><setting key="brimbook">{"country"</setting></settings>';
  expect(readSettingsPart(part).get("brimbook")).toBe('{"country"');
});

test.each(["", "junk <", "<a/>", '<setting key="brimbook">1</setting>', '<settings xmlns="urn:other"/>'])(
  "what is not ours is no setting: %s",
  (part) => {
    expect(readSettingsPart(part)).toEqual(new Map());
  },
);

test.each([
  ["deep", "[".repeat(200_000) + "]".repeat(200_000)],
  ["long", JSON.stringify({ version: 1, country: "U".repeat(5_000_001) })],
])("settings that are too %s come as text, and can be written again", (_, json) => {
  const part = `<settings xmlns="urn:brimbook:settings"><setting key="brimbook">${json.replaceAll('"', "&quot;")}</setting></settings>`;
  const settings = readSettingsPart(part);
  expect(settings.get("brimbook") === json).toBe(true);
  expect(readSettingsPart(settingsPart(settings)).get("brimbook") === json).toBe(true);
});

test("brackets inside texts do not count as depth", () => {
  const value = { text: `${"[".repeat(100)}\\"${"{".repeat(100)}` };
  expect(readSettingsPart(settingsPart(new Map([["brimbook", value]]))).get("brimbook")).toEqual(value);
});
