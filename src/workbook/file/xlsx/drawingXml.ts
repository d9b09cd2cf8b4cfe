import type { ChartDraft } from "../../../sheet/draft/draft";
import { escapeXml } from "../xml";
import { RELATIONS } from "./names";

const PLACES = "http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing";
const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/main";
const CHART = "http://schemas.openxmlformats.org/drawingml/2006/chart";

/** The charts of one sheet, each over its cells (ECMA-376 part 1, 20.5); relation `rId1` is the first chart. */
export function drawingXml(charts: readonly ChartDraft[]): string {
  const frames = charts.map(({ place, title, says }, index) => {
    const corner = (name: string, row: number, column: number) =>
      `<xdr:${name}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;
    return (
      `<xdr:twoCellAnchor>${corner("from", place.firstRow, place.firstColumn)}${corner("to", place.lastRow + 1, place.lastColumn + 1)}` +
      `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="${index + 2}" name="${escapeXml(title)}" descr="${escapeXml(says)}"/>` +
      `<xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>` +
      `<a:graphic><a:graphicData uri="${CHART}"><c:chart xmlns:c="${CHART}" xmlns:r="${RELATIONS}" r:id="rId${index + 1}"/>` +
      `</a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>`
    );
  });
  return `<xdr:wsDr xmlns:xdr="${PLACES}" xmlns:a="${DRAWING}">${frames.join("")}</xdr:wsDr>`;
}
