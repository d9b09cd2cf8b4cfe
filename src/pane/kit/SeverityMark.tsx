import { makeStyles } from "@fluentui/react-components";
import type { CSSProperties, ReactElement } from "react";
import type { Severity } from "../../audit/judge/finding";
import { SEVERITY_COLOURS } from "../theme";

export type Mark = Severity | "not checked" | "accepted";

/** A word first, then a shape; the colour only repeats them. */
export const SEVERITY_WORDS: Readonly<Record<Mark, string>> = {
  stop: "Stop",
  breach: "Breach",
  warn: "Warn",
  note: "Note",
  "not checked": "Not checked",
  accepted: "Accepted",
};

const SHAPES: Readonly<Record<Mark, ReactElement>> = {
  stop: <path d="M5 1h6l4 4v6l-4 4H5l-4-4V5z" fill="currentColor" />,
  breach: <path d="M8 .8 15.2 8 8 15.2.8 8z" fill="currentColor" />,
  warn: (
    <path d="M8 2 14.6 13.8H1.4z" fill="none" stroke="currentColor" strokeWidth="2" strokeLinejoin="round" />
  ),
  note: <circle cx="8" cy="8" r="5.5" fill="none" stroke="currentColor" strokeWidth="2" />,
  "not checked": (
    <rect
      x="2"
      y="2"
      width="12"
      height="12"
      fill="none"
      stroke="currentColor"
      strokeWidth="2"
      strokeDasharray="3 2.4"
    />
  ),
  accepted: <path d="M2 8.6 6.2 13 14 3.4" fill="none" stroke="currentColor" strokeWidth="2" />,
};

const useStyles = makeStyles({
  mark: {
    width: "14px",
    height: "14px",
    flexShrink: 0,
    display: "block",
    color: "var(--mark)",
    "@media (forced-colors: active)": { color: "CanvasText" },
  },
});

/** The shape of a severity; the word stands beside it, or is given to the screen reader by whoever shows it. */
export function SeverityMark({ mark }: { mark: Mark }) {
  const style = { "--mark": SEVERITY_COLOURS[mark] } as CSSProperties;
  return (
    <svg viewBox="0 0 16 16" className={useStyles().mark} style={style} aria-hidden="true">
      {SHAPES[mark]}
    </svg>
  );
}
