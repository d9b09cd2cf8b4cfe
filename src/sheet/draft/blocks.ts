import type { CellStyle } from "../cellStyle";
import type { ChartDraft, DraftCell, SeriesDraft } from "./draft";

/** What a report sheet is built of, from top to bottom. */
export type Block = TextBlock | FactsBlock | TableBlock;

/** A heading, or sentences, each across the sheet. */
export interface TextBlock {
  readonly kind: "title" | "section" | "text" | "quiet" | "caution";
  readonly lines: readonly string[];
}

/** A label and what there is to say of it, line by line. */
export interface FactsBlock {
  readonly kind: "facts";
  readonly facts: readonly (readonly [label: string, fact: DraftCell])[];
}

/** A table with filters on its headings; cells without a look of their own look as their column does. */
export interface TableBlock {
  readonly kind: "table";
  /** As `TableDraft` has it. */
  readonly name: string;
  readonly columns: readonly TableColumn[];
  readonly rows: readonly (readonly DraftCell[])[];
  /** What is said in place of a table without rows. */
  readonly empty: string;
  /** Rows below that are not part of it: sums. */
  readonly below?: readonly (readonly DraftCell[])[];
  /** Drawn above it. */
  readonly chart?: TableChart;
}

export interface TableColumn {
  readonly heading: string;
  readonly format?: string;
  readonly style?: CellStyle;
  /** Longer texts are wrapped; 40 unless said. */
  readonly mostCharacters?: number;
  /** Room that it has whatever stands in it. */
  readonly leastCharacters?: number;
}

/** A chart of a table's figures; columns by their place in the table. */
export interface TableChart extends Pick<ChartDraft, "kind" | "title" | "axes" | "says" | "step"> {
  readonly rowsHigh: number;
  readonly series: readonly ChartSeries[];
}

export interface ChartSeries extends Pick<SeriesDraft, "name" | "colour" | "line"> {
  readonly categories: number;
  readonly values: number;
}
