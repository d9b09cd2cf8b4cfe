import { createContext, runInContext, runInNewContext } from "node:vm";
import { beforeAll, describe, expect, test } from "vitest";
import { googleScript, onlyofficeScript } from "../../scripts/suites.mjs";
import { WORKSHEET_FUNCTIONS } from "../../src/functions/catalogue";
import { evaluate, WHY } from "../../src/functions/evaluate";

/*
 * The scripts for other suites in a bare JavaScript context, with no more around them than the suite is said to offer.
 * That is a stub, not the suite: what it cannot show stands in docs/other-suites.md.
 */
type Answer = unknown[][];
type Functions = Record<string, (...given: unknown[]) => Answer>;

const OURS = WORKSHEET_FUNCTIONS.map(({ id }) => `BRIM_${id}`);

/** The doc comments with the function that each belongs to: what a suite reads to offer the function. */
const documented = (script: string) =>
  [...script.matchAll(/\/\*\*([^]*?)\*\/\s*(?:Api\.AddCustomFunction\()?function (\w+)\(([^)]*)\)/g)].map(
    ([, comment, name, parameters]) => ({
      name: name!,
      comment: comment!,
      declared: parameters!.split(", "),
      told: [...comment!.matchAll(/@param \{\S+\} \[?(\w+)\]? \S/g)].map(([, parameter]) => parameter!),
    }),
  );

/** A script's own view of its arguments: rows of a range are plain arrays there, as they are here. */
const plain = (answer: unknown): unknown => JSON.parse(JSON.stringify(answer));

/** What every suite must do alike. */
function describeSuite(suite: string, load: () => Promise<{ script: string; functions: Functions }>) {
  describe(suite, { timeout: 60_000 }, () => {
    let script: string;
    let functions: Functions;
    beforeAll(async () => {
      ({ script, functions } = await load());
    }, 60_000);

    test("gets every function, by a name without a dot, with a comment that tells every argument", () => {
      const all = documented(script);
      expect(all.map(({ name }) => name)).toEqual(OURS);
      for (const { name, comment, declared, told } of all) {
        expect(comment, name).toContain("@customfunction");
        expect(told, name).toEqual(declared);
        expect(comment, name).not.toContain("BRIM.");
        expect(functions[name], name).toBeTypeOf("function");
      }
    });

    test("answers every example of the reference as the functions themselves do", () => {
      let compared = 0;
      for (const { id, examples } of WORKSHEET_FUNCTIONS) {
        if (id === WHY) continue;
        for (const example of examples) {
          const expected = evaluate(id, example).map((row) =>
            row.map((cell) => (typeof cell === "object" ? `${cell.error} ${cell.message}` : cell)),
          );
          const answer = plain(functions[`BRIM_${id}`]!(...example));
          expect(answer, id).toEqual(
            expected.map((row) =>
              row.map((cell) => (typeof cell === "string" ? cell.replaceAll("BRIM.", "BRIM_") : cell)),
            ),
          );
          compared += 1;
        }
      }
      expect(compared).toBeGreaterThanOrEqual(WORKSHEET_FUNCTIONS.length - 1);
    });

    test("a single value answers one cell, a column a column, blanks stay blank", () => {
      expect(plain(functions["BRIM_MOD"]!("EAN32", "ft"))).toEqual([[111.375]]);
      expect(plain(functions["BRIM_MOD"]!([["EAN32"], [""], [36]], "m", "", "salt"))).toEqual([
        [33.75],
        [""],
        [expect.closeTo(28.889, 3)],
      ]);
    });

    test("an error is text that says why, and stays an error when it is handed on", () => {
      const [[refused] = []] = functions["BRIM_MOD"]!("argon", "ft");
      expect(refused).toMatch(/^#VALUE! mix: "argon" is not a breathing gas/);
      const [[unknown] = []] = functions["BRIM_TESTDATE"]!("06/09");
      expect(unknown).toMatch(/^#N\/A /);
      const [[handedOn] = []] = functions["BRIM_MOD"]!(refused, "ft");
      expect(handedOn).toMatch(/^#VALUE! mix: .*error/);
    });

    test("BRIM_WHY explains a function by the name it has here, and names formulas as they are written here", () => {
      expect(functions["BRIM_WHY"]!("BRIM_MOD", "EAN32", "m")[0]![0]).toMatch(/^MOD: 33\.75 m\./);
      expect(functions["BRIM_WHY"]!("MOD", "EAN32", "m")[0]![0]).toMatch(/^MOD: 33\.75 m\./);
      const [[advice] = []] = functions["BRIM_WHY"]!("", "EAN32");
      expect(advice).toMatch(/BRIM_WHY\("MOD"/);
    });

    test("nothing that is handed over makes it throw or answer a figure that is none", () => {
      const odd = [
        undefined,
        null,
        "",
        0,
        -1,
        Number.NaN,
        Infinity,
        "#REF!",
        true,
        [[]],
        [
          ["", 1],
          [2, ""],
        ],
        {},
      ];
      for (const name of OURS) {
        for (const first of odd) {
          for (const second of odd) {
            for (const cell of functions[name]!(first, second).flat()) {
              expect(["string", "number", "boolean"], name).toContain(typeof cell);
              if (typeof cell === "number") expect(Number.isFinite(cell), name).toBe(true);
            }
          }
        }
      }
    });
  });
}

/** Apps Script: the script is run, then functions are called by name. Dates come as moments. */
async function inGoogle(timeZone = "America/New_York") {
  const script = await googleScript();
  const context = createContext({
    SpreadsheetApp: { getActive: () => ({ getSpreadsheetTimeZone: () => timeZone }) },
    Utilities: { formatDate: shownIn },
  });
  runInContext(script, context);
  return { script, functions: context as unknown as Functions };
}

/** Utilities.formatDate for the one format we ask for. */
function shownIn(date: Date, timeZone: string, format: string): string {
  expect(format).toBe("yyyy-MM-dd'T'HH:mm:ss");
  return date.toLocaleString("sv-SE", { timeZone }).replace(" ", "T");
}

describeSuite("Google Sheets", () => inGoogle());

describe("dates in Google Sheets", { timeout: 60_000 }, () => {
  test.each(["America/New_York", "Pacific/Auckland", "Europe/London", "UTC"])(
    "are the days that the spreadsheet shows, in %s",
    async (timeZone) => {
      const { functions } = await inGoogle(timeZone);
      const offsets: Record<string, string> = { "America/New_York": "-04:00", "Pacific/Auckland": "+13:00" };
      const midnight = new Date(`2026-10-31T00:00:00${offsets[timeZone] ?? "Z"}`);
      const label = functions["BRIM_LABELTEXT"]!(3000, 31.9, "R.", midnight, "GP-0417", "psi")[0]![0];
      expect(label).toEqual(evaluate("LABELTEXT", [3000, 31.9, "R.", "2026-10-31", "GP-0417", "psi"])[0]![0]);
      // 31 October 2026 is day 46,326, counted from 30 December 1899.
      expect(plain(functions["BRIM_HYDRODUE"]!([[midnight]], "US"))).toEqual(
        evaluate("HYDRODUE", [[[46_326]], "US"]),
      );
    },
  );

  test("in a spreadsheet without dates ask Google nothing", async () => {
    const script = await googleScript();
    const context = createContext({});
    runInContext(script, context);
    expect(plain((context as unknown as Functions)["BRIM_MOD"]!("EAN32", "m"))).toEqual([[33.75]]);
  });
});

describeSuite("ONLYOFFICE", async () => {
  const script = await onlyofficeScript();
  const functions: Functions = {};
  const libraries: string[] = [];
  const register = { AddCustomFunction: (given: Functions[string]) => (functions[given.name] = given) };
  const Api = {
    // The editor keeps the library's source and runs it again by itself: it may lean on nothing around it.
    AddCustomFunctionLibrary: (name: string, library: () => void) => {
      libraries.push(name);
      runInNewContext(`(${library.toString()})()`, { Api: register });
    },
  };
  runInNewContext(script, { Api });
  expect(libraries).toEqual(["Brimbook"]);
  return { script, functions };
});
