import { utils, write, type BookType } from "@e965/xlsx";
import { describe, expect, it } from "vitest";
import { describeLog } from "../../src/log/describeLog";
import { readLog } from "../../src/log/readLog";
import { openFile } from "../../src/workbook/file/openFile";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { sheetOf } from "./sheets";

/** One and the same small log, in every kind of file that people keep it in. */
const ROWS = [
  ["Datum", "Seriennummer", "Restdruck (bar)", "Fülldruck (bar)", "O2 %", "Preis", "Füller"],
  ["13.10.2026", "00083", "50", "207,5", "31,8", "8,00 €", "T."],
  ["14.10.2026", "1E16", "1.355,90", "200", "", "gratis", '"'],
];
const csv = (separator: string, lineEnd: string) =>
  ROWS.map((row) =>
    row.map((cell) =>
      cell.includes('"') || cell.includes(separator) ? `"${cell.replaceAll('"', '""')}"` : cell,
    ),
  )
    .map((row) => row.join(separator))
    .join(lineEnd);

const utf8 = new TextEncoder();
const utf16 = (text: string, bigEndian: boolean) => {
  const bytes = Buffer.from(`\uFEFF${text}`, "utf16le");
  return new Uint8Array(bigEndian ? bytes.swap16() : bytes);
};
/** The euro sign stands at 0x80 there; the rest of the text is as in Latin 1. */
const windows1252 = (text: string) => new Uint8Array(Buffer.from(text.replaceAll("€", "\x80"), "latin1"));

function spreadsheet(bookType: BookType): Uint8Array {
  const book = utils.book_new();
  utils.book_append_sheet(book, utils.aoa_to_sheet(ROWS), "log");
  return new Uint8Array(write(book, { type: "array", bookType }) as ArrayBuffer);
}

const FILES: readonly (readonly [name: string, bytes: () => Uint8Array | Promise<Uint8Array>])[] = [
  ["comma-separated", () => utf8.encode(csv(",", "\r\n"))],
  ["semicolons and decimal commas", () => utf8.encode(csv(";", "\r\n"))],
  ["a byte-order mark", () => utf8.encode(`\uFEFF${csv(";", "\r\n")}`)],
  ["carriage returns only", () => utf8.encode(csv(";", "\r"))],
  ["line feeds only", () => utf8.encode(csv("\t", "\n"))],
  ["UTF-16", () => utf16(csv("\t", "\r\n"), false)],
  ["UTF-16, the other way round", () => utf16(csv(";", "\r\n"), true)],
  ["Windows-1252", () => windows1252(csv(";", "\r\n"))],
  ["a first line sep=;", () => utf8.encode(`sep=;\r\n${csv(";", "\r\n")}`)],
  [".xlsx of another program", () => spreadsheet("xlsx")],
  [".ods of another program", () => spreadsheet("ods")],
  [
    ".xlsx of ours",
    () =>
      writeXlsx({
        sheets: [{ ...sheetOf(ROWS, { name: "log" }), columns: [], frozenRows: 0, frozenColumns: 0 }],
        settings: new Map(),
        leftOut: [],
      }),
  ],
];

const understood = async (bytes: Uint8Array) =>
  describeLog(readLog((await openFile(bytes, "log.csv")).content.sheets));

describe("a log is understood the same, whatever file it is kept in", () => {
  it("and it is understood", async () => {
    const [, one, two] = (await understood(utf8.encode(csv(",", "\n")))).sheets[0]!.rows;
    expect(one!.fields).toMatchObject({
      date: { value: "2026-10-13" },
      serial: { value: "00083" },
      endPressure: { value: { bar: 207.5 } },
      analysedMix: { value: { oxygen: 31.8, helium: 0 } },
      price: { value: 8 },
    });
    expect(two!.fields).toMatchObject({
      serial: { value: "1E16" },
      startPressure: { raw: "1.355,90", note: expect.stringContaining("more than any cylinder") as string },
      price: { value: 0 },
      filledBy: { value: "T." },
    });
  });

  it.each(FILES)("%s", async (_, bytes) => {
    expect(await understood(await bytes())).toEqual(await understood(utf8.encode(csv(",", "\n"))));
  });
});

describe("a hostile file", () => {
  it("of headings and cells that are names of the language, or formulas, is text like any other", async () => {
    const text = [
      "__proto__,constructor,Serial,Start psi,End psi,Remarks,toString",
      "1,2,A10001,500,3000,=HYPERLINK(\"http://example.com\"),3",
      "1,2,__proto__,500,3000,@SUM(1),+1",
      "1,2,constructor,500,3000,-2+3,=1",
    ].join("\n"); // prettier-ignore
    const { sheets, rows } = await understood(utf8.encode(text));
    expect(rows).toMatchObject({ fills: 3, headings: 1, total: 4 });
    expect(sheets[0]!.rows.slice(1).map(({ fields }) => fields.serial?.value)).toEqual([
      "A10001", "PROTO", "CONSTRUCTOR",
    ]); // prettier-ignore
    expect(sheets[0]!.rows[1]!.fields.remarks?.value).toBe('=HYPERLINK("http://example.com")');
    expect(({} as Record<string, unknown>)["A10001"]).toBeUndefined();
  });

  it("of endless texts says which cells are too long, and reads the rest", async () => {
    const endless = ["1/", "1,", "a ", "10 A119 ", "psi "].map((piece) => piece.repeat(100_000));
    const rows = endless.map((text) => `"${text}","${text}","${text}","${text}",A10001,air,"${text}"`);
    const text = ["Date,Start psi,O2 %,Hydro,Serial,Method,Remarks", ...rows].join("\n");
    const described = await understood(utf8.encode(text));
    expect(described.rows.fills).toBe(endless.length);
    for (const { fields } of described.sheets[0]!.rows.slice(1)) {
      expect(fields.date?.unreadable).toContain("far too long");
      expect(fields.hydro?.unreadable).toContain("far too long");
      expect(fields.remarks?.value).toHaveLength(String(fields.remarks?.raw).trim().length);
    }
  });

  it("of a hundred thousand rows of headings is read row by row, and every row is counted", () => {
    const headings = [
      ["Date", "Serial", "Start psi", "End psi"],
      ["Date", "Owner", "Hydro", "Visual"],
    ];
    const rows = Array.from({ length: 100_000 }, (_, at) => headings[at % 2]!);
    const { total, headings: counted, unreadable, ...others } = readLog([sheetOf(rows)]).rows;
    expect(total).toBe(100_000);
    expect(counted + unreadable).toBe(total);
    expect(Object.values(others)).toEqual([0, 0, 0, 0]);
  });
});
