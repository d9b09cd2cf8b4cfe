import { describe, expect, it } from "vitest";
import { auditOf, FULL, SHOP, without, type TestRow } from "./sheets";

/* What findings about the gas say, word for word: the person who reads them was not there. */

const LAST_TEST = { ...SHOP, airTests: [{ date: "2025-01-01", passed: true }] };
const TRIMIX: TestRow = { "Ordered mix": "21/35", "Analysed O2 %": 21, "Analysed He %": 35, "MOD (ft)": 180 };

interface Setting {
  readonly country?: string;
  readonly options?: typeof SHOP;
  readonly row?: TestRow;
}

function said(rule: string, change: TestRow, { country = "US", options = SHOP, row = FULL }: Setting = {}) {
  const { findings } = auditOf(
    [
      { ...row, ...change },
      { ...row, Serial: "ZZ9999" },
    ],
    [],
    country,
    options,
  );
  const found = findings.find((finding) => finding.rule === rule && finding.cell.row === 1);
  return found && `${found.severity}, ${found.basis}: ${found.message} ${found.todo}`;
}

describe("a finding about the gas says", () => {
  it.each<[string, TestRow, Setting, string]>([
    [
      "G01",
      { "Analysed O2 %": null },
      {},
      "stop, practice: EAN32 was handed over and no analysis is written down. Call the cylinder back and analyse it before anybody breathes it.",
    ],
    [
      "G02",
      { "MOD (m)": 45 },
      { country: "GB", row: without(FULL, "MOD (ft)") },
      "stop, practice: The label says 45 m, 12 m too deep: analysed EAN32 ends at 33 m (ppO2 1.4); at 45 m it has 1.76. Call the diver at once, and put a right label on the cylinder.",
    ],
    [
      "G02",
      { "MOD (ft)": 130, "Analysed O2 %": null },
      {},
      "stop, practice: The label says 130 ft, 19 ft too deep: EAN32 ends at 111 ft (ppO2 1.4); at 130 ft it has 1.58. Call the diver at once, and put a right label on the cylinder.",
    ],
    [
      "G03",
      { "Analysed O2 %": 36.2 },
      {},
      "stop, practice: Ordered EAN32, analysed EAN36.2: 4.2 points of oxygen off. Do not hand it over; empty it and blend again. If it is out, call the diver.",
    ],
    [
      "G03",
      { ...TRIMIX, "Analysed O2 %": 19, "Analysed He %": 29.5 },
      {},
      "stop, practice: Ordered TX 21/35, analysed TX 19/29.5: 5.5 points of helium off. Do not hand it over; empty it and blend again. If it is out, call the diver.",
    ],
    [
      "G05",
      { ...TRIMIX, Certification: null, "Ordered mix": "10/70", "Analysed O2 %": 10, "Analysed He %": 70 },
      {},
      "stop, practice: TX 10/70, which nobody can breathe at the surface, was handed over with no certification on file. Ask the diver for the card before the next such fill, and write its number down.",
    ],
    [
      "G05",
      { Certification: null, "Ordered mix": "EAN80", "Analysed O2 %": 80 },
      {},
      "breach, practice: EAN80 was handed over with no certification on file. Ask the diver for the card before the next such fill, and write its number down.",
    ],
    [
      "G09",
      { Signature: null },
      {},
      "breach, practice: No signature shows that the diver knew the mix. Have the diver analyse and sign before the cylinder leaves.",
    ],
    [
      "G09",
      { "Analysed by": null },
      {},
      "breach, practice: Nobody is named who analysed the mix. Have whoever analyses write their name or initials.",
    ],
    [
      "G13",
      { "Planned depth (ft)": 140 },
      {},
      "stop, practice: At the depth planned EAN32 has a ppO2 of 1.69, above 1.6. Call the diver before the dive: a leaner mix, or a shallower plan.",
    ],
    [
      "G13",
      { "Planned depth (ft)": 140 },
      { country: "FR" },
      "stop, law: At the depth planned EAN32 has a ppO2 of 1.69, above 1.6. Call the diver before the dive: a leaner mix, or a shallower plan.",
    ],
    [
      "G13",
      { "Planned depth (ft)": 120 },
      { country: "FR" },
      "breach, practice: At the depth planned EAN32 has a ppO2 of 1.49, above 1.4. Call the diver before the dive: a leaner mix, or a shallower plan.",
    ],
    [
      "A01",
      {},
      { options: LAST_TEST },
      "breach, law: The last air test was on 1 January 2025: the next was due by 1 July 2025. Have the air tested, and enter the result under Rules & shop in the pane.",
    ],
    [
      "A01",
      {},
      { country: "GB", options: LAST_TEST },
      "breach, practice: The last air test was on 1 January 2025: the next was due by 1 April 2025. Have the air tested, and enter the result under Rules & shop in the pane.",
    ],
  ])("%s, %j %j", (rule, change, setting, sentence) => {
    expect(said(rule, change, setting)).toBe(sentence);
  });

  it("nothing of helium where the helium was not measured", () => {
    const unmeasured = { ...TRIMIX, "Analysed He %": null };
    expect(said("G03", { ...unmeasured, "Analysed O2 %": 21 })).toBeUndefined();
    expect(said("G06", unmeasured)).toMatch(/^\w+, practice: /);
    expect(said("G06", TRIMIX)).toBeUndefined();
  });
});
