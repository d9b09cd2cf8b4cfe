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

  it("WHY takes its arguments one by one, and in one list as long as Excel knows the older one", async () => {
    const handlers = await registered();
    const why = handlers.get("WHY")!;
    const mod = [expect.stringMatching(/^MOD: 33\.75 m\./)];
    const fresh = [expect.stringMatching(/10\.3 m of fresh water/)];
    expect(why([["MOD"]], [["EAN32"]], [["m"]], INVOCATION)).toEqual([mod]);
    expect(why([["MOD"]], [["EAN32"]], [["m"]], null, [["fresh"]], INVOCATION)).toEqual([fresh]);
    expect(why([["MOD"]], [[["EAN32"]], [["m"]]], INVOCATION)).toEqual([mod]);
    expect(why([["MOD"]], [[["EAN32"]], [["m"]], null, [["fresh"]]], INVOCATION)).toEqual([fresh]);
    const unknown = [[expect.stringMatching(/^There is no worksheet function/)]];
    expect(why([["NOSUCH"]], null, INVOCATION)).toEqual(unknown);
    expect(why([["NOSUCH"]], INVOCATION)).toEqual(unknown);
  });

  it("with the metadata of an older version the object about the call is no argument", async () => {
    const handlers = await registered();
    expect(handlers.get("MOD")!([["EAN32"]], [["ft"]], INVOCATION)).toEqual([[111.375]]);
    expect(handlers.get("MOD")!([["EAN32"]], [["ft"]], null, INVOCATION)).toEqual([[111.375]]);
  });

  it("an argument of a newer version is not passed over in silence", async () => {
    const handlers = await registered();
    const mod = handlers.get("MOD")!;
    expect(mod([["EAN32"]], [["ft"]], null, null, null, INVOCATION)).toEqual([[111.375]]);
    expect(() => mod([["EAN32"]], [["ft"]], null, null, [["new"]], INVOCATION)).toThrow("close Excel");
  });

  describe("dates", () => {
    /** 1 June 2019, 31 October 2026 and 1 November 2025 as numbers of a workbook that counts from 1900. */
    const [hydro, filled, visual] = [43_617, 46_326, 45_962] as const;
    const SHIFT = 1462;
    const check = (handlers: Map<string, Handler>, shift: number) =>
      handlers.get("FILLCHECK")!(
        ...[[[filled - shift]], [[hydro - shift]], [[visual - shift]]],
        ...[[["100"]], [["EAN32"]], [["partial pressure"]], [["US"]], INVOCATION],
      ) as unknown;

    it("wait for what the workbook counts them from, and a hydro four years past is never OK", async () => {
      const handlers = await registered();
      const { tellDateSystem } = await import("../../src/functions/hosts/registered");
      const waiting = check(handlers, SHIFT);
      expect(waiting).toBeInstanceOf(Promise);
      expect(tellDateSystem(1904)).toBe(false);
      expect(await waiting).toEqual([[expect.stringMatching(/^STOP: .*hydro/i)]]);
      expect(check(handlers, SHIFT)).toEqual(await waiting);
    });

    it("are refused where nothing is said, and said to be calculated again once it is", async () => {
      vi.useFakeTimers();
      const handlers = await registered();
      const { tellDateSystem } = await import("../../src/functions/hosts/registered");
      const waiting = (check(handlers, 0) as Promise<unknown>).then(
        (answer) => JSON.stringify(answer),
        (refusal: Error) => refusal.message,
      );
      await vi.advanceTimersByTimeAsync(60_000);
      expect(await waiting).toContain("1900 or from 1904");
      expect(tellDateSystem(1900)).toBe(true);
      vi.useRealTimers();
    });

    it("written as text need nothing said", async () => {
      const handlers = await registered();
      const text = handlers.get("FILLCHECK")!(
        ...[[["2026-10-31"]], [["2019-06"]], [["2025-11"]]],
        ...[[["100"]], [["EAN32"]], [["partial pressure"]], [["US"]], INVOCATION],
      );
      expect(text).toEqual([[expect.stringMatching(/^STOP: .*hydro/i)]]);
    });
  });
});
