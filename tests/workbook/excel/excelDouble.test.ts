import { describe, expect, test } from "vitest";
import { usualBook } from "../contractBooks";
import { excelDouble } from "./excelDouble";
import { FakeExcel } from "./fakeExcel";

const run = (batch: (context: Excel.RequestContext) => Promise<void>, excelApi?: string) =>
  excelDouble(new FakeExcel(usualBook), excelApi).Excel.run({}, batch);

/** The double stands in for office.js only as far as it is as strict. */
describe("the double of office.js", () => {
  test("has no value that was not loaded, nor one before the sync", async () => {
    await run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("Fill log");
      expect(() => sheet.name).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      sheet.load("name");
      expect(() => sheet.name).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      await context.sync();
      expect(sheet.name).toBe("Fill log");
      expect(() => sheet.visibility).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      expect(() => context.workbook.worksheets.items).toThrow(
        expect.objectContaining({ code: "PropertyNotLoaded" }),
      );
    });
  });

  test("tells what is not there after a sync, without a load", async () => {
    await run(async (context) => {
      const sheet = context.workbook.worksheets.getItemOrNullObject("Gone");
      expect(() => sheet.isNullObject).toThrow(expect.objectContaining({ code: "PropertyNotLoaded" }));
      await context.sync();
      expect(sheet.isNullObject).toBe(true);
    });
  });

  test("has a method's result only after the sync", async () => {
    await run(async (context) => {
      const range = context.workbook.worksheets.getItem("Fill log").getRangeByIndexes(7, 0, 1, 1);
      const result = range.getRowProperties({ rowHidden: true });
      expect(() => result.value).toThrow(expect.objectContaining({ code: "ValueNotLoaded" }));
      await context.sync();
      expect(result.value).toEqual([{ rowHidden: true }]);
    });
  });

  test("does nothing before the sync", async () => {
    const fake = new FakeExcel(usualBook);
    await excelDouble(fake).Excel.run({}, async (context) => {
      context.workbook.worksheets.getItem("Wide").activate();
      expect(fake.selected.sheet).toBe("Read me");
      await context.sync();
      expect(fake.selected.sheet).toBe("Wide");
    });
    expect(fake.requests.length).toBe(1);
  });

  test("lets nobody use an object after its run", async () => {
    let kept: Excel.Worksheet | undefined;
    await run(async (context) => {
      kept = context.workbook.worksheets.getItem("Wide");
      await context.sync();
    });
    expect(() => kept!.activate()).toThrow(expect.objectContaining({ code: "InvalidObjectPath" }));
  });

  test("has no member that came after the requirement set it plays", async () => {
    await run(async (context) => {
      const range = context.workbook.worksheets.getItem("Wide").getRangeByIndexes(0, 0, 1, 1);
      expect(() => range.getMergedAreasOrNullObject()).toThrow(
        expect.objectContaining({ code: "ApiNotFound" }),
      );
    }, "1.12");
  });

  test("refuses to know what nobody looked up", async () => {
    await run(async (context) => {
      expect(() => context.workbook.names).toThrow("Workbook.names");
    });
  });
});
