import { DEFAULT_STYLES, LocaleType, LogLevel, ThemeService, Univer } from "@univerjs/core";
import { FUniver } from "@univerjs/core/facade";
import {
  type BaseFunction,
  CalculationMode,
  type IFunctionInfo,
  UniverSheetsCorePreset,
} from "@univerjs/preset-sheets-core";
import locale from "@univerjs/preset-sheets-core/locales/en-US";
import "@univerjs/preset-sheets-core/lib/index.css";
import "./grid.css";
import "./typeface.css";
import { TYPEFACE } from "./typeface";

/** A worksheet function as the engine wants it: the class that calculates, and what the formula helper says. */
export interface EngineFunction {
  readonly calculate: new (name: string) => BaseFunction;
  readonly help: IFunctionInfo;
}

export interface Engine {
  readonly univer: Univer;
  readonly api: FUniver;
  /** The element that holds the grid. */
  readonly container: HTMLElement;
}

/** The grid's accent, from palest to deepest: our petrol blue. */
const PRIMARY = {
  50: "#eef5f7",
  100: "#d9eaee",
  200: "#b3d4dc",
  300: "#84b8c5",
  400: "#4d95a7",
  500: "#267a8e",
  600: "#176577",
  700: "#115363",
  800: "#0c414e",
  900: "#082f39",
};

/** Menu entries that belong to a shared server's rights management, which a local workbook does not have. */
const WITHOUT_PERMISSIONS = Object.fromEntries(
  [
    "sheet.contextMenu.permission",
    "sheet.menu.sheets-sort",
    "sheet.command.add-range-protection-from-toolbar",
    "sheet.command.add-range-protection-from-context-menu",
    "sheet.command.add-range-protection-from-sheet-bar",
    "sheet.command.view-sheet-permission-from-context-menu",
    "sheet.command.view-sheet-permission-from-sheet-bar",
    "sheet.command.change-sheet-protection-from-sheet-bar",
    "sheet.command.delete-range-protection-from-context-menu",
    "sheet.command.set-range-protection-from-context-menu",
  ].map((id) => [id, { hidden: true }]),
);

/**
 * Starts the spreadsheet engine in an element of the page. Calculation runs on the page itself: functions with
 * closures do not survive the engine's worker, and that path needs `new Function`.
 */
export function startEngine(container: HTMLElement, functions: readonly EngineFunction[]): Engine {
  DEFAULT_STYLES.ff = `"${TYPEFACE}"`;
  const univer = new Univer({
    locale: LocaleType.EN_US,
    locales: { [LocaleType.EN_US]: locale },
    logLevel: LogLevel.ERROR,
  });
  const themes = univer.__getInjector().get(ThemeService);
  themes.setTheme({ ...themes.getCurrentTheme(), primary: PRIMARY });

  const { plugins } = UniverSheetsCorePreset({
    container,
    header: true,
    toolbar: false,
    menu: WITHOUT_PERMISSIONS,
    disableAutoFocus: true,
    disableTextFormatAlert: true,
    disableTextFormatMark: true,
    footer: { menus: false, zoomSlider: container.clientWidth >= 500 },
    sheets: { maxAutoHeightCount: 200, disableForceStringAlert: true, disableForceStringMark: true },
    formula: {
      function: functions.map((each) => [each.calculate, each.help.functionName]),
      description: functions.map((each) => each.help),
      initialFormulaComputing: CalculationMode.FORCED,
    },
  });
  for (const plugin of plugins) {
    if (Array.isArray(plugin)) univer.registerPlugin(plugin[0], plugin[1]);
    else univer.registerPlugin(plugin);
  }
  return { univer, api: FUniver.newAPI(univer), container };
}
