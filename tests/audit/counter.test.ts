import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { receive, type Receipt } from "../../src/counter/receive/receipt";
import { shopFor } from "../../src/audit/shop/shopFor";
import { countryRules } from "../../src/cylinders/countryRules";
import { logOf, onDay, type TestRow } from "./sheets";

/* What the counter says of a cylinder before it is filled: may it be, why not, and what to do. US rules. */

const TODAY = Temporal.PlainDate.from("2026-10-31");
const { shop } = shopFor(countryRules("US"), { asOf: "2026-10-31" });

const BARE: TestRow = {
  Serial: "GP1001",
  "Service pressure psi": 3000,
  Hydro: onDay("2024-03-14"),
  Visual: onDay("2026-03-20"),
  "Oxygen rating": "O2 clean",
};
const CYLINDER: TestRow = { ...BARE, Class: "3AL", Made: "2018/05" };
const FILL: TestRow = {
  Date: onDay("2026-10-02"),
  Serial: "GP1001",
  "Start psi": 500,
  "End psi": 3000,
  "Ordered mix": "EAN32",
  "Analysed O2": 31.6,
  Method: "premix",
};

function received(change: TestRow, fills: readonly TestRow[] = [FILL], asked = "GP1001"): Receipt {
  return receive(logOf(fills, [{ ...CYLINDER, ...change }]), shop, asked, TODAY);
}

const sentences = ({ reasons }: Receipt) => reasons.map(({ says, todo }) => `${says} ${todo}`);

describe("a cylinder that must not be filled says why, and what to do", () => {
  it.each<[string, TestRow, string]>([
    [
      "a visual that ran out",
      { Visual: onDay("2025-03-20") },
      "Visual of 2025-03-20 ran out on 31 March 2026. Send it for a visual; fill it no more before.",
    ],
    [
      "no hydro since it was made",
      { Made: "2015/06", Hydro: null },
      "Hydro: none since it was made in 2015-06; the first was due by 30 June 2020. Send it for a hydro; fill it no more before.",
    ],
    ["damage", { Status: "dropped 2026/08" }, "Heat, a fall or dents are noted, and no test since. Send it for a test."],
    [
      "a register that has it out of use",
      { Status: "condemned" },
      "The register has it out of use. Do not fill it. Where the register is wrong, correct it first.",
    ],
    ["a service life that is over", { Class: "SP 12479", Made: "2010/05" }, "Past its service life. Take it out of use."],
    [
      "a kind that is not for under water",
      { Class: "SP 10915", Made: "2020/05" },
      "Of a kind that is not for under water. Do not fill it for a dive.",
    ],
    ["a class that is not a dive shop's", { Class: "3HT", Made: "2020/05" }, "Of a class that a dive shop may not fill. Do not fill it."],
    [
      "alloy 6351",
      { Alloy: "6351", Made: "1985/02" },
      "Of alloy 6351, or of an alloy that is not proven, without an eddy-current test in date. Find out the alloy, or have it tested.",
    ],
    [
      "a thread that is not the neck's",
      { "Neck thread": "M25x2", "Valve thread": "3/4 NPSM" },
      "The valve's thread is not that of the neck. Do not put pressure on it; keep it empty until the right valve is in.",
    ],
  ])("%s", (_, change, says) => {
    const receipt = received(change);
    expect(receipt.verdict).toBe("do not fill");
    expect(sentences(receipt)).toContain(says);
    for (const { source } of receipt.reasons) expect(source).not.toBe("");
  }); // prettier-ignore

  it("a hydro in doubt that is too old by either reading", () => {
    const { shop: uk } = shopFor(countryRules("GB"), { asOf: "2026-10-31" });
    const log = logOf([FILL], [{ ...BARE, Made: "1999/03", Hydro: "06/09" }], { units: "us" });
    expect(sentences(receive(log, uk, "GP1001", TODAY)).join()).toMatch(
      /It is so by either reading of the hydro, .*Send it for a hydro/,
    );
  });

  it("both tests, where both ran out, the hydro first", () => {
    const receipt = received({ Hydro: onDay("2019-06-15"), Visual: onDay("2025-03-20") });
    expect(receipt.reasons.map(({ says }) => says.slice(0, 6))).toEqual(["Hydro ", "Visual"]);
    expect(receipt.good).toEqual([]);
  });
});

describe("what is worth a word but keeps nobody from filling", () => {
  it("a year on the shelf since the last fill, and a look inside from before (UK: 30 months)", () => {
    const { shop: uk } = shopFor(countryRules("GB"), { asOf: "2026-10-31" });
    const steel = { ...BARE, Material: "steel", Made: "2018/05", Visual: onDay("2025-08-20") };
    const at = (lastFilled: string, change: TestRow = {}) =>
      receive(logOf([{ ...FILL, Date: onDay(lastFilled) }], [{ ...steel, ...change }]), uk, "GP1001", TODAY);
    const says = "Not filled for over a year, and nobody looked inside since. Look inside.";
    expect(at("2025-10-30")).toMatchObject({ verdict: "fill", reasons: [] });
    expect(at("2025-10-30").remarks).toContain(says);
    expect(at("2025-10-31").remarks).not.toContain(says);
    expect(at("2025-10-30", { Visual: onDay("2026-01-20") }).remarks).not.toContain(says);
  });

  it("an earlier fill above its rating is told once, with the danger where it is one", () => {
    const rich = { ...FILL, "Ordered mix": 36, "Analysed O2": 45 };
    const danger = received({ "Oxygen rating": "40" }, [rich]);
    expect(danger).toMatchObject({ verdict: "empty it first", remarks: [] });
    expect(danger.wrongInside.map(({ says }) => says).join()).toMatch(/EAN45 is above/);
    const slight = received({ "Oxygen rating": "40" }, [{ ...FILL, "Ordered mix": 40, "Analysed O2": 40.5 }]);
    expect(slight).toMatchObject({ verdict: "fill", wrongInside: [] });
    expect(slight.remarks).toEqual([
      "It was last filled with EAN40.5, above its rating (40 %): analyse what is in it, and empty it if that is so.",
    ]);
  });
});

describe("what may go into it", () => {
  it("anything, where it is clean for oxygen and in date: and no more is said", () => {
    expect(received({ "O2 cleaned": onDay("2026-01-10") })).toMatchObject({
      verdict: "fill",
      reasons: [],
      unknowns: [],
      remarks: [],
      air: { may: "yes", why: "" },
      pureOxygen: { may: "yes", why: "" },
      limit: { plus: false },
    });
  });

  it("no pure oxygen, where its cleaning is too old, or nobody knows of when", () => {
    const old = received({ "O2 cleaned": onDay("2024-01-10") });
    expect(old.air.may).toBe("yes");
    expect(old.pureOxygen).toMatchObject({ may: "no", why: expect.stringMatching(/cleaning of 2024-01-10 held until/) });
    const others = [{ ...CYLINDER, "O2 cleaned": "??" }, { ...CYLINDER, Serial: "GP1002", "O2 cleaned": onDay("2026-01-10") }];
    const unknown = receive(logOf([FILL], others), shop, "GP1001", TODAY);
    expect(unknown.pureOxygen).toMatchObject({ may: "not known", why: expect.stringContaining("??") });
    expect(unknown.verdict).toBe("fill");
    const inDate = receive(logOf([FILL], others), shop, "GP1002", TODAY);
    expect(inDate).toMatchObject({ pureOxygen: { may: "yes", why: "" }, remarks: [] });
  });

  it("pure oxygen on its sticker's word, where the log has no dates of cleaning", () => {
    const sticker = "The log has no dates of oxygen cleaning: read its sticker before oxygen goes in.";
    expect(received({})).toMatchObject({ pureOxygen: { may: "yes" }, remarks: [sticker] });
    expect(received({ "Oxygen rating": "40" }).remarks).toEqual([]);
  });

  it("no pure oxygen, where it is rated for air only; air it may have", () => {
    const receipt = received({ "Oxygen rating": "air only" });
    expect(receipt.air.may).toBe("yes");
    expect(receipt.pureOxygen).toMatchObject({ may: "no", why: expect.stringMatching(/not oxygen clean/) });
    expect(receipt.maxOxygen).toBeLessThan(0.25);
  });
}); // prettier-ignore

describe("what is not known is no reason to fill", () => {
  it.each<[string, TestRow, RegExp]>([
    ["no hydro and no making on record", { Hydro: null, Made: null }, /hydro is blank/],
    ["a hydro that cannot be read, in its own words", { Hydro: "see sticker" }, /see sticker/],
    ["no visual on record, and a hydro too old to be one", { Visual: null, Hydro: onDay("2022-03-14") }, /visual is blank/],
    ["no rating", { "Oxygen rating": null }, /oxygen rating is blank/],
    ["a class that the rules do not name", { Class: "ABC-9" }, /ABC-9/],
    ["a composite of which nobody can read when it was made", { Class: "SP 12479", Made: "??" }, /manufacture|made/],
  ])("%s", (_, change, why) => {
    const receipt = received(change);
    expect(receipt.verdict).toBe("not known");
    expect(receipt.unknowns.join("\n")).toMatch(why);
    expect(new Set(receipt.unknowns).size).toBe(receipt.unknowns.length);
  }); // prettier-ignore

  it("says nothing of columns that the register does not have", () => {
    const receipt = receive(logOf([FILL], [BARE]), shop, "GP1001", TODAY);
    expect(receipt).toMatchObject({ verdict: "fill", unknowns: [] });
  });

  it("what was last put in is without a day where its row has none that can be read", () => {
    const { inside } = received({}, [{ ...FILL, Date: "yesterday?" }]);
    expect(inside).toMatchObject({ date: undefined, mixBy: "analysis" });
    expect(inside!.doubt).toMatch(/no date that can be read/);
  });
});

describe("only this cylinder's own fills count", () => {
  const suspect = { ...FILL, Serial: "GP1002", "Analysed O2": null };
  it("a fill that names no cylinder is nobody's", () => {
    const nameless = { ...FILL, Serial: null, Date: onDay("2026-10-20") };
    expect(received({}, [FILL, nameless], "").inside).toBeUndefined();
    expect(received({}, [FILL, nameless]).inside).toMatchObject({ date: "2026-10-02" });
  });

  it("what is wrong with another's last fill is not held against it", () => {
    expect(received({}, [FILL, { ...suspect, Date: onDay("2026-10-20") }])).toMatchObject({
      verdict: "fill",
      wrongInside: [],
      inside: { date: "2026-10-02" },
    });
  });

  it("of a twin set the fill is that of both", () => {
    const twins = { ...FILL, Serial: "GP1001/GP1002", Date: onDay("2026-10-20") };
    expect(received({}, [FILL, twins]).inside).toMatchObject({ date: "2026-10-20" });
  });
});
