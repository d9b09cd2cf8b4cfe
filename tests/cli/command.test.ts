import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import { CLEAN, OVERDUE } from "./logs";

const script = fileURLToPath(new URL("../../scripts/brimbook.mjs", import.meta.url));
const folder = mkdtempSync(join(tmpdir(), "brimbook-command-"));
writeFileSync(join(folder, "clean.csv"), CLEAN);
writeFileSync(join(folder, "overdue.csv"), OVERDUE);
writeFileSync(join(folder, "broken.xlsx"), "PK\u0003\u0004 and no more");
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The real command, in a folder of the user's own. */
function brimbook(words: readonly string[], input = "") {
  const env = { ...process.env };
  delete env["INIT_CWD"];
  const options = { cwd: folder, env, input, encoding: "utf8" } as const;
  const { status, stdout, stderr } = spawnSync(process.execPath, [script, ...words], options);
  return { status, stdout, stderr };
}

describe("the command", { timeout: 60_000 }, () => {
  test("calculates", () => {
    expect(brimbook(["calc", "MOD", '[32,"ft"]'])).toEqual({ status: 0, stdout: "111.375\n", stderr: "" });
  });

  test("calculates line by line from its input", () => {
    const { status, stdout } = brimbook(["calc", "--batch"], '{"fn":"MOD","args":[32,"ft"]}\nno\n');
    expect(status).toBe(0);
    expect(stdout.trim().split("\n")).toEqual(["111.375", expect.stringContaining("is not JSON")]);
  });

  test("checks a log in the folder it is called from, and its exit code tells", () => {
    const found = brimbook(["check", "overdue.csv", "--rules", "US", "--as-of", "2026-10-31", "--json"]);
    expect(found.status).toBe(1);
    expect(JSON.parse(found.stdout).findings).toHaveLength(1);
    expect(brimbook(["check", "clean.csv", "--rules", "US", "--as-of", "2026-10-31"]).status).toBe(0);
  });

  test("says in a sentence what it cannot do, and shows no stack trace", () => {
    const { status, stdout, stderr } = brimbook(["check", "broken.xlsx", "--rules", "US"]);
    expect(status).toBe(2);
    expect(stdout).toBe("");
    expect(stderr).toBe(
      "“broken.xlsx” cannot be read: it breaks off before its end. Open it in a spreadsheet program, save it again as .xlsx, and open that.\n",
    );
  });
});
