import type { Page } from "playwright-core";
import type { SheetDraft } from "../../src/sheet/draft/draft";
import type { CellAddress, CellValue, Sheet } from "../../src/sheet/sheet";
import {
  WorkbookProblem,
  type SelectedRows,
  type SheetInfo,
  type Workbook,
} from "../../src/workbook/workbook";

type Outcome<T> =
  | { readonly value: T }
  | { readonly failed: { readonly name: string; readonly message: string; readonly details?: string } };

/** The workbook of a page in the browser, called from here. */
export class FarWorkbook implements Workbook {
  readonly capabilities = { select: true, settings: true, charts: false };

  constructor(private readonly page: Pick<Page, "evaluate">) {}

  listSheets(): Promise<readonly SheetInfo[]> {
    return this.call("listSheets");
  }

  readCell(address: CellAddress): Promise<CellValue | undefined> {
    return this.call("readCell", address);
  }

  readSelection(): Promise<SelectedRows> {
    return this.call("readSelection");
  }

  selectCell(address: CellAddress): Promise<void> {
    return this.call("selectCell", address);
  }

  addSheets(drafts: readonly SheetDraft[]): Promise<readonly string[]> {
    return this.call("addSheets", drafts);
  }

  readSetting(key: string): Promise<unknown> {
    return this.call("readSetting", key);
  }

  writeSetting(key: string, value: unknown): Promise<void> {
    return this.call("writeSetting", key, value);
  }

  /** Progress and calling off happen there; what was heard is played back here. */
  async readSheet(name: string, progress?: (share: number) => void, signal?: AbortSignal): Promise<Sheet> {
    const { outcome, shares } = await this.page.evaluate(
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
    const outcome = await this.page.evaluate(
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
