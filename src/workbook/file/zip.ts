import { Inflate } from "fflate";
import { crc32 } from "./crc32";
import { FileFault, megabytes, tooLarge } from "./fault";
import { LIMITS } from "./limits";
import type { Pace } from "./pace";

/** A file inside the zip, as the zip's directory describes it. */
interface Part {
  readonly name: string;
  readonly method: number;
  readonly encrypted: boolean;
  readonly crc: number;
  readonly packedBytes: number;
  readonly bytes: number;
  readonly headerAt: number;
}

const END_OF_DIRECTORY = 0x06054b50;
const LOCATOR_64 = 0x07064b50;
const END_OF_DIRECTORY_64 = 0x06064b50;
const DIRECTORY_ENTRY = 0x02014b50;
const LOCAL_HEADER = 0x04034b50;
const STORED = 0;
const DEFLATED = 8;
/** Little enough that what it unpacks to stays small: deflate grows at most a thousandfold. */
const SLICE = 16 * 1024;
/** Smaller parts are read in no time, however well they were packed. */
const LARGE = 32 * 1024 * 1024;

/**
 * A zip file (PKWARE's APPNOTE), read part by part as asked. Every part is held to the size and the check sum
 * that the directory gives, so a file that lies about its size, or was damaged on the way, does not pass.
 */
export class ZipArchive {
  private readonly parts = new Map<string, Part>();

  constructor(private readonly source: Uint8Array) {
    for (const part of readDirectory(source)) this.parts.set(key(part.name), part);
    const xmlBytes = [...this.parts.values()].filter(isXml).reduce((sum, part) => sum + part.bytes, 0);
    if (xmlBytes > LIMITS.unpackedBytes) throw tooLarge(`${megabytes(xmlBytes)} when unpacked`);
    for (const part of this.parts.values()) {
      if (isXml(part) && part.bytes > LARGE && part.bytes > part.packedBytes * LIMITS.growth)
        throw tooLarge(`${megabytes(part.bytes)} when unpacked, ${LIMITS.growth} times its size and more`);
    }
  }

  has(name: string): boolean {
    return this.parts.has(key(name));
  }

  names(): readonly string[] {
    return [...this.parts.values()].map((part) => part.name);
  }

  packedBytes(name: string): number {
    return this.parts.get(key(name))?.packedBytes ?? 0;
  }

  /** Unpacks a part, handing on its bytes as they come. */
  async read(name: string, take: (bytes: Uint8Array) => void, pace: Pace): Promise<void> {
    const part = this.parts.get(key(name));
    if (!part) throw new FileFault(`its part ${name} is missing`);
    const packed = this.packed(part);
    let bytes = 0;
    let crc = 0;
    const check = (piece: Uint8Array) => {
      bytes += piece.length;
      if (bytes > part.bytes) throw new FileFault("it unpacks to more than it says");
      crc = crc32(piece, crc);
      if (piece.length > 0) take(piece);
    };
    const push = part.method === STORED ? check : inflater(check);
    for (let at = 0; at < packed.length; at += SLICE) {
      const slice = packed.subarray(at, at + SLICE);
      push(slice, at + SLICE >= packed.length);
      await pace.step(slice.length);
    }
    if (bytes !== part.bytes || crc !== part.crc)
      throw new FileFault("its contents do not match its check sums");
  }

  private packed(part: Part): Uint8Array {
    if (part.encrypted) throw new FileFault("it is protected by a password", PASSWORD_TODO);
    if (part.method !== STORED && part.method !== DEFLATED)
      throw new FileFault("it is packed in an unusual way");
    const view = viewOf(this.source);
    if (part.headerAt + 30 > view.byteLength || view.getUint32(part.headerAt, true) !== LOCAL_HEADER) {
      throw new FileFault("its directory points to nothing");
    }
    const start =
      part.headerAt +
      30 +
      view.getUint16(part.headerAt + 26, true) +
      view.getUint16(part.headerAt + 28, true);
    if (start + part.packedBytes > view.byteLength) throw new FileFault("it breaks off before its end");
    return this.source.subarray(start, start + part.packedBytes);
  }
}

export const PASSWORD_TODO =
  "Open it in your spreadsheet program, save a copy without the password, and open that.";

function inflater(take: (bytes: Uint8Array) => void): (slice: Uint8Array, last: boolean) => void {
  const inflate = new Inflate((piece) => take(piece));
  return (slice, last) => {
    try {
      inflate.push(slice, last);
    } catch (error) {
      throw error instanceof FileFault ? error : new FileFault("its packed contents are damaged");
    }
  };
}

function readDirectory(source: Uint8Array): Part[] {
  const view = viewOf(source);
  const { count, start } = findDirectory(view);
  if (count > LIMITS.parts) throw new FileFault("it holds more parts than any workbook");
  const parts: Part[] = [];
  for (let n = 0, at = start; n < count; n++) {
    if (at + 46 > view.byteLength || view.getUint32(at, true) !== DIRECTORY_ENTRY) {
      throw new FileFault("its directory is damaged");
    }
    const nameLength = view.getUint16(at + 28, true);
    const extraLength = view.getUint16(at + 30, true);
    const next = at + 46 + nameLength + extraLength + view.getUint16(at + 32, true);
    if (next > view.byteLength) throw new FileFault("its directory is damaged");
    const large = largeSizes(view, at, at + 46 + nameLength, extraLength);
    parts.push({
      name: new TextDecoder().decode(source.subarray(at + 46, at + 46 + nameLength)),
      method: view.getUint16(at + 10, true),
      encrypted: (view.getUint16(at + 8, true) & 1) === 1,
      crc: view.getUint32(at + 16, true),
      ...large,
    });
    at = next;
  }
  return parts;
}

function findDirectory(view: DataView): { count: number; start: number } {
  const earliest = Math.max(0, view.byteLength - 22 - 0xffff);
  for (let at = view.byteLength - 22; at >= earliest; at--) {
    if (view.getUint32(at, true) !== END_OF_DIRECTORY) continue;
    const locator = at - 20;
    if (locator >= 0 && view.getUint32(locator, true) === LOCATOR_64) {
      const end64 = Number(view.getBigUint64(locator + 8, true));
      if (end64 + 56 <= view.byteLength && view.getUint32(end64, true) === END_OF_DIRECTORY_64) {
        return {
          count: Number(view.getBigUint64(end64 + 32, true)),
          start: Number(view.getBigUint64(end64 + 48, true)),
        };
      }
    }
    return { count: view.getUint16(at + 10, true), start: view.getUint32(at + 16, true) };
  }
  throw new FileFault("it breaks off before its end");
}

/** Sizes and place; where one is too large for its field it stands in the extra field (zip64), in this order. */
function largeSizes(
  view: DataView,
  entryAt: number,
  extraAt: number,
  extraLength: number,
): Pick<Part, "packedBytes" | "bytes" | "headerAt"> {
  const extra = zip64Values(view, extraAt, extraLength);
  const size = (at: number): number => {
    const short = view.getUint32(at, true);
    return short === 0xffffffff ? (extra.next().value ?? short) : short;
  };
  const bytes = size(entryAt + 24);
  const packedBytes = size(entryAt + 20);
  return { bytes, packedBytes, headerAt: size(entryAt + 42) };
}

function* zip64Values(view: DataView, from: number, length: number): Generator<number, undefined> {
  for (let at = from; at + 4 <= from + length;) {
    const end = at + 4 + view.getUint16(at + 2, true);
    if (view.getUint16(at, true) === 1) {
      for (let value = at + 4; value + 8 <= Math.min(end, from + length); value += 8) {
        yield Number(view.getBigUint64(value, true));
      }
    }
    at = end;
  }
  return undefined;
}

/** Parts are found whatever their case and slashes, as the packaging standard asks. */
function key(name: string): string {
  return name.replaceAll("\\", "/").replace(/^\//, "").toLowerCase();
}

function isXml(part: Part): boolean {
  return /\.(xml|rels)$/i.test(part.name);
}

function viewOf(source: Uint8Array): DataView {
  return new DataView(source.buffer, source.byteOffset, source.byteLength);
}
