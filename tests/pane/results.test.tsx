// @vitest-environment jsdom
import { fireEvent, render, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { SEVERITIES, type Finding, type NotChecked } from "../../src/audit/finding";
import { AnnouncerProvider } from "../../src/pane/kit/announce";
import type { CheckReport } from "../../src/pane/check/report";
import { findingsText } from "../../src/pane/check/results/findingsText";
import { lacksOf } from "../../src/pane/check/results/lacks";
import { Results } from "../../src/pane/check/results/Results";
import type { Jump } from "../../src/pane/check/useJump";
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
    };
  });
  return {
    sheets: [],
    unreadable: [],
    findings,
    notChecked,
    fullyJudged: true,
    overrides: [],
    recall: [],
    doNotFill: [],
    held: findings.map(() => 3000),
  };
}

function show(shown: CheckReport) {
  const jumps: string[] = [];
  const jump: Jump = { to: (address) => jumps.push(`${address.sheet} ${address.row}`), note: undefined };
  render(
    <AnnouncerProvider>
      <Results report={shown} jump={jump} titleRef={{ current: null }} />
    </AnnouncerProvider>,
  );
  return jumps;
}

describe("the list of findings", () => {
  it("goes by harm, under headings of word and meaning", () => {
    show(report(8));
    expect(screen.getAllByRole("heading", { level: 3 }).map((title) => title.textContent)).toEqual([
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
});

const BLANK_VISUAL = {
  count: 14,
  why: "visual is blank",
  cells: [{ sheet: "Cylinders", row: 3, column: 3 }],
};

const BLANK_MIX = {
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

  it("tells a thing once that stops several rules at the same cells", () => {
    expect(
      lacksOf([
        { rule: "V06", ...BLANK_VISUAL },
        { rule: "V09", ...BLANK_VISUAL },
      ]),
    ).toEqual([{ ...BLANK_VISUAL, rules: ["V06", "V09"] }]);
  });
});

describe("findings as text", () => {
  it("hold the rows, what was not checked, and for each finding cell, rule and source", () => {
    const shown = report(1, [{ rule: "V06", ...BLANK_VISUAL }]);
    const text = findingsText(shown, [{ finding: shown.findings[0]!, held: 3000, key: 0 }]);
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
