import { makeStyles, tokens } from "@fluentui/react-components";
import { memo } from "react";
import type { ChartDraft, SheetDraft } from "../../../sheet/draft/draft";
import { Disclosure } from "../Disclosure";
import { Columns } from "./Columns";
import { Dots } from "./Dots";
import { figuresOf, type ChartFigures } from "./figures";
import { LyingBars } from "./LyingBars";

const useStyles = makeStyles({
  figure: { margin: 0 },
  title: { fontWeight: tokens.fontWeightSemibold, marginBottom: "4px" },
  picture: {
    display: "block",
    width: "100%",
    height: "auto",
    "& text": { fontSize: "10px", fill: tokens.colorNeutralForeground2 },
    "@media (forced-colors: active)": {
      "& text": { fill: "CanvasText" },
      "& [data-figure]": { stroke: "CanvasText" },
    },
  },
  legend: {
    display: "flex",
    flexWrap: "wrap",
    gap: "2px 12px",
    fontSize: tokens.fontSizeBase200,
    listStyleType: "none",
    margin: 0,
    padding: 0,
  },
  swatch: {
    display: "inline-block",
    width: "10px",
    height: "10px",
    marginRight: "4px",
    forcedColorAdjust: "none",
  },
  table: {
    width: "100%",
    borderCollapse: "collapse",
    fontSize: tokens.fontSizeBase200,
    "& td": { textAlign: "right", padding: "2px 4px" },
    "& th": { textAlign: "left", padding: "2px 4px", fontWeight: tokens.fontWeightRegular },
    "& thead th": { fontWeight: tokens.fontWeightSemibold },
  },
  scroll: { maxHeight: "40vh", overflow: "auto" },
});

interface ChartFigureProps {
  readonly chart: ChartDraft;
  /** The sheet whose figures it draws. */
  readonly sheet: SheetDraft;
}

/** A report's chart as a picture, and the figures behind it as a table; drawn anew only with other figures. */
export const ChartFigure = memo(function ChartFigure({ chart, sheet }: ChartFigureProps) {
  const styles = useStyles();
  const figures = figuresOf(chart, sheet);
  const Picture = chart.kind === "dots" ? Dots : chart.kind === "bars" ? LyingBars : Columns;
  return (
    <figure className={styles.figure}>
      <figcaption className={styles.title}>{chart.title}</figcaption>
      <Picture axes={chart.axes} figures={figures} says={chart.says} className={styles.picture} />
      {figures.series.length > 1 && (
        <ul className={styles.legend}>
          {figures.series.map(({ name, colour }) => (
            <li key={name}>
              <span className={styles.swatch} style={{ backgroundColor: colour }} />
              {name}
            </li>
          ))}
        </ul>
      )}
      <Disclosure title="The figures">
        <div className={styles.scroll} tabIndex={0} role="region" aria-label={`Figures: ${chart.title}`}>
          <FiguresTable figures={figures} axes={chart.axes} className={styles.table} />
        </div>
      </Disclosure>
    </figure>
  );
});

function FiguresTable({
  figures: { categories, series },
  axes,
  className,
}: {
  readonly figures: ChartFigures;
  readonly axes: ChartDraft["axes"];
  readonly className: string;
}) {
  return (
    <table className={className}>
      <thead>
        <tr>
          <th scope="col">{axes[0] === "" ? "Kind" : axes[0]}</th>
          {series.map(({ name }) => (
            <th key={name} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {categories.map((category, row) => (
          <tr key={row}>
            <th scope="row">{String(category)}</th>
            {series.map(({ name, values }) => (
              <td key={name}>{values[row]}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
