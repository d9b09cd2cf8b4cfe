import { WorkbookProblem } from "../workbook/workbook";

const fileName = "gannet-point.xlsx";

/** The invented log that the page opens by itself. */
export const sampleLog = {
  fileName,
  async read(): Promise<Uint8Array> {
    const answer = await fetch(`samples/${fileName}`).catch(() => undefined);
    if (!answer?.ok) {
      throw new WorkbookProblem(
        "The sample log could not be loaded: reload the page, or open a file of your own.",
      );
    }
    return new Uint8Array(await answer.arrayBuffer());
  },
};
