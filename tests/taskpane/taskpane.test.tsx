// @vitest-environment jsdom
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { NO_ANSWER, NO_OFFICE, NOT_EXCEL } from "../../src/taskpane/notices";
import { excelDouble } from "../workbook/excel/excelDouble";
import { FakeExcel } from "../workbook/excel/fakeExcel";
import { usualBook } from "../workbook/contractBooks";

type Ready = (info: { host: string | null; platform: string | null }) => void;

beforeEach(() => {
  vi.resetModules();
  document.body.innerHTML = '<div id="pane"></div>';
  vi.stubGlobal("matchMedia", () => Object.assign(new EventTarget(), { matches: false }));
  vi.stubGlobal(
    "ResizeObserver",
    class {
      observe() {}
      unobserve() {}
      disconnect() {}
    },
  );
});

/* Office stays: a pane of an earlier test may still be rendering. */
afterEach(() => {
  vi.useRealTimers();
});

/** Opens the page with an Excel behind it that answers `onReady` as told. */
async function open(answer: (ready: Ready) => void) {
  const fake = new FakeExcel(usualBook);
  const double = excelDouble(fake);
  vi.stubGlobal("Excel", double.Excel);
  vi.stubGlobal("Office", {
    ...double.Office,
    HostType: { Excel: "Excel" },
    onReady: async (ready: Ready) => answer(ready),
  });
  await import("../../src/taskpane/taskpane");
  return fake;
}

const shown = () => document.body.textContent;

describe("the page Excel loads", { timeout: 60_000 }, () => {
  test("says what to do where office.js could not be loaded", async () => {
    await import("../../src/taskpane/taskpane");
    await vi.waitFor(() => expect(shown()).toContain(NO_OFFICE));
  });

  test("says where to open it when it is opened outside of Excel", async () => {
    const fake = await open((ready) => ready({ host: null, platform: null }));
    await vi.waitFor(() => expect(shown()).toContain(NOT_EXCEL));
    expect(fake.requests).toEqual([]);
  });

  test("shows the pane on Excel's workbook once Excel is ready", async () => {
    const fake = await open((ready) => ready({ host: "Excel", platform: "PC" }));
    await vi.waitFor(() => expect(document.querySelector("h1")?.textContent).toBe("Brimbook"), 20_000);
    await vi.waitFor(() => expect(fake.requests.length).toBeGreaterThan(0), 20_000);
    expect(document.querySelector(".notice")).toBeNull();
  });

  test("touches nothing of Excel before, says after a while what may be wrong, and takes a late answer", async () => {
    vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });
    let answer: Ready | undefined;
    const fake = await open((ready) => (answer = ready));
    vi.advanceTimersByTime(10_000);
    vi.useRealTimers();
    await vi.waitFor(() => expect(shown()).toContain(NO_ANSWER));
    expect(fake.requests).toEqual([]);
    answer!({ host: "Excel", platform: "PC" });
    await vi.waitFor(() => expect(fake.requests.length).toBeGreaterThan(0), 20_000);
    await vi.waitFor(() => expect(document.querySelector("h1")?.textContent).toBe("Brimbook"), 20_000);
  });
});
