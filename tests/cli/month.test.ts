import { existsSync } from "node:fs";
import { link, mkdtemp, readFile, rm, symlink, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { unparse } from "papaparse";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { sentenceOf } from "../../src/cli/problem";
import { run } from "../../src/cli/run";
import { openFile } from "../../src/workbook/file/openFile";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { OVERDUE } from "./logs";

let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "brimbook-month-"));
  await writeFile(join(folder, "log.csv"), OVERDUE);
});
afterAll(() => rm(folder, { recursive: true, force: true }));

async function command(...words: string[]): Promise<{ code: number; lines: string[] }> {
  const lines: string[] = [];
  const input = { [Symbol.asyncIterator]: () => [][Symbol.iterator]() as never };
  try {
    return { code: await run(words, { print: (line) => void lines.push(line), input, folder }), lines };
  } catch (thrown) {
    return { code: 2, lines: [...lines, sentenceOf(thrown)] };
  }
}

const GIVEN = ["month", "log.csv", "2026-10", "--rules", "US", "--as-of", "2026-11-01", "--out"];

describe("month", () => {
  test("writes the report as a workbook of its own, and says what is in it", async () => {
    const { code, lines } = await command(...GIVEN, "report.xlsx", "--shop", "Gannet Point");
    expect(code).toBe(0);
    expect(lines[0]).toMatch(/^report\.xlsx: 2 fills, \d+ open findings?, 0 accepted/);
    const { content } = await openFile(
      new Uint8Array(await readFile(join(folder, "report.xlsx"))),
      "report.xlsx",
    );
    expect(content.sheets[0]!.name).toBe("Month 2026-10");
    expect(content.sheets.map(({ name }) => name)).not.toContain("log");
    const findings = content.sheets.find(({ name }) => name.startsWith("Findings"))!;
    const cells = findings.rows.flatMap(({ values }) => values);
    expect(cells).toContain("log!G2");
    expect(cells.join("\n")).toContain("Hydro 2020-06-13 was due by 30 June 2025; filled 14 October 2026.");
  });

  test("writes the same bytes for the same log, day and rules", async () => {
    await command(...GIVEN, "one.xlsx");
    await command(...GIVEN, "two.xlsx");
    expect(await readFile(join(folder, "one.xlsx"))).toEqual(await readFile(join(folder, "two.xlsx")));
  });

  test.each([
    ["check", "made.xlsx", "--rules", "US"],
    ["read", "made.xlsx"],
    ["month", "made.xlsx", "2026-10", "--rules", "US", "--out", "of a report.xlsx"],
    ["check", "findings.csv", "--rules", "US"],
  ])("its report is no log for %s %s: exit code 2", async (...words) => {
    if (!existsSync(join(folder, "made.xlsx"))) await command(...GIVEN, "made.xlsx");
    const { content } = await openFile(
      new Uint8Array(await readFile(join(folder, "made.xlsx"))),
      "made.xlsx",
    );
    const findings = content.sheets.find(({ name }) => name.startsWith("Findings"))!;
    await writeFile(
      join(folder, "findings.csv"),
      unparse(findings.rows.map(({ values }) => values.map((cell) => cell ?? ""))),
    );
    const { code, lines } = await command(...words);
    expect(code).toBe(2);
    expect(lines).toEqual([
      `“${words[1]}” holds no log: Brimbook wrote it (month report). Open the log that it was made from.`,
    ]);
  });

  test("its sheets beside the log are left out of the check", async () => {
    await command(...GIVEN, "beside.xlsx");
    const log = await openFile(new TextEncoder().encode(OVERDUE), "log.csv");
    const report = await openFile(new Uint8Array(await readFile(join(folder, "beside.xlsx"))), "beside.xlsx");
    const sheets = [...log.content.sheets, ...report.content.sheets];
    await writeFile(join(folder, "both.xlsx"), await writeXlsx({ ...log.content, sheets }));
    const [alone, both] = await Promise.all(
      ["log.csv", "both.xlsx"].map((file) =>
        command("check", file, "--rules", "US", "--as-of", "2026-11-01"),
      ),
    );
    const [, ...rest] = both!.lines.filter((line) => !line.includes("was left out"));
    expect(rest).toEqual(alone!.lines.slice(1));
  });

  test.each([
    [["month"], "Name the month after the file, such as 2026-10."],
    [["month", "log.csv", "October", "--out", "r.xlsx"], `"October" is no month: write it as 2026-10.`],
    [["month", "log.csv", "2026-13", "--out", "r.xlsx"], `"2026-13" is no month: write it as 2026-10.`],
    [["month", "log.csv", "2026-10", "--rules", "US"], "Say where the report goes: add --out report.xlsx."],
    [
      ["month", "log.csv", "2026-10", "--rules", "US", "--out", "r.pdf"],
      `"r.pdf" is no .xlsx file: give it a name such as report.xlsx.`,
    ],
    [["month", "log.csv", "2026-10", "--out", "r.xlsx"], "No country's rules"],
    [
      ["month", "log.csv", "2025-01", "--rules", "US", "--out", "r.xlsx"],
      "The log has no fills in 2025-01: choose one of 2026-10.",
    ],
    [["month", "gone.csv", "2026-10", "--rules", "US", "--out", "r.xlsx"], "does not exist"],
    [[...GIVEN, "r.xlsx", "--paper", "foolscap"], `"foolscap" is no paper: write A4 or Letter.`],
    [[...GIVEN, "no folder/r.xlsx"], "cannot be written"],
  ])("refuses %j in a sentence", async (words, sentence) => {
    const { code, lines } = await command(...words);
    expect(code).toBe(2);
    expect(lines.join("\n")).toContain(sentence);
  });

  test("never writes over the log", async () => {
    await writeFile(join(folder, "log.xlsx"), await readFile(join(folder, "one.xlsx")));
    const { lines } = await command("month", "log.xlsx", "2026-10", "--rules", "US", "--out", "./log.xlsx");
    expect(lines).toEqual(["The report would be written over the log: give it another name."]);
  });

  test.each([
    ["another file", (path: string) => writeFile(path, "somebody's work")],
    ["the log by a hard link", (path: string) => link(join(folder, "log.csv"), path)],
    ["the log by a symbolic link", (path: string) => symlink(join(folder, "log.csv"), path)],
  ])("never writes over %s", async (name, make) => {
    const file = `${name}.xlsx`;
    await make(join(folder, file));
    const before = await readFile(join(folder, file), "utf8");
    const { code, lines } = await command(...GIVEN, file);
    expect(code).toBe(2);
    expect(lines.join()).toContain("is there already: give the report another name");
    expect(await readFile(join(folder, file), "utf8")).toBe(before);
  });
});
