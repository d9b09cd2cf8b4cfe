import type { WorkbookContent } from "../../src/workbook/file/content";
import { sheetOf } from "../log/sheets";

/** Small logs as text, of the kinds that the exit codes tell apart. Dates in US order, US stamps. */
const HEADINGS = "Date,Serial,Start psi,End psi,Mix,Method,Hydro,Visual,O2 rating,Filled by";

/** Hydro and visual in date, ratings above the mix, on every fill. */
export const CLEAN = [
  HEADINGS,
  "10/14/2026,GP-101,500,3000,EAN32,premix,6/13/2024,3/20/2026,40,R.",
  "10/15/2026,GP-102,300,3000,air,air,2/19/2023,11/18/2025,40,T.",
].join("\n");

/** The first cylinder's hydro of June 2020 was due at the end of June 2025. */
export const OVERDUE = [
  HEADINGS,
  "10/14/2026,GP-101,500,3000,EAN32,premix,6/13/2020,3/20/2026,40,R.",
  "10/15/2026,GP-102,300,3000,air,air,2/19/2023,11/18/2025,40,T.",
  "",
  "Total,,,2 fills",
].join("\n");

/** Nothing wrong, but no visual anywhere. */
export const WITHOUT_VISUAL = CLEAN.split("\n")
  .map((line) =>
    line
      .split(",")
      .filter((_cell, column) => column !== 7)
      .join(","),
  )
  .join("\n");

/** Nothing says how its dates are written, in what its pressures are, or which test falls due. */
export const OPEN = [
  "Date,Serial,In,Out,Mix,Due,Hose",
  "9/10/2026,GP-101,50,200,EAN32,2030-06,4",
  "11/10/2026,GP-102,30,210,air,2031-02,4",
].join("\n");

/** Stamps of a register, three behind and one ahead: the pattern alone does not say whether tests are done or due. */
export const STAMPS = [
  "Serial,Hydro",
  "A10001,2026/03",
  "A10002,2025/08",
  "A10003,2024/05",
  "A10004,2029/11",
].join("\n");

/** A log with a number that belongs to nothing, beside a price list. */
export const UNTIDY: WorkbookContent = {
  sheets: [
    sheetOf([
      ["Date", "Serial", "Start psi", "End psi"],
      ["2026-10-14", "GP-101", 500, 3000],
      ["2026-10-15", "GP-102", 300, 2900],
      [null, null, null, 41],
    ]),
    sheetOf(
      [
        ["Item", "Price"],
        ["O-ring", 1.5],
      ],
      { name: "Prices" },
    ),
  ].map((sheet) => ({ ...sheet, columns: [], frozenRows: 0, frozenColumns: 0 })),
  settings: new Map(),
  leftOut: [],
};
