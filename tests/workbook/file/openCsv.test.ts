import { describe, expect, test } from "vitest";
import type { CellValue } from "../../../src/sheet/sheet";
import { openFile } from "../../../src/workbook/file/openFile";
import { writeCsv } from "./writeCsv";

async function open(data: string | Uint8Array, name = "log.csv"): Promise<CellValue[][]> {
  const bytes = typeof data === "string" ? new TextEncoder().encode(data) : data;
  const { content } = await openFile(bytes, name);
  return content.sheets[0]!.rows.map((row) => [...row.values]);
}

describe("cells", () => {
  test("stay the text they are", async () => {
    const line = `00083,713752e1,1E1680073,32%,"SN 08234",10/19,=1+1,TRUE, EAN32 ,#N/A`;
    expect(await open(`a,b,c,d,e,f,g,h,i,j\n${line}`)).toContainEqual([
      "00083",
      "713752e1",
      "1E1680073",
      "32%",
      "SN 08234",
      "10/19",
      "=1+1",
      "TRUE",
      " EAN32 ",
      "#N/A",
    ]);
  });

  test("keep quotes, separators and lines that stand in quotation marks", async () => {
    expect(await open(`a,"b ""c"", d","e\r\nf",3/4" valve,"g"h\n`)).toEqual([
      ["a", `b "c", d`, "e\r\nf", `3/4" valve`, "gh"],
    ]);
  });

  test("may be missing, or more than there are headings", async () => {
    expect(await open("a,b,c\n1\n\n1,2,3,4\n,,\n")).toEqual([
      ["a", "b", "c"],
      ["1"],
      [],
      ["1", "2", "3", "4"],
    ]);
  });

  test("under one and the same heading are all there, and odd headings are only text", async () => {
    expect(await open("Press,Mix,Press,Mix,__proto__,constructor\n500,32,3000,32,x,y")).toEqual([
      ["Press", "Mix", "Press", "Mix", "__proto__", "constructor"],
      ["500", "32", "3000", "32", "x", "y"],
    ]);
  });
});

describe("rows", () => {
  test.each([
    ["carriage return and line feed", "\r\n"],
    ["line feed", "\n"],
    ["carriage return only, as old Mac programs wrote", "\r"],
  ])("end with %s", async (_name, end) => {
    const lines = ["Serial,Hydro", ...Array.from({ length: 98 }, (_blank, n) => `GP-${n},10/19`)];
    const rows = await open(lines.join(end));
    expect(rows).toHaveLength(99);
    expect(rows[98]).toEqual(["GP-97", "10/19"]);
  });

  test("are told apart from quotation marks that nothing closes, with the line", async () => {
    await expect(open(`a,b\n1,2\n"3,4\n5,6\n`)).rejects.toThrow(
      "“log.csv” cannot be read: a quotation mark opens in line 3 and nothing closes it. Take it out, or close it, in a text editor.",
    );
  });

  test("are told apart from a stray quotation mark that swallows rows until the next one", async () => {
    await expect(open(`Serial,Remarks\nGP-1,"hot\nGP-2,ok\nGP-3,"ok"\n`)).rejects.toThrow(
      "“log.csv” cannot be read: a quotation mark opens in line 2 and swallows the lines after it. Take it out, or close it, in a text editor.",
    );
  });

  test("may hold quotation marks that stand for inches", async () => {
    expect(await open(`Serial,Thread\nGP-1,3/4"\nGP-2,"3/4"" NPS"\n`)).toEqual([
      ["Serial", "Thread"],
      ["GP-1", `3/4"`],
      ["GP-2", `3/4" NPS`],
    ]);
  });
});

describe("what separates the cells", () => {
  test.each([
    ["semicolons beside decimal commas", "O2;bar\n31,8;207,5\n", ["31,8", "207,5"]],
    [
      "semicolons below a title with a comma",
      "Log, harbour\nO2;bar;bank\n31,8;207,5;1\n32,1;200,5;2",
      ["31,8", "207,5", "1"],
    ],
    ["tabs", "Serial\tNote\nGP-1\ta, b", ["GP-1", "a, b"]],
    [
      "commas beside a semicolon in a remark",
      "Serial,psi,Note\nGP-1,3000,hot; topped\nGP-2,3000,ok",
      ["GP-1", "3000", "hot; topped"],
    ],
    [
      "semicolons where dates have a comma and lines leave their last cells out",
      "Date;Serial;psi;By;Note;\nMay 1, 2026;GP-1;3000;R;ok;\nMay 2, 2026;GP-2;3000;R;\nMay 3, 2026;GP-3;3000;R\nMay 4, 2026;GP-4;3000;R",
      ["May 3, 2026", "GP-3", "3000", "R"],
    ],
    ["upright strokes", "Serial|psi\nGP-1|3000", ["GP-1", "3000"]],
    ["what the first line says", "sep=;\nSerial;psi\nGP-1;3,000", ["GP-1", "3,000"]],
    ["commas in quotation marks, which do not count", `"a, b, c";d\n"e, f, g";h`, ["e, f, g", "h"]],
  ])("%s", async (_name, text, row) => {
    expect(await open(text)).toContainEqual(row);
  });

  test("nothing, in a file of one column", async () => {
    expect(await open("Serial\nGP-1\n")).toEqual([["Serial"], ["GP-1"]]);
  });
});

describe("encodings", () => {
  const rows = [
    ["Größe", "Öl"],
    ["12 L", "naïve"],
  ];
  const text = "Größe;Öl\r\n12 L;naïve\r\n";
  const utf16 = (littleEndian: boolean, mark: boolean) => {
    const marked = mark ? `\uFEFF${text}` : text;
    const view = new DataView(new ArrayBuffer(marked.length * 2));
    [...marked].forEach((letter, n) => view.setUint16(n * 2, letter.charCodeAt(0), littleEndian));
    return new Uint8Array(view.buffer);
  };

  test.each([
    ["UTF-8", new TextEncoder().encode(text)],
    ["UTF-8 with a byte-order mark", new TextEncoder().encode(`\uFEFF${text}`)],
    ["UTF-16, little-endian", utf16(true, true)],
    ["UTF-16, big-endian", utf16(false, true)],
    ["Windows-1252", Uint8Array.from([...text].map((letter) => letter.charCodeAt(0)))],
  ])("%s", async (_name, bytes) => {
    expect(await open(bytes)).toEqual(rows);
  });

  test("UTF-16 without a byte-order mark", async () => {
    const plain = "Serial;psi\nGP-1;3000";
    expect(await open(Uint8Array.from([...plain].flatMap((letter) => [letter.charCodeAt(0), 0])))).toEqual([
      ["Serial", "psi"],
      ["GP-1", "3000"],
    ]);
  });
});

test("the sheet is named after the file", async () => {
  const { content } = await openFile(new TextEncoder().encode("a,b"), "/home/r/Fill log 2026.v2.csv");
  expect(content.sheets[0]!.name).toBe("Fill log 2026.v2");
});

describe("written text", () => {
  test("reads back, and nothing in it is run", async () => {
    const written = writeCsv([
      ["=HYPERLINK(1)", "+31", "-", "@x", "\tx", -5, true, null, { error: "#N/A" }],
      [`say "ah"`, "a,b", "two\nlines", " edge ", "plain"],
    ]);
    expect(await open(written)).toEqual([
      ["'=HYPERLINK(1)", "'+31", "'-", "'@x", "'\tx", "-5", "TRUE", null, "#N/A"],
      [`say "ah"`, "a,b", "two\nlines", " edge ", "plain"],
    ]);
  });
});
