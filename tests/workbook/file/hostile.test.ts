import { strToU8, Zip, ZipDeflate, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { LIMITS } from "../../../src/workbook/file/limits";
import { openFile } from "../../../src/workbook/file/openFile";
import { handWritten, handWrittenParts } from "./byHand";

const rows = (xml: string) => `<sheetData>${xml}</sheetData>`;
const open = (bytes: Uint8Array, name = "log.xlsx") => openFile(bytes, name);
const openSheet = (xml: string) => open(handWritten({ sheets: { Fills: xml } }));

/** Packs a sheet that is too long for one string. */
function streamed(pieces: Iterable<string>): Uint8Array {
  const packed: Uint8Array[] = [];
  const zip = new Zip((error, piece) => {
    if (error) throw error;
    packed.push(piece);
  });
  const sheet = "xl/worksheets/sheet1.xml";
  const parts: [string, Iterable<string | Uint8Array>][] = [
    ...Object.entries(handWrittenParts({ sheets: { Fills: "" } }))
      .filter(([name]) => name !== sheet)
      .map(([name, bytes]): [string, Uint8Array[]] => [name, [bytes as Uint8Array]]),
    [sheet, pieces],
  ];
  for (const [name, contents] of parts) {
    const part = new ZipDeflate(name, { level: 1 });
    zip.add(part);
    for (const piece of contents) part.push(typeof piece === "string" ? strToU8(piece) : piece);
    part.push(new Uint8Array(0), true);
  }
  zip.end();
  return Buffer.concat(packed);
}

/** Where an entry of the zip's directory starts. */
function directoryEntry(bytes: Uint8Array, name: string): DataView {
  const buffer = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const at = buffer.lastIndexOf(name) - 46;
  return new DataView(bytes.buffer, bytes.byteOffset + at);
}

describe("a used range blown up to a million rows", () => {
  test("stored sparsely is no longer than its content", async () => {
    const { content } = await openSheet(
      `<cols><col min="1" max="16384" width="9"/></cols>` +
        rows(`<row r="1"><c r="A1"><v>1</v></c></row><row r="1048576" s="1"><c r="XFD1048576" s="1"/></row>`),
    );
    expect(content.sheets[0]!.rows).toHaveLength(1);
    expect(content.sheets[0]!.columns.length).toBeLessThan(2);
  });

  test("with every row stored is streamed, and no longer than its content", async () => {
    function* million(): Generator<string> {
      yield `<worksheet><sheetData>`;
      for (let row = 1; row <= 1_000_000; row += 10_000) {
        yield Array.from({ length: 10_000 }, (_blank, n) => {
          const value = row + n <= 20 ? `<v>${row + n}</v>` : "";
          return `<row r="${row + n}" s="1" customFormat="1"><c r="A${row + n}" s="1">${value}</c></row>`;
        }).join("");
      }
      yield `</sheetData></worksheet>`;
    }
    const bytes = streamed(million());
    const { content } = await open(bytes);
    expect(content.sheets[0]!.rows).toHaveLength(20);
  }, 60_000);

  test("by one cell far down is that long, of one and the same blank row", async () => {
    const { content } = await openSheet(rows(`<row r="1048576"><c r="A1048576"><v>1</v></c></row>`));
    const sheet = content.sheets[0]!.rows;
    expect(sheet).toHaveLength(1_048_576);
    expect(new Set(sheet).size).toBe(2);
  });
});

describe("a zip bomb", () => {
  test("that says how large it is, is refused before anything is unpacked", async () => {
    const bytes = handWritten({ sheets: { Fills: "" } });
    directoryEntry(bytes, "xl/worksheets/sheet1.xml").setUint32(24, 4_000_000_000, true);
    await expect(open(bytes)).rejects.toThrow(
      "“log.xlsx” cannot be read: it has 4,000 MB when unpacked, beyond what Brimbook takes. If it is a log, split it by year and open one of the parts.",
    );
  });

  test("that says it is small, is refused once it is not", async () => {
    function* spaces(): Generator<string> {
      for (let n = 0; n < 64; n++) yield " ".repeat(1 << 20);
    }
    const bytes = streamed(spaces());
    directoryEntry(bytes, "xl/worksheets/sheet1.xml").setUint32(24, 1000, true);
    await expect(open(bytes)).rejects.toThrow("it unpacks to more than it says");
  });

  test("that grows more than any sheet does is refused before anything is unpacked", async () => {
    function* tags(): Generator<string> {
      for (let n = 0; n < 48; n++) yield "<a/>".repeat(1 << 18);
    }
    await expect(open(streamed(tags()))).rejects.toThrow("50 MB when unpacked, 250 times its size and more");
  });

  test("of one endless text is refused before it fills the memory", async () => {
    function* endless(): Generator<string> {
      yield `<worksheet><sheetData><row><c t="str"><v>`;
      for (let n = 0; n < 24; n++) yield "x".repeat(1 << 20);
    }
    await expect(open(streamed(endless()))).rejects.toThrow(
      "one of its texts is longer than any cell can hold",
    );
  });

  test("of many wide rows is refused before it fills the memory", async () => {
    function* wide(): Generator<string> {
      yield `<worksheet><sheetData>`;
      for (let row = 1; row <= 100_000; row++) yield `<row r="${row}"><c r="XFD${row}"><v>1</v></c></row>`;
      yield `</sheetData></worksheet>`;
    }
    await expect(open(streamed(wide()))).rejects.toThrow(
      "more than 25,000,000 cells, beyond what Brimbook takes",
    );
  });
});

describe("XML that is no workbook's", () => {
  test.each([
    ["nested a thousand deep", rows("<row>".repeat(1000)), "its XML is nested deeper than any workbook's"],
    [
      "with entities of its own",
      `<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "aaaa">]><worksheet/>`,
      "document type",
    ],
    ["with tags crossed", rows("<row><c></row></c>"), "its XML does not close what it opens"],
    ["that breaks off", `<?xml version="1.0"?><worksheet><sheetData>`, "it breaks off before its end"],
    ["that is no XML", `<?xml version="1.0"?>hello`, "it breaks off"],
    ["with two roots", `<?xml version="1.0"?><worksheet></worksheet><worksheet/>`, "its XML is damaged"],
    ["naming cells beyond the sheet", rows(`<row r="1"><c r="ZZZZ1"/></row>`), `it names a cell "ZZZZ1"`],
    [
      "naming rows beyond the sheet",
      rows(`<row r="99999999"><c><v>1</v></c></row>`),
      "more than 1,048,576 rows",
    ],
    [
      "in an unknown encoding",
      `<?xml version="1.0" encoding="klingon"?><worksheet/>`,
      `its encoding "klingon"`,
    ],
    [
      "describing its columns again and again",
      `<cols>${'<col min="1" max="16384" width="9"/>'.repeat(100)}</cols>`,
      "its columns are not in their order",
    ],
    [
      "copying an endless formula from cell to cell",
      rows(
        `<row r="1"><c r="A1"><f t="shared" si="0" ref="A1:A9999">${"A1+".repeat(2500)}1</f></c></row>` +
          Array.from(
            { length: 2700 },
            (_, n) => `<row r="${n + 2}"><c><f t="shared" si="0"/></c></row>`,
          ).join(""),
      ),
      "its formulas are longer than Brimbook takes",
    ],
  ])("%s is refused", async (_name, xml, reason) => {
    await expect(openSheet(xml)).rejects.toThrow(reason);
  });
});

describe("headings that are names of the language's own", () => {
  test("are headings like any other", async () => {
    const names = ["__proto__", "constructor", "toString", "hasOwnProperty"];
    const cells = names.map((name) => `<c t="inlineStr"><is><t>${name}</t></is></c>`).join("");
    const { content } = await open(handWritten({ sheets: { ["__proto__x"]: rows(`<row>${cells}</row>`) } }));
    expect(content.sheets[0]!.rows[0]!.values).toEqual(names);
    expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
  });
});

describe("what is no workbook", () => {
  const old = Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Uint8Array(600)]);
  const encrypted = Uint8Array.from([
    ...old,
    ...[..."EncryptedPackage"].flatMap((c) => [c.charCodeAt(0), 0]),
  ]);
  test.each([
    ["nothing at all", new Uint8Array(0), "it is empty"],
    [
      "a workbook of before 2007",
      old,
      "it is a workbook of the old kind (.xls). Save it as .xlsx, and open that.",
    ],
    ["a workbook with a password", encrypted, "it is protected by a password"],
    [
      "a binary workbook",
      zipSync({ "xl/workbook.bin": new Uint8Array(4) }),
      "it is a binary workbook (.xlsb)",
    ],
    ["some other zip", zipSync({ "readme.txt": strToU8("hello") }), "it is a zip file, but no workbook"],
    [
      "a web page under a workbook's name",
      strToU8("\uFEFF<HTML>\n<body><table><tr><td>Serial</td></tr></table></body></html>"),
      "it is a web page (HTML), whatever its name says. Open it in a spreadsheet, save it as .xlsx, and open that.",
    ],
    ["a table of a web page", strToU8("<table><tr><td>1</td></tr></table>"), "it is a web page (HTML)"],
    [
      "a flat OpenDocument file",
      strToU8(`<?xml version="1.0"?><office:document xmlns:office="urn:x">`),
      "it is a flat OpenDocument file (.fods)",
    ],
    [
      "a workbook in the XML of 2003",
      strToU8(`<?xml version="1.0"?><Workbook xmlns="urn:schemas-microsoft-com:office:spreadsheet">`),
      "it is a workbook in the XML of 2003",
    ],
    ["other XML", strToU8(`<?xml version="1.0"?><log/>`), "it is an XML file"],
    ["a PDF", strToU8("%PDF-1.7 …"), "it is no workbook and no text"],
    ["bytes of any kind", Uint8Array.from({ length: 999 }, (_blank, n) => (n * 7919) % 256), "no text"],
    [
      "the beginning of a zip",
      handWritten({ sheets: { A: "" } }).subarray(0, 300),
      "it breaks off before its end",
    ],
  ])("%s is refused with what to do", async (_name, bytes, reason) => {
    const problem = await open(bytes, "/shop/log.xlsx").catch((error: unknown) => error);
    expect(problem).toMatchObject({ name: "WorkbookProblem" });
    expect((problem as Error).message).toContain(`“log.xlsx” cannot be read: `);
    expect((problem as Error).message).toContain(reason);
    expect((problem as Error).message).toMatch(/\.$/);
  });

  test("a file of 300 MB is refused unread", async () => {
    await expect(open(new Uint8Array(300 * 1024 * 1024))).rejects.toThrow(
      "it has 315 MB, beyond what Brimbook takes",
    );
    expect(LIMITS.fileBytes).toBeLessThan(300 * 1024 * 1024);
  });

  test("a workbook with one digit changed on the way is refused, not read", async () => {
    const parts = handWrittenParts({ sheets: { A: rows("<row><c><v>3000</v></c></row>") } });
    const bytes = zipSync(parts, { level: 0 });
    const at = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength).indexOf("3000");
    bytes[at] = "2".charCodeAt(0);
    await expect(open(bytes)).rejects.toThrow("its contents do not match its check sums");
  });
});

describe("opening", () => {
  test("tells how far it is, and stops when told to", async () => {
    const many = Array.from(
      { length: 60_000 },
      (_blank, n) => `<row><c><v>${n}</v></c><c><v>${n * 7}</v></c></row>`,
    );
    const bytes = handWritten({ sheets: { Fills: rows(many.join("")) } });
    const shares: number[] = [];
    await openFile(bytes, "log.xlsx", { progress: (share) => shares.push(share) });
    expect(shares.at(-1)).toBe(1);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));

    const caller = new AbortController();
    const opening = openFile(bytes, "log.xlsx", { signal: caller.signal, progress: () => caller.abort() });
    await expect(opening).rejects.toMatchObject({ name: "AbortError" });
    await expect(openFile(bytes, "log.xlsx", { signal: AbortSignal.abort() })).rejects.toMatchObject({
      name: "AbortError",
    });
  });
});
