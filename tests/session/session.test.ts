import { afterEach, describe, expect, it, vi } from "vitest";
import type { ArgumentsOf, QuestionName } from "../../src/session/questions";
import { priceSheet } from "../costs/lists";
import { FakeWorkbook, sheet, smallLog, US_SHOP } from "../pane/fakeWorkbook";
import { answerOf, onPage, openSession, workerHere } from "./openSession";

const FAILED = { date: "2026-10-20", passed: false };
const ASKED: readonly { [Name in QuestionName]: readonly [Name, ArgumentsOf<Name>] }[QuestionName][] = [
  ["check", undefined],
  ["months", undefined],
  ["costs", { scenario: { price: { of: "oxygen", times: 2 } }, write: { customers: true } }],
  ["receive", { asked: ["GP1002"], waiting: { sheet: "October", rows: [1] } }],
  ["rehearsal", { country: "GB", house: {} }],
  ["suspectGas", { failed: FAILED, good: [] }],
];

afterEach(() => {
  vi.unstubAllGlobals();
});

describe("a session", () => {
  it("answers the same from a worker as on the page, whatever is asked", async () => {
    const book = () => new FakeWorkbook([...smallLog().slice(0, 2), priceSheet()], US_SHOP);
    for (const [name, wanted] of ASKED) {
      const answers = [];
      for (const start of [onPage, workerHere])
        answers.push(await answerOf(openSession(book(), start), name, wanted));
      expect(answers[1]).toEqual(answers[0]);
    }
  });

  it("makes the same report from a worker as on the page, drafts and all", async () => {
    const wanted = { month: "2026-10", names: false, paper: "Letter" } as const;
    const [here, there] = await Promise.all(
      [onPage, workerHere].map((start) =>
        answerOf(openSession(new FakeWorkbook(smallLog(), US_SHOP), start), "month", wanted),
      ),
    );
    expect(here!.drafts.length).toBeGreaterThan(3);
    expect(there).toEqual(here);
  });

  it("reads each sheet once, whatever is asked of it and how often", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    const session = openSession(workbook);
    for (const [name, wanted] of [...ASKED, ...ASKED]) await answerOf(session, name, wanted);
    expect(workbook.readings).toBe(3);
  });

  it("reads again on request what the host tells no changes of, and says which version an answer is true of", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    const session = openSession(workbook);
    const watch = { progress: () => undefined, signal: new AbortController().signal };
    const before = await session.ask("check", undefined, watch);
    workbook.sheets = workbook.sheets.slice(0, 1);
    const stale = await session.ask("check", undefined, watch);
    expect(stale).toEqual(before);
    const after = await session.ask("check", undefined, watch, true);
    expect(after.version).toBeGreaterThan(before.version);
    expect(after.answer.sheets).toHaveLength(1);
  });

  it("keeps with each finding who filled, and what its cell held", async () => {
    const { findings, facts } = await answerOf(openSession(new FakeWorkbook(smallLog())), "check", undefined);
    expect(facts).toHaveLength(findings.length);
    expect(facts[0]!.filledBy).toBe("T.");
    const { cell } = findings[0]!;
    expect(facts[0]!.held).toBe(
      smallLog().find(({ name }) => name === cell.sheet)!.rows[cell.row]!.values[cell.column],
    );
  });

  it("sends a big sheet in blocks and loses no row", async () => {
    const [october] = smallLog();
    const rows = Array.from({ length: 1701 }, () => october!.rows[1]!);
    const big = { ...sheet("October", []), rows: [october!.rows[0]!, ...rows] };
    const report = await answerOf(openSession(new FakeWorkbook([big]), workerHere), "check", undefined);
    expect(report.sheets[0]!.rows).toMatchObject({ total: 1702, fills: 1701, headings: 1 });
  });

  it("says a refusal in its own words from either side", async () => {
    for (const start of [workerHere, onPage]) {
      const session = openSession(new FakeWorkbook([]), start, { ...US_SHOP, country: "ATLANTIS" });
      await expect(answerOf(session, "check", undefined)).rejects.toMatchObject({
        name: "Refusal",
        message: expect.stringContaining("ATLANTIS") as string,
      });
    }
  });

  it("is called off at once, and works again afterwards", async () => {
    for (const start of [workerHere, onPage]) {
      const session = openSession(new FakeWorkbook(smallLog()), start);
      await answerOf(session, "months", undefined);
      const controller = new AbortController();
      const calledOff = answerOf(session, "check", undefined, controller.signal);
      controller.abort();
      await expect(calledOff).rejects.toMatchObject({ name: "AbortError" });
      expect((await answerOf(session, "check", undefined)).findings).toHaveLength(2);
    }
  });

  it("starts another worker where one is lost, and reads the workbook into it", async () => {
    const workbook = new FakeWorkbook(smallLog());
    const workers: Worker[] = [];
    const session = openSession(workbook, async () => {
      const worker = await workerHere();
      workers.push(worker);
      return worker;
    });
    await answerOf(session, "months", undefined);
    const asked = answerOf(session, "check", undefined);
    await Promise.resolve();
    workers[0]!.terminate();
    workers[0]!.onerror?.(Object.assign(new Event("error"), { message: "out of memory" }) as ErrorEvent);
    expect((await asked).findings).toHaveLength(2);
    expect(workers).toHaveLength(2);
  });

  it("names a sheet that cannot be read, and reads the others", async () => {
    const workbook = new FakeWorkbook(smallLog());
    workbook.broken = "Prices";
    const session = openSession(workbook);
    expect((await answerOf(session, "check", undefined)).findings).toHaveLength(2);
    expect(session.state.unreachable).toMatchObject([{ name: "Prices" }]);
  });
});
