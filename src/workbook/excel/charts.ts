import type { ChartDraft } from "../../sheet/draft/draft";
import { rangeOf } from "./ranges";

const TYPES = {
  columns: "ColumnClustered",
  stacked: "ColumnStacked",
  bars: "BarClustered",
  dots: "XYScatter",
} as const;

/** Puts Excel's own charts over a sheet's cells; they follow the figures behind them. */
export function writeCharts(sheet: Excel.Worksheet, charts: readonly ChartDraft[]): void {
  for (const draft of charts) writeChart(sheet, draft);
}

function writeChart(sheet: Excel.Worksheet, { kind, title, axes, step, series, place }: ChartDraft): void {
  const [first] = series;
  if (!first) return;
  const chart = sheet.charts.add(TYPES[kind], rangeOf(sheet, first.values), "Columns");
  chart.title.text = title;
  chart.legend.visible = series.length > 1;
  chart.legend.position = "Bottom";
  chart.axes.categoryAxis.title.text = axes[0];
  chart.axes.valueAxis.title.text = axes[1];
  if (step !== undefined) chart.axes.valueAxis.majorUnit = step;
  // Lying bars would start at the bottom.
  if (kind === "bars") chart.axes.categoryAxis.reversePlotOrder = true;
  series.forEach(({ name, categories, values, colour, line }, index) => {
    const drawn = index === 0 ? chart.series.getItemAt(0) : chart.series.add(name);
    drawn.name = name;
    drawn.setValues(rangeOf(sheet, values));
    drawn.setXAxisValues(rangeOf(sheet, categories));
    if (kind !== "dots") drawn.format.fill.setSolidColor(colour);
    else if (line) {
      drawn.chartType = "XYScatterLinesNoMarkers";
      drawn.format.line.color = colour;
    } else {
      drawn.markerBackgroundColor = colour;
      drawn.markerForegroundColor = colour;
    }
  });
  chart.setPosition(
    corner(sheet, place.firstRow, place.firstColumn),
    corner(sheet, place.lastRow, place.lastColumn),
  );
}

function corner(sheet: Excel.Worksheet, row: number, column: number): Excel.Range {
  return sheet.getRangeByIndexes(row, column, 1, 1);
}
