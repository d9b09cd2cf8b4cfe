import * as fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { expect, test } from "vitest";
import { countryContext } from "../../src/log/countryContext";
import { readLog } from "../../src/log/readLog";
import { monthReport } from "../../src/reports/month/monthReport";
import { monthsOf } from "../../src/reports/month/period";
import { draftValue } from "../../src/sheet/draft/draft";
import { FileWorkbook } from "../../src/workbook/file/fileWorkbook";
import { openFile } from "../../src/workbook/file/openFile";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { anySheet } from "../log/anySheet";
import { AS_OF, US } from "./sample";

test("any log makes a report that opens, with every text as text and every fill counted once", async () => {
  await fc.assert(
    fc.asyncProperty(anySheet, async (sheet) => {
      const log = readLog([sheet], { ...countryContext(US), units: "us", asOf: AS_OF });
      const [latest] = monthsOf(log);
      const month = latest?.month ?? Temporal.PlainYearMonth.from("2026-10");
      const report = await monthReport(log, US, {
        month,
        asOf: AS_OF,
        units: "us",
        paper: "A4",
        names: true,
        audit: {},
        logFile: "log.xlsx",
        program: "Brimbook",
      });
      expect(report.month.fills.length).toBe(latest?.fills ?? 0);
      const workbook = new FileWorkbook({ sheets: [], settings: new Map(), leftOut: [] });
      await workbook.addSheets(report.drafts);
      const { sheets } = (await openFile(await writeXlsx(workbook.content), "report.xlsx")).content;
      sheets.forEach(({ rows }, index) => {
        expect(rows.some(({ origins }) => origins !== undefined)).toBe(false);
        const texts = report.drafts[index]!.rows.flatMap(({ cells }) => cells.map(draftValue)).filter(
          (value) => typeof value === "string" && value !== "",
        );
        expect(rows.flatMap(({ values }) => values.filter((value) => typeof value === "string"))).toEqual(
          texts,
        );
      });
    }),
    { numRuns: 60 },
  );
});
