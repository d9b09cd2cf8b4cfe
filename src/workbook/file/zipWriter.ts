import { Zip, ZipDeflate } from "fflate";
import type { Pace } from "./pace";

/** The same for every file, so that the same content gives the same bytes: zips keep local time, so it is made here. */
const localTime = () => new Date(2000, 0, 1);
const XML_DECLARATION = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n`;

/** Packs XML parts into a zip, piece by piece. */
export class ZipWriter {
  private readonly pieces: Uint8Array[] = [];
  private readonly zip = new Zip((error, piece) => {
    if (error) throw error;
    this.pieces.push(piece);
  });
  private readonly encoder = new TextEncoder();

  constructor(private readonly pace: Pace) {}

  /** @param work how much of the whole work each piece is */
  async add(name: string, xml: string | Iterable<string>, work = 0): Promise<void> {
    const part = new ZipDeflate(name, { level: 6 });
    part.mtime = localTime();
    this.zip.add(part);
    part.push(this.encoder.encode(XML_DECLARATION));
    for (const piece of typeof xml === "string" ? [xml] : xml) {
      part.push(this.encoder.encode(piece));
      await this.pace.step(work);
    }
    part.push(new Uint8Array(0), true);
  }

  finish(): Uint8Array {
    this.zip.end();
    const whole = new Uint8Array(this.pieces.reduce((sum, piece) => sum + piece.length, 0));
    let at = 0;
    for (const piece of this.pieces) {
      whole.set(piece, at);
      at += piece.length;
    }
    return whole;
  }
}
