// @vitest-environment jsdom
import { act, fireEvent, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { ownLine } from "../../src/sheet/ownSheet";
import { FakeWorkbook, LiveWorkbook, sheet, smallLog, US_SHOP } from "./fakeWorkbook";
import { checkTheLog, press, showPane } from "./render";

describe("finding the log", () => {
  it("ticks sheets by what is in them, and says what each was taken for", async () => {
    showPane({ workbook: new FakeWorkbook(smallLog(), US_SHOP) });
    await checkTheLog();
    press(/^Sheets and columns/);
    expect(checked("October")).toBe(true);
    expect(checked("Cylinders")).toBe(true);
    expect(screen.getByText("Log, 4 fills")).toBeTruthy();
    expect(screen.getByText("Register, 3 cylinders")).toBeTruthy();
    press(/1 other sheet/);
    expect(checked("Prices")).toBe(false);
  });

  it("knows a sheet that Brimbook wrote, without any settings of it, and does not tick it", async () => {
    const report = sheet("Cylinders 2026-10", [
      ["Serial", "Filled on", "Mix", "Hydro"],
      ["A10001", "2026-10-03", "EAN32", "2024-06"],
      [ownLine("month report")],
    ]);
    showPane({ workbook: new FakeWorkbook([...smallLog(), report], US_SHOP) });
    await checkTheLog();
    press(/^Sheets and columns/);
    press(/2 other sheets/);
    expect(checked("Cylinders 2026-10")).toBe(false);
    expect(screen.getByText(/Brimbook wrote it \(month report\), and it is no log\./)).toBeTruthy();
  });

  it("always shows that rows reconcile", async () => {
    showPane({ workbook: new FakeWorkbook(smallLog(), US_SHOP) });
    const bar = await screen.findByRole("region", { name: /^Rows/ });
    expect(bar.textContent).toMatch(
      /^10 rows = 4 fills \+ 3 cylinders \+ 2 headings \+ 1 blank \+ 0 unreadable/,
    );
  });

  it("lists unreadable rows with cell and reason, and leads there", async () => {
    const [october, ...others] = smallLog();
    const rows = [...october!.rows, { values: [null, null, "???", 12, null] }];
    const workbook = new FakeWorkbook([{ ...october!, rows }, ...others], US_SHOP);
    showPane({ workbook });
    await checkTheLog();
    press("1 unreadable");
    press(/^October!/);
    await waitFor(() => {
      expect(workbook.selected).toMatchObject([{ sheet: "October", row: 6 }]);
    });
  });

  it("teaches what a log is where there is none", async () => {
    showPane({ workbook: new FakeWorkbook([sheet("Prices", [["Air", 8]])], US_SHOP) });
    expect(await screen.findByText("No fill log found here")).toBeTruthy();
    expect(screen.getByText(/Tick a sheet that holds fills/)).toBeTruthy();
  });

  it("names a sheet that cannot be read, and goes on with the others", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    workbook.broken = "Prices";
    showPane({ workbook });
    await checkTheLog();
    press(/^Sheets and columns/);
    expect(screen.getByText(/Prices: The sheet Prices is protected/)).toBeTruthy();
    expect(checked("October")).toBe(true);
  });

  it("can be called off and taken up again", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    workbook.gate = new Promise(() => undefined);
    showPane({ workbook });
    await screen.findByRole("button", { name: "Cancel" });
    press("Cancel");
    workbook.gate = undefined;
    press("Look for logs");
    await checkTheLog();
  });
});

describe("the columns", () => {
  it("show heading, meaning, unit and confidence, and a correction is kept by heading", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    showPane({ workbook });
    await checkTheLog();
    press(/^Sheets and columns/);
    press(/^8 columns/);
    const meaning = screen.getByRole<HTMLSelectElement>("combobox", { name: /^What “End psi” in October/ });
    expect(meaning.value).toBe("endPressure");
    expect(screen.getByRole<HTMLSelectElement>("combobox", { name: /^Unit of “End psi”/ }).value).toBe("psi");

    fireEvent.change(meaning, { target: { value: "settledPressure" } });
    await waitFor(() => {
      expect(workbook.settings.get("brimbook")).toMatchObject({
        sheets: [
          {
            sheet: "October",
            columns: [{ heading: "End psi", nth: 0, field: "settledPressure", answers: {} }],
          },
        ],
      });
    });
    expect(await screen.findByText("set by you")).toBeTruthy();

    press("Take back what I set for End psi");
    await waitFor(() => {
      expect(workbook.settings.get("brimbook")).toMatchObject({
        sheets: [{ sheet: "October", columns: [] }],
      });
    });
  });
});

describe("dates that can be read either way", () => {
  it("are read as usual in the country, and the column says so", async () => {
    const log = sheet("Fills", [
      ["Date", "Serial", "Start psi", "End psi"],
      ["9/10/2026", "A10001", 500, 3000],
    ]);
    showPane({ workbook: new FakeWorkbook([log], US_SHOP) });
    await checkTheLog();
    press(/^Sheets and columns/);
    press(/^4 columns/);
    expect(screen.getByText(/“9\/10\/2026” under “Date”.* was read month first/)).toBeTruthy();
  });
});

describe("a check", () => {
  it("counts by severity, lists by harm, and leaves the log alone", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    showPane({ workbook });
    await checkTheLog();
    const tiles = screen.getByRole("group", { name: /by severity/ });
    expect(
      within(tiles)
        .getAllByRole("button")
        .map((tile) => tile.textContent),
    ).toEqual(["1Stop", "1Breach", "0Warn", "0Note"]);
    const found = findings();
    expect(found).toHaveLength(2);
    expect(found[0]!.textContent).toMatch(/^Stop\. .*GP1002 · 5 Oct 2026 · /);
    expect(found[1]!.textContent).toMatch(/^Breach\. .*GP1003 · 6 Oct 2026 · /);
  });

  it("leads to the cell by a press, and says by whose rule", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    showPane({ workbook });
    await checkTheLog();
    fireEvent.click(findings()[0]!);
    await waitFor(() => {
      expect(workbook.selected).toHaveLength(1);
    });
    expect(workbook.selected[0]).toMatchObject({ row: 2 });
    press(/^Why: .*hydro/i);
    expect(screen.getByText("Law")).toBeTruthy();
    expect(screen.getByText(/49 CFR 180.205/)).toBeTruthy();
  });

  it("says so where the cell has changed, or its sheet is gone", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    showPane({ workbook });
    await checkTheLog();
    const [october, ...others] = workbook.sheets as [ReturnType<typeof sheet>, ...ReturnType<typeof sheet>[]];
    workbook.sheets = [{ ...october, rows: october.rows.slice(1) }, ...others];
    fireEvent.click(findings()[0]!);
    expect(await screen.findByText(/has changed since the check/, { selector: "p" })).toBeTruthy();
    workbook.sheets = others;
    fireEvent.click(findings()[0]!);
    expect(await screen.findByText(/October is no longer in this workbook/, { selector: "p" })).toBeTruthy();
  });

  it("never calls a log in order while something could not be checked", async () => {
    const [october] = smallLog();
    showPane({ workbook: new FakeWorkbook([october!], US_SHOP) });
    await checkTheLog();
    expect(screen.getByRole("heading", { name: /^Nothing found, but hydro, visual/ })).toBeTruthy();
    const bar = screen.getByRole("region", { name: /^Rows/ });
    expect(bar.textContent).toMatch(/Not checked: [1-9]/);
    press(/^Not checked/);
    expect(screen.getAllByText(/no column for hydro/).length).toBeGreaterThan(0);
  });

  it("follows what is typed, and says what came and what went", async () => {
    const workbook = new LiveWorkbook(smallLog(), US_SHOP);
    showPane({ workbook });
    await checkTheLog();
    expect(screen.queryByRole("button", { name: "Check again" })).toBeNull();
    act(() => {
      workbook.type("Cylinders", 2, 2, "2024-06-15");
    });
    await screen.findByRole("heading", { name: "1 finding" });
    expect(screen.getByRole("status").textContent).toMatch(/^Checked\. 1 finding, .* Gone: 1 finding\.\s*$/);
    act(() => {
      workbook.type("October", 5, 5, 36);
    });
    await screen.findByRole("heading", { name: "2 findings" });
    expect(screen.getByRole("status").textContent).toMatch(/ New: 1 finding\.\s*$/);
  });

  it("follows the rules of the shop", async () => {
    showPane({ workbook: new FakeWorkbook(smallLog(), US_SHOP) });
    await checkTheLog();
    fireEvent.click(screen.getByRole("tab", { name: "Rules & shop" }));
    fireEvent.change(screen.getByRole("combobox", { name: /Whose rules/ }), { target: { value: "GB" } });
    fireEvent.click(screen.getByRole("tab", { name: "Check the log" }));
    expect(await screen.findByText(/^By the rules of the United Kingdom/)).toBeTruthy();
  });

  it("that cannot read a chosen sheet says why, and keeps the earlier result", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    showPane({ workbook });
    await checkTheLog();
    workbook.broken = "October";
    press("Check again");
    expect(await screen.findByText(/October is protected\. Unprotect it and try again\./)).toBeTruthy();
    expect(findings()).toHaveLength(2);
  });
});

describe("focus and speech", () => {
  it("goes from the button to Cancel, and from there to the results", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    showPane({ workbook });
    await checkTheLog();
    let open: () => void = () => undefined;
    workbook.gate = new Promise((resolve) => {
      open = resolve;
    });
    workbook.sheets = workbook.sheets.slice(0, 2);
    press("Check again");
    expect(document.activeElement).toBe(screen.getByRole("button", { name: "Cancel" }));
    open();
    const title = await screen.findByRole("heading", { name: "2 findings" });
    await waitFor(() => {
      expect(document.activeElement).toBe(title);
    });
  });

  it("comes back to the button when a check is called off", async () => {
    const workbook = new FakeWorkbook(smallLog(), US_SHOP);
    showPane({ workbook });
    await checkTheLog();
    workbook.gate = new Promise(() => undefined);
    press("Check again");
    press("Cancel");
    expect(document.activeElement).toBe(screen.getByRole("button", { name: "Check again" }));
  });
});

function checked(name: string): boolean {
  return screen.getByRole<HTMLInputElement>("checkbox", { name }).checked;
}

function findings(): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>("[data-part=finding]")];
}
