import { attribute } from "../xml";

/** The colours of a workbook's theme, in the order in which cells number them. */
export type Theme = readonly (string | undefined)[];

/** Theme colours stand in the file as dark 1, light 1, dark 2, light 2; cells count light 1 first. */
export const THEME_ORDER = [
  "lt1",
  "dk1",
  "lt2",
  "dk2",
  "accent1",
  "accent2",
  "accent3",
  "accent4",
  "accent5",
  "accent6",
  "hlink",
  "folHlink",
];

/** The colour that an element such as `<fgColor/>` means, as `#RRGGBB`; undefined for automatic. */
export function colourOf(tag: string, theme: Theme): string | undefined {
  const rgb = attribute(tag, "rgb");
  if (rgb && /^([0-9a-f]{2})?[0-9a-f]{6}$/i.test(rgb)) return `#${rgb.slice(-6).toUpperCase()}`;
  const themed = attribute(tag, "theme");
  if (themed !== undefined) {
    const base = theme[Number(themed)];
    return base && tinted(base, Number(attribute(tag, "tint") ?? 0));
  }
  const indexed = attribute(tag, "indexed");
  return indexed === undefined ? undefined : PALETTE[Number(indexed)];
}

/** Lighter (above 0) or darker (below 0), as ECMA-376 part 1, 18.8.19 defines it on the colour's lightness. */
function tinted(colour: string, tint: number): string {
  if (!(Math.abs(tint) <= 1) || tint === 0) return colour;
  const parts = [1, 3, 5].map((at) => parseInt(colour.slice(at, at + 2), 16) / 255);
  const high = Math.max(...parts);
  const low = Math.min(...parts);
  const light = (high + low) / 2;
  const wanted = tint < 0 ? light * (1 + tint) : light + (1 - light) * tint;
  const range = high - low;
  const saturation = range === 0 ? 0 : range / (1 - Math.abs(2 * light - 1));
  const wantedRange = saturation * (1 - Math.abs(2 * wanted - 1));
  const channels = parts.map((part) => {
    const share = range === 0 ? 0.5 : (part - low) / range;
    const value = wanted - wantedRange / 2 + share * wantedRange;
    return Math.round(Math.min(1, Math.max(0, value)) * 255)
      .toString(16)
      .padStart(2, "0");
  });
  return `#${channels.join("").toUpperCase()}`;
}

/** The palette that colours by number stand for (ECMA-376 part 1, 18.8.27): the first eight come twice. */
const BASIC = "000000 FFFFFF FF0000 00FF00 0000FF FFFF00 FF00FF 00FFFF";
const REST =
  "800000 008000 000080 808000 800080 008080 C0C0C0 808080 9999FF 993366 FFFFCC CCFFFF 660066 FF8080 0066CC CCCCFF " +
  "000080 FF00FF FFFF00 00FFFF 800080 800000 008080 0000FF 00CCFF CCFFFF CCFFCC FFFF99 99CCFF FF99CC CC99FF FFCC99 " +
  "3366FF 33CCCC 99CC00 FFCC00 FF9900 FF6600 666699 969696 003366 339966 003300 333300 993300 993366 333399 333333";
const PALETTE = `${BASIC} ${BASIC} ${REST}`.split(" ").map((digits) => `#${digits}`);
