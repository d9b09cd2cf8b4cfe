import type { CellAddress, Sheet } from "../../src/sheet/sheet";
import { excelDouble } from "../workbook/excel/excelDouble";
import { FakeExcel } from "../workbook/excel/fakeExcel";

/*
 * Stands in for Microsoft's office.js in the built task pane: the double in front of a fake Excel, which the tests
 * reach through `window.excel`.
 */
declare global {
  interface Window {
    /** What lies open, given before the page's own scripts run. */
    readonly opened: {
      readonly sheets: readonly Sheet[];
      readonly dark?: boolean;
      readonly excelApi?: string;
    };
    readonly excel: {
      readonly fake: FakeExcel;
      readonly selected: () => CellAddress;
      /** The user picks another Office theme. */
      readonly setTheme: (dark: boolean) => void;
      /** The functions that were registered. */
      readonly functions: Map<string, (...given: unknown[]) => unknown>;
    };
  }
}

const { sheets, dark, excelApi } = window.opened;
const fake = new FakeExcel(sheets);
const double = excelDouble(fake, excelApi);
const officeTheme = dark === undefined ? undefined : { isDarkTheme: dark };
const functions = new Map<string, (...given: unknown[]) => unknown>();

Object.assign(window, {
  Excel: double.Excel,
  Office: {
    HostType: { Excel: "Excel" },
    context: { ...double.Office.context, officeTheme },
    onReady: async (ready: (info: object) => void) => {
      await new Promise((resolve) => window.addEventListener("load", resolve, { once: true }));
      ready({ host: "Excel", platform: "PC" });
    },
  },
  CustomFunctions: {
    associate: (id: string, run: (...given: unknown[]) => unknown) => functions.set(id, run),
    Error: class extends Error {
      constructor(
        readonly code: string,
        message?: string,
      ) {
        super(message);
      }
    },
    ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
  },
  excel: {
    fake,
    functions,
    selected: () => fake.selected,
    setTheme: (isDark: boolean) => {
      if (officeTheme) officeTheme.isDarkTheme = isDark;
    },
  },
});
