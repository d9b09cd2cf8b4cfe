import { makeStyles, tokens } from "@fluentui/react-components";

/** What a wet finger hits. */
export const TOUCH = "44px";

export const useFillStyles = makeStyles({
  area: { padding: "10px 12px 16px", display: "flex", flexDirection: "column", gap: "12px", flexGrow: 1, minWidth: 0 },
  stage: { display: "flex", flexDirection: "column", gap: "12px", minWidth: 0 },
  title: { margin: 0, fontSize: tokens.fontSizeBase400, fontWeight: tokens.fontWeightSemibold, lineHeight: tokens.lineHeightBase400 },
  heading: { margin: "4px 0 0", fontSize: tokens.fontSizeBase300, fontWeight: tokens.fontWeightSemibold },
  text: { margin: 0 },
  small: {
    margin: 0,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
  list: { margin: 0, paddingLeft: "18px", display: "flex", flexDirection: "column", gap: "2px" },
  pair: { display: "grid", gridTemplateColumns: "minmax(0, 1fr) minmax(0, 1fr)", gap: "10px", alignItems: "end" },
  /** Hints of different length stand below. */
  pairAtop: {
    display: "grid",
    gridTemplateColumns: "minmax(0, 1fr) minmax(0, 1fr)",
    gap: "10px",
    alignItems: "start",
  },
  button: { width: "100%", minHeight: TOUCH },
  half: { minHeight: TOUCH, flexGrow: 1 },
  row: { display: "flex", flexWrap: "wrap", gap: "8px" },
  card: {
    padding: "10px 12px",
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: tokens.colorNeutralBackground1,
    border: `1px solid ${tokens.colorNeutralStroke2}`,
    display: "flex",
    flexDirection: "column",
    gap: "6px",
    minWidth: 0,
  },
  table: {
    borderCollapse: "collapse",
    width: "100%",
    // Narrow as it is, no word is broken for a table's sake.
    overflowWrap: "break-word",
    "& th": { textAlign: "left", verticalAlign: "bottom", fontWeight: tokens.fontWeightSemibold },
    "& td, & th": { padding: "4px 8px 4px 0" },
    "& td:last-child, & th:last-child": { paddingRight: 0 },
    "& td": { verticalAlign: "top", borderTop: `1px solid ${tokens.colorNeutralStroke2}` },
    "& td:first-child": { whiteSpace: "nowrap" },
  },
  figures: {
    "& td:not(:first-child), & th:not(:first-child)": { textAlign: "right" },
  },
  whole: { whiteSpace: "nowrap" },
  facts: {
    display: "grid",
    gridTemplateColumns: "auto minmax(0, 1fr)",
    gap: "3px 10px",
    margin: 0,
    "& dt": { color: tokens.colorNeutralForeground3 },
    "& dd": { margin: 0, textAlign: "right" },
  },
}); // prettier-ignore
