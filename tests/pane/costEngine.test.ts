import { afterEach, describe, expect, it, vi } from "vitest";
import type { CostAnswer, CostOrder } from "../../src/pane/costs/costDesk";
import { costEngine, type CostEngine } from "../../src/pane/costs/costEngine";
import type { FromDesk, ToDesk } from "../../src/pane/kit/deskEngine";
import { priceSheet } from "../costs/lists";
import { smallLog } from "./fakeWorkbook";

const ORDER: CostOrder = {
  country: "US",
  units: "us",
  choices: [],
  banks: [],
  today: "2026-10-31",
  scenario: { price: { of: "oxygen", times: 2 } },
  write: { customers: true },
};

/** A worker in this thread: the real worker's code, with messages copied as between real ones. */
async function startHere(): Promise<Worker> {
  const outside: { onmessage?: (event: { data: FromDesk<CostAnswer> }) => void; onerror?: unknown } = {};
  const inside: {
    onmessage?: (event: { data: ToDesk<CostOrder> }) => void;
    postMessage: (data: FromDesk<CostAnswer>) => void;
  } = {
    postMessage: (data) => outside.onmessage?.({ data: structuredClone(data) }),
  };
  vi.stubGlobal("self", inside);
  vi.resetModules();
  await import("../../src/pane/costs/costWorker");
  return Object.assign(outside, {
    postMessage: (data: ToDesk<CostOrder>) => {
      const copy = structuredClone(data);
      setTimeout(() => inside.onmessage?.({ data: copy }));
    },
    terminate: () => {
      delete inside.onmessage;
    },
  }) as unknown as Worker;
}

const SHEETS = [...smallLog().slice(0, 2), priceSheet()];
const run = (engine: CostEngine, order = ORDER, signal = new AbortController().signal) =>
  engine.answer(SHEETS, order, { progress: () => undefined, signal });

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("costs without holding the screen", () => {
  it("come to the same in a worker as on the page, drafts and all", async () => {
    const onPage = await run(costEngine(() => Promise.resolve(undefined)));
    const inWorker = await run(costEngine(startHere));
    expect(onPage.fills).toBe(4);
    expect(onPage.drafts!.length).toBeGreaterThan(3);
    expect(inWorker).toEqual(onPage);
  });

  it("say a refusal in its own words from either side, and can be called off", async () => {
    for (const start of [startHere, () => Promise.resolve(undefined)]) {
      const engine = costEngine(start);
      await expect(run(engine, { ...ORDER, country: "ATLANTIS" })).rejects.toMatchObject({ name: "Refusal" });
      const controller = new AbortController();
      const calledOff = run(engine, ORDER, controller.signal);
      controller.abort();
      await expect(calledOff).rejects.toMatchObject({ name: "AbortError" });
      expect((await run(engine)).fills).toBe(4);
    }
  });
});
