import { readdirSync, readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { cardOf } from "../../src/counter/print/card";
import { cardSheet } from "../../src/counter/print/cardSheet";
import { fillCard } from "../../src/counter/print/fillCard";
import { newForm, writeField, type FieldName } from "../../src/counter/form";
import { fillModel } from "../../src/counter/plan/model";
import { planSheet } from "../../src/counter/plan/planSheet";
import { COUNTRIES, countryRules } from "../../src/cylinders/countryRules";
import { countryContext } from "../../src/log/countryContext";
import { unitsOf } from "../../src/reports/month/options";

/* What depends on the country stands in shared/rules, not in code. */

const SRC = new URL("../../src/", import.meta.url);
const CODES = COUNTRIES.map(({ code }) => code).join("|");
/** A code compared with, switched on, looked for in a list, or the key of a table. */
const TESTED = new RegExp(
  String.raw`[!=]==?\s*"(?:${CODES})"|case "(?:${CODES})"|"(?:${CODES})"\s*[!=]==?|\["(?:${CODES})"|^\s*"?(?:${CODES})"?: |\^\(?(?:${CODES})\b`,
  "m",
);

it("no code tests a country's name", () => {
  const files = readdirSync(SRC, { recursive: true, encoding: "utf8" }).filter((name) =>
    /\.tsx?$/.test(name),
  );
  expect(files.length).toBeGreaterThan(300);
  expect(files.filter((name) => TESTED.test(readFileSync(new URL(name, SRC), "utf8")))).toEqual([]);
});

it("the search finds what it looks for", () => {
  for (const code of ['if (rules.country === "US")', "  CA: {", 'case "GB":', '["BE", "CH"]', "/^(US|CA)/"])
    expect(code).toMatch(TESTED);
});

/** Letter is the paper of the US and Canada; elsewhere A4 (common practice, no source). */
it.each(COUNTRIES.map(({ code }) => code))(
  "%s prints everything on one paper, whatever its units",
  (code) => {
    const paper = /^(?:US|CA)\b/.test(code) ? "Letter" : "A4";
    for (const units of ["us", "metric"] as const) {
      const order = units === "us" ? ["500", "3000"] : ["35", "200"];
      const written = { startPressure: order[0]!, startMix: "air", endPressure: order[1]!, endMix: "EAN32" };
      const form = Object.entries(written).reduce(
        (made, [name, text]) => writeField(made, name as FieldName, text),
        newForm(units),
      );
      const model = fillModel(form, undefined, code);
      const card = cardOf(model, undefined, units, "2026-10-31")!;
      const papers = [
        countryRules(code).habits.paper,
        model.paper,
        fillCard(card).paper,
        cardSheet(card).page.paper,
        planSheet(model, units)?.page.paper,
      ];
      expect(papers).toEqual(papers.map(() => paper));
    }
  },
);

it("habits of a country reach the reading of its logs", () => {
  expect(countryContext(countryRules("CA"))).toMatchObject({ dateOrder: undefined, usualUnits: undefined });
  expect(countryContext(countryRules("CA")).languages).toEqual(["en", "fr"]);
  expect(countryContext(countryRules("US"))).toMatchObject({ dateOrder: "month first", usualUnits: "us" });
  expect(countryContext(countryRules("DE")).languages).toEqual(["de"]);
  expect(unitsOf(countryRules("CA"))).toBe("metric");
});
