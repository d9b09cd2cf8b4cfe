import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { audit } from "../../src/audit/audit";
import { receive } from "../../src/counter/receive/receipt";
import { shopFor } from "../../src/audit/shop/shopFor";
import { countryRules } from "../../src/cylinders/countryRules";
import { evaluate } from "../../src/functions/evaluate";
import { gaugeReading } from "../../src/gas/units";
import { readSample } from "../reports/sample";
import { logOf, onDay, type TestRow } from "./sheets";

const TODAY = Temporal.PlainDate.from("2026-10-31");
const { shop } = shopFor(countryRules("US"), { asOf: "2026-10-31" });

const CLEAN: TestRow = {
  Serial: "GP1001",
  "Shop number": "C-014",
  Size: "AL80",
  "Service pressure psi": 3000,
  Hydro: onDay("2024-03-14"),
  Visual: onDay("2026-03-20"),
  "Oxygen rating": "O2 clean",
};
const FILL: TestRow = {
  Date: onDay("2026-10-02"),
  Serial: "GP1001",
  "Start psi": 500,
  "End psi": 3000,
  "Ordered mix": "EAN32",
  "Analysed O2": 31.6,
  Method: "premix",
};

const received = (asked: string, register: readonly TestRow[], fills: readonly TestRow[] = [FILL]) =>
  receive(logOf(fills, register), shop, asked, TODAY);

describe("receiving a cylinder", () => {
  it("in date and oxygen clean it may be filled, by any method", () => {
    const receipt = received("gp 1001", [CLEAN]);
    expect(receipt).toMatchObject({ verdict: "fill", found: "serial", serial: "GP1001", maxOxygen: 1 });
    expect(receipt.pureOxygen.may).toBe("yes");
    expect(receipt.good).toEqual(["Hydro good until 31 March 2029", "Visual good until 31 March 2027"]);
    expect(Math.round(gaugeReading(receipt.limit!.limitBar, "us"))).toBe(3000);
    expect(receipt.size?.waterVolumeL).toBeCloseTo(11.1, 1);
  });
  it("is found by shop number, and says so", () => {
    expect(received("c-014", [CLEAN])).toMatchObject({ found: "shop number", serial: "GP1001" });
  });
  it("says what was put in last, by analysis where there is one", () => {
    const { inside } = received("GP1001", [CLEAN]);
    expect(inside).toMatchObject({ mixBy: "analysis", date: "2026-10-02" });
    expect(inside!.mix!.oxygen).toBeCloseTo(0.316, 9);
    expect(received("GP1002", [{ ...CLEAN, Serial: "GP1002" }]).inside).toBeUndefined();
  });
  it("past hydro it is not filled, and the reason says since when", () => {
    const receipt = received("GP1001", [{ ...CLEAN, Hydro: onDay("2019-06-15") }]);
    expect(receipt.verdict).toBe("do not fill");
    expect(receipt.reasons).toMatchObject([
      { says: "Hydro of 2019-06-15 ran out on 30 June 2024.", source: expect.stringContaining("49 CFR") },
    ]);
  });
  it("condemned it is not filled, whatever its dates", () => {
    const receipt = received("GP1001", [{ ...CLEAN, Status: "condemned" }]);
    expect(receipt.verdict).toBe("do not fill");
    expect(receipt.reasons[0]!.says).toMatch(/out of use/);
  });
  it("without a hydro on record it is not known, which is neither", () => {
    const receipt = received("GP1001", [{ ...CLEAN, Hydro: null }]);
    expect(receipt.verdict).toBe("not known");
    expect(receipt.unknowns.join()).toMatch(/hydro/);
  });
  it("without a rating nothing is said of what may go in", () => {
    const receipt = received("GP1001", [{ ...CLEAN, "Oxygen rating": null }]);
    expect(receipt).toMatchObject({ verdict: "not known", maxOxygen: undefined });
    expect(receipt.pureOxygen.may).toBe("not known");
  });
  it("rated to 40 % it takes no pure oxygen", () => {
    const receipt = received("GP1001", [{ ...CLEAN, "Oxygen rating": 40 }]);
    expect(receipt).toMatchObject({ verdict: "fill", maxOxygen: 0.4, air: { may: "yes" } });
    expect(receipt.pureOxygen).toMatchObject({ may: "no" });
  });
  it("says so where it was last filled above its rating by no more than an analyser may be off", () => {
    const slightly = { ...FILL, "Ordered mix": 40, "Analysed O2": 40.4 };
    const receipt = received("GP1001", [{ ...CLEAN, "Oxygen rating": 40 }], [slightly]);
    expect(receipt.verdict).toBe("fill");
    expect(receipt.remarks.join()).toMatch(/last filled with EAN40.4, above its rating .40/);
  });
  it("not in the workbook it is not known, and a likely slip is named", () => {
    expect(received("GP1O01", [CLEAN])).toMatchObject({ verdict: "not known", found: "nothing", suggestion: "GP1001" });
    expect(received("", [CLEAN]).verdict).toBe("not known");
  }); // prettier-ignore
  it("twice in the register as two cylinders it is not known", () => {
    const receipt = received("GP1001", [CLEAN, { ...CLEAN, Size: "HP100" }]);
    expect(receipt.verdict).toBe("not known");
  });
  it("a plus on the latest hydro raises the limit of a 3AA to 110 %", () => {
    const steel = { ...CLEAN, Class: "3AA", "Service pressure psi": 2400, Hydro: "03/24+" };
    const { limit } = received("GP1001", [steel]);
    expect(limit).toMatchObject({ plus: true });
    expect(Math.round(gaugeReading(limit!.limitBar, "us"))).toBe(2640);
  });

  describe("what is inside", () => {
    const AIR_TESTS = [{ date: "2026-09-30", passed: false, source: "Compressor 1" }];
    const tested = { asOf: "2026-10-31", airTests: AIR_TESTS };
    const AIR: TestRow = { ...FILL, "Ordered mix": "air", "Analysed O2": 20.9, Method: "air", Source: "Compressor 1" };
    const WAITING: TestRow = { ...FILL, Date: onDay("2026-10-31"), "End psi": null, "Analysed O2": null };
    const both = (fills: readonly TestRow[], cylinder: TestRow = CLEAN) => {
      const log = logOf(fills, [cylinder]);
      const said = (ofAll: readonly { readonly message: string }[]) => ofAll.map(({ message }) => message);
      return {
        receipt: receive(log, shopFor(countryRules("US"), tested).shop, "GP1001", TODAY),
        recalled: audit(log, countryRules("US"), tested).recall.flatMap(({ findings }) => said(findings)),
      };
    };
    it.each([
      ["air of a compressor whose test failed", AIR, CLEAN, "empty it", /Compressor 1 failed its test.*2026/],
      ["a mix above its rating", { ...FILL, Source: "Bank" }, { ...CLEAN, "Oxygen rating": "AIR" }, "empty it", /Analysed EAN31.6 is above/],
      ["a mix that was not analysed", { ...FILL, Source: "Bank", "Analysed O2": null }, CLEAN, "analyse it", /no analysis is written down/],
    ] as const)("%s is not filled upon, in the words of the recall list", (_, fill, cylinder, first, says) => {
      const { receipt, recalled } = both([fill], cylinder);
      expect(receipt).toMatchObject({ verdict: `${first} first`, first });
      expect(receipt.wrongInside.map((reason) => reason.says)).toEqual(recalled);
      expect(recalled.join()).toMatch(says);
      expect(receipt.wrongInside[0]!.todo).toMatch(first === "empty it" ? /^Empty it/ : /^Analyse/);
    });
    it("a row that still waits to be made takes nothing of it away, and adds nothing", () => {
      expect(both([AIR, WAITING]).receipt.verdict).toBe("empty it first");
      expect(both([{ ...FILL, Source: "Bank" }, WAITING]).receipt.verdict).toBe("fill");
    });
    it("a good fill since has replaced it, as on the recall list", () => {
      const good = { ...FILL, Date: onDay("2026-10-20"), Source: "Bank" };
      const { receipt, recalled } = both([AIR, good]);
      expect(recalled).toEqual([]);
      expect(receipt).toMatchObject({ verdict: "fill", wrongInside: [], first: undefined });
    });
    it("does not hide what is wrong with the vessel, nor what is not known of it", () => {
      expect(both([AIR], { ...CLEAN, Hydro: onDay("2019-06-15") }).receipt).toMatchObject({ verdict: "do not fill", first: "empty it" });
      expect(both([AIR], { ...CLEAN, Hydro: null }).receipt).toMatchObject({ verdict: "not known", first: "empty it" });
    });
    it("whether it is of the bad air is said not to be known where the row names no source", () => {
      const { receipt } = both([{ ...AIR, Source: null }]);
      expect(receipt.remarks.join()).toMatch(/An air test failed, and whether its last fill was of that air is not known/);
    });
  }); // prettier-ignore

  it("agrees with FILLCHECK on hydro, visual, rating and method", () => {
    const dates = [onDay("2019-06-15"), onDay("2024-03-14"), null];
    for (const Hydro of dates)
      for (const Visual of dates)
        for (const rating of ["O2 clean", "40", "AIR", null])
          for (const method of ["air", "partial pressure"] as const) {
            const receipt = received("GP1001", [{ ...CLEAN, Hydro, Visual, "Oxygen rating": rating }]);
            const cell = (date: typeof Hydro) => (date === null ? null : (date as { date: string }).date);
            const [[text]] = evaluate("FILLCHECK", [
              "2026-10-31", cell(Hydro), cell(Visual), rating, "air", method, "US",
            ]) as [[string]]; // prettier-ignore
            const ours = method === "air" ? receipt.air : receipt.pureOxygen;
            const verdict =
              receipt.reasons.length > 0 || ours.may === "no"
                ? "STOP"
                : receipt.verdict === "not known" || ours.may === "not known"
                  ? "UNKNOWN"
                  : "OK";
            expect(`${method} ${rating} ${verdict}`).toBe(`${method} ${rating} ${text.split(":")[0]}`);
          }
  });
});

describe("the cylinders of the sample log at the counter", () => {
  it("hold what the recall list has against them, and the others nothing", async () => {
    const { log, settings } = await readSample();
    const { airTests, sources, house } = settings;
    const options = { airTests, sources, house, asOf: "2026-10-31" };
    const { recall } = audit(log, countryRules("US"), options);
    const against = new Map(
      recall.map(({ serial, findings }) => [
        serial,
        findings.filter(({ rule }) => !rule.startsWith("V")).map(({ message }) => message),
      ]),
    );
    expect([...against.values()].some((messages) => messages.length > 0)).toBe(true);
    const ofSample = shopFor(countryRules("US"), options).shop;
    const inOrder = ["0019700", "K21197", "K42277"];
    for (const serial of [...against.keys(), ...inOrder]) {
      const receipt = receive(log, ofSample, serial, TODAY);
      expect([serial, receipt.wrongInside.map(({ says }) => says)]).toEqual([serial, against.get(serial) ?? []]);
    }
    expect(inOrder.map((serial) => receive(log, ofSample, serial, TODAY).verdict)).toEqual(["fill", "fill", "do not fill"]);
  });
}); // prettier-ignore
