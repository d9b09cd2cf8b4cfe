import { afterEach, describe, expect, it, vi } from "vitest";
import { checkEngine, type CheckEngine } from "../../src/pane/check/checkEngine";
import type { CheckOrder } from "../../src/pane/check/checkJob";
import type { FromWorker, ToWorker } from "../../src/pane/check/workerMessages";
import { sheet, smallLog } from "./fakeWorkbook";

const ORDER: CheckOrder = { country: "US", units: "us", choices: [], today: "2026-10-31", judge: true };

/** A worker in this thread: the real worker's code, with messages copied as between real ones. */
async function startHere(): Promise<Worker> {
  const outside: { onmessage?: (event: { data: FromWorker }) => void; onerror?: unknown } = {};
  const inside: { onmessage?: (event: { data: ToWorker }) => void; postMessage: (data: FromWorker) => void } =
    {
      postMessage: (data) => outside.onmessage?.({ data: structuredClone(data) }),
    };
  vi.stubGlobal("self", inside);
  vi.resetModules();
  await import("../../src/pane/check/checkWorker");
  return Object.assign(outside, {
    postMessage: (data: ToWorker) => {
      const copy = structuredClone(data);
      setTimeout(() => inside.onmessage?.({ data: copy }));
    },
    terminate: () => {
      delete inside.onmessage;
    },
  }) as unknown as Worker;
}

function run(engine: CheckEngine, sheets = smallLog().slice(0, 2), signal = new AbortController().signal) {
  return engine.run(sheets, ORDER, { progress: () => undefined, signal });
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("a check without holding the screen", () => {
  it("gives the same report from a worker as on the page", async () => {
    const onPage = await run(checkEngine(() => Promise.resolve(undefined)));
    const inWorker = await run(checkEngine(startHere));
    expect(onPage.findings).toHaveLength(2);
    expect(inWorker).toEqual(onPage);
  });

  it("answers a question the same from a worker as on the page", async () => {
    const failed = { date: "2026-10-20", passed: false };
    for (const ask of [
      { kind: "bad air test" as const, failed, good: [] },
      { kind: "rehearsal" as const, country: "GB", house: {} },
    ]) {
      const answers = [];
      for (const start of [startHere, () => Promise.resolve(undefined)]) {
        const watch = { progress: () => undefined, signal: new AbortController().signal };
        const { answer } = await checkEngine(start).run(smallLog().slice(0, 2), { ...ORDER, ask }, watch);
        answers.push(answer);
      }
      expect(answers[0]).toMatchObject({ kind: ask.kind });
      expect(answers[1]).toEqual(answers[0]);
    }
  });

  it("keeps with each finding who filled, and what its cell held", async () => {
    const { findings, facts } = await run(checkEngine(() => Promise.resolve(undefined)));
    expect(facts).toHaveLength(findings.length);
    expect(facts[0]!.filledBy).toBe("T.");
    expect(facts[0]!.held).toBe(
      smallLog().find(({ name }) => name === findings[0]!.cell.sheet)!.rows[findings[0]!.cell.row]!.values[
        findings[0]!.cell.column
      ],
    );
  });

  it("sends a big sheet in blocks and loses no row", async () => {
    const [october] = smallLog();
    const rows = Array.from({ length: 1701 }, () => october!.rows[1]!);
    const big = { ...sheet("October", []), rows: [october!.rows[0]!, ...rows] };
    const report = await run(checkEngine(startHere), [big]);
    expect(report.sheets[0]!.rows).toMatchObject({ total: 1702, fills: 1701, headings: 1 });
  });

  it("says a refusal in its own words from either side", async () => {
    const order = { ...ORDER, country: "ATLANTIS" };
    for (const start of [startHere, () => Promise.resolve(undefined)]) {
      const answer = checkEngine(start).run([], order, {
        progress: () => undefined,
        signal: new AbortController().signal,
      });
      await expect(answer).rejects.toMatchObject({
        name: "Refusal",
        message: expect.stringContaining("ATLANTIS") as string,
      });
    }
  });

  it("is called off at once, and works again afterwards", async () => {
    for (const start of [startHere, () => Promise.resolve(undefined)]) {
      const engine = checkEngine(start);
      const controller = new AbortController();
      const calledOff = run(engine, undefined, controller.signal);
      controller.abort();
      await expect(calledOff).rejects.toMatchObject({ name: "AbortError" });
      expect((await run(engine)).findings).toHaveLength(2);
    }
  });
});
