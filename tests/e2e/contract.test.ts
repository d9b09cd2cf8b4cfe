import type { CellAddress, CellValue, Sheet } from "../../src/sheet/sheet";
import { openFile } from "../../src/workbook/file/openFile";
import { WorkbookProblem, type SheetInfo, type Workbook } from "../../src/workbook/workbook";
import { describeWorkbookContract } from "../workbook/contract";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { contentOf } from "./books";
import { openPage, useBrowser, type BrimbookPage } from "./browser";

const browser = useBrowser();

describeWorkbookContract("the live grid", async (sheets: readonly Sheet[]) => {
  const brimbook = await openPage(browser());
  await brimbook.openFile("contract.xlsx", await writeXlsx(contentOf(sheets)));
  await brimbook.untilOpen("contract.xlsx");
  return {
    workbook: new FarWorkbook(brimbook),
    selected: async () => (await brimbook.selected())!,
    reopened: async () => openFile(await brimbook.savedCopy(), "contract copy.xlsx"),
    close: () => brimbook.close(),
  };
});

type Outcome<T> =
  | { readonly value: T }
  | { readonly failed: { readonly name: string; readonly message: string; readonly details?: string } };

/** The workbook in the browser, called from here. */
class FarWorkbook implements Workbook {
  readonly capabilities = { select: true, settings: true };

  constructor(private readonly brimbook: BrimbookPage) {}

  listSheets(): Promise<readonly SheetInfo[]> {
    return this.call("listSheets");
  }

  readCell(address: CellAddress): Promise<CellValue | undefined> {
    return this.call("readCell", address);
  }

  selectCell(address: CellAddress): Promise<void> {
    return this.call("selectCell", address);
  }

  readSetting(key: string): Promise<unknown> {
    return this.call("readSetting", key);
  }

  writeSetting(key: string, value: unknown): Promise<void> {
    return this.call("writeSetting", key, value);
  }

  /** Progress and calling off happen there; what was heard is played back here. */
  async readSheet(name: string, progress?: (share: number) => void, signal?: AbortSignal): Promise<Sheet> {
    const { outcome, shares } = await this.brimbook.page.evaluate(
      async ({ sheet, aborted, abortOnProgress }) => {
        const shares: number[] = [];
        const caller = new AbortController();
        if (aborted) caller.abort();
        const hear = (share: number) => {
          shares.push(share);
          if (abortOnProgress) caller.abort();
        };
        const outcome = await window.brimbook!.workbook.readSheet(sheet, hear, caller.signal).then(
          (value) => ({ value }),
          (error: Error) => ({ failed: { name: error.name, message: error.message } }),
        );
        return { outcome, shares };
      },
      { sheet: name, aborted: signal?.aborted ?? false, abortOnProgress: signal !== undefined },
    );
    for (const share of shares) progress?.(share);
    return unwrapped(outcome);
  }

  private async call<T>(method: keyof Workbook, ...given: readonly unknown[]): Promise<T> {
    const outcome = await this.brimbook.page.evaluate(
      async ({ method, given }) => {
        const workbook = window.brimbook!.workbook as unknown as Record<
          string,
          (...given: unknown[]) => Promise<unknown>
        >;
        try {
          return { value: await workbook[method]!(...given) };
        } catch (thrown) {
          const { name, message } = thrown as Error;
          return { failed: { name, message } };
        }
      },
      { method, given },
    );
    return unwrapped(outcome as Outcome<T>);
  }
}

function unwrapped<T>(outcome: Outcome<T>): T {
  if ("value" in outcome) return outcome.value;
  const { name, message } = outcome.failed;
  throw name === "WorkbookProblem" ? new WorkbookProblem(message) : new DOMException(message, name);
}
