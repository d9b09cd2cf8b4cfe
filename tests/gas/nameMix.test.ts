import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AIR, mixture } from "../../src/gas/mixture";
import { nameMix } from "../../src/gas/nameMix";
import { readMix } from "../../src/gas/readMix";

describe("the one text for a mix", () => {
  it.each([
    [AIR.oxygen, 0, "air"],
    [0.209, 0, "air"],
    [0.21, 0, "air"],
    [0.208, 0, "EAN20.8"],
    [0.211, 0, "EAN21.1"],
    [0.32, 0, "EAN32"],
    [0.3197, 0, "EAN32"],
    [0.318, 0, "EAN31.8"],
    [0.18, 0.45, "TX 18/45"],
    [0.195, 0.225, "TX 19.5/22.5"],
    [0.21, 0.79, "heliox 21"],
    [0.2095, 0.001, "TX 20.9/0.1"],
    [1, 0, "oxygen"],
    [0, 1, "helium"],
    [0, 0, "nitrogen"],
  ])("%s oxygen, %s helium is %s", (oxygen, helium, name) => {
    expect(nameMix({ oxygen, helium })).toBe(name);
  });

  it("reads back as the mix, to the tenth it shows", () => {
    const breathable = fc
      .tuple(fc.integer({ min: 50, max: 1000 }), fc.integer({ min: 0, max: 1000 }))
      .filter(([oxygen, helium]) => oxygen + helium <= 1000)
      .map(([oxygen, helium]) => mixture(oxygen / 1000, helium / 1000));
    fc.assert(
      fc.property(breathable, (mix) => {
        const back = readMix(nameMix(mix));
        expect(Math.abs(back.oxygen - mix.oxygen)).toBeLessThan(0.00051);
        expect(Math.abs(back.helium - mix.helium)).toBeLessThan(0.00051);
      }),
    );
  });
});
