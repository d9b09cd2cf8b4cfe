import { describe, expect, it } from "vitest";
import { planFill, type FillOrder } from "../../src/blending/planFill";
import { riseOf, stopOf } from "../../src/blending/planReadings";
import { idealGas } from "../../src/gas/equationOfState";
import { mixture, OXYGEN } from "../../src/gas/mixture";
import { kelvin } from "../../src/gas/units";
import { bar, ordered, psi } from "./orders";

/** The plan as a blender reads it: which gas, up to which gauge reading. */
const stops = (order: FillOrder, reading = bar) =>
  planFill(order).steps.map(({ step, stopBar }) => [step, Number(reading(stopBar).toFixed(2))]);

describe("from a vented cylinder", () => {
  const ean32 = (more: Partial<FillOrder> = {}) =>
    ordered(0, "air", 3000, 32, { temperatureK: kelvin(70, "us"), ...more }, "us");

  it("EAN32 to 3000 psi: oxygen stops at 404.96 psi, ideal 421.3", () => {
    expect(stops(ean32(), psi)).toEqual([
      ["oxygen", 404.96],
      ["top", 3000],
    ]);
    expect(stops(ean32({ equation: idealGas }), psi)).toEqual([
      ["oxygen", 421.29],
      ["top", 3000],
    ]);
  });

  it("18/45 to 232 bar: helium to 96.97, oxygen to 116.55", () => {
    expect(stops(ordered(0, "air", 232, "18/45"))).toEqual([
      ["helium", 96.97],
      ["oxygen", 116.55],
      ["top", 232],
    ]);
  });

  it("oxygen first puts in the same amounts, with other stops", () => {
    const first = planFill(ordered(0, "air", 232, "18/45", { order: "oxygen first" }));
    const last = planFill(ordered(0, "air", 232, "18/45"));
    expect(first.steps.map(({ step }) => step)).toEqual(["oxygen", "helium", "top"]);
    const amount = (plan: typeof first, gas: string) =>
      plan.steps.find(({ step }) => step === gas)!.molPerLitre;
    for (const gas of ["oxygen", "helium", "top"])
      expect(amount(first, gas)).toBeCloseTo(amount(last, gas), 12);
    expect(first.steps[1]!.stopBar).toBeCloseTo(last.steps[1]!.stopBar, 9);
  });

  it("the last stop is the end pressure to the last digit", () => {
    expect(planFill(ean32()).steps.at(-1)!.stopBar).toBe(ean32().endPressureBar);
  });
});

describe("the top gas alone", () => {
  it.each([
    ["air for air", ordered(0, "air", 200, "air")],
    ["air for EAN21", ordered(0, "air", 200, "EAN21")],
    ["air on residual EAN32, ordered as it comes out", ordered(80, 32, 200, 25.6)],
    ["banked EAN32 for EAN32, vented", ordered(0, "air", 200, 32, { topMix: mixture(0.3205) })],
  ])("%s: no token puff of oxygen", (_name, order) => {
    const plan = planFill(order);
    expect(plan.topAlone).toBe(true);
    expect(plan.steps.map(({ step }) => step)).toEqual(["top"]);
    expect(Math.abs(plan.result.mix.oxygen - order.endMix.oxygen)).toBeLessThan(0.001);
  });

  it("0.11 per cent off, it takes oxygen", () => {
    expect(stops(ordered(0, "air", 200, 21.07)).map(([step]) => step)).toEqual(["oxygen", "top"]);
  });

  it("helium off by 0.2 is not near enough: an atmosphere of trimix spoils air", () => {
    expect(() => planFill(ordered(0, "18/45", 200, "air"))).toThrow(
      /air cannot be reached: at 0 the cylinder still/,
    );
  });
});

describe("a full cylinder", () => {
  it("that holds the order needs no step", () => {
    expect(planFill(ordered(200, 32, 200, 32)).steps).toEqual([]);
  });
  it("above the end pressure only drains, when it holds the order", () => {
    expect(stops(ordered(210, 32, 200, 32))).toEqual([["drain", 200]]);
    expect(stops(ordered(210, "31.95%", 200, 32))).toEqual([["drain", 200]]);
  });
  it("above the end pressure drains as far as the order wants", () => {
    const [drain, oxygen] = planFill(ordered(210, 32, 200, 50)).steps;
    expect([drain!.step, oxygen!.step]).toEqual(["drain", "oxygen"]);
    expect(drain!.molPerLitre).toBeLessThan(0);
  });
});

describe("draining", () => {
  it("stops at the highest reading from which nothing must be taken out: EAN36 leaned to EAN28 with air alone", () => {
    const plan = planFill(ordered(100, 36, 200, 28));
    expect(plan.steps.map(({ step }) => step)).toEqual(["drain", "top"]);
    expect(bar(plan.steps[0]!.stopBar)).toBeCloseTo(89.49, 2);
    expect(plan.result.mix.oxygen).toBeCloseTo(0.28, 9);
  });

  it("residual helium above the order drains until the rest is what is wanted: no helium is added", () => {
    const plan = planFill(ordered(120, "18/45", 200, "21/20"));
    expect(plan.steps.map(({ step }) => step)).toEqual(["drain", "oxygen", "top"]);
    expect(plan.result.mix.helium).toBeCloseTo(0.2, 9);
  });

  it("an order leaner than any residue drains to 0, where that comes within 0.1", () => {
    const plan = planFill(ordered(100, 32, 200, "air"));
    expect(plan.steps.map(({ step, stopBar }) => [step, bar(stopBar)])).toEqual([
      ["drain", 0],
      ["top", 200],
    ]);
    expect(plan.result.mix.oxygen).toBeCloseTo(0.2101, 4);
  });

  it("is not asked for when adding alone does it", () => {
    expect(stops(ordered(50, "18/45", 232, "21/35")).map(([step]) => step)).not.toContain("drain");
  });
});

describe("other gases than pure oxygen and air", () => {
  it.each([0.93, 0.995])("a supply of %s takes more of it", (oxygen) => {
    const pure = planFill(ordered(0, "air", 200, 32));
    const supply = planFill(ordered(0, "air", 200, 32, { oxygenSupply: mixture(oxygen) }));
    expect(supply.steps[0]!.molPerLitre).toBeGreaterThan(pure.steps[0]!.molPerLitre);
    expect(supply.result.mix.oxygen).toBeCloseTo(0.32, 12);
  });

  it("topping with banked EAN32 saves oxygen", () => {
    const withAir = planFill(ordered(50, "18/45", 232, "21/35"));
    const withBank = planFill(ordered(50, "18/45", 232, "21/35", { topMix: mixture(0.32) }));
    const oxygen = (plan: typeof withAir) => plan.steps.find(({ step }) => step === "oxygen")!.molPerLitre;
    expect(oxygen(withBank)).toBeLessThan(oxygen(withAir) / 10);
  });

  it("heliox on vented oxygen", () => {
    const plan = planFill(ordered(0, "oxygen", 200, "heliox 21"));
    expect(plan.steps.map(({ step }) => step)).toEqual(["helium", "oxygen"]);
    expect(plan.result.mix).toEqual({ oxygen: 0.21, helium: 0.79 });
  });

  it("hypoxic trimix", () => {
    const plan = planFill(ordered(0, "air", 200, "10/70"));
    expect(plan.result.mix.oxygen).toBeCloseTo(0.1, 12);
    expect(plan.result.mix.helium).toBeCloseTo(0.7, 12);
  });

  describe("where two gases could give the same, as much as possible is top gas", () => {
    it.each([
      ["oxygen on top", OXYGEN, ["helium", "top"]],
      ["helium on top", mixture(0, 1), ["oxygen", "top"]],
      ["heliox 10 on top: its helium is all the helium", mixture(0.1, 0.9), ["oxygen", "top"]],
      ["heliox 50 on top: its oxygen is all the oxygen", mixture(0.5, 0.5), ["helium", "top"]],
    ])("%s", (_name, topMix, steps) => {
      const plan = planFill(ordered(0, "heliox 21", 200, "heliox 21", { topMix, oxygenSupply: OXYGEN }));
      expect(plan.steps.map(({ step }) => step)).toEqual(steps);
    });
    it("and the order still comes out where the top gas only drains what it cannot match", () => {
      const plan = planFill(ordered(150, "air", 200, 60, { topMix: OXYGEN }));
      expect(plan.steps.map(({ step }) => step)).toEqual(["drain", "top"]);
      expect(plan.steps[1]!.mixAfter.oxygen).toBeCloseTo(0.6, 9);
    });
  });
});

describe("what cannot be reached is refused with the cause and the best there is", () => {
  it.each<[string, FillOrder, RegExp]>([
    [
      "pure oxygen on vented air",
      ordered(0, "air", 100, "oxygen"),
      /at 0 the cylinder still holds an atmosphere of air.*99\.2\d %/,
    ],
    ["the same, ideal", ordered(0, "air", 100, "oxygen", { equation: idealGas }), /99\.20 %/],
    [
      "nitrox after trimix",
      ordered(100, "18/45", 200, 32),
      /even drained to 0.*TX 18\/45.*32\.00 % oxygen with 0\.24 % helium/,
    ],
    [
      "more than the supply has",
      ordered(0, "air", 200, 99, { oxygenSupply: mixture(0.93) }),
      /supply \(EAN93\) is not rich enough.*Use a richer supply/,
    ],
    [
      "leaner than the top gas",
      ordered(0, "air", 200, 28, { topMix: mixture(0.32) }),
      /EAN32 on top is richer in oxygen than ordered.*leaner gas on top/,
    ],
    [
      "less helium than the top gas",
      ordered(0, "air", 200, "25/10", { topMix: mixture(0.18, 0.45) }),
      /TX 18\/45 on top/,
    ],
    ["heliox on vented air", ordered(0, "air", 200, "heliox 21"), /atmosphere of air/],
    [
      "no nitrogen to be had",
      ordered(0, "air", 200, 50, { topMix: OXYGEN }),
      /too little nitrogen.*Top with air/,
    ],
  ])("%s", (_name, order, sentence) => expect(() => planFill(order)).toThrow(sentence));

  it("and the best can be ordered", () => {
    expect(planFill(ordered(0, "air", 200, 99.62)).result.mix.oxygen).toBeCloseTo(0.9962, 12);
    expect(planFill(ordered(100, "18/45", 200, "32/0.24")).result.mix.helium).toBeCloseTo(0.0024, 12);
  });

  it.each([
    ["end pressure 0", ordered(100, "air", 0, 32), /end pressure is blank/],
    ["beyond any cylinder", ordered(0, "air", 500, 32), /above 450 bar/],
    ["too hot", ordered(0, "air", 200, 32, { temperatureK: 350 }), /outside -20 to 70/],
    [
      "helium in the oxygen",
      ordered(0, "air", 200, 32, { oxygenSupply: mixture(0.5, 0.5) }),
      /supply cannot hold helium/,
    ],
    [
      "no oxygen in the oxygen",
      ordered(0, "air", 200, 32, { oxygenSupply: mixture(0) }),
      /supply holds no oxygen/,
    ],
  ])("%s", (_name, order, sentence) => expect(() => planFill(order)).toThrow(sentence));
});

describe("readings of a plan", () => {
  it("a step not in the plan stops where the gauge stands anyway", () => {
    const order = ordered(50, 32, 200, 36);
    const plan = planFill(order);
    expect(stopOf(plan, order, "drain")).toBe(order.startPressureBar);
    expect(stopOf(plan, order, "helium")).toBe(order.startPressureBar);
    expect(stopOf(plan, order, "oxygen")).toBe(plan.steps[0]!.stopBar);
    expect(stopOf(plan, order, "top")).toBe(order.endPressureBar);
  });

  it("in the order in which the gases go in", () => {
    const order = ordered(0, "air", 232, "18/45", { order: "oxygen first" });
    const plan = planFill(order);
    expect(stopOf(plan, order, "oxygen")).toBeLessThan(stopOf(plan, order, "helium"));
    const helium = {
      ...order,
      endMix: mixture(0.1, 0.9),
      startMix: mixture(0, 1),
      topMix: mixture(0.2, 0.8),
    };
    expect(stopOf(planFill(helium), helium, "oxygen")).toBeLessThanOrEqual(
      stopOf(planFill(helium), helium, "helium"),
    );
  });

  it("a full plan of nothing stops at the start", () => {
    const order = ordered(200, 32, 200, 32);
    expect(stopOf(planFill(order), order, "top")).toBe(order.startPressureBar);
  });

  it("the rise of each gas adds up to the whole", () => {
    const order = ordered(30, "air", 232, "18/45");
    const plan = planFill(order);
    const rise = (["helium", "oxygen", "top"] as const).map((gas) => riseOf(plan, order, gas));
    expect(rise.reduce((sum, one) => sum + one)).toBeCloseTo(202, 9);
  });

  it("a gas not in the plan adds 0", () => {
    const order = ordered(0, "air", 200, 32);
    expect(riseOf(planFill(order), order, "helium")).toBe(0);
  });

  it("a plan that drains has no rise to give", () => {
    const order = ordered(100, 36, 200, 28);
    expect(() => riseOf(planFill(order), order, "top")).toThrow(/Drain to 89\.5 bar \(1298 psi\) first/);
  });
});
