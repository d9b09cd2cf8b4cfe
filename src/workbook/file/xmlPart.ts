import { FileFault } from "./fault";
import type { Pace } from "./pace";
import { XmlScanner, type XmlReader } from "./xml";
import type { ZipArchive } from "./zip";

/** Short texts are made and thrown away far faster than long ones. */
const SLICE = 32 * 1024;

/** Reads one XML part of a zip through `reader`, as its bytes come out of their packing. */
export async function readXmlPart(
  archive: ZipArchive,
  name: string,
  reader: XmlReader,
  pace: Pace,
): Promise<void> {
  const scanner = new XmlScanner(reader);
  await decodePart(archive, name, (text) => scanner.push(text), pace);
  scanner.end();
}

/** A small part whole. */
export async function readTextPart(archive: ZipArchive, name: string, pace: Pace): Promise<string> {
  let whole = "";
  await decodePart(archive, name, (text) => (whole += text), pace);
  return whole;
}

async function decodePart(
  archive: ZipArchive,
  name: string,
  take: (text: string) => void,
  pace: Pace,
): Promise<void> {
  let decoder: TextDecoder | undefined;
  const decode = (bytes: Uint8Array) => {
    decoder ??= decoderFor(bytes);
    for (let at = 0; at < bytes.length; at += SLICE) {
      take(decoder.decode(bytes.subarray(at, at + SLICE), { stream: true }));
    }
  };
  await archive.read(name, decode, pace);
  if (decoder) take(decoder.decode());
}

/** The encoding is told by the first bytes: a byte-order mark, or the XML declaration. */
function decoderFor(first: Uint8Array): TextDecoder {
  if (first[0] === 0xff && first[1] === 0xfe) return new TextDecoder("utf-16le");
  if (first[0] === 0xfe && first[1] === 0xff) return new TextDecoder("utf-16be");
  const opening = String.fromCharCode(...first.subarray(0, 200));
  const declared = /<\?xml[^>]*?encoding\s*=\s*["']([\w.:-]+)["']/.exec(opening)?.[1];
  try {
    return new TextDecoder(declared ?? "utf-8");
  } catch {
    throw new FileFault(`its encoding "${declared}" is not known`);
  }
}
