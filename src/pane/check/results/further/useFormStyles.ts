import { makeStyles, tokens } from "@fluentui/react-components";

/** How the small forms and their answers look. */
export const useFormStyles = makeStyles({
  form: {
    display: "flex",
    flexDirection: "column",
    gap: "8px",
    margin: "2px 0 8px",
    "& select, & input": { minWidth: 0, width: "100%" },
  },
  text: { margin: "2px 0 6px", fontSize: tokens.fontSizeBase200, lineHeight: tokens.lineHeightBase200 },
  button: { alignSelf: "flex-start" },
  answer: { display: "flex", flexDirection: "column", gap: "6px", marginBottom: "8px" },
  line: { margin: 0 },
  table: {
    width: "100%",
    borderCollapse: "collapse",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    backgroundColor: tokens.colorNeutralBackground1,
    "& caption": { textAlign: "left", padding: "2px 0" },
    "& th, & td": {
      padding: "3px 6px",
      borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
      textAlign: "right",
      verticalAlign: "top",
      whiteSpace: "nowrap",
    },
    "& th:first-child, & td:first-child": { textAlign: "left", whiteSpace: "normal" },
    "& tbody th": { fontWeight: tokens.fontWeightRegular },
  },
});
