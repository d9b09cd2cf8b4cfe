import { describe, expect, it } from "vitest";
import { auditOf, FULL, SHOP, type TestRow } from "./sheets";

/* What findings about the vessel say, word for word, whose rule it is and which cell they lead to. */

const STEEL: TestRow = { Class: "3AA", Material: "steel", Alloy: null, "Service psi": 2400 };
const BLEED = "Bleed it to its limit now, and have it looked at before the next fill.";
const NO_PLUS =
  "Bleed it to its service pressure, and have it looked at; fill it to no more until a test earns the plus.";
const HYDRO = "Do not fill it again before a hydro, and tell the owner.";
const HYDRO_LAW = "stop, law (49 CFR 180.205(c) and 180.209 Table 1)";
const VISUAL = "breach, practice (US trade practice; no federal interval)";
const OVER_LAW = "stop, law (49 CFR 173.301a(c))";
const EDDY_LAW = "law (49 CFR 180.205(f)(4) and Part 180 Appendix C), Eddy current";
const KEEP_AWAY =
  "Empty it, and do not fill it again before an eddy-current test; keep people away while it is full.";
const UW = "Do not fill it for diving; look for the mark UW on the cylinder, and write it behind the class.";

const SAID: readonly (readonly [rule: string, change: TestRow, country: string, sentence: string])[] = [
  ["V01", { Hydro: "2019/10" }, "US", `${HYDRO_LAW}, Hydro: Hydro 2019-10 was due by 31 October 2024; filled 12 November 2026. ${HYDRO}`],
  ["V01", { Hydro: "exp 10/24" }, "US", `${HYDRO_LAW}, Hydro: Hydro was due by 31 October 2024, as stamped; filled 12 November 2026. ${HYDRO}`],
  ["V01", { Hydro: null, Made: "2014/03" }, "US", `${HYDRO_LAW}, Made: No hydro on record since manufacture in 2014-03: the first was due by 31 March 2019; filled 12 November 2026. ${HYDRO}`],
  ["V01", { Alloy: "6351" }, "NZ", "stop, law (approval withdrawn from 31 October 2017), Serial: A cylinder of this kind may not be filled at all in New Zealand: Listed designs in alloy 6351. Take it out of service, and tell the owner."],
  // six years only while the yearly visuals are unbroken
  ["V01", { Hydro: "2022/01", Visual: "2024/01", Class: "TIV" }, "FR", `stop, law (Arrêté du 20 novembre 2017), Hydro: Hydro 2022-01 was due by 31 January 2024; filled 12 November 2026. ${HYDRO}`],
  ["V02", { Status: "condemned" }, "US", "stop, law (49 CFR 180.205(h), (i)), Status: The register has it as “condemned”, and it was filled. Empty it, and take it out of use; where the register is wrong, correct it."],
  ["V03", { "End psi": 3500 }, "US", `${OVER_LAW}, End psi: Filled to 3,500 psi, above the 3,000 psi it may hold. ${BLEED}`],
  ["V03", { "End psi": 3500, "Gas temp F": null }, "US", `${OVER_LAW}, End psi: Filled to 3,500 psi (as read: no temperature is logged), above the 3,000 psi it may hold. ${BLEED}`],
  ["V03", { "End psi": 3500, "Settled psi": 3400 }, "US", `${OVER_LAW}, Settled psi: Settled at 3,400 psi, above the 3,000 psi it may hold. ${BLEED}`],
  ["V03", { "End psi": 3060 }, "US", "warn, law (49 CFR 173.301a(c)), End psi: Filled to 3,060 psi, above the 3,000 psi it may hold, within the 3 % that a gauge may be off. Let it settle, read it again, and bleed what is above."],
  ["V03", { ...STEEL, Hydro: "10/24+", "End psi": 2800 }, "US", `${OVER_LAW}, End psi: Filled to 2,800 psi, above the 2,640 psi with its plus it may hold. ${BLEED}`],
  ["V04", { Class: "SP12479", Material: "composite", Alloy: null, Made: "2008/03" }, "US", "stop, law (49 CFR 173.301(a)(7), 180.205), Made: Made 2008-03: its service life of 15 years ended on 31 March 2023. Take it out of service, and tell the owner: no test extends its life."],
  ["V05", { Alloy: "6351-T6" }, "US", `stop, ${EDDY_LAW}: Alloy 6351 cracks under load, and it was filled without an eddy-current test in date: none is on record. ${KEEP_AWAY}`],
  ["V05", { Alloy: "6351-T6", "Eddy current": "2020/05" }, "US", `stop, ${EDDY_LAW}: Alloy 6351 cracks under load, and it was filled without an eddy-current test in date: the last held until 31 May 2025. ${KEEP_AWAY}`],
  ["V05", { Alloy: null, Made: "1980/03" }, "US", `breach, ${EDDY_LAW}: Its alloy is not proven and may be 6351, which cracks under load; of eddy-current tests none is on record. Find out the alloy and write it down; do not fill it before, unless an eddy-current test is in date.`],
  ["V06", { Visual: "2025/03" }, "US", `${VISUAL}, Visual: Visual 2025-03 was due by 31 March 2026; filled 12 November 2026. Do not fill it again before a visual.`],
  ["V06", { Visual: "2024/03", Hydro: "2025/10" }, "US", `${VISUAL}, Hydro: Visual: the last one on record is the hydro of 2025-10, good until 31 October 2026; filled 12 November 2026. Do not fill it again before a visual.`],
  ["V06", { Visual: "exp 3/26" }, "US", `${VISUAL}, Visual: Visual was due by 31 March 2026, as stamped; filled 12 November 2026. Do not fill it again before a visual.`],
  ["V07", { "End psi": 3300 }, "US", `stop, law (49 CFR 173.302a(b)), End psi: Filled to 3,300 psi, above the service pressure of 3,000 psi: a cylinder of this class (Aluminium, alloy 6061 (DOT-3AL, TC-3ALM)) can have no plus. ${NO_PLUS}`],
  ["V07", { ...STEEL, Hydro: "10/24", "End psi": 2640 }, "US", `stop, law (49 CFR 173.302a(b)), End psi: Filled to 2,640 psi, above the service pressure of 2,400 psi: the latest test, 2024-10, carries no plus. ${NO_PLUS}`],
  ["V09", { Hydro: null, Visual: null, Made: null }, "US", "breach, practice (no rule of the United States found; taken from New Brunswick Reg. 91-191 s. 339 (Canada); BS EN 1920 (European standard)), Hydro: Neither a hydro nor a manufacture date is on record: nothing shows that the cylinder is in date. Read the stamps on its shoulder and write them here; do not fill it before."],
  ["V10", { Hydro: "10/19*" }, "US", "stop, practice (49 CFR 180.209(b), unconfirmed: confirm with the requalifier), Hydro: The star behind 2019-10 gives no ten years to a cylinder for breathing under water: it held until 31 October 2024. Do not fill it before a hydro."],
  ["V10", { Hydro: "10/19*" }, "CA", "stop, practice (no rule of Canada found; taken from 49 CFR 180.209(b), unconfirmed: confirm with the requalifier (United States)), Hydro: The star behind 2019-10 gives no ten years to a cylinder for breathing under water: it held until 31 October 2024. Do not fill it before a hydro."],
  ["V11", { Hydro: "10/24 E", Made: "2014/03" }, "US", "stop, law (49 CFR 180.213(f)), Hydro: 2024-10 E is an external visual, not a hydro; the last that counts held until 31 March 2019. Do not fill it before a hydro."],
  ["V12", { Class: "UN-ISO11119", Material: "composite", Alloy: null }, "US", `stop, law (49 CFR 173.301b(g)), Class: UN-ISO11119 carries no UW: without that mark it may not go under water. ${UW}`],
  ["V12", { Class: "FRP-1", Material: "composite", Alloy: null }, "US", `stop, law (49 CFR 173.301b(g) and the permit), Class: Glass or aramid composite (FRP-1, FRP-2): it is not made to go under water. ${UW}`],
  ["V13", { Class: "3HT", Material: "steel", Alloy: null }, "US", "breach, law (49 CFR 173.302a(a)(2)), Class: Aircraft cylinder (DOT-3HT): it is made for aircraft. Do not fill it again; tell the owner why."],
  ["V13", { Class: "CE", Alloy: null }, "US", "breach, law (49 CFR 173.301(j)), Class: Foreign cylinder without a DOT, TC or UN mark: without a DOT, TC or UN mark it may not be carried full. Do not fill it again; tell the owner why."],
  ["V14", { "Neck thread": "M25x2", "Valve thread": "3/4 NPSM" }, "US", "stop, practice (49 CFR 173.301(a)(10)), Valve thread: The neck is M25x2, the valve 3/4 NPSM: such a valve can fly out under pressure. Empty it at once, and have a valve of the right thread put in."],
  ["V17", { "Start psi": 20, Visual: "2025/12" }, "US", "warn, practice (no rule of the United States found; taken from Arbeidstilsynet regulation 25-15 (Norway); German filling practice (Germany)), Start psi: It came in with 20 psi: water may have got in. Look inside before the next fill."],
  ["V18", { "External check": null }, "US", "warn, law (49 CFR 173.301(a)(2)), External check: Nothing says that the cylinder was looked over before the fill. Look it over before every fill, and tick it off."],
]; // prettier-ignore

describe("a finding about the vessel says", () => {
  it.each(SAID)("%s, %j in %s", (rule, change, country, sentence) => {
    const rows = [
      { ...FULL, ...change },
      { ...FULL, Serial: "ZZ9999" },
    ];
    const found = auditOf(rows, [], country, SHOP).findings.find(
      (finding) => finding.rule === rule && finding.cell.row === 1,
    );
    const headings = Object.keys({ ...FULL, ...change });
    expect(
      found &&
        `${found.severity}, ${found.basis} (${found.source}), ${headings[found.cell.column]}: ${found.message} ${found.todo}`,
    ).toBe(sentence);
  });
});
