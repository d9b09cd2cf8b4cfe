import * as fc from "fast-check";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { openFile } from "../../../src/workbook/file/openFile";
import { handWritten } from "./byHand";

/** More runs by command: FUZZ_RUNS=20000 npx vitest run tests/workbook/file/fuzz.test.ts */
const numRuns = Number(process.env["FUZZ_RUNS"] ?? 300);
const SEED = 20_261_001;
/** What the page lets a person wait at most; far above any of these files. */
const PATIENCE_MS = 20_000;

const SHEET =
  `<cols><col min="1" max="2" width="12"/></cols><sheetData><row r="1" ht="20" customHeight="1"><c r="A1" t="s"><v>0</v></c>` +
  `<c r="B1" s="1"><v>46296</v></c></row><row r="2" hidden="1"><c r="A2" t="inlineStr"><is><t>EAN32</t></is></c>` +
  `<c r="B2"><f t="shared" ref="B2:B3" si="0">A1+1</f><v>2</v></c></row><row r="3"><c r="B3"><f t="shared" si="0"/><v>3</v></c>` +
  `<c r="C3" t="e"><v>#N/A</v></c><c r="D3"><f t="array" ref="D3:E4">_xlfn.SEQUENCE(2,2)</f><v>1</v></c></row></sheetData>` +
  `<mergeCells><mergeCell ref="A1:B1"/></mergeCells>`;
const BOOK = handWritten({
  sheets: { Fills: SHEET, Register: SHEET },
  texts: `<si><t>Serial &amp; owner</t></si>`,
  styles: `<fonts><font><b/></font></fonts><fills><fill/></fills><cellXfs><xf/><xf numFmtId="14" fontId="0"/></cellXfs>`,
});
const CSV = strToU8(`Serial;"psi ""hot""";O2\r\nGP-1;3000;31,8\r\n"two\nlines";;\r\n`);

/** A file is opened, or refused in a sentence; nothing else happens. */
async function opensOrRefuses(bytes: Uint8Array, name: string): Promise<void> {
  const outcome = await openFile(bytes, name).catch((error: unknown) => error);
  if (!(outcome instanceof Error)) return;
  expect(outcome.name).toBe("WorkbookProblem");
  expect(outcome.message).toMatch(/^“.*” cannot be read: .*\.$/s);
}

const change = fc.record({
  at: fc.double({ min: 0, max: 0.999, noNaN: true }),
  byte: fc.integer({ min: 0, max: 255 }),
});
const changes = fc.array(change, { minLength: 1, maxLength: 8 });

function changed(bytes: Uint8Array, list: readonly { at: number; byte: number }[]): Uint8Array {
  const copy = Uint8Array.from(bytes);
  for (const { at, byte } of list) copy[Math.floor(at * copy.length)] = byte;
  return copy;
}

describe("a mutated file is opened or refused in a sentence", () => {
  test(
    "bytes of the zip changed",
    async () => {
      await fc.assert(
        fc.asyncProperty(changes, (list) => opensOrRefuses(changed(BOOK, list), "log.xlsx")),
        { numRuns, seed: SEED },
      );
    },
    PATIENCE_MS + numRuns * 50,
  );

  test(
    "cut off anywhere",
    async () => {
      await fc.assert(
        fc.asyncProperty(fc.nat(BOOK.length), (length) =>
          opensOrRefuses(BOOK.subarray(0, length), "log.xlsx"),
        ),
        { numRuns, seed: SEED },
      );
    },
    PATIENCE_MS + numRuns * 50,
  );

  test(
    "characters of its XML changed, under a sound zip",
    async () => {
      const parts = unzipSync(BOOK);
      const names = Object.keys(parts);
      const fragments = [
        "<",
        ">",
        '"',
        "&",
        "/",
        "'",
        "<c>",
        "</row>",
        "999999999999",
        "A1",
        "-1",
        "NaN",
        "]]>",
        "<!--",
        "\u0000",
      ];
      const edit = fc.record({
        part: fc.constantFrom(...names),
        at: fc.double({ min: 0, max: 1, noNaN: true }),
        cut: fc.nat(12),
        put: fc.constantFrom("", ...fragments),
      });
      await fc.assert(
        fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 5 }), async (edits) => {
          const copy = { ...parts };
          for (const { part, at, cut, put } of edits) {
            const text = strFromU8(copy[part]!);
            const from = Math.floor(at * text.length);
            copy[part] = strToU8(text.slice(0, from) + put + text.slice(from + cut));
          }
          await opensOrRefuses(zipSync(copy, { level: 0 }), "log.xlsx");
        }),
        { numRuns, seed: SEED },
      );
    },
    PATIENCE_MS + numRuns * 50,
  );

  test(
    "bytes of a text file changed",
    async () => {
      await fc.assert(
        fc.asyncProperty(changes, (list) => opensOrRefuses(changed(CSV, list), "log.csv")),
        { numRuns, seed: SEED },
      );
    },
    PATIENCE_MS + numRuns * 50,
  );

  test(
    "bytes of any kind",
    async () => {
      await fc.assert(
        fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), (bytes) => opensOrRefuses(bytes, "log")),
        { numRuns, seed: SEED },
      );
    },
    PATIENCE_MS + numRuns * 50,
  );
});
