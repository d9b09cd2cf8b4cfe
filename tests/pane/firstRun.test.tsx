// @vitest-environment jsdom
import { fireEvent, screen, waitFor } from "@testing-library/react";
import { describe, expect, it, vi } from "vitest";
import { FakeWorkbook, smallLog, US_SHOP } from "./fakeWorkbook";
import { press, showPane } from "./render";

describe("the first run", () => {
  it("asks for country and units, and reads nothing before both are answered", async () => {
    const workbook = new FakeWorkbook(smallLog());
    showPane({ workbook });
    await screen.findByText("Whose rules does this shop fill under?");
    expect(screen.queryByRole("tab")).toBeNull();

    press("Start");
    expect(screen.getByText(/due dates and limits differ/)).toBeTruthy();
    expect(screen.getByText(/could be psi or bar/)).toBeTruthy();
    expect(document.activeElement).toBe(screen.getByRole("combobox"));

    fireEvent.change(screen.getByRole("combobox"), { target: { value: "US" } });
    press("Start");
    expect(workbook.readings).toBe(0);
    expect(workbook.settings.size).toBe(0);

    fireEvent.click(screen.getByRole("radio", { name: /^US/ }));
    press("Start");
    const tab = await screen.findByRole("tab", { name: "Check the log", selected: true });
    expect(document.activeElement).toBe(tab);
    await waitFor(() => {
      expect(workbook.settings.get("brimbook")).toMatchObject({ country: "US", units: "us" });
    });
  });

  it("offers the sample log where the host has one", async () => {
    const onOpenSample = vi.fn();
    showPane({ workbook: new FakeWorkbook([]), onOpenSample });
    await screen.findByText("Check your fill log");
    press("Try it on a sample log");
    expect(onOpenSample).toHaveBeenCalledOnce();
  });

  it("does not come again where the workbook has the answers", async () => {
    showPane({ workbook: new FakeWorkbook(smallLog(), US_SHOP) });
    await screen.findByRole("tab", { name: "Check the log" });
    expect(screen.queryByText("Check your fill log")).toBeNull();
  });

  it("says so where stored settings cannot be read, and asks again", async () => {
    showPane({ workbook: new FakeWorkbook(smallLog(), "{broken") });
    expect(await screen.findByText(/could not be read/)).toBeTruthy();
    expect(screen.getByText("Check your fill log")).toBeTruthy();
  });

  it("starts anew with another workbook", async () => {
    const { rerender } = showPane({ workbook: new FakeWorkbook(smallLog(), US_SHOP) });
    await screen.findByRole("tab", { name: "Check the log" });
    const { Pane } = await import("../../src/pane/Pane");
    rerender(<Pane appearance="light" workbook={new FakeWorkbook(smallLog())} />);
    await screen.findByText("Check your fill log");
  });

  it("holds the answer until the pane closes where it cannot be kept, and says so", async () => {
    const workbook = new FakeWorkbook(smallLog());
    workbook.writeSetting = () => Promise.reject(new Error("no"));
    showPane({ workbook });
    fireEvent.change(await screen.findByRole("combobox"), { target: { value: "GB" } });
    fireEvent.click(screen.getByRole("radio", { name: /^Metric/ }));
    press("Start");
    await screen.findByRole("tab", { name: "Check the log" });
    expect(await screen.findByText(/could not be kept in the workbook/)).toBeTruthy();
  });
});
