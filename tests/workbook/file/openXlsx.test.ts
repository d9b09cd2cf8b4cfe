import ExcelJS from "exceljs";
import { describe, expect, test } from "vitest";
import type { RowContent, SheetContent, WorkbookContent } from "../../../src/workbook/file/content";
import { NEVER_CALCULATED } from "../../../src/sheet/sheet";
import { openFile } from "../../../src/workbook/file/openFile";
import { handWritten, type HandWritten } from "./byHand";

async function open(book: HandWritten): Promise<WorkbookContent> {
  return (await openFile(handWritten(book), "log.xlsx")).content;
}

async function openCells(cells: string, more: Partial<HandWritten> = {}): Promise<readonly RowContent[]> {
  const { sheets } = await open({ sheets: { Fills: `<sheetData>${cells}</sheetData>` }, ...more });
  return sheets[0]!.rows;
}

async function openSheet(xml: string, more: Partial<HandWritten> = {}): Promise<SheetContent> {
  return (await open({ sheets: { Fills: xml }, ...more })).sheets[0]!;
}

const values = (rows: readonly RowContent[]) => rows.map((row) => [...row.values]);

describe("values", () => {
  test("of every kind are read as they stand", async () => {
    const rows = await openCells(
      `<row r="1"><c r="A1" t="s"><v>1</v></c><c r="B1"><v>3000</v></c><c r="C1" t="n"><v>0.32</v></c>` +
        `<c r="D1" t="b"><v>1</v></c><c r="E1" t="e"><v>#N/A</v></c><c r="F1" t="inlineStr"><is><t>EAN32</t></is></c>` +
        `<c r="G1" t="str"><f>A1&amp;"x"</f><v>air &amp; more</v></c><c r="H1"><v>1.5E-3</v></c></row>`,
      { texts: "<si><t>not this</t></si><si><t>GP-118</t></si>" },
    );
    expect(values(rows)).toEqual([
      ["GP-118", 3000, 0.32, true, { error: "#N/A" }, "EAN32", "air & more", 0.0015],
    ]);
    expect(rows[0]!.origins?.[6]).toEqual({ formula: 'A1&"x"' });
  });

  test("text keeps its spaces, its lines, its runs, and leaves out the reading aid", async () => {
    const texts =
      `<si><t xml:space="preserve">  two\nlines </t></si>` +
      `<si><r><rPr><b/></rPr><t>EAN</t></r><r><t xml:space="preserve">32 </t></r><r><t>&#x1F30A;</t></r></si>` +
      `<si><t>水深</t><rPh sb="0" eb="2"><t>スイシン</t></rPh></si><si><t>a_x000D_b_x005F_x000D_c</t></si><si/>` +
      `<si><t><![CDATA[<1.6 & safe>]]></t></si>`;
    const cells = [0, 1, 2, 3, 4, 5].map((n) => `<c t="s"><v>${n}</v></c>`).join("");
    expect(values(await openCells(`<row>${cells}</row>`, { texts }))).toEqual([
      ["  two\nlines ", "EAN32 🌊", "水深", "a\rb_x000D_c", null, "<1.6 & safe>"],
    ]);
  });

  test("without places stand one after the other, and gaps are blank", async () => {
    const rows = await openCells(
      `<row><c><v>1</v></c><c r="D1"><v>4</v></c><c><v>5</v></c></row><row r="4"><c r="B4"><v>2</v></c></row><row><c><v>9</v></c></row>`,
    );
    expect(values(rows)).toEqual([[1, null, null, 4, 5], [], [], [null, 2], [9]]);
  });

  test("what should be a number and is none stays text", async () => {
    expect(values(await openCells(`<row><c><v>3000 psi</v></c><c><v/></c><c><v>7</v></c></row>`))).toEqual([
      ["3000 psi", null, 7],
    ]);
  });

  test("dates in ISO form, as strict files have them, become serials", async () => {
    const cells = `<row><c t="d"><v>2026-10-01</v></c><c t="d"><v>2026-10-01T12:00:00</v></c><c t="d"><v>soon</v></c></row>`;
    expect(values(await openCells(cells))).toEqual([[46_296, 46_296.5, "soon"]]);
    const old = await openCells(cells, { workbookProperties: `<workbookPr date1904="true"/>` });
    expect(values(old)).toEqual([[44_834, 44_834.5, "soon"]]);
  });

  test("an index to a text that is not there is refused, not left blank", async () => {
    await expect(
      openCells(`<row><c t="s"><v>5</v></c></row>`, { texts: "<si><t>a</t></si>" }),
    ).rejects.toThrow('“log.xlsx” cannot be read: in sheet "Fills", it points to a text that is not there.');
  });

  test("names under a prefix read like names without", async () => {
    const part =
      `<?xml version="1.0"?><x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main">` +
      `<x:sheetData><x:row r="1"><x:c r="A1" t="str"><x:v>GP-118</x:v></x:c></x:row></x:sheetData></x:worksheet>`;
    expect(values((await openSheet(part)).rows)).toEqual([["GP-118"]]);
  });
});

describe("dates", () => {
  test("of a workbook that counts from 1904 say so, and keep their serials", async () => {
    const sheet = await openSheet(`<sheetData><row><c><v>42277</v></c></row></sheetData>`, {
      workbookProperties: `<workbookPr date1904="1"/>`,
    });
    expect(sheet.dateSystem).toBe(1904);
    expect(values(sheet.rows)).toEqual([[42_277]]);
  });

  test("are told by their formats, built in or the file's own", async () => {
    const styles =
      `<numFmts><numFmt numFmtId="164" formatCode="mmm\\-yy;@"/><numFmt numFmtId="165" formatCode="General"/></numFmts>` +
      `<cellXfs><xf/><xf numFmtId="14"/><xf numFmtId="17"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="9"/><xf numFmtId="30"/></cellXfs>`;
    const cells = [0, 1, 2, 3, 4, 5, 6].map((style) => `<c s="${style}"><v>1</v></c>`).join("");
    expect((await openCells(`<row>${cells}</row>`, { styles }))[0]!.formats).toEqual([
      undefined,
      "m/d/yyyy",
      "mmm-yy",
      "mmm\\-yy;@",
      undefined,
      "0%",
      "yyyy/m/d",
    ]);
  });

  test("written by another program from a Date are the same day", async () => {
    const book = new ExcelJS.Workbook();
    book.addWorksheet("Log").addRow([new Date(Date.UTC(2019, 9, 1)), new Date(Date.UTC(2026, 9, 1, 18))]);
    const { content } = await openFile(new Uint8Array(await book.xlsx.writeBuffer()), "log.xlsx");
    expect(values(content.sheets[0]!.rows)).toEqual([[43_739, 46_296.75]]);
  });
});

describe("formulas", () => {
  test("that are shared move along with their cells", async () => {
    const rows = await openCells(
      `<row r="2"><c r="C2"><f t="shared" ref="C2:C4" si="0">A2+$B$1-LOG10(B2)&amp;"A2"</f><v>1</v></c></row>` +
        `<row r="3"><c r="C3"><f t="shared" si="0"/><v>2</v></c></row>` +
        `<row r="4"><c r="C4"><f t="shared" si="0"/><v>3</v></c></row>`,
    );
    expect(rows.slice(1).map((row) => row.origins?.[2])).toEqual([
      { formula: 'A2+$B$1-LOG10(B2)&"A2"' },
      { formula: 'A3+$B$1-LOG10(B3)&"A2"' },
      { formula: 'A4+$B$1-LOG10(B4)&"A2"' },
    ]);
    expect(values(rows).slice(1)).toEqual([
      [null, null, 1],
      [null, null, 2],
      [null, null, 3],
    ]);
  });

  test("of ours, in the form Excel stores, read as they are typed", async () => {
    const stored = [
      "_xldudf_BRIM_MOD(C2,D2)",
      "[1]!_xldudf_BRIM_FILLCHECK(A1)",
      "[2]!BRIM.MOD(A1)",
      "_xlfn.LET(_xlpm.x,_xlfn._xlws.FILTER(A1:A9,B1:B9),_xlpm.x)",
      "'C:\\shop\\a b.xlam'!BRIM.MIX(A1)",
    ];
    const cells = stored.map(
      (formula, n) => `<c cm="1"><f t="array" ref="${"ABCDE"[n]}1">${formula}</f><v>1</v></c>`,
    );
    const [row] = await openCells(`<row r="1">${cells.join("")}</row>`);
    expect(row!.origins).toEqual(
      [
        "BRIM.MOD(C2,D2)",
        "BRIM.FILLCHECK(A1)",
        "BRIM.MOD(A1)",
        "LET(x,FILTER(A1:A9,B1:B9),x)",
        "BRIM.MIX(A1)",
      ].map((formula) => ({ formula })),
    );
  });

  test("that spill mark the cells they fill, which keep their last values", async () => {
    const rows = await openCells(
      `<row r="1"><c r="A1"><f t="array" ref="A1:B2">_xlfn.SEQUENCE(2,2)</f><v>1</v></c><c r="B1"><v>2</v></c><c r="C1"><v>7</v></c></row>` +
        `<row r="2"><c r="A2"><v>3</v></c><c r="B2"><v>4</v></c></row><row r="3"><c r="A3"><v>8</v></c></row>`,
    );
    expect(values(rows)).toEqual([[1, 2, 7], [3, 4], [8]]);
    const fills = { firstRow: 0, firstColumn: 0, lastRow: 1, lastColumn: 1 };
    expect(rows[0]!.origins).toEqual([{ formula: "SEQUENCE(2,2)", fills }, "spill", undefined]);
    expect(rows[1]!.origins).toEqual(["spill", "spill"]);
    expect(rows[2]!.origins).toBeUndefined();
  });

  test("without an answer yet are there all the same", async () => {
    const [row] = await openCells(`<row><c><f>A2</f></c><c t="str"><f>B2</f><v></v></c></row>`);
    expect(row!.values).toEqual([{ error: NEVER_CALCULATED }, ""]);
    expect(row!.origins).toEqual([{ formula: "A2" }, { formula: "B2" }]);
  });

  test("with 0 for an answer are not calculated where another has none: the program that wrote them calculates nothing", async () => {
    const [row] = await openCells(
      `<row><c><f>A2</f></c><c><f>B2</f><v>0</v></c><c><f>C2</f><v>7</v></c></row>`,
    );
    expect(row!.values).toEqual([{ error: NEVER_CALCULATED }, { error: NEVER_CALCULATED }, 7]);
    const [calculated] = await openCells(`<row><c><f>B2</f><v>0</v></c></row>`);
    expect(calculated!.values).toEqual([0]);
  });

  test("are read wherever the answer stands, and whatever the kind of the cell says of it", async () => {
    const [row] = await openCells(
      `<row><c><v>3000</v><f>E2+2500</f></c><c t="str"><is><t>HK1</t></is></c><c t="inlineStr"><v>HK2</v></c><c><is><t>HK3</t></is></c></row>`,
    );
    expect(row!.values).toEqual([3000, "HK1", "HK2", "HK3"]);
    expect(row!.origins?.[0]).toEqual({ formula: "E2+2500" });
  });
});

describe("sheets", () => {
  test("tell of merged cells, frozen panes, widths, heights and what is hidden", async () => {
    const { sheets } = await open({
      sheets: {
        Fills:
          `<sheetViews><sheetView><pane xSplit="1" ySplit="2" topLeftCell="B3" state="frozen"/></sheetView></sheetViews>` +
          `<cols><col min="1" max="1" width="12.5"/><col min="3" max="16384" width="8" hidden="1"/></cols>` +
          `<sheetData><row r="1" ht="30" customHeight="1"><c t="str"><v>INITIAL</v></c><c/><c t="str"><v>FINAL</v></c></row>` +
          `<row r="2" hidden="1"><c t="str"><v>psi</v></c></row></sheetData><mergeCells><mergeCell ref="A1:B1"/></mergeCells>`,
        Old: `<sheetData/>`,
      },
      hidden: ["Old"],
    });
    expect(sheets.map(({ name, hidden }) => ({ name, hidden }))).toEqual([
      { name: "Fills", hidden: false },
      { name: "Old", hidden: true },
    ]);
    expect(sheets[0]).toMatchObject({
      frozenRows: 2,
      frozenColumns: 1,
      merges: [{ firstRow: 0, firstColumn: 0, lastRow: 0, lastColumn: 1 }],
      rows: [{ heightPt: 30 }, { hidden: true }],
    });
    expect(sheets[0]!.columns).toEqual([
      { widthCharacters: 12.5 },
      undefined,
      { widthCharacters: 8, hidden: true },
    ]);
  });

  test("end at the last row that holds anything, however far they are formatted", async () => {
    const rows = await openCells(
      `<row r="1"><c r="A1"><v>1</v></c></row><row r="5"><c r="A5" s="1"/></row><row r="900"><c r="A900" s="1"/></row>`,
      { styles: `<cellXfs><xf/><xf numFmtId="14"/></cellXfs>` },
    );
    expect(rows).toHaveLength(1);
  });

  test("that are charts are no sheets of ours, and are named as left out", async () => {
    const { sheets, leftOut } = await open({
      sheets: { Fills: `<sheetData/><conditionalFormatting/><drawing/>` },
      workbookRest: `<definedNames><definedName name="_xlnm.Print_Area">x</definedName><definedName name="Bank">Fills!$A$1</definedName></definedNames>`,
      related: [{ type: "vbaProject", target: "vbaProject.bin" }],
    });
    expect(sheets).toHaveLength(1);
    expect(leftOut).toEqual(["charts and pictures", "conditional formats", "macros", "names for ranges"]);
  });

  test("with rows or cells out of order are refused, not overwritten", async () => {
    await expect(
      openCells(`<row r="2"><c><v>1</v></c></row><row r="2"><c><v>2</v></c></row>`),
    ).rejects.toThrow("its rows are not in their order");
    await expect(openCells(`<row><c r="B1"><v>1</v></c><c r="A1"><v>2</v></c></row>`)).rejects.toThrow(
      "its cells are not in their order",
    );
  });
});

describe("styles", () => {
  test("are read with theme, tint and palette; black text and no fill are as usual", async () => {
    const color = (rgb: string) => `<a:srgbClr val="${rgb}"/>`;
    const theme =
      `<a:theme xmlns:a="x"><a:themeElements><a:clrScheme><a:dk1><a:sysClr val="windowText" lastClr="000000"/></a:dk1>` +
      `<a:lt1><a:sysClr val="window" lastClr="FFFFFF"/></a:lt1><a:dk2>${color("44546A")}</a:dk2><a:lt2>${color("E7E6E6")}</a:lt2>` +
      `<a:accent1>${color("4472C4")}</a:accent1></a:clrScheme></a:themeElements></a:theme>`;
    const styles =
      `<fonts><font><color theme="1"/></font><font><b/><i/><u/><color rgb="FFC00000"/></font><font><b val="0"/><color theme="4"/></font></fonts>` +
      `<fills><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill>` +
      `<fill><patternFill patternType="solid"><fgColor theme="4" tint="0.79998168889431442"/></patternFill></fill>` +
      `<fill><patternFill patternType="solid"><fgColor indexed="13"/></patternFill></fill></fills>` +
      `<cellStyleXfs><xf fontId="1"/></cellStyleXfs>` +
      `<cellXfs><xf fontId="0" fillId="1"/><xf fontId="1" fillId="3"/>` +
      `<xf fontId="2" fillId="2"><alignment horizontal="center" vertical="top" wrapText="1"/></xf></cellXfs>` +
      `<dxfs><dxf><font><i/></font></dxf></dxfs>`;
    const [row] = await openCells(`<row><c s="0"><v>1</v></c><c s="1"/><c s="2"><v>3</v></c></row>`, {
      styles,
      theme,
    });
    expect(row!.styles).toEqual([
      undefined,
      { bold: true, italic: true, underline: true, fontColour: "#C00000", fill: "#FFFF00" },
      /* Excel rounds this tint of its blue to D9E1F2 (from memory): one step of 255 apart. */
      { fontColour: "#4472C4", fill: "#DAE3F3", horizontal: "center", vertical: "top", wrap: true },
    ]);
  });
});

test("a row is struck out where everything in it is", async () => {
  const { sheets } = await open({
    styles:
      `<fonts><font/><font><strike/></font></fonts><fills><fill/></fills><borders><border/></borders>` +
      `<cellXfs><xf fontId="0"/><xf fontId="1"/></cellXfs>`,
    sheets: {
      Fills:
        `<sheetData><row><c s="1"><v>1</v></c><c/><c s="1"><v>2</v></c></row>` +
        `<row><c s="1"><v>1</v></c><c><v>2</v></c></row></sheetData>`,
    },
  });
  expect(sheets[0]!.rows.map(({ struckOut }) => struckOut)).toEqual([true, undefined]);
});
