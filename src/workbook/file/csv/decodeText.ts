import { FileFault } from "../fault";

/** The text of a file that does not say how it is encoded: by byte-order mark, else UTF-8, else Windows-1252. */
export function decodeText(bytes: Uint8Array): string {
  const encoding = markedEncoding(bytes) ?? unmarkedUtf16(bytes);
  if (encoding) return new TextDecoder(encoding).decode(bytes);
  if (bytes.subarray(0, 64 * 1024).includes(0)) {
    throw new FileFault("it is no workbook and no text", "Choose an .xlsx, .ods or .csv file.");
  }
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return windows1252(bytes);
  }
}

/** What Windows-1252 has from 0x80 on; some versions of Node leave control characters there, as in Latin 1. */
const FROM_80 = "€\x81‚ƒ„…†‡ˆ‰Š‹Œ\x8dŽ\x8f\x90‘’“”•–—˜™š›œ\x9džŸ";

function windows1252(bytes: Uint8Array): string {
  return new TextDecoder("windows-1252")
    .decode(bytes)
    .replace(/[\x80-\x9f]/g, (control) => FROM_80[control.charCodeAt(0) - 0x80]!);
}

function markedEncoding(bytes: Uint8Array): string | undefined {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return "utf-8";
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return "utf-16le";
  if (bytes[0] === 0xfe && bytes[1] === 0xff) return "utf-16be";
  return undefined;
}

/** Headings are mostly plain letters, so that every other byte is zero. */
function unmarkedUtf16(bytes: Uint8Array): string | undefined {
  const opening = bytes.subarray(0, 4);
  if (opening.length < 4) return undefined;
  if (opening[0] !== 0 && opening[1] === 0 && opening[2] !== 0 && opening[3] === 0) return "utf-16le";
  if (opening[0] === 0 && opening[1] !== 0 && opening[2] === 0 && opening[3] !== 0) return "utf-16be";
  return undefined;
}
