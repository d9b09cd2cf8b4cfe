import type { CellAddress } from "../../sheet/sheet";
import { columnOf } from "../columnOf";
import type { CylinderFields, FillFields, Log, RowPlace } from "../log";
import type { Reading } from "../reading";
import { meaningsFor, VOCABULARY_OF, type FieldOfWords } from "../vocabularies/logWords";
import { phraseForm } from "../vocabularies/spelling";
import { NOTHING } from "../vocabularies/vocabulary";

/** A word that means nothing until the shop says what it means: asked once for the whole workbook. */
export interface WordQuestion {
  /** The field under which it stands first; an answer holds for every field of the same vocabulary. */
  readonly field: FieldOfWords;
  /** As it stands first. */
  readonly word: string;
  /** What it can mean; the last is `nothing`. */
  readonly choices: readonly string[];
  /** Every cell that waits for the answer. */
  readonly cells: readonly CellAddress[];
}

/** What is open about the words of a log, the word of most cells first. An answer is an `OwnWord` in the context. */
export function wordQuestions(log: Log): readonly WordQuestion[] {
  const questions = new Map<string, WordQuestion & { readonly cells: CellAddress[] }>();
  const sheets = new Map(log.sheets.map((sheet) => [sheet.name, sheet]));
  const columnFor = ({ sheet, row }: RowPlace, field: FieldOfWords): number =>
    columnOf(sheets.get(sheet)!, field, row)?.column ?? 0;
  const look = (place: RowPlace, fields: Partial<FillFields & CylinderFields>): void => {
    for (const field of FIELDS) {
      const word = openWord(fields[field]);
      if (word === undefined) continue;
      const key = `${VOCABULARY_OF[field]} ${phraseForm(word)}`;
      const question = questions.get(key) ?? {
        field,
        word,
        choices: [...meaningsFor(field), NOTHING],
        cells: [],
      };
      question.cells.push({ sheet: place.sheet, row: place.row, column: columnFor(place, field) });
      questions.set(key, question);
    }
  };
  for (const fill of log.fills) {
    look(fill, fill.fields);
    if (fill.cylinderInRow) look(fill.cylinderInRow, fill.cylinderInRow.fields);
  }
  for (const cylinder of log.cylinders) look(cylinder, cylinder.fields);
  return [...questions.values()].sort((one, other) => other.cells.length - one.cells.length);
}

const FIELDS = Object.keys(VOCABULARY_OF) as FieldOfWords[];

/** The word that keeps a cell from being read, if a word does. */
function openWord(reading: Reading<unknown> | undefined): string | undefined {
  if (reading?.kind === "unknown word") return reading.word;
  return reading?.kind === "ambiguous" ? reading.word : undefined;
}
