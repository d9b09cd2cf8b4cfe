/** Four tables, so that four bytes are taken at once. */
const TABLES = makeTables();

/** The check sum of zip files (CRC-32, ISO 3309), continued from that of the bytes before; starts from 0. */
export function crc32(bytes: Uint8Array, previous = 0): number {
  const [t0, t1, t2, t3] = TABLES;
  let crc = ~previous;
  let at = 0;
  for (const end = bytes.length - 3; at < end; at += 4) {
    crc ^= bytes[at]! | (bytes[at + 1]! << 8) | (bytes[at + 2]! << 16) | (bytes[at + 3]! << 24);
    crc = t3[crc & 255]! ^ t2[(crc >>> 8) & 255]! ^ t1[(crc >>> 16) & 255]! ^ t0[crc >>> 24]!;
  }
  for (; at < bytes.length; at++) crc = t0[(crc ^ bytes[at]!) & 255]! ^ (crc >>> 8);
  return ~crc >>> 0;
}

function makeTables(): readonly [Int32Array, Int32Array, Int32Array, Int32Array] {
  const tables = [0, 1, 2, 3].map(() => new Int32Array(256)) as [
    Int32Array,
    Int32Array,
    Int32Array,
    Int32Array,
  ];
  for (let byte = 0; byte < 256; byte++) {
    let crc = byte;
    for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? 0xedb88320 ^ (crc >>> 1) : crc >>> 1;
    tables[0][byte] = crc;
  }
  for (let byte = 0; byte < 256; byte++) {
    for (let n = 1; n < 4; n++) {
      const before = tables[n - 1]![byte]!;
      tables[n]![byte] = tables[0][before & 255]! ^ (before >>> 8);
    }
  }
  return tables;
}
