// @vitest-environment jsdom
import { fireEvent, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { FakeWorkbook, smallLog, US_SHOP } from "./fakeWorkbook";
import { press, showPane } from "./render";

async function shopArea(settings: unknown = US_SHOP) {
  const workbook = new FakeWorkbook(smallLog(), settings);
  showPane({ workbook });
  fireEvent.click(await screen.findByRole("tab", { name: "Rules & shop" }));
  const kept = () =>
    workbook.settings.get("brimbook") as { house?: unknown; airTests?: unknown; sources?: unknown };
  return { workbook, kept };
}

function type(label: RegExp | string, text: string): HTMLElement {
  const input = screen.getByLabelText(label);
  fireEvent.change(input, { target: { value: text } });
  fireEvent.blur(input);
  return input;
}

describe("the figures of the shop", () => {
  it("stand beside their source; one that is changed is marked, kept, and can be taken back", async () => {
    const { kept } = await shopArea();
    press(/^Aluminium, alloy 6061/);
    expect(screen.getAllByText(/49 CFR 180.205\(c\)/).length).toBeGreaterThan(0);
    type("Hydro every", "36");
    expect(await screen.findByText(/instead of 60 months/)).toBeTruthy();
    expect(screen.getByText(/One figure is this shop's own/)).toBeTruthy();
    await waitFor(() => {
      expect(kept().house).toEqual({ "US-3AL.hydro.months": 36 });
    });
    press("Reset: Hydro every");
    expect(screen.queryByText(/instead of 60 months/)).toBeNull();
    await waitFor(() => {
      expect(kept().house).toEqual({});
    });
  });

  it("that cannot be are not kept, and say what can", async () => {
    const { workbook } = await shopArea();
    press(/^Gas analysis/);
    for (const text of ["14", "-1", "much", ""]) {
      type("Oxygen pressure for the MOD on labels", text);
      expect(screen.getByText("Write a number from 1 to 1.6.")).toBeTruthy();
    }
    expect(workbook.settings.get("brimbook")).toEqual(US_SHOP);
    type("Oxygen pressure for the MOD on labels", "1,3");
    expect(await screen.findByText(/instead of 1.4 ata or bar/)).toBeTruthy();
  });

  it("are reset all at once, those of other countries kept", async () => {
    const house = { maxPpO2: 1.3, visualDue: "first of month", "GB.hydro.months": 48 };
    const { kept } = await shopArea({ ...US_SHOP, house });
    expect(await screen.findByText(/2 figures are this shop's own/)).toBeTruthy();
    press("Reset all");
    await waitFor(() => {
      expect(kept().house).toEqual({ "GB.hydro.months": 48 });
    });
  });
});

describe("the shop's own records", () => {
  it("keep air tests in order of their days", async () => {
    const { kept } = await shopArea();
    press(/^Air tests/);
    press("Add the test");
    expect(screen.getByText(/Say on which day/)).toBeTruthy();
    for (const date of ["2026-09-01", "2026-03-01"]) {
      type("Day of the sample", date);
      press("Add the test");
    }
    await waitFor(() => {
      expect(kept().airTests).toEqual([
        { date: "2026-03-01", passed: true },
        { date: "2026-09-01", passed: true },
      ]);
    });
    press("Remove the test of 2026-03-01");
    await waitFor(() => {
      expect(kept().airTests).toEqual([{ date: "2026-09-01", passed: true }]);
    });
  });

  it("keep banks and compressors by name, with a mix that can be read", async () => {
    const { kept } = await shopArea();
    press(/^Banks and compressors/);
    press("Add the source");
    expect(screen.getByText(/Write the name/)).toBeTruthy();
    type("Name, as the log has it", "Bank A");
    type("It holds", "EAN");
    press("Add the source");
    const form = screen.getByRole("region", { name: "The shop's own records" });
    expect(within(form).getByRole("alert").textContent).toMatch(/EAN/);
    type("It holds", "EAN32");
    fireEvent.change(screen.getByLabelText("Its gas may meet oxygen"), { target: { value: "no" } });
    press("Add the source");
    await waitFor(() => {
      expect(kept().sources).toEqual([
        { name: "Bank A", oxygenCompatible: false, mix: { oxygen: 0.32, helium: 0 } },
      ]);
    });
  });
});
