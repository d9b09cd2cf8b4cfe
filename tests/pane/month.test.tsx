// @vitest-environment jsdom
import { fireEvent, screen, waitFor, within } from "@testing-library/react";
import { expect, test } from "vitest";
import { draftValue } from "../../src/sheet/draft/draft";
import { FakeWorkbook, LiveWorkbook, smallLog, US_SHOP } from "./fakeWorkbook";
import { press, showPane } from "./render";

async function openMonthEnd(workbook: FakeWorkbook): Promise<HTMLElement> {
  showPane({ workbook });
  fireEvent.click(await screen.findByRole("tab", { name: "Month end" }));
  await screen.findByRole("button", { name: "Read the log again" });
  return screen.getByRole("tabpanel", { name: "Month end" });
}

test("month end: the months of the log are offered, the report is made, looked at and written as new sheets", async () => {
  const workbook = new FakeWorkbook(smallLog(), US_SHOP);
  const area = await openMonthEnd(workbook);
  expect(await within(area).findByRole("option", { name: "October 2026, 4 fills" })).toBeDefined();
  fireEvent.change(within(area).getByRole("textbox", { name: /Name of the shop/ }), {
    target: { value: "Gannet Point" },
  });
  press("Make the report", area);
  const report = await within(area).findByRole("region", { name: "Report of October 2026" });
  expect(report.textContent).toContain("4 fills");
  expect(report.textContent).toMatch(/\d+ open findings?/);
  expect(report.textContent).toMatch(/Not checked: something for \d+ reasons/);
  press("Write as new sheets", report);
  await within(area).findByText(/Written as new sheets: Month 2026-10, Call first 2026-10/);
  const [cover] = workbook.added;
  expect(cover!.rows.flatMap(({ cells }) => cells.map(draftValue))).toContain("Gannet Point");
  expect(within(area).getByRole("region", { name: "Report of October 2026" })).toBeTruthy();
});

test("month end: charts are pictures with a sentence, and the figures stand behind them as a table", async () => {
  const area = await openMonthEnd(new FakeWorkbook(smallLog(), US_SHOP));
  await within(area).findByRole("option", { name: /October/ });
  press("Make the report", area);
  const weeks = await within(area).findByRole("img", { name: /Fills in each week of October 2026/ });
  expect(weeks.querySelectorAll("rect").length).toBeGreaterThan(1);
  const figure = weeks.closest("figure")!;
  press("The figures", figure);
  const rows = within(figure).getAllByRole("row");
  expect(rows[1]!.textContent).toBe("1 to 721");
});

test("month end: what is changed in the form makes the report anew, and the report follows the log", async () => {
  const workbook = new LiveWorkbook(smallLog(), US_SHOP);
  showPane({ workbook });
  fireEvent.click(await screen.findByRole("tab", { name: "Month end" }));
  const area = screen.getByRole("tabpanel", { name: "Month end" });
  await within(area).findByRole("option", { name: /October/ });
  press("Make the report", area);
  const report = await within(area).findByRole("region", { name: /Report of/ });
  expect(report.textContent).toContain("4 fills");
  workbook.type("October", 5, 0, null);
  await waitFor(() => {
    expect(within(area).getByRole("region", { name: /Report of/ }).textContent).toContain("3 fills");
  });
  fireEvent.click(within(area).getByRole("checkbox", { name: "Name owners and receivers" }));
  await waitFor(() => {
    expect(within(area).queryByRole("region", { name: /Report of/ })).toBeNull();
  });
});

test("month end: a workbook without fills says where to look", async () => {
  const [, , prices] = smallLog();
  const area = await openMonthEnd(new FakeWorkbook([prices!], US_SHOP));
  await within(area).findByText(/No fill with a date that can be read/);
});
