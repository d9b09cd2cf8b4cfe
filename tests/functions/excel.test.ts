import { afterEach, describe, expect, it, vi } from "vitest";
import { WORKSHEET_FUNCTIONS } from "../../src/functions/catalogue";

/** Excel's runtime as far as the functions see it. */
class FakeError extends Error {
  constructor(
    readonly code: string,
    message = "",
  ) {
    super(message);
  }
}
type Handler = (...handedOver: unknown[]) => unknown[][];

async function loadWith(runtime: object | undefined): Promise<void> {
  vi.resetModules();
  vi.stubGlobal("CustomFunctions", runtime);
  await import("../../src/functions/hosts/excel");
}

async function registered(): Promise<Map<string, Handler>> {
  const handlers = new Map<string, Handler>();
  await loadWith({
    associate: (id: string, handler: Handler) => handlers.set(id, handler),
    Error: FakeError,
    ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" },
  });
  return handlers;
}

/** What Excel hands over behind the arguments. */
const INVOCATION = { functionName: "MOD" };

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("the functions in Excel", () => {
  it("loading registers every function", async () => {
    const handlers = await registered();
    expect([...handlers.keys()].sort()).toEqual(WORKSHEET_FUNCTIONS.map(({ id }) => id).sort());
  });

  it("loading without Excel's runtime does nothing", async () => {
    await expect(loadWith(undefined)).resolves.toBeUndefined();
  });

  it("a single value answers one cell; left-out arguments arrive as null", async () => {
    const handlers = await registered();
    expect(handlers.get("MOD")!([["EAN32"]], [["ft"]], null, null, INVOCATION)).toEqual([[111.375]]);
  });

  it("a single error is thrown with its sentence and code", async () => {
    const handlers = await registered();
    const mod = handlers.get("MOD")!;
    const thrownBy = (act: () => unknown) => {
      try {
        return act();
      } catch (thrown) {
        return thrown;
      }
    };
    const refused = thrownBy(() => mod([["argon"]], [["ft"]], null, null, INVOCATION)) as FakeError;
    expect(refused).toBeInstanceOf(FakeError);
    expect(refused.code).toBe("#VALUE!");
    expect(refused.message).toMatch(/^mix: "argon" is not a breathing gas/);
    const unknown = thrownBy(() => handlers.get("TESTDATE")!([["06/09"]], null, INVOCATION)) as FakeError;
    expect(unknown.code).toBe("#N/A");
  });

  it("in a column an error stays in its row, as Excel's own kind of error", async () => {
    const handlers = await registered();
    const error = { code: "#N/A", type: "Error", basicValue: "#N/A" };
    const answer = handlers.get("MOD")!(
      [["EAN32"], [error], ["argon"], [0]],
      [["m"]],
      null,
      null,
      INVOCATION,
    );
    expect(answer[0]).toEqual([33.75]);
    expect(answer[1]![0]).toBeInstanceOf(FakeError);
    expect((answer[1]![0] as FakeError).code).toBe("#N/A");
    expect((answer[2]![0] as FakeError).code).toBe("#VALUE!");
    expect(answer[3]).toEqual([""]);
  });

  it("cells with data types count by their plain value", async () => {
    const handlers = await registered();
    const formatted = { type: "FormattedNumber", basicType: "Double", basicValue: 32 };
    expect(handlers.get("MOD")!([[formatted]], [["m"]], null, null, INVOCATION)).toEqual([[33.75]]);
  });

  it("WHY's repeating arguments arrive as one array", async () => {
    const handlers = await registered();
    const why = handlers.get("WHY")!;
    expect(why([["MOD"]], [[["EAN32"]], [["m"]]], INVOCATION)).toEqual([
      [expect.stringMatching(/^MOD: 33\.75 m\./)],
    ]);
    expect(why([["MOD"]], [[["EAN32"]], [["m"]], null, [["fresh"]]], INVOCATION)).toEqual([
      [expect.stringMatching(/10\.3 m of fresh water/)],
    ]);
    expect(why([["NOSUCH"]], null, INVOCATION)).toEqual([
      [expect.stringMatching(/^There is no worksheet function/)],
    ]);
  });
});
