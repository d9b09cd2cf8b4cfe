import { tokens } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { ChartDraft } from "../../../sheet/draft/draft";
import type { ChartFigures } from "./figures";
import type { Scale } from "./scale";

export interface PictureProps {
  readonly figures: ChartFigures;
  readonly axes: ChartDraft["axes"];
  readonly says: string;
  readonly className: string;
}

/** The picture's own measures, as wide as the pane at its narrowest. */
export const WIDTH = 320;
export const HEIGHT = 200;
export const PLOT = { left: 40, right: WIDTH - 8, top: 8, bottom: HEIGHT - 34 };

export const yOf = (share: number) => PLOT.bottom - share * (PLOT.bottom - PLOT.top);
export const xOf = (share: number) => PLOT.left + share * (PLOT.right - PLOT.left);

interface FrameProps {
  readonly says: string;
  readonly className: string;
  readonly axes: ChartDraft["axes"];
  readonly scale: Scale;
  readonly children: ReactNode;
}

/** Axes with their names, and lines across at the round figures. */
export function Frame({ says, className, axes, scale, children }: FrameProps) {
  const middle = (PLOT.top + PLOT.bottom) / 2;
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={says} className={className}>
      {scale.ticks.map((tick) => (
        <g key={tick}>
          <line
            x1={PLOT.left}
            x2={PLOT.right}
            y1={yOf(scale.at(tick))}
            y2={yOf(scale.at(tick))}
            stroke={tokens.colorNeutralStroke2}
          />
          <text x={PLOT.left - 4} y={yOf(scale.at(tick)) + 3} textAnchor="end">
            {tick}
          </text>
        </g>
      ))}
      {children}
      <text x={(PLOT.left + PLOT.right) / 2} y={HEIGHT - 4} textAnchor="middle">
        {axes[0]}
      </text>
      <text x={10} y={middle} textAnchor="middle" transform={`rotate(-90 10 ${middle})`}>
        {axes[1]}
      </text>
    </svg>
  );
}
