import { Frame, PLOT, xOf, yOf, type PictureProps } from "./frame";
import { scaleFor } from "./scale";

/** Points of x against y; a series may be a line. */
export function Dots({ figures: { series }, axes, says, className }: PictureProps) {
  const across = scaleFor(
    series.flatMap(({ x }) => x.map(Number)),
    false,
  );
  const up = scaleFor(
    series.flatMap(({ values }) => values),
    false,
  );
  return (
    <Frame says={says} className={className} axes={axes} scale={up}>
      {across.ticks.map((tick) => (
        <text key={tick} x={xOf(across.at(tick))} y={PLOT.bottom + 13} textAnchor="middle">
          {tick}
        </text>
      ))}
      {series.map(({ name, colour, line, x, values }) => {
        const points = values.map((value, at) => [xOf(across.at(Number(x[at]))), yOf(up.at(value))] as const);
        if (line) {
          const ordered = [...points].sort(([one], [other]) => one - other);
          return (
            <polyline
              key={name}
              points={ordered.map((point) => point.join()).join(" ")}
              fill="none"
              stroke={colour}
              strokeWidth={1.5}
            />
          );
        }
        // One path for all: of a busy month there are thousands. A line of no length with round ends is a dot.
        return (
          <path
            key={name}
            data-figure=""
            d={points.map(([cx, cy]) => `M${cx} ${cy}h0`).join("")}
            stroke={colour}
            strokeWidth={5}
            strokeLinecap="round"
          />
        );
      })}
    </Frame>
  );
}
