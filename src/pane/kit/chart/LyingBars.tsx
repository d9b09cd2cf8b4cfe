import { WIDTH, type PictureProps } from "./frame";
import { scaleFor } from "./scale";

const ROW = 30;
const FIGURE_ROOM = 30;

/** One bar below another, each under its name: names are long and the pane is narrow. */
export function LyingBars({ figures: { categories, series }, says, className }: PictureProps) {
  const [{ values, colour } = { values: [], colour: "" }] = series;
  const scale = scaleFor(values, true);
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${categories.length * ROW + 4}`}
      role="img"
      aria-label={says}
      className={className}
    >
      {categories.map((category, at) => {
        const figure = values[at] ?? 0;
        const width = Math.max(2, scale.at(figure) * (WIDTH - FIGURE_ROOM));
        return (
          <g key={at}>
            <text x={0} y={at * ROW + 11}>
              {String(category)}
            </text>
            <rect data-figure="" x={0} y={at * ROW + 15} width={width} height={9} fill={colour} />
            <text x={width + 4} y={at * ROW + 23}>
              {figure}
            </text>
          </g>
        );
      })}
    </svg>
  );
}
