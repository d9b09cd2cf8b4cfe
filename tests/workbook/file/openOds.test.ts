import { strToU8, zipSync } from "fflate";
import { utils, write } from "@e965/xlsx";
import { expect, test } from "vitest";
import { openFile } from "../../../src/workbook/file/openFile";

/** An .ods written by hand: what stands in the spreadsheet, and the styles before it. */
function ods(body: string, styles = "", more: Record<string, Uint8Array> = {}): Uint8Array {
  const content =
    `<office:document-content xmlns:office="o" xmlns:table="t" xmlns:text="x" xmlns:style="s" xmlns:calcext="c">` +
    `<office:automatic-styles>${styles}</office:automatic-styles>` +
    `<office:body><office:spreadsheet>${body}</office:spreadsheet></office:body></office:document-content>`;
  const mimetype = strToU8("application/vnd.oasis.opendocument.spreadsheet");
  return zipSync({ mimetype: [mimetype, { level: 0 }], "content.xml": strToU8(content), ...more });
}

async function open(bytes: Uint8Array) {
  return (await openFile(bytes, "log.ods")).content;
}

test("values of every kind are read, dates as serials with a date's format", async () => {
  const { sheets } = await open(
    ods(
      `<table:table table:name="Fills"><table:table-row>` +
        `<table:table-cell office:value-type="string"><text:p>GP-118<text:s text:c="2"/>x</text:p><text:p>second</text:p></table:table-cell>` +
        `<table:table-cell office:value-type="float" office:value="3000"><text:p>3.000</text:p></table:table-cell>` +
        `<table:table-cell office:value-type="percentage" office:value="0.32"><text:p>32 %</text:p></table:table-cell>` +
        `<table:table-cell office:value-type="date" office:date-value="2026-10-01"><text:p>01.10.26</text:p></table:table-cell>` +
        `<table:table-cell office:value-type="time" office:time-value="PT13H30M00S"><text:p>13:30</text:p></table:table-cell>` +
        `<table:table-cell office:value-type="boolean" office:boolean-value="true"><text:p>WAHR</text:p></table:table-cell>` +
        `<table:table-cell office:value-type="string" office:string-value="" calcext:value-type="error"><text:p>#N/A</text:p></table:table-cell>` +
        `<table:table-cell office:value-type="string"><office:annotation><text:p>a remark</text:p></office:annotation><text:p>air</text:p></table:table-cell>` +
        `</table:table-row></table:table>`,
    ),
  );
  const [row] = sheets[0]!.rows;
  expect(row!.values).toEqual([
    "GP-118  x\nsecond",
    3000,
    0.32,
    46_296,
    0.5625,
    true,
    { error: "#N/A" },
    "air",
  ]);
  expect(row!.formats).toEqual([undefined, undefined, "0.0%", "yyyy-mm-dd", "h:mm:ss"]);
});

test("repeated, merged and hidden cells stand where they belong", async () => {
  const { sheets } = await open(
    ods(
      `<table:table table:name="Fills"><table:table-row>` +
        `<table:table-cell table:number-columns-spanned="2" office:value-type="string"><text:p>INITIAL</text:p></table:table-cell><table:covered-table-cell/>` +
        `<table:table-cell table:number-columns-repeated="2" office:value-type="float" office:value="7"/></table:table-row>` +
        `<table:table-row table:number-rows-repeated="2"><table:table-cell table:number-columns-repeated="16384"/></table:table-row>` +
        `<table:table-row table:number-rows-repeated="2" table:visibility="collapse"><table:table-cell office:value-type="float" office:value="1"/></table:table-row>` +
        `<table:table-row table:number-rows-repeated="1048570"><table:table-cell table:number-columns-repeated="16384"/></table:table-row></table:table>` +
        `<table:table table:name="Old" table:style-name="ta2"/>`,
      `<style:style style:name="ta2" style:family="table"><style:table-properties table:display="false"/></style:style>`,
    ),
  );
  expect(sheets.map(({ name, hidden }) => [name, hidden])).toEqual([
    ["Fills", false],
    ["Old", true],
  ]);
  expect(sheets[0]!.rows).toEqual([
    { values: ["INITIAL", null, 7, 7] },
    { values: [] },
    { values: [] },
    { values: [1], hidden: true },
    { values: [1], hidden: true },
  ]);
  expect(sheets[0]!.merges).toEqual([{ firstRow: 0, firstColumn: 0, lastRow: 0, lastColumn: 1 }]);
});

test("a file of another program reads the same", async () => {
  const book = utils.book_new();
  const cells = [
    ["Serial", "psi"],
    ["007", 3000],
    [null, true],
  ];
  utils.book_append_sheet(book, utils.aoa_to_sheet(cells), "Fills");
  const { sheets } = await open(new Uint8Array(write(book, { type: "array", bookType: "ods" })));
  expect(sheets[0]!.rows.map((row) => [...row.values])).toEqual(cells);
});

test("what is left out is said", async () => {
  expect((await open(ods(`<table:table table:name="Fills"/>`))).leftOut).toContain(
    "formulas (their last answers are there)",
  );
});

test("a cell repeated over a whole sheet is refused", async () => {
  const row = `<table:table-row table:number-rows-repeated="1048576"><table:table-cell table:number-columns-repeated="16384" office:value-type="float" office:value="1"/></table:table-row>`;
  await expect(open(ods(`<table:table table:name="Fills">${row}</table:table>`))).rejects.toThrow(
    "more than 25,000,000 cells, beyond what Brimbook takes",
  );
});

test("a file with a password, and a text document, are refused with what to do", async () => {
  const manifest = strToU8(`<manifest:manifest><manifest:encryption-data/></manifest:manifest>`);
  await expect(open(ods("", "", { "META-INF/manifest.xml": manifest }))).rejects.toThrow(
    "“log.ods” cannot be read: it is protected by a password. Open it in your spreadsheet program, save a copy without the password, and open that.",
  );
  const text = strToU8("application/vnd.oasis.opendocument.text");
  await expect(open(zipSync({ mimetype: text, "content.xml": strToU8("<a/>") }))).rejects.toThrow(
    "it is a document, but no spreadsheet",
  );
});

test("letters that a number format shows are a number format; a row that is struck out says so", async () => {
  const cell = (value: number, shown: string, style = "") =>
    `<table:table-cell${style} office:value-type="float" office:value="${value}"><text:p>${shown}</text:p></table:table-cell>`;
  const struck = ` table:style-name="ce1"`;
  const { sheets } = await open(
    ods(
      `<table:table table:name="Fills"><table:table-row>${cell(200, "200 bar")}${cell(7, "HK0007")}${cell(12, "12")}</table:table-row>` +
        `<table:table-row>${cell(210, "210 bar", struck)}${cell(8, "HK0008", struck)}</table:table-row></table:table>`,
      `<style:style style:name="ce1" style:family="table-cell"><style:text-properties style:text-line-through-style="solid"/></style:style>`,
    ),
  );
  const [kept, struckOut] = sheets[0]!.rows;
  expect(kept!.formats).toEqual([`General" bar"`, `"HK"0000`]);
  expect(kept!.struckOut).toBeUndefined();
  expect(struckOut!.struckOut).toBe(true);
});
