import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { shopFor } from "../../src/audit/shop/shopFor";
import { countryContext } from "../../src/log/countryContext";
import { readLog } from "../../src/log/readLog";
import { fillsOfMonth } from "../../src/reports/month/monthFills";
import { numberingText } from "../../src/reports/month/numbering";
import { periodOf } from "../../src/reports/month/period";
import { allAtOnce } from "../../src/sheet/steps";
import { AS_OF, US } from "./sample";

/** What the cover says of the numbers of October's fills: each row a number, a day and a remark. */
function numbering(
  rows: readonly (readonly [number: string | number | null, day: string, remark?: string])[],
) {
  const headings = ["No.", "Date", "Serial", "Start psi", "End psi", "Analysed O2 %", "Remarks"];
  const filled = rows.map(([number, day, remark]) =>
    remark === undefined
      ? [number, day, "HK26589", 300, 3000, 32, null]
      : [number, day, "HK26589", null, null, null, remark],
  );
  const values = [headings, ...filled].map((cells) => ({ values: cells }));
  const sheet = { name: "Fills", hidden: false, dateSystem: 1900 as const, merges: [], rows: values };
  const log = readLog([sheet], { ...countryContext(US), units: "us", asOf: AS_OF });
  const { shop } = shopFor(US, {});
  const { fills } = allAtOnce(fillsOfMonth(log, shop, periodOf(Temporal.PlainYearMonth.from("2026-10"))));
  return numberingText(fills, log);
}

describe("the numbers of a month's fills", () => {
  const DAY = "2026-10-05";
  it.each([
    ["run on", [[11, DAY], [12, DAY], [13, DAY]], "11 to 13, no gap"],
    ["have gaps", [[11, DAY], [13, DAY], [17, DAY]], "11 to 17, missing: 12, 14 to 16"],
    ["stand behind letters", [["F-011", DAY], ["F-013", DAY]], "11 to 13, missing: 12"],
    ["are given twice", [[11, DAY], [11, DAY], [12, DAY]], "11 to 12, no gap; 1 number given twice"],
    ["are left out in a row", [[11, DAY], [null, DAY], [12, DAY]], "11 to 12, no gap; 1 fill without a number"],
    ["are used up by a row that says that nothing was filled", [[11, DAY], [12, DAY, "Not filled, hydro out"], [13, DAY]], "11 to 13, no gap"],
    ["go on in another month", [[11, DAY], [12, DAY], [14, "2026-11-02"]], "11 to 12, no gap"],
  ] as const)("%s", (_, rows, says) => {
    expect(numbering(rows)).toBe(says);
  }); // prettier-ignore

  it("are not there, or nothing was filled", () => {
    expect(numbering([[null, DAY]])).toBe("the log numbers no fills");
    expect(numbering([[11, "2026-09-05"]])).toBe("no fills");
  });
});
