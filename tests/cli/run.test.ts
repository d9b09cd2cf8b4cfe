import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { audit } from "../../src/audit/audit";
import { identityOf } from "../../src/audit/judge/acceptance";
import { countryRules } from "../../src/cylinders/countryRules";
import { countryContext } from "../../src/log/countryContext";
import { readLog } from "../../src/log/readLog";
import { run } from "../../src/cli/run";
import { sentenceOf } from "../../src/cli/problem";
import { openFile } from "../../src/workbook/file/openFile";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { CLEAN, OPEN, OVERDUE, STAMPS, UNTIDY, WITHOUT_VISUAL } from "./logs";

let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "brimbook-cli-"));
  await writeFile(join(folder, "clean.csv"), CLEAN);
  await writeFile(join(folder, "overdue.csv"), OVERDUE);
  await writeFile(join(folder, "no visual.csv"), WITHOUT_VISUAL);
  await writeFile(join(folder, "stamps.csv"), STAMPS);
  await writeFile(join(folder, "untidy.xlsx"), await writeXlsx(UNTIDY));
  const workbook = await openFile(new TextEncoder().encode(OVERDUE), "overdue.csv");
  await workbook.writeSetting("brimbook", { version: 1, country: "US", units: "us", sheets: [] });
  await writeFile(join(folder, "with settings.xlsx"), await writeXlsx(workbook.content));
});

afterAll(() => rm(folder, { recursive: true, force: true }));

/** Runs a command as the terminal would, and hands back what it printed. */
async function command(...words: string[]): Promise<{ code: number; lines: string[] }> {
  return commandReading([], ...words);
}

async function commandReading(
  input: readonly string[],
  ...words: string[]
): Promise<{ code: number; lines: string[] }> {
  const lines: string[] = [];
  async function* inputLines() {
    yield* input;
  }
  try {
    const code = await run(words, { print: (line) => void lines.push(line), input: inputLines(), folder });
    return { code, lines };
  } catch (thrown) {
    return { code: 2, lines: [...lines, sentenceOf(thrown)] };
  }
}

async function json<Printed>(...words: string[]): Promise<{ code: number; printed: Printed }> {
  const { code, lines } = await command(...words, "--json");
  return { code, printed: JSON.parse(lines.join("\n")) as Printed };
}

interface CheckPrinted {
  readonly rows: unknown;
  readonly notChecked: readonly object[];
  readonly findings: readonly object[];
}

interface ReadPrinted {
  readonly rows: unknown;
  readonly sheets: readonly {
    readonly columns: readonly object[];
    readonly rows: readonly { readonly kind: string; readonly fields: Record<string, unknown> }[];
  }[];
}

describe("calc", () => {
  test("prints a single value as it is", async () => {
    expect(await command("calc", "MOD", '[32,"ft"]')).toEqual({ code: 0, lines: ["111.375"] });
    expect(await command("calc", "brim.mix", "[0.32]")).toEqual({ code: 0, lines: ['"EAN32"'] });
  });

  test("prints ranges as rows, with the error of a bad row in its place", async () => {
    const { code, lines } = await command("calc", "MOD", '[[[32],[3],["EAN36"]],"ft"]');
    expect(code).toBe(3);
    const [first, second, third] = JSON.parse(lines[0]!);
    expect(first).toEqual([111.375]);
    expect(second[0]).toMatchObject({ error: "#VALUE!", message: expect.stringContaining("Oxygen 3") });
    expect(third[0]).toBeCloseTo(95.33, 2);
  });

  test("prints what cannot be answered as an error with its sentence", async () => {
    for (const [name, args] of [
      ["MOD", '[3,"ft"]'],
      ["NOPE", "[]"],
    ] as const) {
      const { code, lines } = await command("calc", name, args);
      expect(code).toBe(2);
      expect(JSON.parse(lines[0]!)).toEqual({ error: "#VALUE!", message: expect.stringMatching(/\.$/) });
    }
  });

  test.each([
    [["calc"], "Name a function"],
    [["calc", "MOD", "32,ft"], "is not JSON"],
    [["calc", "MOD", '{"a":1}'], "Arguments are a JSON array"],
    [["calc", "MOD", "[[32,36]]"], "Argument 1 is a range"],
    [["calc", "MOD", "[32]", "ft"], "Put all arguments into one JSON array"],
  ])("%j says how it is written", async (words, sentence) => {
    const { code, lines } = await command(...words);
    expect(code).toBe(2);
    expect(lines.join()).toContain(sentence);
  });

  test("--batch answers line by line, a bad line too", async () => {
    const input = [
      '{"fn":"MOD","args":[32,"ft"]}',
      "",
      "rubbish",
      '["MOD",["EAN40","m"]]',
      '{"args":[1]}',
      "7",
    ];
    const { code, lines } = await commandReading(input, "calc", "--batch");
    expect(code).toBe(0);
    const answers = lines.map((line) => JSON.parse(line));
    expect(answers.map((answer) => (typeof answer === "number" ? answer : answer.error))).toEqual([
      111.375,
      "#VALUE!",
      25,
      "#VALUE!",
      "#VALUE!",
    ]);
  });
});

describe("check", () => {
  test("of a log past its hydro finds it: exit code 1", async () => {
    const { code, printed } = await json<CheckPrinted>(
      "check",
      "overdue.csv",
      "--rules",
      "US",
      "--as-of",
      "2026-10-31",
    );
    expect(code).toBe(1);
    expect(Object.keys(printed)).toEqual(
      "file rules units asOf fillsAfterAsOf questions rows recall accepted notChecked faults findings overrides"
        .split(" ")
        .filter((key) => key !== "units"),
    );
    expect(printed).toMatchObject({
      file: "overdue.csv",
      rules: "US",
      asOf: "2026-10-31",
      fillsAfterAsOf: 0,
      recall: [{ serial: "GP-101", fillDate: "2026-10-14", sheet: "overdue", row: 2, rules: ["V01"] }],
    });
    expect(printed.rows).toEqual({
      total: 5,
      fills: 2,
      cylinders: 0,
      blank: 1,
      headings: 1,
      totals: 1,
      unreadable: 0,
    });
    expect(printed.findings).toHaveLength(1);
    const [finding] = printed.findings;
    expect(Object.keys(finding!)).toEqual(
      "rule severity basis source sheet cell row serial fillDate message todo".split(" "),
    );
    expect(finding).toMatchObject({
      rule: "V01",
      basis: "law",
      sheet: "overdue",
      cell: "G2",
      row: 2,
      serial: expect.stringMatching(/^GP-?101$/) as unknown,
      fillDate: "2026-10-14",
    });
    for (const entry of printed.notChecked)
      expect(Object.keys(entry)).toEqual(["rule", "count", "why", "cells"]);
  });

  test("of a log with nothing wrong: exit code 0", async () => {
    const { code, printed } = await json<CheckPrinted>(
      "check",
      "clean.csv",
      "--rules",
      "us",
      "--as-of",
      "2026-10-31",
    );
    expect(printed.findings).toEqual([]);
    expect(code).toBe(0);
  });

  test("of a log without visuals finds nothing, and says that it was not checked: exit code 3", async () => {
    const { code, printed } = await json<CheckPrinted>(
      "check",
      "no visual.csv",
      "--rules",
      "US",
      "--as-of",
      "2026-10-31",
    );
    expect(code).toBe(3);
    expect(printed.findings).toEqual([]);
    expect(printed.notChecked).toContainEqual({
      rule: "V06",
      count: 2,
      why: expect.stringContaining("visual"),
      cells: [],
    });
  });

  test("says that a file without a log was not checked, and never that nothing was found", async () => {
    const file = join(folder, "shopping.csv");
    await writeFile(file, "Milk,2\nBread,1\n");
    const { code, lines } = await command("check", "shopping.csv", "--rules", "US");
    expect(code).toBe(2);
    expect(lines.join("\n")).toContain("nothing was checked");
    expect(lines.join("\n")).not.toContain("Nothing found");
  });

  test("as text names what was not checked, and why", async () => {
    const { lines } = await command("check", "no visual.csv", "--rules", "US", "--as-of", "2026-10-31");
    const text = lines.join("\n");
    expect(text).toContain("Nothing found in what could be checked.");
    expect(text).toMatch(/NOT CHECKED\n {2}2 fills, .*visual: V06 /);
    expect(text).toContain("unknown is not a pass");
  });

  test("takes the country from the workbook's own settings", async () => {
    const { code, printed } = await json<CheckPrinted>(
      "check",
      "with settings.xlsx",
      "--as-of",
      "2026-10-31",
    );
    expect(code).toBe(1);
    expect(printed.findings).toHaveLength(1);
  });

  test("as text says what was read, found and not checked, and that it is no proof", async () => {
    const { code, lines } = await command("check", "overdue.csv", "--rules", "US", "--as-of", "2026-10-31");
    const text = lines.join("\n");
    expect(code).toBe(1);
    expect(text).toContain("File: overdue.csv, as of 2026-10-31.");
    expect(text).toContain("Rules: United States.");
    expect(text).toContain("Units: as the log has them.");
    expect(text).toContain("5 rows = 2 fills + 1 heading + 1 totals row + 1 blank + 0 unreadable.");
    expect(text).toContain("overdue!G2");
    expect(text).toContain("Hydro, visual and oxygen rating were judged for every fill.");
    expect(text).toContain("licensed practice come first");
  });

  test("as text begins with whom to call, and names owners only where asked", async () => {
    const owned = OVERDUE.replaceAll(/^(.+),(R\.|T\.)$/gm, "$1,$2,C-014").replace(
      "Filled by",
      "Filled by,Owner",
    );
    await writeFile(join(folder, "owned.csv"), owned);
    const words = ["check", "owned.csv", "--rules", "US", "--as-of", "2026-10-31"];
    const text = (await command(...words)).lines.join("\n");
    expect(text).toMatch(
      /CALL FIRST: may still hold a dangerous fill \(1 cylinder\)\n {2}Add --names[^\n]*\n {2}GP-101 {2}last filled 2026-10-14, owned!G2: Hydro 2020-06-13 was due by 30 June 2025/,
    );
    expect(text).toMatch(/DO NOT FILL NEXT \(1 cylinder\)\n {2}GP-101 {2}Hydro 2020-06-13 was due/);
    expect(text.indexOf("CALL FIRST")).toBeLessThan(text.indexOf("STOP (1)"));
    expect(text).not.toContain("C-014");
    expect((await command(...words, "--names")).lines.join("\n")).toContain("GP-101 (C-014)  last filled");
    const { printed } = await json<{ recall: object[] }>(...words, "--names");
    expect(printed.recall[0]).toMatchObject({ owner: "C-014" });
  });

  test("says of a finding that the shop accepted it, and why; nobody is called, and it stays in sight", async () => {
    const workbook = await openFile(new TextEncoder().encode(OVERDUE), "overdue.csv");
    const sheets = await Promise.all(
      (await workbook.listSheets()).map(({ name }) => workbook.readSheet(name)),
    );
    const log = readLog(sheets, countryContext(countryRules("US")));
    const { findings } = audit(log, countryRules("US"), { asOf: "2026-10-31" });
    const accepted = { reason: "certificate seen", by: "R.", on: "2026-10-20" };
    const keep = async (evidence: string, name: string) => {
      await workbook.writeSetting("brimbook", {
        version: 1,
        country: "US",
        sheets: [],
        accepted: [{ ...identityOf(findings[0]!), evidence, ...accepted }],
      });
      await writeFile(join(folder, name), await writeXlsx(workbook.content));
      return command("check", name, "--as-of", "2026-10-31");
    };
    const { code, lines } = await keep(findings[0]!.evidence, "accepted.xlsx");
    const text = lines.join("\n");
    expect(code).toBe(1);
    expect(text).toContain("1 finding was accepted in this file, by R.");
    expect(text).toContain("Accepted by R. on 2026-10-20: certificate seen");
    expect(text).not.toContain("CALL FIRST");
    expect(text).toMatch(/ACCEPTED: a stop, and nobody is called \(1 cylinder\)\n {2}GP-101/);
    const { printed } = await json<CheckPrinted>("check", "accepted.xlsx", "--as-of", "2026-10-31");
    expect(printed).toMatchObject({
      accepted: { count: 1, by: ["R."] },
      recall: [{ serial: "GP-101", accepted: [accepted] }],
      findings: [{ accepted: { reason: "certificate seen" } }],
    });
    // What rested on other cells is open again.
    expect((await keep("another", "changed.xlsx")).lines.join("\n")).toContain("CALL FIRST");
  });

  test("says how many fills are later than the day it is asked about", async () => {
    const { lines } = await command("check", "overdue.csv", "--rules", "US", "--as-of", "2026-10-14");
    expect(lines.join("\n")).toContain("1 fill is dated after 2026-10-14, the day of this check");
    const { printed } = await json("check", "overdue.csv", "--rules", "US", "--as-of", "2026-01-01");
    expect(printed).toMatchObject({ fillsAfterAsOf: 2 });
    const none = await command("check", "overdue.csv", "--rules", "US", "--as-of", "2026-10-15");
    expect(none.lines.join("\n")).not.toContain("dated after");
  });

  test.each([
    [["check"], "Name the file that holds the log."],
    [["check", "clean.csv"], "No country's rules: the workbook keeps none, so add --rules with one of US,"],
    [["check", "clean.csv", "--rules", "Atlantis"], 'There are no rules for "Atlantis". Write one of US,'],
    [
      ["check", "clean.csv", "--rules", "US", "--as-of", "31.10.2026"],
      `"31.10.2026" is no day: write it as 2026-10-31.`,
    ],
    [["check", "clean.csv", "--rules", "US", "--units", "furlongs"], "furlongs"],
    [["check", "gone.csv", "--rules", "US"], "does not exist: check the name and the folder."],
    [["check", ".", "--rules", "US"], "is a folder: name the file that holds the log."],
    [
      ["check", "clean.csv", "overdue.csv", "--rules", "US"],
      `One file at a time: "overdue.csv" is one too many.`,
    ],
    [["check", "clean.csv", "--rulez", "US"], "Unknown option '--rulez'. Write: check LOG --rules US"],
    [
      ["checks"],
      'There is no command "checks": write one of calc, read, check, month, receive, plan, or help.',
    ],
  ])("%j is refused in a sentence: exit code 2", async (words, sentence) => {
    const { code, lines } = await command(...words);
    expect(code).toBe(2);
    expect(lines.join()).toContain(sentence);
  });
});

describe("read", () => {
  test("prints columns and rows as they were understood", async () => {
    const { code, printed } = await json<ReadPrinted>("read", "overdue.csv", "--as-of", "2026-10-31");
    expect(code).toBe(0);
    const [sheet] = printed.sheets;
    expect(sheet!.columns.slice(0, 2)).toMatchObject([
      { column: "A", heading: "Date", field: "date" },
      { column: "B", heading: "Serial", field: "serial" },
    ]);
    expect(sheet!.rows.map((row) => row.kind)).toEqual(["heading", "fill", "fill", "blank", "totals"]);
    expect(sheet!.rows[1]!.fields["date"]).toMatchObject({ raw: "10/14/2026", value: "2026-10-14" });
  });

  test("prints the same as text", async () => {
    const { lines } = await command("read", "overdue.csv", "--as-of", "2026-10-31");
    expect(lines.join("\n")).toMatch(
      /B {2}Serial +Serial \(sure\)\n {2}C {2}Start psi +Start pressure, psi \(sure\)/,
    );
  });

  test("prints how the rows add up, which cell could not be read, and which sheet was left out", async () => {
    const { printed } = await json<ReadPrinted>("read", "untidy.xlsx", "--rules", "US");
    expect(printed.rows).toMatchObject({ total: 4, fills: 2, headings: 1, unreadable: 1 });
    expect(printed.sheets[0]!.rows[3]).toMatchObject({
      kind: "unreadable",
      cell: "D4",
      why: expect.any(String),
    });
    expect(printed.sheets[1]).toMatchObject({ name: "Prices", leftOut: true, rows: [] });
    const text = (await command("read", "untidy.xlsx", "--rules", "US")).lines.join("\n");
    expect(text).toContain("“Prices” was left out");
    expect(text).toContain("4 rows = 2 fills + 1 heading + 1 unreadable");
    expect(text).toContain("not read: Fills!D4");
  });

  test("reads stamps as they are stamped where the rules hold: in Germany the next test", async () => {
    const hydro = async (country: string) => {
      const { printed } = await json<ReadPrinted>(
        "read",
        "stamps.csv",
        "--rules",
        country,
        "--as-of",
        "2026-10-31",
      );
      return printed.sheets[0]!.rows.slice(1).map(({ fields }) => fields["hydro"]);
    };
    for (const field of await hydro("DE")) expect(field).toMatchObject({ stamp: { means: "due" } });
    expect((await hydro("GB"))[0]).toMatchObject({ value: "2026-03", stamp: { means: "test" } });
  });
});

describe("what a log leaves open", () => {
  const words = (...more: string[]) => ["read", "open.csv", ...more, "--as-of", "2026-10-31"];
  const text = async (...more: string[]) => (await command(...words(...more))).lines.join("\n");
  const read = async (...more: string[]) => (await json<ReadPrinted>(...words(...more))).printed.sheets[0]!;
  beforeAll(() => writeFile(join(folder, "open.csv"), OPEN));

  test("is asked with what to write, and the answer holds", async () => {
    const asked = await text();
    expect(asked).toContain("Add --dates day-first or --dates month-first.");
    expect(asked).toContain("Add --units us or --units metric.");
    expect(asked).toContain('Add --column "Due=hydro" or --column "Due=visual"');
    const answered = await text("--dates", "day-first", "--units", "metric", "--column", "Due=hydro");
    expect(answered).not.toContain("Add --");
    const { columns, rows } = await read("--dates", "day-first", "--column", "out=bar");
    expect(rows[1]!.fields["date"]).toMatchObject({ value: "2026-10-09" });
    expect(columns[3]).toMatchObject({ field: "endPressure", unit: "bar" });
  });

  test("is read as usual where the rules hold, and said so, until somebody says otherwise", async () => {
    const usual =
      "“9/10/2026” under “Date”, and the like, was read month first, as is usual where the rules hold.";
    expect(await text("--rules", "US")).toContain(
      `${usual} If not, say so with --dates, --units or --column.`,
    );
    expect(await text("--rules", "US", "--dates", "day-first")).not.toContain("as is usual");
    expect((await read("--rules", "US")).rows[1]!.fields["date"]).toMatchObject({ value: "2026-09-10" });
    const checked = await command(
      "check",
      "open.csv",
      "--rules",
      "US",
      "--units",
      "us",
      "--as-of",
      "2026-10-31",
    );
    expect(checked.lines.join("\n")).toContain(usual);
    expect(checked.lines.join("\n")).toContain("Units: us (psi, ft,");
    expect(checked.lines.join("\n")).toContain("Columns not read in open: “Hose”.");
  });

  test("a column may be said to hold something else, or nothing to be read", async () => {
    const { columns } = await read("--column", "Hose=remarks", "--column", "Due=not read");
    expect(columns.map((column) => (column as { field: string }).field).slice(-2)).toEqual([null, "remarks"]);
    expect(await text("--column", "Due=not-read")).not.toContain("Add --column");
  });

  test.each([
    [["--dates", "iso"], `"iso" is no order of dates: write day-first or month-first.`],
    [["--column", "Out"], `"Out": write a heading and what holds for it, such as --column "Out=bar"`],
    [["--column", "Out=furlongs"], `"furlongs" says nothing of a column. Write a unit (psi, bar,`],
    [["--column", "Outt=bar"], `No column of this log is headed "Outt". Its headings: Date, Serial,`],
  ])("%j is refused in a sentence", async (more, sentence) => {
    const { code, lines } = await command(...words(...more));
    expect(code).toBe(2);
    expect(lines.join()).toContain(sentence);
  });
});

test("help names every command and what it is for", async () => {
  for (const words of [[], ["help"], ["--help"], ["check", "--help"]]) {
    const { code, lines } = await command(...words);
    expect(code).toBe(0);
    expect(lines.join("\n")).toMatch(/calc NAME[^]*read LOG[^]*check LOG/);
  }
});

test("an error that nobody foresaw is one sentence", () => {
  expect(sentenceOf(new TypeError("x is not a function\n    at y"))).toBe(
    "Brimbook failed (x is not a function). That is a fault of Brimbook: please report the command.",
  );
});
