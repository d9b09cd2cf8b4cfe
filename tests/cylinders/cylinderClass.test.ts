import { describe, expect, it } from "vitest";
import { cylinderRules, type CylinderKind } from "../../src/cylinders/cylinderClass";
import { COUNTRIES, countryRules } from "../../src/cylinders/countryRules";
import { readMaterial } from "../../src/cylinders/material";
import { Refusal } from "../../src/gas/refusal";

const idOf = (country: string, kind: CylinderKind): string => cylinderRules(countryRules(country), kind).id;

describe("the class of a cylinder", () => {
  it.each([
    ["US", {}, "US-3AL"],
    ["US", { cylinderClass: "DOT-3AL" }, "US-3AL"],
    ["US", { cylinderClass: "3AL3000" }, "US-3AL"],
    ["US", { cylinderClass: "TC/3ALM207" }, "US-3AL"],
    ["US", { cylinderClass: "dot 3aa 2400+" }, "US-3AA"],
    ["US", { cylinderClass: "ICC-3A2250" }, "US-3AA"],
    ["US", { cylinderClass: "DOT/TC 3AL" }, "US-3AL"],
    ["US", { cylinderClass: "TC-DOT-3AL" }, "US-3AL"],
    ["US", { cylinderClass: " 3AA " }, "US-3AA"],
    ["US", { cylinderClass: "  ", material: "steel" }, "US-3AA"],
    ["US", { cylinderClass: "DOT-SP12479" }, "US-SP-COMP-SCUBA"],
    ["US", { cylinderClass: "UN ISO 7866" }, "US-UN-SEAMLESS"],
    ["US", { cylinderClass: "3AL", alloy: "6351-T6" }, "US-3AL-6351"],
    ["US", { cylinderClass: "E6498" }, "US-3AL-6351"],
    ["US", { cylinderClass: "DOT-3AL-6351" }, "US-3AL-6351"],
    ["US", { material: "steel" }, "US-3AA"],
    ["US", { cylinderClass: "Aluminum" }, "US-3AL"],
    ["US", { cylinderClass: "3AL/TC-3ALM" }, "US-3AL"],
    ["US", { cylinderClass: "DOT-3AA3442" }, "US-3AA"],
    ["US", { cylinderClass: "E9791" }, "US-SP-STEEL-HP"],
    ["US", { cylinderClass: "DOT-E9791-3500" }, "US-SP-STEEL-HP"],
    ["US", { cylinderClass: "SP14157" }, "US-SP-STEEL-HP"],
    ["US", { cylinderClass: "DOT-SP 13488" }, "US-SP-STEEL-HP"],
    ["US", { cylinderClass: "TC-SU5134" }, "US-SP-STEEL-HP"],
    ["US", { cylinderClass: "E55555-3500" }, "US-SP-OTHER"],
    ["US", { cylinderClass: "TC-SU9999" }, "US-SP-OTHER"],
    ["US", { cylinderClass: "DOT-SP99999", material: "carbon composite" }, "US-COMPOSITE"],
    ["US", { cylinderClass: "DOT-SP99999/3AL3000" }, "US-3AL"],
    ["US", { material: "composite" }, "US-COMPOSITE"],
    ["US", { cylinderClass: "UN ISO 9809-1" }, "US-UN-SEAMLESS"],
    ["US", { cylinderClass: "UN ISO 9809-1 / DOT-3AA3000" }, "US-3AA"],
    ["US", { cylinderClass: "EN 1964-1" }, "US-FOREIGN"],
    ["US", { cylinderClass: "UN ISO 9809-1 CE 0036" }, "US-UN-SEAMLESS"],
    ["US", { cylinderClass: "ISO 11119-2 UW" }, "US-UN-COMPOSITE"],
    ["US", { cylinderClass: "SP6498-3000" }, "US-3AL-6351"],
    ["US", { cylinderClass: "3AL3000/E6498" }, "US-3AL-6351"],
    ["GB", { cylinderClass: "anything at all" }, "GB"],
    ["GB", { cylinderClass: "EN 12245" }, "GB-COMPOSITE"],
    ["GB", { cylinderClass: "EN 1964-1" }, "GB"],
    ["GB", { material: "Kohlefaser" }, "GB-COMPOSITE"],
    ["GB", { cylinderClass: "composite" }, "GB-COMPOSITE"],
    ["DE", { cylinderClass: "ISO 11119-2" }, "DE-COMPOSITE"],
    ["FR", { material: "composite" }, "FR-COMPOSITE"],
    ["GB", { cylinderClass: "DOT-SP99999" }, "GB"],
    ["JP", { cylinderClass: "ISO 7866" }, "JP-ALUM"],
    ["FR", { cylinderClass: "tiv" }, "FR-TIV"],
    ["FR", {}, "FR-GENERAL"],
    ["JP", { material: "Aluminium" }, "JP-ALUM"],
    ["JP", { material: "not said" }, "JP-STEEL"],
    ["JP", { material: "carbon composite" }, "JP-COMP"],
    ["NZ", { alloy: "6351" }, "NZ-6351"],
    ["NZ", { cylinderClass: "3AL" }, "NZ"],
  ])("in %s, %j goes by %s", (country, kind, id) => {
    expect(idOf(country, kind)).toBe(id);
  });

  it.each(["3ZZ", "X DOT-3AL", "3AL3000 x", "DOTTY 3AL"])(
    "%s is unknown, never the usual one",
    (cylinderClass) => {
      try {
        idOf("US", { cylinderClass });
        expect.unreachable();
      } catch (thrown) {
        expect(thrown).toBeInstanceOf(Refusal);
        expect((thrown as Refusal).kind).toBe("unknown");
        expect((thrown as Refusal).message).toBe(
          `The rules of the United States name no class "${cylinderClass}": write it as stamped, such as 3AL.`,
        );
      }
    },
  );

  it.each([
    ["US", "E55555", "What permit SP55555 asks for isn't in our table."],
    ["GB", "anything at all", 'The class "anything at all" isn\'t known'],
  ])("in %s, %s is taken on trust, and says so", (country, cylinderClass, says) => {
    expect(cylinderRules(countryRules(country), { cylinderClass }).assumed).toContain(says);
    expect(cylinderRules(countryRules(country), { cylinderClass: "steel" }).assumed).toBeUndefined();
  });

  it("a composite is tested at least every five years, and has a service life unless marked NLL", () => {
    for (const { code } of COUNTRIES) {
      const rules = countryRules(code);
      const composite = cylinderRules(rules, { material: "composite" });
      expect(composite.materials, code).toContain("composite");
      expect(composite.hydro!.months, code).toBeLessThanOrEqual(60);
      expect(composite.serviceLifeMonths, code).toBe(180);
    }
    expect(
      cylinderRules(countryRules("GB"), { cylinderClass: "EN 12245 NLL" }).serviceLifeMonths,
    ).toBeUndefined();
  });

  it.each(["not steel", "steel or aluminium", "steelbird", "titanium"])("%s names no material", (text) => {
    expect(readMaterial(text)).toBeUndefined();
  });
});
