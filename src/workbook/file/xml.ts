import { FileFault } from "./fault";
import { LIMITS } from "./limits";

/**
 * What an XML part says, in its order. Names come without their prefix: the parts we read use one vocabulary
 * each, under whatever prefix the writing program chose.
 */
export interface XmlReader {
  /** `tag` is all that stands between the angle brackets; `attribute` reads from it. */
  open(name: string, tag: string): void;
  /** Text with its entities still in place; `unescapeXml` resolves them. */
  text?(raw: string): void;
  close?(name: string): void;
}

/**
 * Reads XML that arrives in pieces, whatever its length. No document type and no entity definitions: no
 * spreadsheet program writes them, and they are how small files grow without bound.
 */
export class XmlScanner {
  private rest = "";
  private readonly openNames: string[] = [];
  private rootSeen = false;

  constructor(private readonly reader: XmlReader) {}

  push(piece: string): void {
    const source = this.rest === "" ? piece : this.rest + piece;
    const used = this.scan(source);
    this.rest = used === source.length ? "" : source.slice(used);
    if (this.rest.length > LIMITS.textCharacters)
      throw new FileFault("one of its texts is longer than any cell can hold");
  }

  end(): void {
    if (this.rest.trim() !== "") throw new FileFault("it breaks off in the middle");
    if (this.openNames.length > 0 || !this.rootSeen) throw new FileFault("it breaks off before its end");
  }

  /** Scans what is complete and says how far that was. */
  private scan(source: string): number {
    let position = 0;
    for (;;) {
      const start = source.indexOf("<", position);
      if (start < 0) return position;
      if (start > position && this.openNames.length > 0) this.reader.text?.(source.slice(position, start));
      else if (start > position && source.slice(position, start).trim().replace("\uFEFF", "") !== "") {
        throw new FileFault("its XML is damaged");
      }
      const mark = source.charCodeAt(start + 1);
      const end =
        mark === BANG || mark === QUESTION ? this.aside(source, start) : this.tag(source, start, mark);
      if (end < 0) return start;
      position = end;
    }
  }

  /** A tag; answers where it ends, or -1 where it is not complete yet. */
  private tag(source: string, start: number, mark: number): number {
    const end = tagEnd(source, start + 1);
    if (end < 0) return -1;
    if (mark === SLASH) {
      const name = localName(source, start + 2, end);
      if (this.openNames.pop() !== name) throw new FileFault("its XML does not close what it opens");
      this.reader.close?.(name);
      return end + 1;
    }
    const selfClosing = source.charCodeAt(end - 1) === SLASH;
    const name = localName(source, start + 1, selfClosing ? end - 1 : end);
    if (name === "" || (this.openNames.length === 0 && this.rootSeen))
      throw new FileFault("its XML is damaged");
    this.rootSeen = true;
    this.reader.open(name, source.slice(start + 1, selfClosing ? end - 1 : end));
    if (selfClosing) this.reader.close?.(name);
    else if (this.openNames.push(name) > LIMITS.xmlDepth)
      throw new FileFault("its XML is nested deeper than any workbook's");
    return end + 1;
  }

  /** Comments, declarations and literal text; answers where it ends, or -1 where it is not complete yet. */
  private aside(source: string, start: number): number {
    if (source.startsWith("<?", start)) return after(source, "?>", start);
    if (source.startsWith("<!--", start)) return after(source, "-->", start + 4);
    if (source.startsWith("<![CDATA[", start)) {
      const end = after(source, "]]>", start + 9);
      if (end >= 0) this.reader.text?.(escapeXml(source.slice(start + 9, end - 3)));
      return end;
    }
    if (source.length - start < 9) return -1;
    throw new FileFault("its XML declares a document type, which no workbook does");
  }
}

/** An attribute's value, or undefined. `name` stands for itself and for any prefix before it (`r:id` is `id`). */
export function attribute(tag: string, name: string): string | undefined {
  for (let at = tag.indexOf(name, 1); at >= 0; at = tag.indexOf(name, at + 1)) {
    const before = tag.charCodeAt(at - 1);
    if (before !== COLON && !isSpace(before)) continue;
    let equals = at + name.length;
    while (isSpace(tag.charCodeAt(equals))) equals++;
    if (tag.charCodeAt(equals) !== EQUALS || insideQuotes(tag, at)) continue;
    let open = equals + 1;
    while (isSpace(tag.charCodeAt(open))) open++;
    const quote = tag.charCodeAt(open);
    if (quote !== DOUBLE_QUOTE && quote !== SINGLE_QUOTE) continue;
    const close = tag.indexOf(String.fromCharCode(quote), open + 1);
    return close < 0 ? undefined : unescapeXml(tag.slice(open + 1, close));
  }
  return undefined;
}

/** A yes/no attribute; `absent` is what its absence means. */
export function flag(tag: string, name: string, absent = false): boolean {
  const value = attribute(tag, name);
  return value === undefined ? absent : value === "1" || value === "true" || value === "on";
}

export function unescapeXml(raw: string): string {
  if (!raw.includes("&")) return raw;
  return raw.replace(
    /&(?:#x([0-9a-fA-F]{1,6})|#([0-9]{1,7})|(lt|gt|amp|quot|apos));/g,
    (whole, hex, decimal, name) => {
      if (name !== undefined) return NAMED[name as keyof typeof NAMED];
      const code = hex !== undefined ? parseInt(hex, 16) : parseInt(decimal, 10);
      return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
    },
  );
}

export function escapeXml(text: string): string {
  if (!/[&<>"\r\n\t]/.test(text)) return text;
  return text.replace(/[&<>"\r\n\t]/g, (character) => ESCAPED[character] ?? character);
}

const NAMED = { lt: "<", gt: ">", amp: "&", quot: '"', apos: "'" };
const ESCAPED: Record<string, string> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "\r": "&#13;",
  "\n": "&#10;",
  "\t": "&#9;",
};
const BANG = 33;
const DOUBLE_QUOTE = 34;
const SINGLE_QUOTE = 39;
const SLASH = 47;
const COLON = 58;
const EQUALS = 61;
const GREATER = 62;
const QUESTION = 63;

function isSpace(code: number): boolean {
  return code === 32 || code === 10 || code === 13 || code === 9;
}

/** Where a tag's closing bracket stands; one inside a quoted value does not close it. */
function tagEnd(source: string, from: number): number {
  let quote = 0;
  for (let at = from; at < source.length; at++) {
    const code = source.charCodeAt(at);
    if (quote !== 0) {
      if (code === quote) quote = 0;
    } else if (code === GREATER) return at;
    else if (code === DOUBLE_QUOTE || code === SINGLE_QUOTE) quote = code;
  }
  return -1;
}

function localName(source: string, from: number, end: number): string {
  let start = from;
  let at = from;
  for (; at < end; at++) {
    const code = source.charCodeAt(at);
    if (code === COLON) start = at + 1;
    else if (isSpace(code)) break;
  }
  return source.slice(start, at);
}

function after(source: string, mark: string, from: number): number {
  const at = source.indexOf(mark, from);
  return at < 0 ? -1 : at + mark.length;
}

function insideQuotes(tag: string, at: number): boolean {
  let quote = 0;
  for (let i = 0; i < at; i++) {
    const code = tag.charCodeAt(i);
    if (quote === 0 && (code === DOUBLE_QUOTE || code === SINGLE_QUOTE)) quote = code;
    else if (code === quote) quote = 0;
  }
  return quote !== 0;
}
