// @vitest-environment jsdom
import { fireEvent, render, screen, waitFor, within } from "@testing-library/react";
import { useState } from "react";
import { beforeEach, describe, expect, it, vi } from "vitest";
import { SEVERITIES, type Finding, type NotChecked } from "../../src/audit/judge/finding";
import { acceptancesOf, identityOf } from "../../src/audit/judge/acceptance";
import { AnnouncerProvider } from "../../src/pane/kit/announce";
import type { CheckReport } from "../../src/pane/check/report";
import { findingsText } from "../../src/pane/check/results/findingsText";
import { lacksOf } from "../../src/audit/lists/lacks";
import { sortByHarm } from "../../src/pane/check/results/useFindings";
import { Results } from "../../src/pane/check/results/Results";
import type { Jump } from "../../src/pane/check/useJump";
import type { Check } from "../../src/pane/check/useCheck";
import type { Shop } from "../../src/pane/shop/useShop";
import { draftValue } from "../../src/sheet/draft/draft";
import { WorkbookProblem, type CellMarks, type CellToMark } from "../../src/workbook/workbook";
import { NO_SETTINGS, type ShopSettings } from "../../src/workbook/settings";
import { FakeWorkbook } from "./fakeWorkbook";
import "./render";

/** `count` findings, from mild to grave, so that the order has to be made. */
function report(count: number, notChecked: readonly NotChecked[] = []): CheckReport {
  const findings = Array.from({ length: count }, (_, at): Finding => {
    const severity = SEVERITIES[3 - (at % 4)]!;
    return {
      rule: `X0${(at % 3) + 1}`,
      severity,
      basis: "practice",
      source: "common practice, no source",
      cell: { sheet: "October", row: at + 1, column: 2 },
      serial: `GP${1000 + at}`,
      fillDate: "2026-10-12",
      message: `Message ${at}.`,
      todo: "Look at it.",
      evidence: `e${at}`,
    };
  });
  return {
    country: "US",
    sheets: [],
    unreadable: [],
    findings,
    notChecked,
    fullyJudged: true,
    overrides: [],
    recall: [],
    doNotFill: [],
    due: { asOf: "2026-11-30", outOfDate: [], dueWithin: [], notKnown: [] },
    patterns: { patterns: [], leftOut: 0, blends: 0 },
    came: [],
    went: [],
    facts: findings.map((_, at) => ({ held: 3000, filledBy: at % 2 === 0 ? "R." : "T." })),
  };
}

interface ShownResultsProps {
  readonly shown: CheckReport;
  readonly jump: Jump;
  readonly accepted: ShopSettings["accepted"];
}

/** The results of a check in a shop that keeps what it accepts. */
function ShownResults({ shown, jump, accepted }: ShownResultsProps) {
  const [settings, setSettings] = useState<ShopSettings>({ ...NO_SETTINGS, accepted });
  const shop: Shop = {
    settings,
    change: setSettings,
    state: "ready",
    notice: undefined,
    problem: undefined,
    kept: true,
    readAgain: () => undefined,
  };
  const check: Check = {
    report: shown,
    shop,
    unreachable: [],
    busy: undefined,
    problem: undefined,
    isLive: true,
    again: () => undefined,
    cancel: () => undefined,
  };
  return (
    <Results report={shown} check={check} workbook={workbook} jump={jump} titleRef={{ current: null }} />
  );
}

let workbook = new FakeWorkbook([]);
beforeEach(() => {
  workbook = new FakeWorkbook([]);
});

function show(shown: CheckReport, accepted: ShopSettings["accepted"] = undefined) {
  const jumps: string[] = [];
  const jump: Jump = { to: (address) => jumps.push(`${address.sheet} ${address.row}`), note: undefined };
  render(
    <AnnouncerProvider>
      <ShownResults shown={shown} jump={jump} accepted={accepted} />
    </AnnouncerProvider>,
  );
  return jumps;
}

describe("the list of findings", () => {
  it("goes by harm, under headings of word and meaning", () => {
    show(report(8));
    expect(screen.getAllByRole("heading", { level: 4 }).map((title) => title.textContent)).toEqual([
      "Stop should not have been filled, or must not go out",
      "Breach a rule was broken",
      "Warn a gap in practice, or likely a typing error",
      "Note good to know",
    ]);
    expect(entries()[0]!.textContent).toContain("Message 3.");
  });

  it("is one tab stop; arrows move, Home and End go to the ends, Enter's press jumps", () => {
    const jumps = show(report(8));
    expect(entries().filter((entry) => entry.tabIndex === 0)).toHaveLength(1);
    entries()[0]!.focus();
    key("ArrowDown");
    expect(document.activeElement).toBe(entries()[1]);
    expect(entries().map((entry) => entry.tabIndex)).toEqual([-1, 0, -1, -1, -1, -1, -1, -1]);
    key("End");
    expect(document.activeElement).toBe(entries()[7]);
    key("ArrowDown");
    expect(document.activeElement).toBe(entries()[7]);
    key("Home");
    expect(document.activeElement).toBe(entries()[0]);
    key("ArrowRight");
    expect(document.activeElement?.textContent).toBe("Why");
    key("ArrowLeft");
    fireEvent.click(document.activeElement!);
    expect(jumps).toEqual(["October 4"]);
    expect(document.activeElement?.getAttribute("aria-current")).toBe("true");
  });

  it("shows five thousand fifty at a time, and arrows go on over the edge of a page", async () => {
    show(report(5000));
    expect(entries()).toHaveLength(50);
    expect(screen.getByText("1–50 of 5,000")).toBeTruthy();
    entries()[49]!.focus();
    key("ArrowDown");
    await screen.findByText("51–100 of 5,000");
    expect(document.activeElement).toBe(entries()[0]);
    key("ArrowUp");
    await screen.findByText("1–50 of 5,000");
    expect(document.activeElement).toBe(entries()[49]);
    fireEvent.click(screen.getByRole("button", { name: "Next" }));
    expect(screen.getByText("51–100 of 5,000")).toBeTruthy();
  });

  it("is narrowed by severity, rule and words, together, and says when nothing fits", async () => {
    show(report(24));
    const tile = within(screen.getByRole("group", { name: /severity/ })).getByText("Stop");
    fireEvent.click(tile);
    expect(entries()).toHaveLength(6);
    fireEvent.click(screen.getByRole("button", { name: "Filter" }));
    fireEvent.change(screen.getByRole("combobox", { name: "Rule" }), { target: { value: "X01" } });
    expect(entries()).toHaveLength(2);
    fireEvent.change(screen.getByRole("searchbox"), { target: { value: "gp1003" } });
    await waitFor(() => {
      expect(entries()).toHaveLength(1);
    });
    fireEvent.change(screen.getByRole("searchbox"), { target: { value: "no such cylinder" } });
    await screen.findByText(/No finding fits/);
    fireEvent.click(screen.getByRole("button", { name: "Clear" }));
    await waitFor(() => {
      expect(entries()).toHaveLength(24);
    });
  });

  it("is narrowed by cylinder, person and period, and says what has no day", async () => {
    const shown = report(24);
    const [first, ...others] = shown.findings;
    show({
      ...shown,
      findings: [{ ...first!, fillDate: "" }, ...others.map((f) => ({ ...f, fillDate: "2026-09-30" }))],
    });
    fireEvent.click(screen.getByRole("button", { name: "Filter" }));
    fireEvent.change(screen.getByRole("combobox", { name: "Cylinder" }), { target: { value: "gp 1001" } });
    await waitFor(() => {
      expect(entries()).toHaveLength(1);
    });
    expect(screen.getByRole("button", { name: "Filter (1)" })).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Clear" }));
    fireEvent.change(screen.getByRole("combobox", { name: "Filled by" }), { target: { value: "R." } });
    await waitFor(() => {
      expect(entries()).toHaveLength(12);
    });
    fireEvent.change(screen.getByRole("combobox", { name: "Period" }), { target: { value: "2026-09" } });
    await waitFor(() => {
      expect(entries()).toHaveLength(11);
    });
    expect(screen.getByText(/^1 finding without a day of a fill/)).toBeTruthy();
    fireEvent.change(screen.getByRole("combobox", { name: "Period" }), { target: { value: "days" } });
    fireEvent.change(screen.getByLabelText("From"), { target: { value: "2026-10-01" } });
    await screen.findByText(/No finding fits/);
  });
});

describe("the reasons of a finding", () => {
  it("are brought into sight when they are opened, and nothing moves when they are closed", () => {
    const shown: Element[] = [];
    const spy = vi.spyOn(Element.prototype, "scrollIntoView").mockImplementation(function (this: Element) {
      shown.push(this);
    });
    show(report(8));
    const why = screen.getAllByRole("button", { name: /^Why: / })[0]!;
    fireEvent.click(why);
    expect(shown.map(({ id }) => id)).toEqual([why.getAttribute("aria-controls")]);
    fireEvent.click(why);
    expect(shown).toHaveLength(1);
    spy.mockRestore();
  });
});

describe("accepting a finding", () => {
  const acceptFirst = (reason: string, by: string) => {
    fireEvent.click(screen.getAllByRole("button", { name: /^Why: / })[0]!);
    fireEvent.click(screen.getByRole("button", { name: "Accept with a reason" }));
    fireEvent.change(screen.getByRole("textbox", { name: "Why it can stand" }), {
      target: { value: reason },
    });
    fireEvent.change(screen.getByRole("textbox", { name: "Who says so" }), { target: { value: by } });
    fireEvent.click(screen.getByRole("button", { name: "Accept" }));
  };

  it("counts it apart with its reason, and takes it back", () => {
    show(report(8));
    acceptFirst("Certificate seen, date typed wrong", "R.");
    expect(screen.getByRole("heading", { name: "7 findings, 1 accepted" })).toBeTruthy();
    const tiles = within(screen.getByRole("group", { name: /severity/ })).getAllByRole("button");
    expect(tiles.map((tile) => tile.textContent)).toEqual([
      "1Stop",
      "2Breach",
      "2Warn",
      "2Note",
      "1Accepted",
    ]);
    const last = entries().at(-1)!;
    expect(last.textContent).toMatch(/Accepted by R\. on .* 2\d\d\d: Certificate seen, date typed wrong/);
    fireEvent.click(screen.getAllByRole("button", { name: /^Why: / }).at(-1)!);
    fireEvent.click(screen.getByRole("button", { name: "Take back the acceptance" }));
    expect(screen.getByRole("heading", { name: "8 findings" })).toBeTruthy();
  });

  it("asks for reason and name, and accepts nothing without", () => {
    show(report(4));
    acceptFirst(" ", "");
    expect(screen.getByText("Write what you found out.")).toBeTruthy();
    expect(screen.getByText("Your initials.")).toBeTruthy();
    expect(screen.getByRole("heading", { name: "4 findings" })).toBeTruthy();
  });

  it("keeps the focus in the list when the finding goes to its new place", () => {
    show(report(8));
    acceptFirst("Looked into", "T.");
    expect(document.activeElement).toBe(entries()[0]);
  });
});

describe("what was accepted and is no longer found", () => {
  const shown = report(4);
  const kept = { ...identityOf(shown.findings[0]!), reason: "Certificate seen", by: "R.", on: "2026-10-31" };
  const gone = { ...kept, cell: "C99", reason: "Sticker looked up" };

  it("is kept in a list of its own, with reason and name, until somebody removes it", () => {
    show(shown, [kept, gone]);
    expect(screen.getByRole("heading", { name: "3 findings, 1 accepted" })).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: /Accepted, no longer found: 1/ }));
    const list = screen.getByRole("list", { name: "Accepted, no longer found" });
    expect(list.textContent).toContain("Accepted by R. on 31 Oct 2026: Sticker looked up");
    expect(list.textContent).toContain("GP1000 · 12 Oct 2026 · October!C99");
    fireEvent.click(within(list).getByRole("button", { name: /^Remove/ }));
    expect(screen.queryByText(/no longer found/)).toBeNull();
    expect(screen.getByRole("heading", { name: "3 findings, 1 accepted" })).toBeTruthy();
  });

  it("is listed on the findings sheet", async () => {
    show(shown, [gone]);
    fireEvent.click(screen.getByRole("button", { name: "Write a findings sheet" }));
    await screen.findByText(/^Written to the new sheet/, { selector: "p" });
    const texts = workbook.added[0]!.rows.map(({ cells }) => cells.map(draftValue).join(" | "));
    expect(texts.some((text) => text.includes("October!C99 | Sticker looked up | R."))).toBe(true);
  });

  it("is not there where all that was accepted is found", () => {
    show(shown, [kept]);
    expect(screen.queryByText(/no longer found/)).toBeNull();
  });
});

describe("what is put into the workbook on request", () => {
  it("is a findings sheet of what is shown, with a way to each cell", async () => {
    show(report(8));
    fireEvent.click(within(screen.getByRole("group", { name: /severity/ })).getByText("Stop"));
    fireEvent.click(screen.getByRole("button", { name: "Write a findings sheet" }));
    expect(await screen.findByText(/^Written to the new sheet Findings 2/, { selector: "p" })).toBeTruthy();
    const [draft] = workbook.added;
    const serials = draft!.rows
      .map(({ cells }) => draftValue(cells[3]))
      .filter((value) => /^GP/.test(String(value)));
    expect(serials).toEqual(["GP1003", "GP1007"]);
    expect(workbook.sheets).toEqual([]);
  });

  it("are marks that can be taken away, where the host has them, and those left out are told", async () => {
    const marked: string[][] = [];
    let cleared = 0;
    Object.assign(workbook, {
      marks: {
        mark: (cells: readonly CellToMark[]) => {
          marked.push(cells.map(({ cell, held }) => `${cell.sheet} ${cell.row} ${String(held)}`));
          return Promise.resolve([cells[0]!.cell]);
        },
        clear: () => Promise.resolve(++cleared),
      } satisfies CellMarks,
    });
    show(report(4));
    fireEvent.click(screen.getByRole("button", { name: "Mark on the log" }));
    await screen.findByText(/^Marked, except 1 cell that changed/, { selector: "p" });
    expect(marked).toEqual([["October 4 3000", "October 3 3000", "October 2 3000", "October 1 3000"]]);
    fireEvent.click(screen.getByRole("button", { name: "Take marks away" }));
    await screen.findByText(/^The marks are gone/, { selector: "p" });
    expect(cleared).toBe(1);
  });

  it("offers no marks where the host has none", () => {
    show(report(4));
    expect(screen.queryByRole("button", { name: "Mark on the log" })).toBeNull();
  });

  it("says in a sentence what went wrong", async () => {
    workbook.addSheets = () =>
      Promise.reject(new WorkbookProblem("The workbook is protected. Unprotect it first."));
    show(report(4));
    fireEvent.click(screen.getByRole("button", { name: "Write a findings sheet" }));
    expect(await screen.findByText(/The workbook is protected/)).toBeTruthy();
  });
});

describe("the cylinders to call about, and those not to fill", () => {
  function atRisk(): CheckReport {
    const shown = report(8);
    const [stop] = shown.findings.filter(({ severity }) => severity === "stop");
    const breach = shown.findings.find(({ severity }) => severity === "breach")!;
    const last = { lastFill: { sheet: "October", row: 4, column: 2 }, fillDate: "2026-10-12" };
    return {
      ...shown,
      recall: [{ serial: stop!.serial, owner: "C-014", ...last, findings: [stop!] }],
      doNotFill: [{ serial: breach.serial, owner: undefined, ...last, fillDate: "", findings: [breach] }],
    };
  }

  it("come first, with owner, reason and cell", () => {
    const jumps = show(atRisk());
    const list = screen.getByRole("list", { name: "Call the owner" });
    expect(list.textContent).toMatch(/^GP1003 C-014Stop\. Message 3\. Look at it\.Last filled 12 Oct 2026/);
    fireEvent.click(within(list).getAllByRole("button")[0]!);
    expect(jumps).toEqual(["October 4"]);
    fireEvent.click(screen.getByRole("button", { name: /^Do not fill next: 1/ }));
    const others = screen.getByRole("list", { name: "Do not fill next" });
    fireEvent.click(within(others).getByRole("button", { name: /^GP1002/ }));
    expect(jumps).toEqual(["October 4", "October 3"]);
    expect(others.textContent).toContain("owner not in the log");
    expect(others.textContent).toContain("Message 2.");
  });

  it("lead to all that was found of the cylinder", async () => {
    show(atRisk());
    fireEvent.click(screen.getByRole("button", { name: "1 finding of GP1003" }));
    await waitFor(() => {
      expect(entries()).toHaveLength(1);
    });
    expect(document.activeElement?.textContent).toBe("All findings, the gravest first");
  });

  it("leave the list once every finding against them is accepted, and are counted", () => {
    show(atRisk());
    fireEvent.click(screen.getByRole("button", { name: "Why: Message 3." }));
    fireEvent.click(screen.getByRole("button", { name: "Accept with a reason" }));
    fireEvent.change(screen.getByRole("textbox", { name: "Why it can stand" }), {
      target: { value: "Called, emptied" },
    });
    fireEvent.change(screen.getByRole("textbox", { name: "Who says so" }), { target: { value: "R." } });
    fireEvent.click(screen.getByRole("button", { name: "Accept" }));
    expect(screen.getByText(/^Nobody to call: .* 1 more accepted with a reason\.$/)).toBeTruthy();
  });
});

const BLANK_VISUAL = {
  runs: [],
  count: 14,
  why: "visual is blank",
  cells: [{ sheet: "Cylinders", row: 3, column: 3 }],
};

const BLANK_MIX = {
  runs: [],
  count: 14,
  why: "analysed mix is blank",
  cells: Array.from({ length: 14 }, (_, row) => ({ sheet: "October", row: row + 10, column: 6 })),
};

describe("what was not checked", () => {
  it("is counted in sight, with reasons and cells a press away", () => {
    const jumps = show(
      report(0, [
        { rule: "V06", ...BLANK_VISUAL },
        { rule: "O01", ...BLANK_MIX },
      ]),
    );
    expect(screen.getByRole("heading", { name: "Nothing found in what was checked" })).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: /^Not checked: 28/ }));
    expect(screen.getByText("visual is blank")).toBeTruthy();
    const [visual, mix] = screen.getAllByRole("listitem").map((item) => within(item));
    expect(visual!.queryByText("and others")).toBeNull();
    expect(mix!.getAllByRole("button")).toHaveLength(6);
    expect(mix!.getByText("and others")).toBeTruthy();
    fireEvent.click(screen.getByRole("button", { name: "Cylinders!D4" }));
    expect(jumps).toEqual(["Cylinders 3"]);
  });

  it("tells a missing column once, however many rules want it of however many fills", () => {
    const column = { why: "the log has no column for hydro", cells: [], runs: [] };
    expect(
      lacksOf([
        { rule: "V01", count: 600, ...column },
        { rule: "V10", count: 12, ...column },
      ]),
    ).toEqual([{ why: column.why, cells: [], count: 600, rules: ["V01", "V10"] }]);
  });

  it("tells a thing once that stops several rules at the same cells", () => {
    expect(
      lacksOf([
        { rule: "V06", ...BLANK_VISUAL },
        { rule: "V09", ...BLANK_VISUAL },
      ]),
    ).toEqual([expect.objectContaining({ cells: BLANK_VISUAL.cells, rules: ["V06", "V09"] })]);
  });
});

describe("findings as text", () => {
  it("hold the rows, what was not checked, and for each finding cell, rule and source", () => {
    const shown = report(1, [{ rule: "V06", ...BLANK_VISUAL }]);
    const all = sortByHarm(shown, acceptancesOf([]));
    const text = findingsText(shown, all, all);
    expect(text).toContain("0 rows = 0 unreadable");
    expect(text).toMatch(/^Not checked: 14 \(V06.*\), visual is blank$/m);
    expect(text).toContain(
      "Note: Message 0. Look at it. [GP1000, 2026-10-12, October!C2; rule X01, practice: common practice, no source]",
    );
  });
});

function entries(): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>("[data-part=finding]")];
}

function key(name: string): void {
  fireEvent.keyDown(document.activeElement!, { key: name });
}
