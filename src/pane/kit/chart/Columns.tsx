import { Frame, PLOT, xOf, yOf, type PictureProps } from "./frame";
import { scaleFor } from "./scale";

const GAP = 0.3;

/** Columns over categories, the series of each on top of one another. */
export function Columns({ figures: { categories, series }, axes, says, className }: PictureProps) {
  const heights = categories.map((_, at) => series.reduce((sum, { values }) => sum + (values[at] ?? 0), 0));
  const scale = scaleFor(heights, true);
  const wide = 1 / categories.length;
  return (
    <Frame says={says} className={className} axes={axes} scale={scale}>
      {categories.map((category, at) => {
        let below = 0;
        return (
          <g key={at}>
            {series.map(({ name, colour, values }) => {
              const [from, to] = [below, below + (values[at] ?? 0)];
              below = to;
              const top = yOf(scale.at(to));
              return (
                <rect
                  key={name}
                  data-figure=""
                  x={xOf((at + GAP / 2) * wide)}
                  width={xOf((at + 1 - GAP / 2) * wide) - xOf((at + GAP / 2) * wide)}
                  y={top}
                  height={yOf(scale.at(from)) - top}
                  fill={colour}
                />
              );
            })}
            <text x={xOf((at + 0.5) * wide)} y={PLOT.bottom + 13} textAnchor="middle">
              {String(category)}
            </text>
          </g>
        );
      })}
    </Frame>
  );
}
