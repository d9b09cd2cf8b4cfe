// @vitest-environment jsdom
import { fireEvent, render, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { Notice } from "../../src/pane/kit/ProblemNote";
import { draftValue } from "../../src/sheet/draft/draft";
import { ownSheetOf } from "../../src/sheet/ownSheet";
import type { Sheet } from "../../src/sheet/sheet";
import { priceSheet } from "../costs/lists";
import { FakeWorkbook, LiveWorkbook, sheet, smallLog, US_SHOP } from "./fakeWorkbook";
import { press, showPane } from "./render";

/** The small log, three fills of which can be costed: GP1003's start mix is there, GP9999 is in no register. */
function costedLog(...more: Sheet[]): Sheet[] {
  return [
    sheet("October", [
      ["Date", "Serial", "Customer", "Start psi", "Start mix", "End psi", "Ordered mix", "Method"],
      ["2026-10-02", "GP1001", "C-014", 500, "EAN32", 3000, "EAN32", "bank"],
      ["2026-10-05", "GP1002", "C-020", 500, "air", 3000, "air", "air"],
      ["2026-10-06", "GP9999", "C-020", 500, "air", 3000, "air", "air"],
      ["2026-11-09", "GP1003", "C-031", 500, "EAN36", 3000, "EAN36", "partial pressure"],
    ]),
    smallLog()[1]!,
    ...more,
  ];
}

async function openCosts(workbook: FakeWorkbook): Promise<void> {
  showPane({ workbook });
  fireEvent.click(await screen.findByRole("tab", { name: "Fill costs" }));
  await screen.findByRole("button", { name: "Work it out again" });
}

const area = () => screen.getByRole("tabpanel", { name: "Fill costs" });
const status = () => within(area()).getByRole("region", { name: /^Fills costed/ });

describe("fill costs without a price list", () => {
  it("say what one is, and write an empty one that is no part of the log", async () => {
    const workbook = new FakeWorkbook(costedLog(), US_SHOP);
    await openCosts(workbook);
    expect(screen.getByRole("heading", { name: "No price list found here" })).toBeTruthy();
    expect(status().textContent).toContain("4 fills = 0 costed + 4 not costed");
    press("Write an empty price list", area());
    expect(await screen.findByText(/“Prices” is a new sheet/)).toBeTruthy();
    expect(workbook.added.map(({ name }) => name)).toEqual(["Prices"]);
    await waitFor(() => {
      expect(workbook.settings.get("brimbook")).toMatchObject({ sheets: [{ sheet: "Prices", use: false }] });
    });
  });

  it("say so where there is no fill", async () => {
    await openCosts(new FakeWorkbook([priceSheet()], US_SHOP));
    expect(screen.getByText(/No fill was found in this workbook/)).toBeTruthy();
  });
});

describe("fill costs", () => {
  it("show the sums, and always how many fills are in none", async () => {
    const workbook = new FakeWorkbook(costedLog(priceSheet()), US_SHOP);
    await openCosts(workbook);
    expect(status().textContent).toContain("4 fills = 3 costed + 1 not costed");
    const results = within(area()).getByRole("region", { name: "Costs" });
    expect(within(results).getByText("Cost", { selector: "dt" })).toBeTruthy();
    expect(results.textContent).toMatch(/Went in: oxygen \d+ cu ft, air \d+ cu ft, compressor 0\.\d h/);
    expect(results.textContent).toContain("says nothing of it: booster.");
    expect(within(results).getByRole("rowheader", { name: "EAN32" })).toBeTruthy();
    press("1 not costed", area());
    expect(status().textContent).toContain("1: cylinder is not in the register, so no size");
    press(/^October!/, status());
    await waitFor(() => {
      expect(workbook.selected).toMatchObject([{ sheet: "October", row: 3, column: 1 }]);
    });
  });

  it("look at one month, and by customer", async () => {
    await openCosts(new FakeWorkbook(costedLog(priceSheet()), US_SHOP));
    fireEvent.change(screen.getByRole("combobox", { name: "Fills of" }), { target: { value: "2026-11" } });
    await waitFor(() => {
      expect(status().textContent).toContain("1 fill = 1 costed + 0 not costed");
    });
    fireEvent.change(screen.getByRole("combobox", { name: "By" }), { target: { value: "customer" } });
    expect(within(area()).getByRole("rowheader", { name: "C-031" })).toBeTruthy();
    expect(within(area()).queryByRole("rowheader", { name: "C-014" })).toBeNull();
  });

  it("tell what of the price list is not used, with its cell", async () => {
    const prices = priceSheet([
      ["What", "We pay", "Per"],
      ["Unicorn", 3, "bottle"],
      ["Air", 0.02, "cu ft"],
      ["Oxygen", 0.2, "cu ft"],
    ]);
    await openCosts(new FakeWorkbook(costedLog(prices), US_SHOP));
    press(/^Price list: 1 thing not used/, area());
    expect(area().textContent).toContain("Prices!A2 “Unicorn” is nothing that fills are costed by");
  });

  it("compare with another price and another way, and refuse what is no number", async () => {
    await openCosts(new FakeWorkbook(costedLog(priceSheet()), US_SHOP));
    press(/^What if/, area());
    const percent = screen.getByRole("textbox", { name: /by, in per cent/ });
    fireEvent.change(percent, { target: { value: "a lot" } });
    press("Compare", area());
    expect(screen.getByText(/Write a number from -100 to 1000/)).toBeTruthy();
    fireEvent.change(percent, { target: { value: "100" } });
    press("Compare", area());
    expect(await screen.findByText("With oxygen at 200 % of its price:")).toBeTruthy();
    fireEvent.change(screen.getByRole("combobox", { name: /all nitrox is made/ }), {
      target: { value: "continuous" },
    });
    press("Compare", area());
    expect(await screen.findByText(/all nitrox by continuous blending:/)).toBeTruthy();
  });

  it("write new sheets, customers only where asked, and keep them out of the log", async () => {
    const workbook = new FakeWorkbook(costedLog(priceSheet()), US_SHOP);
    await openCosts(workbook);
    press("Write the cost sheets", area());
    const written = await screen.findByText(/^Written as new sheets: Fill costs all/);
    const { container: done } = render(<Notice intent="success">Done.</Notice>);
    const markOf = (notice: Element | null) => notice!.querySelector("svg")!.innerHTML;
    expect(markOf(written.closest(".fui-MessageBar"))).toBe(markOf(done));
    expect(markOf(done)).not.toBe(markOf(render(<Notice>Mind this.</Notice>).container));
    expect(JSON.stringify(workbook.added)).not.toContain("C-014");
    for (const { rows } of workbook.added)
      expect(ownSheetOf({ rows: rows.map(({ cells }) => ({ values: cells.map(draftValue) })) })).toBe(
        "fill costs",
      );
    workbook.added.length = 0;
    fireEvent.click(screen.getByRole("checkbox", { name: "with customers" }));
    press("Write the cost sheets", area());
    await waitFor(() => {
      expect(JSON.stringify(workbook.added)).toContain("C-014");
    });
  });

  it("book oxygen against deliveries, and offer the sheet for it", async () => {
    const workbook = new FakeWorkbook(costedLog(priceSheet()), US_SHOP);
    await openCosts(workbook);
    press(/^Gas book/, area());
    press("Write an empty sheet for it", area());
    expect(await screen.findByText(/“Gas in and out” is a new sheet/)).toBeTruthy();
    workbook.sheets.push(
      sheet("Gas in and out", [
        ["Date", "What", "In or out", "How many", "Unit"],
        ["2026-10-01", "Oxygen", "in stock", 282, "cu ft"],
        ["2026-11-30", "Oxygen", "in stock", 200, "cu ft"],
      ]),
    );
    press("Work it out again", area());
    const missing = await screen.findByRole("rowheader", { name: "Missing" });
    expect(missing.parentElement?.textContent).toMatch(/^Missing6\d$/);
  });

  it("follow what is typed", async () => {
    const workbook = new LiveWorkbook(costedLog(priceSheet()), US_SHOP);
    showPane({ workbook });
    fireEvent.click(await screen.findByRole("tab", { name: "Fill costs" }));
    await waitFor(() => {
      expect(status().textContent).toContain("4 fills = 3 costed + 1 not costed");
    });
    workbook.type("October", 3, 1, "GP1003");
    await waitFor(() => {
      expect(status().textContent).toContain("4 fills = 4 costed + 0 not costed");
    });
  });

  it("can be called off, and name a sheet that cannot be read", async () => {
    const workbook = new FakeWorkbook(costedLog(priceSheet()), US_SHOP);
    await openCosts(workbook);
    workbook.gate = new Promise(() => undefined);
    press("Work it out again", area());
    press("Cancel", area());
    expect(document.activeElement).toBe(screen.getByRole("button", { name: "Work it out again" }));
    workbook.gate = undefined;
    workbook.broken = "October";
    press("Work it out again", area());
    expect(await within(area()).findByText(/^The sheet October is protected/)).toBeTruthy();
  });
});
