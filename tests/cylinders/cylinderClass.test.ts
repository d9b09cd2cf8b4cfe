import { describe, expect, it } from "vitest";
import { cylinderRules, type CylinderKind } from "../../src/cylinders/cylinderClass";
import { countryRules } from "../../src/cylinders/countryRules";
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
    ["GB", { cylinderClass: "anything at all" }, "GB"],
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
});
