import { draftValue, type ChartDraft, type SheetDraft } from "../../../sheet/draft/draft";
import type { Area, CellValue } from "../../../sheet/sheet";

/** A chart's figures, taken from the sheet it stands on. */
export interface ChartFigures {
  readonly categories: readonly CellValue[];
  readonly series: readonly {
    readonly name: string;
    readonly colour: string;
    readonly line: boolean;
    readonly x: readonly CellValue[];
    readonly values: readonly number[];
  }[];
}

export function figuresOf({ series }: ChartDraft, sheet: SheetDraft): ChartFigures {
  return {
    categories: series[0] ? columnOf(series[0].categories, sheet) : [],
    series: series.map(({ name, colour, line = false, categories, values }) => ({
      name,
      colour,
      line,
      x: columnOf(categories, sheet),
      values: columnOf(values, sheet).map(Number),
    })),
  };
}

function columnOf({ firstRow, lastRow, firstColumn }: Area, { rows }: SheetDraft): readonly CellValue[] {
  return rows.slice(firstRow, lastRow + 1).map(({ cells }) => draftValue(cells[firstColumn]));
}
