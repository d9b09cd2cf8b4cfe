import type { Sheet } from "../../src/sheet/sheet";
import { openFile } from "../../src/workbook/file/openFile";
import { describeWorkbookContract } from "../workbook/contract";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { contentOf } from "./books";
import { openPage, useBrowser } from "./browser";
import { FarWorkbook } from "./farWorkbook";

const browser = useBrowser();

describeWorkbookContract("the live grid", async (sheets: readonly Sheet[]) => {
  const brimbook = await openPage(browser());
  await brimbook.openFile("contract.xlsx", await writeXlsx(contentOf(sheets)));
  await brimbook.untilOpen("contract.xlsx");
  return {
    workbook: new FarWorkbook(brimbook.page),
    selected: async () => (await brimbook.selected())!,
    reopened: async () => openFile(await brimbook.savedCopy(), "contract copy.xlsx"),
    close: () => brimbook.close(),
  };
});
