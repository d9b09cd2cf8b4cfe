import { makeStyles, tokens } from "@fluentui/react-components";
import type { HousePattern } from "../../../../audit/lists/housePatterns";
import { points } from "./points";

/** In units of the drawing, which is as wide as the pane. */
const WIDTH = 290;
const ROW = 34;
const MARGIN = 12;
const AXIS = 34;

const useStyles = makeStyles({
  chart: {
    width: "100%",
    height: "auto",
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    borderRadius: tokens.borderRadiusMedium,
    color: tokens.colorNeutralForeground1,
    fontSize: "11px",
    "& text": { fill: "currentColor" },
    "@media (forced-colors: active)": { color: "CanvasText" },
  },
  zero: { stroke: "currentColor", strokeWidth: 1 },
  grid: { stroke: tokens.colorNeutralStroke1, strokeWidth: 1, strokeDasharray: "2 3" },
  bias: {
    stroke: tokens.colorBrandForeground1,
    fill: tokens.colorBrandForeground1,
    "@media (forced-colors: active)": { stroke: "CanvasText", fill: "CanvasText" },
  },
  chance: {
    stroke: tokens.colorNeutralForeground3,
    fill: tokens.colorNeutralBackground1,
    "@media (forced-colors: active)": { stroke: "CanvasText", fill: "Canvas" },
  },
});

/** A dot for each mean and a line for its span, around the line of no error; filled where it is a bias. */
export function PatternChart({ patterns }: { patterns: readonly HousePattern[] }) {
  const styles = useStyles();
  const reach = niceReach(patterns);
  const x = (value: number) => MARGIN + ((value + reach) / (2 * reach)) * (WIDTH - 2 * MARGIN);
  const height = patterns.length * ROW + AXIS;
  const bottom = height - AXIS;
  return (
    <svg
      className={styles.chart}
      viewBox={`0 0 ${WIDTH} ${height}`}
      role="img"
      aria-label={patterns.map(inWords).join(" ")}
    >
      {[-reach, -reach / 2, reach / 2, reach].map((value) => (
        <line key={value} className={styles.grid} x1={x(value)} x2={x(value)} y1={0} y2={bottom} />
      ))}
      <line className={styles.zero} x1={x(0)} x2={x(0)} y1={0} y2={bottom + 4} />
      {patterns.map((pattern, at) => {
        const { name, leastPoints, meanPoints, mostPoints, isBias } = pattern;
        const y = at * ROW + 24;
        return (
          <g key={name} className={isBias ? styles.bias : styles.chance}>
            <text x={MARGIN - 4} y={y - 9} stroke="none">
              {name}
            </text>
            <line x1={x(leastPoints)} x2={x(mostPoints)} y1={y} y2={y} strokeWidth={2} />
            <line x1={x(leastPoints)} x2={x(leastPoints)} y1={y - 3} y2={y + 3} strokeWidth={2} />
            <line x1={x(mostPoints)} x2={x(mostPoints)} y1={y - 3} y2={y + 3} strokeWidth={2} />
            <circle cx={x(meanPoints)} cy={y} r={4} strokeWidth={2} />
          </g>
        );
      })}
      {[-reach, 0, reach].map((value) => (
        <text key={value} x={x(value)} y={bottom + 14} textAnchor="middle">
          {points(value, 1)}
        </text>
      ))}
      <text x={WIDTH / 2} y={bottom + 28} textAnchor="middle">
        points analysed over ordered
      </text>
    </svg>
  );
}

/** As far as the longest span, rounded up to whole points or a half. */
function niceReach(patterns: readonly HousePattern[]): number {
  const longest = Math.max(
    ...patterns.map(({ leastPoints, mostPoints }) => Math.max(Math.abs(leastPoints), Math.abs(mostPoints))),
  );
  return Math.max(0.5, longest <= 0.5 ? 0.5 : Math.ceil(longest));
}

function inWords({ name, fills, meanPoints, leastPoints, mostPoints, isBias }: HousePattern): string {
  return `${name}: ${points(meanPoints)} points, between ${points(leastPoints)} and ${points(mostPoints)}, in ${fills} fills, ${isBias ? "a bias" : "may be chance"}.`;
}
