import { readFileSync } from "node:fs";
import { read, utils } from "@e965/xlsx";
import { Temporal } from "temporal-polyfill";
import { beforeAll, describe, expect, test } from "vitest";
import type { SampleKey } from "../../scripts/samples/key";
import { identityOf } from "../../src/audit/judge/acceptance";
import { countryContext } from "../../src/log/countryContext";
import { readLog } from "../../src/log/readLog";
import type { MonthReport } from "../../src/reports/month/monthReport";
import { monthsOf } from "../../src/reports/month/period";
import { draftValue, styledCell, type DraftRow } from "../../src/sheet/draft/draft";
import { ownSheetOf } from "../../src/sheet/ownSheet";
import type { SheetRow } from "../../src/sheet/sheet";
import { FileWorkbook } from "../../src/workbook/file/fileWorkbook";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { AS_OF, factsOf, readSample, reportOf, SAMPLE, sheetNamed, tableOf, US, type Sample } from "./sample";

const key = JSON.parse(
  readFileSync(new URL("../../shared/samples/gannet-point.key.json", import.meta.url), "utf8"),
) as SampleKey;

/** The sheet of October as another program reads it, rows with a fill number only. */
function octoberRows(): readonly (readonly unknown[])[] {
  const book = read(readFileSync(SAMPLE));
  const rows = utils.sheet_to_json<unknown[]>(book.Sheets["October 2026"]!, { header: 1, raw: true });
  return rows.filter((row) => typeof row[0] === "number" && row.length > 8);
}

test("every sheet of a report is known as ours", () => {
  expect(report.drafts.map(({ rows }) => ownSheetOf({ rows: rows.map(valuesOf) }))).toEqual(
    report.drafts.map(() => "month report"),
  );
});

function valuesOf({ cells }: DraftRow): SheetRow {
  return { values: cells.map(draftValue) };
}

let sample: Sample;
let report: MonthReport;

beforeAll(async () => {
  sample = await readSample();
  report = await reportOf(sample);
});

describe("the figures of a month agree with a plain count of the sample's cells", () => {
  test("fills and cylinders filled: every numbered row with a readable date, twins twice", () => {
    const rows = octoberRows();
    const undated = report.month.undated.filter(({ sheet }) => sheet === "October 2026").length;
    expect(report.month.fills.length).toBe(rows.length - undated);
    const twins = rows.filter(([, , , serial]) => String(serial).includes("/")).length;
    expect(report.month.cylinders.length - report.month.fills.length).toBe(twins);
    expect(tableOf(sheetNamed(report, "Cylinders"))).toHaveLength(report.month.cylinders.length);
  });

  test("by method, as the column says", () => {
    const plain = new Map<string, number>();
    for (const row of octoberRows()) {
      const word = String(row[9]);
      plain.set(word, (plain.get(word) ?? 0) + 1);
    }
    const table = tableOf(sheetNamed(report, "Fills"));
    const sum = (heading: string) => table.reduce((all, row) => all + Number(row[heading] ?? 0), 0);
    expect(sum("Continuous")).toBe(plain.get("continuous") ?? 0);
    expect(sum("All fills")).toBe(report.month.fills.length);
    const partial = [...plain].filter(([word]) => /^(pp|partial)/i.test(word));
    expect(sum("Partial pressure")).toBe(partial.reduce((all, [, count]) => all + count, 0));
  });

  test("by week: every fill of the month is in one week, whatever its mix", () => {
    const weeks = tableOf(sheetNamed(report, "Fills"), 1);
    expect(weeks.map((week) => week["Days"])).toEqual([
      "1 to 7",
      "8 to 14",
      "15 to 21",
      "22 to 28",
      "29 to 31",
    ]);
    const all = weeks.flatMap((week) => Object.entries(week).filter(([name]) => name !== "Days"));
    expect(all.reduce((sum, [, count]) => sum + Number(count), 0)).toBe(report.month.fills.length);
  });

  test("findings: those that were planted in October, and those without a day to place them", () => {
    const planted = key.findings.filter(({ fillDate }) => fillDate.startsWith("2026-10"));
    const found = report.findings.open.filter(({ fillDate }) => fillDate.startsWith("2026-10"));
    const named = ({ rule, serial, fillDate }: { rule: string; serial: string; fillDate: string }) =>
      `${rule} ${serial} ${fillDate}`;
    expect(found.map(named).sort()).toEqual(planted.map(named).sort());
    const others = report.findings.open.filter(({ fillDate }) => !fillDate.startsWith("2026-10"));
    expect(others.map(({ fillDate }) => fillDate)).toEqual(others.map(() => ""));
    expect(tableOf(sheetNamed(report, "Findings"))).toHaveLength(report.findings.open.length);
  });

  test("fill numbers: the gaps of the column", () => {
    const numbers = new Set(octoberRows().map(([number]) => Number(number)));
    const missing = /missing: (.*)$/.exec(String(factsOf(report.drafts[0]!).get("Fill numbers")))?.[1] ?? "";
    for (const gap of missing.split(/[,;] /)) {
      const [from, to = from] = gap.split(" to ").map(Number);
      if (!from) continue;
      for (let number = from; number <= to!; number++) {
        const dated = report.month.undated.every(
          ({ fields }) => fields.number.kind !== "value" || Number(fields.number.value) !== number,
        );
        expect(numbers.has(number) && dated).toBe(false);
      }
    }
  });

  test("MOD in feet: (1.4 / O2 - 1) x 33 of the analysis, rounded down", () => {
    const released = tableOf(sheetNamed(report, "Release"));
    expect(released.length).toBeGreaterThan(100);
    for (const row of released) {
      if (typeof row["Analysed O2 %"] !== "number") continue;
      expect(row["MOD ft"]).toBe(Math.floor((140 / row["Analysed O2 %"] - 1) * 33 + 1e-6));
    }
  });
});

describe("the cover", () => {
  test("adds up the rows of the log and says what was not checked", () => {
    const facts = factsOf(report.drafts[0]!);
    const { total, fills } = sample.log.rows;
    expect(String(facts.get("Rows of the log"))).toMatch(new RegExp(`^${total} = ${fills} fills`));
    expect(String(facts.get("Not checked"))).toContain("were not judged for every fill");
    expect(facts.get("Period")).toBe("1 October 2026 to 31 October 2026");
  });

  test("says how many cylinders were filled where twin sets make them more than the fills", () => {
    const said = String(factsOf(report.drafts[0]!).get("Fills"));
    const { fills, cylinders } = report.month;
    expect(said).toContain(
      `${fills.length} fills; ${cylinders.length} cylinders filled, as a twin set is two; 2 fills`,
    );
  });

  test("tells law from practice and house policy, severity by severity", () => {
    const table = tableOf(report.drafts[0]!);
    expect(table.map((row) => row["Severity"])).toEqual(["Stop", "Breach", "Warn", "Note", "Not checked"]);
    for (const row of table.slice(0, 4)) {
      const bases = ["Against the law", "Against trade practice", "Against house policy"];
      expect(bases.reduce((sum, basis) => sum + Number(row[basis]), 0)).toBe(row["Open"]);
    }
  });

  test("leaves room to write in, and names nobody by itself", () => {
    const facts = factsOf(report.drafts[0]!);
    expect(facts.get("Prepared by")).toBeNull();
    expect([...facts.keys()]).toContain("Filter changed on");
  });

  test("lists settings that the shop has changed", async () => {
    const changed = await reportOf(sample, { audit: { house: { maxPpO2: 1.3 } } });
    const texts = changed.drafts[0]!.rows.flatMap(({ cells }) => cells.map(draftValue));
    expect(texts).toContain("Changed settings");
    expect(changed.result.overrides).toHaveLength(1);
    expect(texts).toContain(changed.result.overrides[0]!.name);
  });
});

test("charts of few fills mark whole ones; those of many, what the spreadsheet thinks fit", async () => {
  const headings = ["Date", "Serial", "Start psi", "End psi", "Mix"];
  const rows = [headings, ...Array.from({ length: 10 }, () => ["2026-10-05", "HK26589", 300, 3000, "air"])];
  const sheet = { name: "Fills", hidden: false, dateSystem: 1900 as const, merges: [] };
  const log = readLog([{ ...sheet, rows: rows.map((values) => ({ values })) }], {
    ...countryContext(US),
    units: "us",
    asOf: AS_OF,
  });
  const perWeek = (of: MonthReport) => sheetNamed(of, "Fills").charts[0]!.step;
  expect(perWeek(await reportOf({ log, settings: {} as Sample["settings"] }))).toBe(1);
  expect(perWeek(report)).toBeUndefined();
});

describe("the lists of cylinders", () => {
  const listed = (of: MonthReport, sheet: string) =>
    tableOf(sheetNamed(of, sheet)).map((row) => String(row["Cylinder"]));

  test("not to fill names what is out of date on the day of the report, and what is wrong with the vessel", () => {
    const due = tableOf(sheetNamed(report, "Tests due"))
      .filter((row) => row["State"] === "Out of date")
      .map((row) => String(row["Cylinder"]));
    const wrong = report.result.doNotFill.map(({ serial }) => serial);
    expect(due.length).toBeGreaterThan(0);
    expect(wrong.length).toBeGreaterThan(0);
    const all = listed(report, "Do not fill");
    expect(new Set(all)).toEqual(new Set([...due, ...wrong]));
    expect(all).toEqual([...new Set(all)]);
    const facts = factsOf(report.drafts[0]!);
    expect(facts.get("Do not fill")).toBe(`${all.length} cylinders`);
    expect(facts.get("Call first")).toBe(`${listed(report, "Call first").length} cylinders`);
  });

  test("leave out what the shop has accepted, as check and pane do", async () => {
    const ofOne = (one: MonthReport, sheet: string, serial: string) =>
      listed(one, sheet).filter((each) => each === serial).length;
    const [toCall] = report.result.recall.filter(({ serial }) => ofOne(report, "Call first", serial) === 1);
    const accepted = toCall!.findings.map((finding) => ({
      ...identityOf(finding),
      reason: "Emptied on the spot",
      by: "R.",
      on: "2026-10-31",
    }));
    const after = await reportOf(sample, { accepted: [...(sample.settings.accepted ?? []), ...accepted] });
    expect(ofOne(after, "Call first", toCall!.serial)).toBe(0);
    expect(listed(after, "Call first")).toHaveLength(listed(report, "Call first").length - 1);
  });
});

describe("customers", () => {
  const everything = ({ drafts }: MonthReport) =>
    JSON.stringify(drafts.map(({ rows }) => rows.map(({ cells }) => cells.map(draftValue))));

  test("are not named unless somebody asked for it", async () => {
    expect(everything(report)).not.toMatch(/C-\d{3}|N-\d{4}/);
    expect(everything(await reportOf(sample, { names: true }))).toMatch(/C-\d{3}/);
  });

  test("are missed on the lists to telephone by, which say so and say their order", async () => {
    const named = await reportOf(sample, { names: true });
    for (const name of ["Call first", "Tests due"]) {
      const says = (one: MonthReport) =>
        sheetNamed(one, name).rows.slice(0, 4).flatMap(({ cells }) => cells.map(draftValue)).join("\n"); // prettier-ignore
      expect(says(report)).toContain("Owners are left out");
      expect(says(named)).not.toContain("Owners are left out");
    }
    const days = (one: MonthReport) =>
      tableOf(sheetNamed(one, "Tests due")).flatMap((row) =>
        row["State"] === "Out of date" ? [Number(row["Days left"])] : [],
      );
    expect(days(report)).toEqual([...days(report)].sort((a, b) => a - b));
    expect(days(named)).not.toEqual(days(report));
    const owners = tableOf(sheetNamed(named, "Tests due")).map((row) => String(row["Owner"]));
    expect(owners.slice(0, days(named).length)).toEqual(owners.slice(0, days(named).length).sort());
    const called = tableOf(sheetNamed(report, "Call first")).map((row) => Number(row["Last filled"]));
    expect(called.length).toBeGreaterThan(20);
    expect(called).toEqual([...called].sort((a, b) => b - a));
  });
});

describe("accepted findings", () => {
  test("stand apart with their reason and are in no count of open ones", async () => {
    const [finding] = report.findings.open;
    const accepted = [
      ...(sample.settings.accepted ?? []),
      { ...identityOf(finding!), reason: "Stamp seen on the cylinder", by: "R.", on: "2026-10-31" },
    ];
    const after = await reportOf(sample, { accepted });
    expect(after.findings.open).toHaveLength(report.findings.open.length - 1);
    const rows = tableOf(sheetNamed(after, "Accepted"));
    expect(rows.at(-1)).toMatchObject({
      "What is wrong": finding!.message,
      Reason: "Stamp seen on the cylinder",
      "Accepted by": "R.",
    });
  });

  test("that are no longer found in the month's fills are listed behind, those of other months are not", async () => {
    const [finding] = report.findings.open.filter(({ fillDate }) => fillDate.startsWith("2026-10"));
    const gone = { ...identityOf(finding!), cell: "A9999", reason: "Stamp seen", by: "R.", on: "2026-10-31" };
    const accepted = [gone, { ...gone, fillDate: "2026-09-05" }, { ...gone, fillDate: "" }];
    const after = await reportOf(sample, { accepted });
    expect(after.findings.noLongerFound).toEqual([gone]);
    expect(after.findings.open).toHaveLength(report.findings.open.length);
    const sheet = sheetNamed(after, "Accepted");
    expect(sheet.tables).toHaveLength(1);
    expect(tableOf(sheet)).toEqual([
      expect.objectContaining({
        Cylinder: gone.serial,
        "Cell then": `${gone.sheet}!A9999`,
        Reason: "Stamp seen",
      }),
    ]);
  });
});

describe("a report", () => {
  test("is the same, byte by byte, every time, and its checksum too", async () => {
    const bytes = async (one: MonthReport) => {
      const workbook = new FileWorkbook({ sheets: [], settings: new Map(), leftOut: [] });
      await workbook.addSheets(one.drafts);
      return writeXlsx(workbook.content);
    };
    const again = await reportOf(await readSample());
    expect(again.checksum).toBe(report.checksum);
    expect(await bytes(again)).toEqual(await bytes(report));
  });

  test("signed has the checksum on its cover, which any other figure would change", async () => {
    const signed = await reportOf(sample, { preparedBy: "R." });
    expect(factsOf(signed.drafts[0]!).get("Checksum")).toContain(signed.checksum);
    expect(signed.checksum).toBe(report.checksum);
    const named = await reportOf(sample, { names: true });
    expect(named.checksum).not.toBe(report.checksum);
  });

  test("leads to the cell of each finding, in the log itself or in its file", async () => {
    const links = ({ drafts }: MonthReport) =>
      sheetNamed({ drafts }, "Findings").rows.flatMap(({ cells }) =>
        cells.flatMap((cell) => styledCell(cell).link ?? []),
      );
    expect(links(report).map(({ cell }) => cell)).toEqual(report.findings.open.map(({ cell }) => cell));
    const beside = await reportOf(sample, { logFile: "gannet-point.xlsx" });
    expect(new Set(links(beside).map(({ file }) => file))).toEqual(new Set(["gannet-point.xlsx"]));
  });

  test("of a month without fills says so on every sheet", async () => {
    const empty = await reportOf(sample, { month: Temporal.PlainYearMonth.from("2031-02") });
    expect(empty.month.fills).toEqual([]);
    const texts = empty.drafts.map(({ rows }) => JSON.stringify(rows));
    expect(texts.filter((text) => text.includes("February 2031")).length).toBeGreaterThan(5);
    expect(sheetNamed(empty, "Cylinders").tables).toEqual([]);
  });

  test("can be made of every month of the log", () => {
    expect(monthsOf(sample.log).map(({ month }) => month.toString())).toEqual([
      "2026-10",
      "2026-09",
      "2026-08",
    ]);
    const counted = monthsOf(sample.log).reduce((sum, { fills }) => sum + fills, 0);
    expect(counted + report.month.undated.length).toBe(600);
  });
});
