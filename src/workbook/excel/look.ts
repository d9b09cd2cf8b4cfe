import type { CellStyle } from "../../sheet/cellStyle";

const HORIZONTAL = { left: "Left", center: "Center", right: "Right" } as const;
const VERTICAL = { top: "Top", center: "Center", bottom: "Bottom" } as const;

/** Makes a range look so; what a style does not say stays as it is. */
export function applyStyle({ format }: Excel.Range, style: CellStyle): void {
  if (style.bold) format.font.bold = true;
  if (style.italic) format.font.italic = true;
  if (style.underline) format.font.underline = "Single";
  if (style.sizePt !== undefined) format.font.size = style.sizePt;
  if (style.fontColour) format.font.color = style.fontColour;
  if (style.fill) format.fill.color = style.fill;
  if (style.horizontal) format.horizontalAlignment = HORIZONTAL[style.horizontal];
  if (style.indent) format.indentLevel = style.indent;
  if (style.vertical) format.verticalAlignment = VERTICAL[style.vertical];
  if (style.wrap) format.wrapText = true;
  if (style.lineBelow) {
    for (const side of ["EdgeBottom", "InsideHorizontal"] as const) {
      const border = format.borders.getItem(side);
      border.style = "Continuous";
      border.color = style.lineBelow;
    }
  }
}
