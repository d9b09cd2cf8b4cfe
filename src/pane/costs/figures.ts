import { makeStyles, tokens } from "@fluentui/react-components";
import { UNIT_NAMES, volume, type Units } from "../../gas/units";

/** `1,234.50`, in whatever money the price list is in. */
export function money(amount: number): string {
  const shown = amount.toLocaleString("en-US", { minimumFractionDigits: 2, maximumFractionDigits: 2 });
  return shown === "-0.00" ? "0.00" : shown.replace("-", "−");
}

/** `1,634 cu ft`. */
export function gas(litres: number, units: Units): string {
  return `${Math.round(volume(litres, units)).toLocaleString("en-US")} ${UNIT_NAMES[units].volume}`.replace(
    "-",
    "−",
  );
}

/** Tables of figures as every part of this area has them. */
export const useTableStyles = makeStyles({
  scroll: { overflowX: "auto", maxWidth: "100%" },
  table: {
    width: "100%",
    borderCollapse: "collapse",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    backgroundColor: tokens.colorNeutralBackground1,
    "& th": {
      textAlign: "right",
      fontWeight: tokens.fontWeightSemibold,
      verticalAlign: "bottom",
      color: tokens.colorNeutralForeground2,
    },
    "& th, & td": {
      padding: "4px 5px",
      textAlign: "right",
      borderBottom: `1px solid ${tokens.colorNeutralStroke3}`,
      overflowWrap: "normal",
      whiteSpace: "nowrap",
    },
    "& th:first-child, & td:first-child": { textAlign: "left", whiteSpace: "normal" },
    "& tbody th": { fontWeight: tokens.fontWeightRegular, color: tokens.colorNeutralForeground1 },
    "& tfoot td, & tfoot th": { fontWeight: tokens.fontWeightSemibold, borderBottom: "none" },
  },
  small: {
    margin: "4px 0 0",
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
    color: tokens.colorNeutralForeground3,
  },
});
