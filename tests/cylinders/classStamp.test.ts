import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readClassStamp } from "../../src/cylinders/classStamp";
import { absoluteBar } from "../../src/gas/units";

const psi = (gauge: number) => absoluteBar(gauge, "us");
const bar = (gauge: number) => absoluteBar(gauge, "metric");

/* Stamps as cylinders carry them; 3,000 psi is 206.84 bar (the pound per square inch by its definition). */
describe("the stamp on a cylinder's shoulder", () => {
  it.each([
    ["DOT-3AL3000", ["3AL"], "aluminium", psi(3000)],
    ["DOT-3AL-3000", ["3AL"], "aluminium", psi(3000)],
    ["3AA2400+", ["3AA"], "steel", psi(2400)],
    ["ICC-3A2250", ["3A"], "steel", psi(2250)],
    ["CTC/DOT-3AL3000", ["3AL"], "aluminium", psi(3000)],
    ["TC-3ALM207", ["3ALM"], "aluminium", bar(207)],
    ["3AL/TC-3ALM", ["3AL", "3ALM"], "aluminium", undefined],
    ["TC-3ALM207/DOT-3AL3000", ["3ALM", "3AL"], "aluminium", psi(3000)],
    ["E9791-3500", ["SP9791"], undefined, psi(3500)],
    ["DOT-E 9791", ["SP9791"], undefined, undefined],
    ["DOT-SP14157-3442/TC-SU7694-237", ["SP14157", "SU7694"], undefined, bar(237)],
    ["UN ISO 9809-1 PW232 PT348", ["UN", "ISO9809"], "steel", bar(232)],
    ["π 0036 EN ISO 7866 PW 200 BAR TS -50/+65", ["PI", "ISO7866"], "aluminium", bar(200)],
    ["BS EN 1964-1 PS 300", ["EN", "EN1964"], "steel", bar(300)],
    ["BS 5045/3", ["BS", "BS5045/3"], "aluminium", undefined],
    ["ISO 11119-2 UW 300 bar", ["ISO11119"], "composite", bar(300)],
  ])("%s", (text, marks, material, service) => {
    const stamp = readClassStamp(text);
    expect(stamp?.marks).toEqual(marks);
    expect(stamp?.material).toBe(material);
    if (service === undefined) expect(stamp?.servicePressureBar).toBeUndefined();
    else expect(stamp?.servicePressureBar).toBeCloseTo(service, 9);
  });

  it("tells working pressure, test pressure, date, alloy and use apart", () => {
    const stamp = readClassStamp("UN ISO 11119-2 UW PW200 PT300 2015/06 V 9.0 L 8.2 KG M18x1.5 NLL");
    expect(stamp).toEqual({
      marks: ["UN", "ISO11119"],
      material: "composite",
      servicePressureBar: bar(200),
      testPressureBar: bar(300),
      month: "2015-06",
      underWater: true,
      unlimitedLife: true,
    });
    expect(readClassStamp("DOT-3AL-6351-3000")?.alloy).toBe("6351");
  });

  it("of two pressures the lower counts, and more than rounding apart is said", () => {
    expect(readClassStamp("DOT-3AL3000/TC-3ALM207")?.pressuresDiffer).toBeUndefined();
    expect(readClassStamp("DOT-3AL3000/TC-3ALM232")).toMatchObject({
      servicePressureBar: psi(3000),
      pressuresDiffer: true,
    });
  });

  it.each([
    "", "3000", "3ZZ", "3AL30000", "3AL9", "DOT", "DOTTY 3AL", "X DOT-3AL", "3AL3000 x", "AL80", "SP", "E12", "UN1002",
    "ISO", "EN", "steel", "2015/06", "condemned 3AL", "3AL?",
  ])("%j is not read in part", (text) => {
    expect(readClassStamp(text)).toBeUndefined();
  }); // prettier-ignore

  const separator = fc.constantFrom("", "-", " ", " - ");
  const apart = fc.constantFrom("/", " / ", " ", ", ", "-");
  const us = fc
    .record({
      who: fc.constantFrom("", "DOT-", "DOT ", "ICC-", "TC/DOT-", "dot-"),
      spec: fc.constantFrom("3A", "3AA", "3AL", "3AAX", "3HT", "3al"),
      between: separator,
      service: fc.option(fc.integer({ min: 1000, max: 6000 }), { nil: undefined }),
      unit: fc.constantFrom("", " psi", "psi", "PSIG"),
      plus: fc.constantFrom("", "+"),
    })
    .map(({ who, spec, between, service, unit, plus }) => ({
      text: `${who}${spec}${service === undefined ? "" : `${between}${service}${unit}`}${plus}`,
      mark: spec.toUpperCase(),
      service: service === undefined ? undefined : psi(service),
    }));
  const permit = fc
    .record({
      who: fc.constantFrom("E", "SP", "DOT-E", "DOT-SP", "DOT-SP ", "TC-SU", "e"),
      number: fc.integer({ min: 1000, max: 99_999 }),
      service: fc.option(fc.integer({ min: 1000, max: 6000 }), { nil: undefined }),
    })
    .map(({ who, number, service }) => ({
      text: `${who}${number}${service === undefined ? "" : `-${service}`}`,
      mark: `${who.endsWith("SU") ? "SU" : "SP"}${number}`,
      service: service === undefined ? undefined : psi(service),
    }));
  const metric = fc
    .record({
      who: fc.constantFrom("UN ", "", "UN-", "CE 0036 "),
      standard: fc.constantFrom("ISO 9809-1", "ISO7866", "ISO 11119-3", "EN ISO 9809-2:2019"),
      service: fc.integer({ min: 150, max: 350 }),
      letters: fc.constantFrom("PW", "PW ", "WP ", "PS="),
      unit: fc.constantFrom("", "bar", " BAR"),
    })
    .map(({ who, standard, service, letters, unit }) => ({
      text: `${who}${standard} ${letters}${service}${unit}`,
      mark: `ISO${/\d{4,5}/.exec(standard)![0]}`,
      service: bar(service),
    }));
  const one = fc.oneof(us, permit, metric);

  it("is read by its grammar: any specification, permit or standard, with any pressure", () => {
    fc.assert(
      fc.property(one, ({ text, mark, service }) => {
        const stamp = readClassStamp(text);
        expect(stamp?.marks, text).toContain(mark);
        expect(stamp?.servicePressureBar ?? 0, text).toBeCloseTo(service ?? 0, 9);
      }),
    );
  });

  it("two side by side are both read, and the lower pressure counts", () => {
    fc.assert(
      fc.property(one, one, apart, (first, second, between) => {
        const text = `${first.text}${between}${second.text}`;
        const stamp = readClassStamp(text);
        expect(stamp?.marks, text).toEqual(expect.arrayContaining([first.mark, second.mark]));
        const known = [first.service, second.service].filter((each) => each !== undefined);
        expect(stamp?.servicePressureBar ?? 0, text).toBeCloseTo(
          known.length > 0 ? Math.min(...known) : 0,
          9,
        );
      }),
    );
  });

  it("never throws, and reads nothing behind a word it does not know", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 150 }), one, (noise, { text }) => {
        readClassStamp(noise);
        expect(readClassStamp(`${text} QQ${noise}`)).toBeUndefined();
      }),
    );
  });
});
