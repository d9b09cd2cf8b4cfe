import type { WorkbookContent } from "../content";
import { FileFault } from "../fault";
import { LIMITS } from "../limits";
import type { Pace } from "../pace";
import { RowGatherer } from "../rows";
import { decodeText } from "./decodeText";
import { findDelimiter } from "./delimiter";

/** Rows between two looks at the clock. */
const ROWS_PER_STEP = 500;

/**
 * Reads delimited text as one sheet. Every cell stays the text it is: what looks like a
 * number, a date or a formula is for whoever reads it to judge.
 */
export async function openCsv(bytes: Uint8Array, sheetName: string, pace: Pace): Promise<WorkbookContent> {
  const { text, delimiter } = withDelimiter(decodeText(bytes));
  pace.total = text.length;
  const rows = new RowGatherer({ cells: LIMITS.cells });
  const reader = new RowReader(text, delimiter);
  for (let row = 0, before = 0; !reader.atEnd; row++) {
    rows.beginRow(row, false, undefined);
    reader.readRow((column, value) =>
      rows.addCell(column, value === "" ? null : value, undefined, undefined),
    );
    rows.endRow();
    if (row % ROWS_PER_STEP === 0) {
      await pace.step(reader.at - before);
      before = reader.at;
    }
  }
  const sheet = {
    name: sheetName || "Sheet1",
    hidden: false,
    dateSystem: 1900 as const,
    rows: rows.finish(),
    merges: [],
    columns: [],
    frozenRows: 0,
    frozenColumns: 0,
  };
  return { sheets: [sheet], settings: new Map(), leftOut: [] };
}

/** A first line `sep=;`, as spreadsheets write and obey it, is no row. */
function withDelimiter(text: string): { text: string; delimiter: string } {
  const said = /^"?sep=(.)"?(?:\r\n|\r|\n)/i.exec(text);
  return said
    ? { text: text.slice(said[0].length), delimiter: said[1]! }
    : { text, delimiter: findDelimiter(text) };
}

/** Cuts text into rows and cells as RFC 4180 has them, with any line end, and with stray quotes left standing. */
class RowReader {
  at = 0;
  private line = 1;
  private readonly cellEnd: RegExp;

  constructor(
    private readonly text: string,
    delimiter: string,
  ) {
    this.cellEnd = new RegExp(`[\\r\\n${delimiter.replace(/[\\\]^-]/, "\\$&")}]`, "g");
  }

  get atEnd(): boolean {
    return this.at >= this.text.length;
  }

  readRow(take: (column: number, value: string) => void): void {
    for (let column = 0; ; column++) {
      const quoted = this.text[this.at] === '"' ? this.quotedPart() : "";
      const start = this.at;
      this.cellEnd.lastIndex = start;
      const end = this.cellEnd.exec(this.text)?.index ?? this.text.length;
      if (end - start > LIMITS.textCharacters)
        throw new FileFault(`the cell in line ${this.line} has no end`);
      take(column, quoted + this.text.slice(start, end));
      this.at = end + 1;
      const mark = this.text[end];
      if (mark !== "\r" && mark !== "\n" && mark !== undefined) continue;
      if (mark === "\r" && this.text[this.at] === "\n") this.at++;
      this.line++;
      return;
    }
  }

  /** Whether a quoted cell goes over line ends and closes where no cell ends: the mark that opened it is a stray one. */
  private swallows(close: number): boolean {
    const next = this.text[close + 1];
    this.cellEnd.lastIndex = close + 1;
    const endsHere = next === undefined || this.cellEnd.exec(this.text)?.index === close + 1;
    return !endsHere && /[\r\n]/.test(this.text.slice(this.at, close));
  }

  private quotedPart(): string {
    for (let from = this.at + 1; ;) {
      const close = this.text.indexOf('"', from);
      if (close < 0 || close - this.at > LIMITS.textCharacters) {
        throw new FileFault(
          `a quotation mark opens in line ${this.line} and nothing closes it`,
          "Take it out, or close it, in a text editor.",
        );
      }
      if (this.text[close + 1] === '"') from = close + 2;
      else {
        if (this.swallows(close))
          throw new FileFault(
            `a quotation mark opens in line ${this.line} and swallows the lines after it`,
            "Take it out, or close it, in a text editor.",
          );
        const part = this.text.slice(this.at + 1, close).replaceAll('""', '"');
        this.line += part.split(/\r\n|\r|\n/).length - 1;
        this.at = close + 1;
        return part;
      }
    }
  }
}
