import { afterAll, afterEach, beforeAll, describe, expect, test } from "vitest";
import { WORKSHEET_FUNCTIONS } from "../../src/functions/catalogue";
import { isProblem, type Answer } from "../../src/functions/answer";
import type { Argument } from "../../src/typed/cells";
import { evaluate } from "../../src/functions/evaluate";
import { openInExcel, type PaneInExcel } from "./bridge";
import type { FunctionCall, FunctionResult, InExcel } from "./bridgePage";
import { useBrowser } from "./browser";
import { buildAddIn } from "./builtPane";
import { usualBook, book1904 } from "../workbook/contractBooks";

/*
 * The built functions.js in the runtime that Excel uses: calls as Excel sends them over the bridge of Microsoft's own
 * office.js, and answers as they come back.
 */
const browser = useBrowser();
let excel: PaneInExcel;
beforeAll(async () => {
  if (!process.env.HF) buildAddIn();
  excel = await openInExcel(browser(), { sheets: usualBook });
  await excel.frame.getByRole("heading").first().waitFor();
});
afterEach(async () => {
  expect(await excel.faults()).toEqual([]);
});
afterAll(() => excel.close());

const call = (calls: readonly FunctionCall[], pane = excel): Promise<FunctionResult[]> =>
  pane.frame.evaluate((given) => (window as unknown as Window).excel.call(given), calls as FunctionCall[]);

interface Window {
  readonly excel: InExcel;
}

/** An argument as it goes over the wire: rows of cells, or null where it is left out. */
const onWire = (argument: Argument) =>
  argument === undefined || argument === null ? null : Array.isArray(argument) ? argument : [[argument]];

/** What Excel gets for an answer: one error as a failure with its sentence, others in their cells. */
function expected(answer: Answer): FunctionResult {
  const [[only] = []] = answer;
  if (answer.length === 1 && answer[0]!.length === 1 && only !== undefined && isProblem(only))
    return shown(only);
  return { value: answer.map((row) => row.map((cell) => (isProblem(cell) ? shown(cell) : cell))) };
}

/** Excel shows a sentence of ours with these two kinds only; the bundle sends none with the others. */
const SPEAKING = ["#VALUE!", "#N/A"];
const shown = ({ error, message }: { error: string; message: string }) => ({
  error,
  message: SPEAKING.includes(error) ? message : "",
});

/** Errors in cells are objects on the wire: their kind and sentence count. */
function plain(result: FunctionResult): FunctionResult {
  if (!("value" in result) || !Array.isArray(result.value)) return result;
  const cell = (value: unknown) =>
    typeof value === "object" && value !== null && "basicValue" in value
      ? shown({
          error: String(value.basicValue),
          message: String((value as { message?: unknown }).message ?? ""),
        })
      : value;
  return { value: (result.value as unknown[][]).map((row) => row.map(cell)) };
}

interface Case {
  readonly id: string;
  readonly wire: readonly unknown[];
  readonly same: readonly Argument[];
}

/** Calls them all at once; each has to answer as the sources do for `same`. */
async function expectSame(cases: readonly Case[]): Promise<void> {
  expect(cases.length).toBeGreaterThan(0);
  const results = await call(cases.map(({ id, wire }) => ({ id, given: wire })));
  for (const [at, { id, wire, same }] of cases.entries())
    expect(plain(results[at]!), `${id} ${JSON.stringify(wire)}`).toEqual(expected(evaluate(id, same)));
}

/** Every example of every function, with the arguments that were left out as null. */
const EXAMPLES = WORKSHEET_FUNCTIONS.flatMap(({ id, parameters, examples }) =>
  examples.map((example) => {
    const given = parameters.map((_, at) => example[at] ?? null);
    return { id, parameters, given };
  }),
);

const DIV = { code: "#DIV/0!", type: "CustomFunctionError" };

describe("every worksheet function in Excel's runtime", () => {
  test("answers its examples as the sources do", () =>
    expectSame(EXAMPLES.map(({ id, given }) => ({ id, wire: given.map(onWire), same: given }))));

  test("takes a blank cell as 0, as on the desktop, and as null, as on the web", () =>
    expectSame(
      EXAMPLES.flatMap(({ id, given }) =>
        given.flatMap((_, at) =>
          [0, null].map((blank) => ({
            id,
            wire: given.map((each, index) => (index === at ? [[blank]] : onWire(each))),
            same: given.map((each, index) => (index === at ? [[blank]] : each)),
          })),
        ),
      ),
    ));

  test("takes a column for each single value, with an error and a blank cell in it", () =>
    expectSame(
      EXAMPLES.flatMap(({ id, parameters, given }) =>
        given.flatMap((value, at) => {
          if (parameters[at]!.table || value === null || Array.isArray(value)) return [];
          const column = (error: unknown) => [[value], [error], [null], [value]] as Argument;
          return [
            {
              id,
              wire: given.map((each, index) => (index === at ? column(DIV) : onWire(each))),
              same: given.map((each, index) => (index === at ? column({ error: "#DIV/0!" }) : each)),
            },
          ];
        }),
      ),
    ));

  test("names the argument that is an error cell", async () => {
    const cases = EXAMPLES.flatMap(({ id, given }) =>
      given.map((_, at) => ({
        id,
        wire: given.map((each, index) => (index === at ? [[DIV]] : onWire(each))),
        same: given.map((each, index) => (index === at ? ([[{ error: "#DIV/0!" }]] as Argument) : each)),
      })),
    );
    await expectSame(cases);
  });

  test("leaves out what is skipped in the middle", () =>
    expectSame(
      EXAMPLES.flatMap(({ id, parameters, given }) =>
        parameters.flatMap(({ optional }, at) => {
          if (!optional || at === parameters.length - 1) return [];
          const skipped = given.map((each, index) => (index === at ? null : each));
          return [{ id, wire: skipped.map(onWire), same: skipped }];
        }),
      ),
    ));

  test("takes data types by their plain value, should an Excel hand them over", async () => {
    const rich = { type: "FormattedNumber", basicType: "Double", basicValue: 32, numberFormat: "0.0" };
    await expectSame([
      { id: "MOD", wire: [[[rich]], [["m"]], null, null], same: [32, "m"] },
      {
        id: "MIXPART",
        wire: [[[{ type: "Entity", text: "x" }]], [["oxygen"]]],
        same: [[[{ error: "#VALUE!" }]], "oxygen"],
      },
    ]);
  });
});

describe("old and new metadata side by side", () => {
  test("one argument fewer than the script knows: it is left out", () =>
    expectSame(
      EXAMPLES.map(({ id, given }) => ({
        id,
        wire: given.slice(0, -1).map(onWire),
        same: given.slice(0, -1),
      })),
    ));

  test("one argument more than the script knows counts only where it is left out", async () => {
    const ordinary = EXAMPLES.filter(({ id }) => id !== "WHY");
    await expectSame(
      ordinary.map(({ id, given }) => ({ id, wire: [...given.map(onWire), null], same: given })),
    );
    const results = await call(
      ordinary.map(({ id, given }) => ({ id, given: [...given.map(onWire), [["new"]]] })),
    );
    for (const result of results)
      expect(result).toMatchObject({
        error: "#VALUE!",
        message: expect.stringContaining("close Excel") as string,
      });
  });

  test("WHY's arguments in one list, as Excel handed them over before", () =>
    expectSame(
      EXAMPLES.filter(({ id }) => id === "WHY").map(({ given: [name, ...rest] }) => ({
        id: "WHY",
        wire: [onWire(name), rest.map(onWire)],
        same: [name, ...rest],
      })),
    ));
});

describe("dates in a workbook that counts from 1904", () => {
  const SHIFT = 1462;
  // 1 June 2019, 31 October 2026, 1 November 2025 as serials of the 1900 system.
  const [hydro, filled, visual] = [43_617, 46_326, 45_962] as const;
  const checked = (fillDate: number, lastHydro: number, lastVisual: number): readonly Argument[] => [
    ...[fillDate, lastHydro, lastVisual],
    ...["100", "EAN32", "partial pressure", "US"],
  ];

  test("are shifted in and out, and an old hydro stays old", async () => {
    const old = await openInExcel(browser(), { sheets: book1904 });
    await old.frame.getByRole("heading").first().waitFor();
    const in1904 = checked(filled - SHIFT, hydro - SHIFT, visual - SHIFT);
    const [fill, due, stamp, text] = await call(
      [
        { id: "FILLCHECK", given: in1904.map(onWire) },
        { id: "HYDRODUE", given: [hydro - SHIFT, "US", null, null].map(onWire) },
        { id: "TESTDATE", given: ["06/19", "month first"].map(onWire) },
        { id: "LABELTEXT", given: [3000, "EAN32", "R.", filled - SHIFT, "GP1001", "psi", null].map(onWire) },
      ],
      old,
    );
    expect(fill).toEqual(expected(evaluate("FILLCHECK", checked(filled, hydro, visual))));
    expect(JSON.stringify(fill)).toContain("STOP");
    const dueIn1900 = (evaluate("HYDRODUE", [hydro, "US"])[0]![0] as number) - SHIFT;
    expect(due).toEqual({ value: [[dueIn1900]] });
    expect(stamp).toEqual({ value: [[hydro - SHIFT]] });
    expect(text).toEqual(
      expected(evaluate("LABELTEXT", [3000, "EAN32", "R.", filled, "GP1001", "psi", null])),
    );
    expect(await old.faults()).toEqual([]);
    await old.close();
  });

  test("wait until Excel says which it is, and are calculated again where they could not wait", async () => {
    const mute = await openInExcel(browser(), { sheets: book1904, silentOnDates: true });
    const given = checked(filled - SHIFT, hydro - SHIFT, visual - SHIFT).map(onWire);
    const waiting = call([{ id: "FILLCHECK", given }], mute);
    const [refused] = await waiting;
    expect(JSON.stringify(refused)).toContain("1904");
    expect(JSON.stringify(refused)).not.toContain("OK");
    await mute.frame.evaluate(() => {
      (window as unknown as Window).excel.fake.refuse = () => undefined;
    });
    await expect
      .poll(() => mute.frame.evaluate(() => (window as unknown as Window).excel.fake.book.calculated))
      .toEqual(["Full"]);
    expect(JSON.stringify(await call([{ id: "FILLCHECK", given }], mute))).toContain("STOP");
    await mute.close();
  }, 40_000);
});
