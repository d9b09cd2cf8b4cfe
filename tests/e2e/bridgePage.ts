import type { CellAddress, Sheet } from "../../src/sheet/sheet";
import { FakeExcel } from "../workbook/excel/fakeExcel";
import type { WireRequest } from "../workbook/excel/wire";

/*
 * Excel's side of the bridge by which Microsoft's office.js talks to the program around it. Runs in the pane's own
 * window before any of its scripts, and answers from the fake Excel. The bridge is not documented: it is what the npm
 * package @microsoft/office-js 1.1.110 looks for on Windows.
 */

/** How Excel answered one call of a worksheet function. */
export type FunctionResult =
  { readonly value: unknown } | { readonly error: string | undefined; readonly message: string };

export interface InExcel {
  readonly fake: FakeExcel;
  readonly selected: () => CellAddress;
  /** Calls worksheet functions as Excel does, all in one message; answers once each has its result. */
  readonly call: (calls: readonly FunctionCall[]) => Promise<FunctionResult[]>;
  /** The user closes the pane, or opens it again. */
  readonly showPane: (visibility: "Visible" | "Hidden") => void;
  /** The user picks another Office theme. */
  readonly setTheme: (dark: boolean) => void;
}

export interface FunctionCall {
  readonly id: string;
  /** As they go over the wire: a range or cell as rows of values, what was left out as null. */
  readonly given: readonly unknown[];
}

export interface OpenedInExcel {
  readonly sheets: readonly Sheet[];
  readonly dark?: boolean;
  readonly excelApi?: string;
  /** Excel does not answer what its workbook counts dates from, until the test takes `fake.refuse` away. */
  readonly silentOnDates?: boolean;
  /** Overrides what is registered as the functions' version, as an older script in Excel's cache leaves it. */
  readonly oldFunctions?: string;
}

interface ToHost {
  readonly id: number;
  readonly flags: number;
  readonly message: { readonly body: WireRequest };
}

interface Bridge {
  sendMessageToHost(text: string): void;
  onMessageFromHost?: (text: string) => void;
}

/** The numbers by which Excel tells of events. */
const EVENTS: Readonly<Record<string, number>> = {
  ...{ DataChanged: 10, Added: 13, SelectionChanged: 14, Deleted: 15, Calculated: 16 },
  ...{ FormatChanged: 18, RowSorted: 19, NameChanged: 25, VisibilityChanged: 26, Moved: 27 },
};
const ANSWER = 2;
const NEWS = 3;
const FUNCTION_CATEGORY = 1;
const INVOCATION = 1000;
const EVENT_CATEGORY = 65_536;
const PANE_VISIBILITY = 65_539;
/** Errors and data types may be among the arguments. */
const ALLOW_ERRORS = 4;
/** The error codes of results, by what the cell shows. */
const RESULT_ERRORS: Readonly<Record<number, string>> = {
  ...{ 1: "#N/A", 5: "#DIV/0!", 6: "#NUM!", 7: "#VALUE!", 8: "#NULL!" },
};

const opened = (window as unknown as { opened: OpenedInExcel }).opened;
const fake = new FakeExcel(opened.sheets);
if (opened.silentOnDates)
  fake.refuse = ({ ObjectPaths }) =>
    Object.values(ObjectPaths).some(({ Name }) => Name === "Functions") ? "GeneralException" : undefined;
let dark = opened.dark ?? false;

const bridge: Bridge = {
  sendMessageToHost: (text) => {
    void answer(JSON.parse(text) as ToHost);
  },
};

async function answer({ id, flags, message }: ToHost): Promise<void> {
  const body = JSON.stringify(await fake.answer(message.body, flags));
  tell({ id, type: ANSWER, message: { statusCode: 200, headers: {}, body } });
}

const tell = (message: unknown) => bridge.onMessageFromHost?.(JSON.stringify(message));

/** News from Excel come in entries: category, kind, whom it concerns, what, and a number. */
const news = (category: number, kind: number, target: string, what: unknown, number = 0) =>
  tell({ type: NEWS, message: { entries: [[category, kind, target, what, number]] } });

for (const [name, kind] of Object.entries(EVENTS))
  fake.listeners.set(name, new Set([(told) => news(EVENT_CATEGORY, kind, "Workbook", JSON.stringify(told))]));

let lastCall = 0;
const waiting = new Map<number, (result: FunctionResult) => void>();

function call(calls: readonly FunctionCall[]): Promise<FunctionResult[]> {
  const results = calls.map(({ id, given }) => {
    const number = (lastCall += 1);
    const result = new Promise<FunctionResult>((resolve) => waiting.set(number, resolve));
    return {
      entry: [FUNCTION_CATEGORY, INVOCATION, "", [number, id, given, null, ALLOW_ERRORS], number],
      result,
    };
  });
  tell({ type: NEWS, message: { entries: results.map(({ entry }) => entry) } });
  return Promise.all(results.map(({ result }) => result));
}

interface Result {
  readonly id: number;
  readonly failed?: boolean;
  readonly value: unknown;
  readonly errorCode?: number;
}

const give = ({ id, failed, value, errorCode }: Result) => {
  const result = failed ? { error: RESULT_ERRORS[errorCode ?? -1], message: String(value) } : { value };
  waiting.get(id)?.(result);
  waiting.delete(id);
};

Object.assign(fake.services, {
  "Microsoft.ExcelServices.CustomFunctions": {
    setInvocationResults: (results: readonly Result[]) => {
      results.forEach(give);
    },
    setInvocationArrayResults: (results: readonly (readonly [number, boolean, unknown, number])[]) => {
      for (const [id, done, value, errorCode] of results) give({ id, failed: !done, value, errorCode });
    },
  },
  "Microsoft.AppRuntime.AppRuntimeService": {},
  "Microsoft.InternalService.AddinInternalService": { notifyActionHandlerReady: () => null },
});

const REQUIREMENTS = {
  ...{ ExcelApi: opened.excelApi ?? "1.20", CustomFunctionsRuntime: "1.3", SharedRuntime: "1.1" },
};
const FOREGROUND = "#FFFFFF";
const colour = (hex: string) => Number.parseInt(hex.slice(1), 16);

/** What office.js asks the program around it before it is ready. */
const context = {
  ...{ GetAppType: () => 1, GetSolutionRef: () => "brimbook", GetSolutionToken: () => "" },
  ...{
    GetAppVersionMajor: () => 16,
    GetAppVersionMinor: () => 1,
    GetHostFullVersion: () => "16.0.14332.20000",
  },
  ...{ GetAppUILocale: () => 1033, GetAppDataLocale: () => 1033, GetDocUrl: () => "C:\\Logs\\log.xlsx" },
  ...{ GetAppCapabilities: () => 2, GetActivationMode: () => 0, GetControlIntegrationLevel: () => 2 },
  ...{ GetSupportedMatrix: () => JSON.stringify(REQUIREMENTS), GetInitialDisplayMode: () => 1 },
  GetSettings: () => ({ Read: () => undefined, Write: () => undefined }),
  GetOfficeThemeInfo: () =>
    JSON.stringify({ bodyBackgroundColor: colour(dark ? "#262626" : FOREGROUND), bodyForegroundColor: 0 }),
};
Object.assign(window.external, {
  GetContext: () => context,
  Execute: () => undefined,
  RegisterEvent: () => undefined,
  GetLoggingAllowed: () => false,
  GetHostInfo: () => "",
});

if (opened.oldFunctions !== undefined)
  Object.defineProperty(window, "brimbookFunctions", {
    get: () => opened.oldFunctions,
    set: () => undefined,
  });

const excel: InExcel = {
  fake,
  call,
  selected: () => fake.selected,
  showPane: (visibility) => {
    news(EVENT_CATEGORY, PANE_VISIBILITY, "", JSON.stringify({ visibility }));
  },
  setTheme: (isDark) => {
    dark = isDark;
  },
};
Object.assign(window, { _richApiNativeBridge: bridge, excel });
