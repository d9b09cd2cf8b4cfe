import type { Pace } from "../pace";
import { unescapeXml, type XmlReader } from "../xml";
import { readXmlPart } from "../xmlPart";
import type { ZipArchive } from "../zip";

/** The texts that cells point to by number. */
export async function readSharedStrings(
  archive: ZipArchive,
  part: string,
  pace: Pace,
): Promise<readonly string[]> {
  const texts: string[] = [];
  const gatherer = new TextGatherer();
  const reader: XmlReader = {
    open(name) {
      if (name === "si") gatherer.begin();
      else gatherer.open(name);
    },
    text: (raw) => gatherer.text(raw),
    close(name) {
      if (name === "si") texts.push(gatherer.end());
      else gatherer.close(name);
    },
  };
  await readXmlPart(archive, part, reader, pace);
  return texts;
}

/** Puts a text together from its runs; the reading aid above Asian text is not part of it. */
export class TextGatherer {
  private gathered = "";
  private inText = false;
  private inReadingAid = false;

  begin(): void {
    this.gathered = "";
    this.inText = this.inReadingAid = false;
  }

  open(name: string): void {
    if (name === "t") this.inText = true;
    else if (name === "rPh") this.inReadingAid = true;
  }

  text(raw: string): void {
    if (this.inText && !this.inReadingAid) this.gathered += unescapeXml(raw);
  }

  close(name: string): void {
    if (name === "t") this.inText = false;
    else if (name === "rPh") this.inReadingAid = false;
  }

  end(): string {
    return unescapeControls(this.gathered);
  }
}

/** Characters that XML cannot hold are stored as `_x000D_`, and that spelling itself as `_x005F_x000D_`. */
export function unescapeControls(text: string): string {
  if (!text.includes("_x")) return text;
  return text.replace(/_x([0-9A-Fa-f]{4})_/g, (_whole, code) => String.fromCharCode(parseInt(code, 16)));
}

export function escapeControls(text: string): string {
  return text
    .replace(/_(?=x[0-9A-Fa-f]{4}_)/g, "_x005F_")
    .replace(UNPRINTABLE, (unit) => `_x${unit.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`);
}

/** What XML 1.0 cannot hold: control characters but tab and line feed, lone surrogates, two non-characters. */
const UNPRINTABLE =
  /[\u0000-\u0008\u000B-\u001F\uFFFE\uFFFF]|[\uD800-\uDBFF](?![\uDC00-\uDFFF])|(?<![\uD800-\uDBFF])[\uDC00-\uDFFF]/g;
