import type { ChartDraft, SeriesDraft } from "../../../sheet/draft/draft";
import type { Area, CellValue } from "../../../sheet/sheet";
import type { SheetContent } from "../content";
import { escapeXml } from "../xml";
import { fixedArea } from "./names";

const CHART = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/main";
const INK = "22262A";
const GRID_LINE = "DED8CD";
const CATEGORY_AXIS = 1;
const VALUE_AXIS = 2;

/** A chart's part (ECMA-376 part 1, 21.2); the figures stand in it as well as in the sheet, for programs that only draw. */
export function chartXml(chart: ChartDraft, sheet: SheetContent): string {
  const legend = chart.series.length > 1;
  return (
    `<c:chartSpace xmlns:c="${CHART}" xmlns:a="${DRAWING}"><c:roundedCorners val="0"/><c:chart>` +
    `<c:title>${richText(chart.title, 1200, true)}<c:overlay val="0"/></c:title><c:autoTitleDeleted val="0"/>` +
    `<c:plotArea><c:layout/>${chart.kind === "dots" ? dotsXml(chart, sheet) : barsXml(chart, sheet)}</c:plotArea>` +
    (legend ? `<c:legend><c:legendPos val="b"/><c:overlay val="0"/>${textLook(900)}</c:legend>` : "") +
    `<c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart>` +
    `<c:spPr><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill><a:ln><a:noFill/></a:ln></c:spPr></c:chartSpace>`
  );
}

function barsXml({ kind, axes, step, series }: ChartDraft, sheet: SheetContent): string {
  const stacked = kind === "stacked";
  const lying = kind === "bars";
  const bars = series.map(
    (each, index) =>
      `<c:ser>${seriesHead(each, index)}<c:spPr>${solid(each.colour)}</c:spPr><c:invertIfNegative val="0"/>` +
      `<c:cat>${textsXml(each.categories, sheet)}</c:cat><c:val>${numbersXml(each.values, sheet)}</c:val></c:ser>`,
  );
  return (
    `<c:barChart><c:barDir val="${lying ? "bar" : "col"}"/><c:grouping val="${stacked ? "stacked" : "clustered"}"/>` +
    `<c:varyColors val="0"/>${bars.join("")}<c:gapWidth val="60"/>${stacked ? `<c:overlap val="100"/>` : ""}` +
    `<c:axId val="${CATEGORY_AXIS}"/><c:axId val="${VALUE_AXIS}"/></c:barChart>` +
    // Lying bars would start at the bottom.
    `<c:catAx><c:axId val="${CATEGORY_AXIS}"/><c:scaling><c:orientation val="${lying ? "maxMin" : "minMax"}"/></c:scaling>` +
    `<c:delete val="0"/><c:axPos val="${lying ? "l" : "b"}"/>${axisTitle(axes[0])}<c:numFmt formatCode="General" sourceLinked="0"/>` +
    `<c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/>${axisLine()}${textLook(900)}` +
    `<c:crossAx val="${VALUE_AXIS}"/><c:crosses val="autoZero"/><c:auto val="0"/><c:lblAlgn val="ctr"/><c:lblOffset val="100"/><c:tickLblSkip val="1"/></c:catAx>` +
    valueAxis(VALUE_AXIS, CATEGORY_AXIS, lying ? "b" : "l", axes[1], lying ? "max" : "autoZero", step)
  );
}

function dotsXml({ axes, series }: ChartDraft, sheet: SheetContent): string {
  const dots = series.map(
    (each, index) =>
      `<c:ser>${seriesHead(each, index)}<c:spPr><a:ln w="19050">${each.line ? solid(each.colour) : "<a:noFill/>"}</a:ln></c:spPr>` +
      `<c:marker>${each.line ? `<c:symbol val="none"/>` : dot(each.colour)}</c:marker>` +
      `<c:xVal>${numbersXml(each.categories, sheet)}</c:xVal><c:yVal>${numbersXml(each.values, sheet)}</c:yVal><c:smooth val="0"/></c:ser>`,
  );
  return (
    `<c:scatterChart><c:scatterStyle val="lineMarker"/><c:varyColors val="0"/>${dots.join("")}` +
    `<c:axId val="${CATEGORY_AXIS}"/><c:axId val="${VALUE_AXIS}"/></c:scatterChart>` +
    valueAxis(CATEGORY_AXIS, VALUE_AXIS, "b", axes[0], "autoZero") +
    valueAxis(VALUE_AXIS, CATEGORY_AXIS, "l", axes[1], "autoZero")
  );
}

function valueAxis(
  id: number,
  across: number,
  place: string,
  title: string,
  crosses: string,
  step?: number,
): string {
  return (
    `<c:valAx><c:axId val="${id}"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/>` +
    `<c:axPos val="${place}"/><c:majorGridlines><c:spPr><a:ln w="6350">${solid(`#${GRID_LINE}`)}</a:ln></c:spPr></c:majorGridlines>` +
    `${axisTitle(title)}<c:numFmt formatCode="General" sourceLinked="0"/><c:majorTickMark val="none"/>` +
    `<c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/>${axisLine()}${textLook(900)}` +
    `<c:crossAx val="${across}"/><c:crosses val="${crosses}"/><c:crossBetween val="${id === VALUE_AXIS ? "between" : "midCat"}"/>` +
    `${step === undefined ? "" : `<c:majorUnit val="${step}"/>`}</c:valAx>`
  );
}

function seriesHead({ name }: SeriesDraft, index: number): string {
  return `<c:idx val="${index}"/><c:order val="${index}"/><c:tx><c:v>${escapeXml(name)}</c:v></c:tx>`;
}

function textsXml(area: Area, sheet: SheetContent): string {
  const points = columnOf(area, sheet).map((value) => (value === null ? undefined : String(value)));
  return `<c:strRef><c:f>${escapeXml(fixedArea(sheet.name, area))}</c:f><c:strCache>${pointsXml(points)}</c:strCache></c:strRef>`;
}

function numbersXml(area: Area, sheet: SheetContent): string {
  const points = columnOf(area, sheet).map((value) =>
    typeof value === "number" ? String(value) : undefined,
  );
  return (
    `<c:numRef><c:f>${escapeXml(fixedArea(sheet.name, area))}</c:f>` +
    `<c:numCache><c:formatCode>General</c:formatCode>${pointsXml(points)}</c:numCache></c:numRef>`
  );
}

function pointsXml(points: readonly (string | undefined)[]): string {
  const written = points.map((point, index) =>
    point === undefined ? "" : `<c:pt idx="${index}"><c:v>${escapeXml(point)}</c:v></c:pt>`,
  );
  return `<c:ptCount val="${points.length}"/>${written.join("")}`;
}

function columnOf({ firstRow, lastRow, firstColumn }: Area, { rows }: SheetContent): readonly CellValue[] {
  return Array.from(
    { length: lastRow - firstRow + 1 },
    (_blank, index) => rows[firstRow + index]?.values[firstColumn] ?? null,
  );
}

function axisTitle(text: string): string {
  return `<c:title>${richText(text, 900, false)}<c:overlay val="0"/></c:title>`;
}

function richText(text: string, size: number, bold: boolean): string {
  const look = `sz="${size}" b="${bold ? 1 : 0}"`;
  return (
    `<c:tx><c:rich><a:bodyPr/><a:p><a:pPr><a:defRPr ${look}/></a:pPr><a:r><a:rPr lang="en-US" ${look}>` +
    `${solid(`#${INK}`)}</a:rPr><a:t>${escapeXml(text)}</a:t></a:r></a:p></c:rich></c:tx>`
  );
}

function textLook(size: number): string {
  return `<c:txPr><a:bodyPr/><a:p><a:pPr><a:defRPr sz="${size}">${solid(`#${INK}`)}</a:defRPr></a:pPr><a:endParaRPr lang="en-US"/></a:p></c:txPr>`;
}

function axisLine(): string {
  return `<c:spPr><a:ln w="9525">${solid("#8A8275")}</a:ln></c:spPr>`;
}

function dot(colour: string): string {
  return `<c:symbol val="circle"/><c:size val="5"/><c:spPr>${solid(colour)}<a:ln><a:noFill/></a:ln></c:spPr>`;
}

function solid(colour: string): string {
  return `<a:solidFill><a:srgbClr val="${colour.slice(1).toUpperCase()}"/></a:solidFill>`;
}
