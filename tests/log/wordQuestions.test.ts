import { describe, expect, it } from "vitest";
import { readLog } from "../../src/log/readLog";
import { wordQuestions } from "../../src/log/questions/wordQuestions";
import { STATUS_MEANINGS } from "../../src/log/vocabularies/meanings";
import { sheetOf } from "./sheets";

const HEADINGS = ["Date", "Serial", "Hydro", "Start psi", "End psi", "Mix", "Method", "Status"];
const row = (method: string, status: string) => ["2026-10-05", "K101", "2024-05", 500, 3000, "EAN32", method, status]; // prettier-ignore
const LOG = sheetOf(
  [
    HEADINGS,
    row("premix", "zorbled"),
    row("Gizmo", "Zorbled"),
    row("premix", "fine"),
    row("premix", "zorbled 2026-01"),
  ],
  { name: "Fills" },
);

describe("words that nobody knows", () => {
  it("are asked once each, with every cell, the word of most cells first", () => {
    const questions = wordQuestions(readLog([LOG]));
    expect(questions.map(({ field, word, cells }) => [field, word, cells.length])).toEqual([
      ["status", "zorbled", 3],
      ["method", "Gizmo", 1],
    ]);
    expect(questions[0]!.choices).toEqual([...STATUS_MEANINGS, "nothing"]);
    expect(questions[0]!.cells[0]).toEqual({ sheet: "Fills", row: 1, column: 7 });
  });

  it.each([...STATUS_MEANINGS])("mean what the shop says: %s", (means) => {
    const log = readLog([LOG], { words: [{ field: "status", word: "zorbled", means }] });
    expect(wordQuestions(log).map(({ word }) => word)).toEqual(["Gizmo"]);
    expect(log.fills[0]!.cylinderInRow!.fields.status).toMatchObject({
      kind: "value",
      value: { meaning: means },
    });
  });

  it("mean nothing where the shop says so, and are asked no more", () => {
    const words = [
      { field: "status", word: "zorbled", means: "nothing" },
      { field: "method", word: "gizmo", means: "nothing" },
    ];
    const log = readLog([LOG], { words });
    expect(wordQuestions(log)).toEqual([]);
    expect(log.fills[1]!.fields.method.kind).toBe("blank");
  });

  it("of the tables keep their meaning, whatever the shop says", () => {
    const said = [{ field: "status", word: "condemned", means: "fine" }];
    const log = readLog([sheetOf([HEADINGS, row("premix", "condemned")], { name: "Fills" })], {
      words: said,
    });
    expect(log.fills[0]!.cylinderInRow!.fields.status).toMatchObject({
      value: { meaning: "out of service" },
    });
  });
});
