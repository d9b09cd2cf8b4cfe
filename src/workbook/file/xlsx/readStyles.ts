import type { CellStyle } from "../../../sheet/cellStyle";
import type { Pace } from "../pace";
import type { Look } from "../rows";
import { attribute, flag } from "../xml";
import { readXmlPart } from "../xmlPart";
import type { ZipArchive } from "../zip";
import { colourOf, THEME_ORDER, type Theme } from "./colours";
import { BUILT_IN_FORMATS } from "./numberFormats";

export async function readTheme(archive: ZipArchive, part: string, pace: Pace): Promise<Theme> {
  const theme: (string | undefined)[] = [];
  let slot = -1;
  const open = (name: string, tag: string) => {
    const named = THEME_ORDER.indexOf(name);
    if (named >= 0) slot = named;
    else if (slot >= 0 && (name === "srgbClr" || name === "sysClr")) {
      const digits = attribute(tag, name === "sysClr" ? "lastClr" : "val");
      if (digits && /^[0-9a-f]{6}$/i.test(digits)) theme[slot] = `#${digits.toUpperCase()}`;
    }
  };
  const close = (name: string) => {
    if (THEME_ORDER.includes(name)) slot = -1;
  };
  await readXmlPart(archive, part, { open, close }, pace);
  return theme;
}

/** The looks of a workbook's cells, by style number. */
export async function readStyles(
  archive: ZipArchive,
  part: string,
  theme: Theme,
  pace: Pace,
): Promise<readonly Look[]> {
  const reader = new StylesReader(theme);
  await readXmlPart(archive, part, reader, pace);
  return reader.looks;
}

type Draft = { -readonly [Key in keyof CellStyle]: CellStyle[Key] };

const SECTIONS = ["numFmts", "fonts", "fills", "borders", "cellStyleXfs", "cellXfs", "cellStyles", "dxfs"];

class StylesReader {
  readonly looks: Look[] = [];
  private section = "";
  private readonly formats = new Map(BUILT_IN_FORMATS);
  private readonly fonts: Draft[] = [];
  private readonly fills: Draft[] = [];
  private readonly borders: Draft[] = [];
  /** Of the border being read: the sides that have a line. */
  private sides: string[] = [];
  private usualSizePt: number | undefined;
  private solid = false;

  constructor(private readonly theme: Theme) {}

  open(name: string, tag: string): void {
    if (SECTIONS.includes(name)) this.section = name;
    else if (this.section === "numFmts") this.numberFormat(tag);
    else if (this.section === "fonts") this.font(name, tag);
    else if (this.section === "fills") this.fill(name, tag);
    else if (this.section === "borders") this.border(name, tag);
    else if (this.section === "cellXfs") this.cell(name, tag);
  }

  close(name: string): void {
    if (name === this.section) this.section = "";
  }

  private numberFormat(tag: string): void {
    const code = attribute(tag, "formatCode");
    const number = Number(attribute(tag, "numFmtId"));
    if (code === undefined) return;
    if (code.toLowerCase() === "general") this.formats.delete(number);
    else this.formats.set(number, code);
  }

  private font(name: string, tag: string): void {
    const font = this.fonts.at(-1)!;
    if (name === "font") this.fonts.push({});
    else if (name === "b" && flag(tag, "val", true)) font.bold = true;
    else if (name === "i" && flag(tag, "val", true)) font.italic = true;
    else if (name === "strike" && flag(tag, "val", true)) font.strike = true;
    else if (name === "u" && attribute(tag, "val") !== "none") font.underline = true;
    else if (name === "sz") this.size(font, Number(attribute(tag, "val")));
    else if (name === "color") {
      const colour = colourOf(tag, this.theme);
      if (colour !== undefined && colour !== "#000000") font.fontColour = colour;
    }
  }

  /** What differs from the usual font, which stands first. */
  private size(font: Draft, sizePt: number): void {
    if (!(sizePt > 0)) return;
    this.usualSizePt ??= sizePt;
    if (sizePt !== this.usualSizePt) font.sizePt = sizePt;
  }

  /** A line below, where it is the only one; frames are left out. */
  private border(name: string, tag: string): void {
    if (name === "border") {
      this.borders.push({});
      this.sides = [];
    } else if (name === "color") {
      const colour = colourOf(tag, this.theme);
      const border = this.borders.at(-1)!;
      if (this.sides.length === 1 && this.sides[0] === "bottom") border.lineBelow = colour ?? "#000000";
      else delete border.lineBelow;
    } else if ((attribute(tag, "style") ?? "none") !== "none") this.sides.push(name);
  }

  private fill(name: string, tag: string): void {
    if (name === "fill") this.fills.push({});
    else if (name === "patternFill") this.solid = attribute(tag, "patternType") === "solid";
    else if (name === "fgColor" && this.solid) {
      const colour = colourOf(tag, this.theme);
      if (colour !== undefined) this.fills.at(-1)!.fill = colour;
    }
  }

  private cell(name: string, tag: string): void {
    if (name === "xf") {
      const font = this.fonts[Number(attribute(tag, "fontId") ?? 0)];
      const fill = this.fills[Number(attribute(tag, "fillId") ?? 0)];
      const border = this.borders[Number(attribute(tag, "borderId") ?? 0)];
      const format = this.formats.get(Number(attribute(tag, "numFmtId") ?? 0));
      this.looks.push({ format, style: filled({ ...font, ...fill, ...border }) });
    } else if (name === "alignment") {
      const look = this.looks.pop();
      if (look) this.looks.push({ format: look.format, style: filled({ ...look.style, ...alignment(tag) }) });
    }
  }
}

/** ECMA-376 part 1, 18.8.1. */
const MOST_INDENT = 250;

function alignment(tag: string): CellStyle {
  const style: Draft = {};
  const horizontal = attribute(tag, "horizontal");
  const vertical = attribute(tag, "vertical");
  if (horizontal === "left" || horizontal === "right" || horizontal === "center")
    style.horizontal = horizontal;
  if (horizontal === "centerContinuous") style.horizontal = "center";
  if (vertical === "top" || vertical === "center") style.vertical = vertical;
  if (flag(tag, "wrapText")) style.wrap = true;
  const indent = Number(attribute(tag, "indent") ?? 0);
  if (indent > 0 && indent <= MOST_INDENT) style.indent = indent;
  return style;
}

function filled(style: CellStyle): CellStyle | undefined {
  return Object.keys(style).length === 0 ? undefined : style;
}
