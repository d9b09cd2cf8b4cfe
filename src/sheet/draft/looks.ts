import type { CellStyle } from "../cellStyle";

const PETROL = "#0D5A71";
const INK = "#22262A";
const QUIET = "#5A5F63";
const SAND = "#F4F1EB";
const MIST = "#DCE9EC";
const LINE = "#CFC8BC";

/** How reports look, in every host alike. Severities are words first: their colours only repeat them. */
export const LOOKS = {
  title: { bold: true, sizePt: 18, fontColour: PETROL, vertical: "center" },
  section: { bold: true, sizePt: 13, fontColour: PETROL },
  text: { wrap: true, vertical: "top" },
  quiet: { fontColour: QUIET, wrap: true, vertical: "top" },
  caution: { fill: SAND, fontColour: INK, wrap: true, vertical: "center" },
  label: { bold: true, wrap: true, vertical: "top" },
  sum: { bold: true, vertical: "top" },
  heading: { bold: true, fill: MIST, lineBelow: PETROL, wrap: true },
  body: { lineBelow: LINE, vertical: "top" },
  /** Left for a person to write in. */
  fillIn: { fill: SAND, lineBelow: PETROL, wrap: true, vertical: "top" },
  stop: { bold: true, fontColour: "#A3172B" },
  breach: { bold: true, fontColour: "#9A4204" },
  warn: { bold: true, fontColour: "#6F5A00" },
  note: { bold: true, fontColour: PETROL },
  link: { fontColour: PETROL, underline: true },
} as const satisfies Record<string, CellStyle>;

/** The colours of charts: told apart in grey as well. */
export const CHART_COLOURS = ["#0D5A71", "#D98F3E", "#7BB6CA", "#8A8275", "#3D4247", "#C8B98F"] as const;

/** Formats of the trade's figures, in the form of en-US. */
export const FORMATS = {
  date: "yyyy-mm-dd",
  month: "yyyy-mm",
  whole: "#,##0",
  oneDecimal: "0.0",
  twoDecimals: "0.00",
  money: "#,##0.00",
  percent: "0.0%",
} as const;
