import {
  BooleanNumber,
  BorderStyleTypes,
  HorizontalAlign,
  type IStyleData,
  type Nullable,
  VerticalAlign,
  WrapStrategy,
} from "@univerjs/core";
import type { CellStyle } from "../../sheet/cellStyle";

const HORIZONTAL = {
  left: HorizontalAlign.LEFT,
  center: HorizontalAlign.CENTER,
  right: HorizontalAlign.RIGHT,
} as const;

const VERTICAL = {
  top: VerticalAlign.TOP,
  center: VerticalAlign.MIDDLE,
  bottom: VerticalAlign.BOTTOM,
} as const;

/** The styles of a workbook as the engine wants them: each kind once, cells naming it. */
export class StyleTable {
  readonly styles: Record<string, IStyleData> = {};
  private readonly ids = new Map<string, string>();

  /** The name under which this look stands in the table; `undefined` for the usual look. */
  idOf(style: CellStyle | undefined, format: string | undefined): string | undefined {
    if (!style && format === undefined) return undefined;
    const key = JSON.stringify([style, format]);
    let id = this.ids.get(key);
    if (id === undefined) {
      id = `look${this.ids.size}`;
      this.ids.set(key, id);
      this.styles[id] = engineStyle(style ?? {}, format);
    }
    return id;
  }
}

function engineStyle(style: CellStyle, format: string | undefined): IStyleData {
  return {
    ...(style.bold && { bl: BooleanNumber.TRUE }),
    ...(style.italic && { it: BooleanNumber.TRUE }),
    ...(style.underline && { ul: { s: BooleanNumber.TRUE } }),
    ...(style.strike && { st: { s: BooleanNumber.TRUE } }),
    ...(style.sizePt !== undefined && { fs: style.sizePt }),
    ...(style.fontColour && { cl: { rgb: style.fontColour } }),
    ...(style.fill && { bg: { rgb: style.fill } }),
    ...(style.lineBelow && { bd: { b: { s: BorderStyleTypes.THIN, cl: { rgb: style.lineBelow } } } }),
    ...(style.horizontal && { ht: HORIZONTAL[style.horizontal] }),
    ...(style.vertical && { vt: VERTICAL[style.vertical] }),
    ...(style.wrap && { tb: WrapStrategy.WRAP }),
    ...(format !== undefined && { n: { pattern: format } }),
  };
}

/** How a cell looks, from the engine's style; `undefined` for the usual look. */
export function cellStyle(style: Nullable<IStyleData>): CellStyle | undefined {
  if (!style) return undefined;
  const fontColour = hexColour(style.cl?.rgb);
  const fill = hexColour(style.bg?.rgb);
  const lineBelow = hexColour(style.bd?.b?.cl.rgb);
  const horizontal = nameOf(HORIZONTAL, style.ht);
  const vertical = nameOf(VERTICAL, style.vt);
  const look: CellStyle = {
    ...(style.bl === BooleanNumber.TRUE && { bold: true }),
    ...(style.it === BooleanNumber.TRUE && { italic: true }),
    ...(style.ul?.s === BooleanNumber.TRUE && { underline: true }),
    ...(style.st?.s === BooleanNumber.TRUE && { strike: true }),
    ...(style.fs !== undefined && { sizePt: style.fs }),
    ...(fontColour && { fontColour }),
    ...(fill && { fill }),
    ...(lineBelow && { lineBelow }),
    ...(horizontal && { horizontal }),
    ...(vertical && { vertical }),
    ...(style.tb === WrapStrategy.WRAP && { wrap: true }),
  };
  return Object.keys(look).length > 0 ? look : undefined;
}

function nameOf<Name extends string>(
  names: Record<Name, number>,
  wanted: Nullable<number>,
): Name | undefined {
  return (Object.keys(names) as Name[]).find((name) => names[name] === wanted);
}

function hexColour(colour: Nullable<string>): string | undefined {
  if (!colour) return undefined;
  if (/^#[0-9a-f]{6}$/i.test(colour)) return colour;
  const parts = /^rgba?\((\d+),\s*(\d+),\s*(\d+)/i.exec(colour)?.slice(1, 4);
  return parts && `#${parts.map((part) => Number(part).toString(16).padStart(2, "0")).join("")}`;
}
