import type { CellStyle } from "../../../sheet/cellStyle";
import type { ConditionDraft } from "../../../sheet/draft/draft";
import { MARK_LOOK } from "../../marking";
import { escapeXml } from "../xml";
import { BUILT_IN_NUMBERS } from "./numberFormats";

/** The first number that a file may give to formats of its own. */
const FIRST_OWN_FORMAT = 164;
const USUAL_SIZE_PT = 11;
const BASE_FONT = `<font><sz val="${USUAL_SIZE_PT}"/><name val="Calibri"/><family val="2"/></font>`;
const BASE_FILLS = [
  `<fill><patternFill patternType="none"/></fill>`,
  `<fill><patternFill patternType="gray125"/></fill>`,
];

const BASE_BORDER = `<border><left/><right/><top/><bottom/><diagonal/></border>`;

/** Numbers the looks of cells as they come, and writes the part that says what the numbers mean. */
export class StyleNumbers {
  private readonly fonts = new Numbering([BASE_FONT]);
  private readonly fills = new Numbering(BASE_FILLS);
  private readonly borders = new Numbering([BASE_BORDER]);
  private readonly formats = new Numbering([]);
  private readonly looks = new Numbering([lookXml(0, 0, 0, 0, "")]);
  private readonly overlays = new Numbering([]);
  private readonly byFormat = new Map<CellStyle | undefined, Map<string, number>>();

  /** The look of marked cells among those that lie over others. */
  markNumber(): number {
    return this.overlays.numberOf(MARK_XML);
  }

  /** A look that a condition lays over a cell's own. */
  conditionNumber({ fontColour, fill }: ConditionDraft["look"]): number {
    return this.overlays.numberOf(
      `<dxf><font><b/><color rgb="${argb(fontColour)}"/></font>` +
        `<fill><patternFill><bgColor rgb="${argb(fill)}"/></patternFill></fill></dxf>`,
    );
  }

  numberOf(style: CellStyle | undefined, format: string | undefined): number {
    if (style === undefined && format === undefined) return 0;
    let known = this.byFormat.get(style);
    if (!known) this.byFormat.set(style, (known = new Map()));
    const key = format ?? "";
    let number = known.get(key);
    if (number === undefined) known.set(key, (number = this.define(style ?? {}, key)));
    return number;
  }

  xml(): string {
    const formats = this.formats.entries.map(
      (code, index) => `<numFmt numFmtId="${FIRST_OWN_FORMAT + index}" formatCode="${escapeXml(code)}"/>`,
    );
    return (
      `<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">` +
      (formats.length > 0 ? list("numFmts", formats) : "") +
      list("fonts", this.fonts.entries) +
      list("fills", this.fills.entries) +
      list("borders", this.borders.entries) +
      list("cellStyleXfs", [`<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>`]) +
      list("cellXfs", this.looks.entries) +
      list("cellStyles", [`<cellStyle name="Normal" xfId="0" builtinId="0"/>`]) +
      (this.overlays.entries.length > 0 ? list("dxfs", this.overlays.entries) : "") +
      `</styleSheet>`
    );
  }

  private define(style: CellStyle, format: string): number {
    const font = this.fonts.numberOf(fontXml(style));
    const fill = this.fills.numberOf(style.fill ? fillXml(style.fill) : BASE_FILLS[0]!);
    const border = this.borders.numberOf(style.lineBelow ? borderXml(style.lineBelow) : BASE_BORDER);
    return this.looks.numberOf(lookXml(this.formatNumber(format), font, fill, border, alignmentXml(style)));
  }

  private formatNumber(format: string): number {
    if (format === "" || format.toLowerCase() === "general") return 0;
    return BUILT_IN_NUMBERS.get(format) ?? FIRST_OWN_FORMAT + this.formats.numberOf(format);
  }
}

/** What a mark lays over a cell's own look; of such fills the background is the colour that shows. */
const MARK_XML =
  `<dxf><font><b/><u/><color rgb="${argb(MARK_LOOK.fontColour)}"/></font>` +
  `<fill><patternFill><bgColor rgb="${argb(MARK_LOOK.fill)}"/></patternFill></fill></dxf>`;

/** Gives each different text a number, in the order of their coming. */
class Numbering {
  readonly entries: string[];
  private readonly numbers: Map<string, number>;

  constructor(entries: readonly string[]) {
    this.entries = [...entries];
    this.numbers = new Map(entries.map((entry, index) => [entry, index]));
  }

  numberOf(entry: string): number {
    const known = this.numbers.get(entry);
    if (known !== undefined) return known;
    this.numbers.set(entry, this.entries.length);
    return this.entries.push(entry) - 1;
  }
}

function list(name: string, entries: readonly string[]): string {
  return `<${name} count="${entries.length}">${entries.join("")}</${name}>`;
}

function lookXml(format: number, font: number, fill: number, border: number, alignment: string): string {
  const apply =
    (format > 0 ? ` applyNumberFormat="1"` : "") +
    (font > 0 ? ` applyFont="1"` : "") +
    (fill > 0 ? ` applyFill="1"` : "") +
    (border > 0 ? ` applyBorder="1"` : "") +
    (alignment ? ` applyAlignment="1"` : "");
  const head = `<xf numFmtId="${format}" fontId="${font}" fillId="${fill}" borderId="${border}" xfId="0"${apply}`;
  return alignment ? `${head}>${alignment}</xf>` : `${head}/>`;
}

function fontXml({ bold, italic, underline, strike, sizePt = USUAL_SIZE_PT, fontColour }: CellStyle): string {
  return (
    "<font>" +
    (bold ? "<b/>" : "") +
    (italic ? "<i/>" : "") +
    (strike ? "<strike/>" : "") +
    (underline ? "<u/>" : "") +
    `<sz val="${sizePt}"/>` +
    (fontColour ? `<color rgb="${argb(fontColour)}"/>` : "") +
    `<name val="Calibri"/><family val="2"/></font>`
  );
}

function fillXml(colour: string): string {
  return `<fill><patternFill patternType="solid"><fgColor rgb="${argb(colour)}"/><bgColor indexed="64"/></patternFill></fill>`;
}

function borderXml(colour: string): string {
  return `<border><left/><right/><top/><bottom style="thin"><color rgb="${argb(colour)}"/></bottom><diagonal/></border>`;
}

function alignmentXml({ horizontal, vertical, wrap, indent }: CellStyle): string {
  if (!horizontal && !vertical && !wrap && !indent) return "";
  return (
    "<alignment" +
    (horizontal ? ` horizontal="${horizontal}"` : "") +
    (vertical ? ` vertical="${vertical}"` : "") +
    (wrap ? ` wrapText="1"` : "") +
    (indent ? ` indent="${indent}"` : "") +
    "/>"
  );
}

/** `FFRRGGBB`; what is no colour is written black rather than breaking the file. */
function argb(colour: string): string {
  return /^#[0-9a-f]{6}$/i.test(colour) ? `FF${colour.slice(1).toUpperCase()}` : "FF000000";
}
