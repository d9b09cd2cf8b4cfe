// @vitest-environment jsdom
import { fireEvent, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { points } from "../../src/pane/check/results/further/points";
import { shareInWords } from "../../src/pane/check/results/further/BadAirTest";
import { FakeWorkbook, sheet, smallLog, US_SHOP } from "./fakeWorkbook";
import { checkTheLog, press, showPane } from "./render";

const HEADINGS = [
  "Date",
  "Serial",
  "Owner",
  "Start psi",
  "End psi",
  "Mix",
  "Analysed O2",
  "Method",
  "Filled by",
];

/** Blends that T. makes 0.6 points too rich, as a rule; and one cylinder topped off after a fill of suspect air. */
function blendLog() {
  const blends = [31.5, 31.6, 31.7, 31.6, 31.6, 31.7].map((analysed, at) => [
    `2026-09-${String(at + 10)}`,
    "GP1001",
    "C-014",
    500,
    3000,
    "EAN31",
    analysed,
    "premix",
    "T.",
  ]);
  return [
    sheet("October", [
      HEADINGS,
      ["2026-08-01", "GP1003", "C-015", 0, 3000, "air", 20.9, "air", "R."],
      ...blends,
      ["2026-10-06", "GP1002", "C-016", 500, 3000, "air", 20.9, "air", "T."],
      ["2026-10-20", "GP1002", "C-016", 1500, 3000, "air", 20.9, "air", "T."],
    ]),
    ...smallLog().slice(1),
  ];
}

async function lookFurther(workbook = new FakeWorkbook(blendLog(), US_SHOP)): Promise<FakeWorkbook> {
  showPane({ workbook });
  await checkTheLog();
  fireEvent.click(screen.getByRole("tab", { name: "Look further" }));
  return workbook;
}

describe("due lists", () => {
  it("say what is out of date today and what is not known, by owner", async () => {
    const [, register, prices] = smallLog();
    const rows = [...register!.rows, { values: ["GP1009", "AL80"] }];
    const workbook = new FakeWorkbook([blendLog()[0]!, { ...register!, rows }, prices!], US_SHOP);
    showPane({ workbook });
    await checkTheLog();
    fireEvent.click(screen.getByRole("tab", { name: "Due" }));
    const out = screen.getByRole("list", { name: "Out of date today" });
    // GP1002: hydro of June 2019, good for five years; GP1003: visual of May 2024, good for one.
    expect(out.textContent).toMatch(/GP1003 C-015.*Visual .*ran out/);
    expect(out.textContent).toMatch(/GP1002 C-016.*Hydro .*ran out/);
    press(/^Not known: /);
    const unknown = screen.getByRole("list", { name: "Not known" });
    expect(unknown.textContent).toMatch(/GP1009 owner not in the log.*hydro is blank/i);
    // each leads to the date in the register, or to where it would stand
    const name = register!.name;
    const hydro = register!.rows[0]!.values.findIndex((heading) => /hydro/i.test(String(heading)));
    fireEvent.click(within(out).getByRole("button", { name: /^GP1002.*Hydro/ }));
    fireEvent.click(within(unknown).getByRole("button", { name: /^GP1009.*Hydro/ }));
    await waitFor(() => {
      expect(workbook.selected).toMatchObject([
        {
          sheet: name,
          row: rows.findIndex(({ values }) => values[0] === "GP1002"),
          column: hydro,
        },
        { sheet: name, row: rows.length - 1, column: hydro },
      ]);
    });
  });
});

describe("after a bad air test", () => {
  const enter = (bad: string, before = "", after = "") => {
    press(/^After a bad air test/);
    fireEvent.change(screen.getByLabelText(/^Day of the bad sample/), { target: { value: bad } });
    fireEvent.change(screen.getByLabelText(/^Last good sample/), { target: { value: before } });
    fireEvent.change(screen.getByLabelText(/^First good sample/), { target: { value: after } });
    press("List the cylinders");
  };

  it("lists who was filled since the last good one, the largest share first, and what is left of it", async () => {
    const workbook = await lookFurther();
    enter("2026-10-15", "2026-10-01", "2026-10-18");
    const list = await screen.findByRole("list", { name: /^Suspect gas/ });
    const entries = within(list).getAllByRole("listitem");
    expect(entries).toHaveLength(1);
    // Suspect air on 500 psi of good air up to 3000 psi, then topped off from 1500 to 3000 psi with good air: five
    // sixths of a half, roughly.
    expect(entries[0]!.textContent).toMatch(/GP1002 C-016Stop\. 4[2-5] % of what it was last filled with/);
    fireEvent.click(within(list).getByRole("button"));
    await waitFor(() => {
      expect(workbook.selected).toMatchObject([{ sheet: "October", row: 8 }]);
    });
  });

  it("goes on until air was found good again", async () => {
    await lookFurther();
    enter("2026-10-15", "2026-10-01");
    const list = await screen.findByRole("list", { name: /^Suspect gas/ });
    expect(list.textContent).toMatch(/9[0-3] % .*2 suspect fills/);
  });

  it("refuses good samples on the wrong side of the bad one", async () => {
    await lookFurther();
    enter("2026-10-15", "2026-10-16", "2026-10-14");
    expect(screen.getByText("It must lie before the bad one.")).toBeTruthy();
    expect(screen.getByText("It must lie after the bad one.")).toBeTruthy();
  });

  it("takes every fill before it where no good one is known", async () => {
    await lookFurther();
    enter("2026-10-15");
    const list = await screen.findByRole("list", { name: /^Suspect gas/ });
    expect(within(list).getAllByRole("listitem")).toHaveLength(3);
  });

  it("goes on past another bad test, and past good ones of another source", async () => {
    const airTests = [
      { date: "2026-09-30", passed: false },
      { date: "2026-10-02", passed: true, source: "Boat compressor" },
    ];
    await lookFurther(new FakeWorkbook(blendLog(), { ...US_SHOP, airTests }));
    enter("2026-10-15");
    const list = await screen.findByRole("list", { name: /^Suspect gas/ });
    expect(within(list).getAllByRole("listitem")).toHaveLength(3);
  });

  it("asks for the day, and keeps the test with the others on request", async () => {
    const workbook = await lookFurther();
    enter("");
    expect(screen.getByText("Say on which day the sample was taken.")).toBeTruthy();
    fireEvent.change(screen.getByLabelText(/^Day of the bad sample/), { target: { value: "2026-10-15" } });
    press("List the cylinders");
    await screen.findByRole("list", { name: /^Suspect gas/ });
    press("Keep this test under Rules & shop");
    await waitFor(() => {
      expect(workbook.settings.get("brimbook")).toMatchObject({
        airTests: [{ date: "2026-10-15", passed: false }],
      });
    });
  });

  it("does not count a test twice that is on record already", async () => {
    const airTests = [{ date: "2026-10-15", passed: false }];
    await lookFurther(new FakeWorkbook(blendLog(), { ...US_SHOP, airTests }));
    enter("2026-10-15", "2026-10-01");
    const list = await screen.findByRole("list", { name: /^Suspect gas/ });
    expect(within(list).getAllByRole("listitem")).toHaveLength(1);
  });

  it.each([
    [{ least: 1, most: 1 }, "100 %"],
    [{ least: 0.503, most: 0.503 }, "51 %"],
    [{ least: 0, most: 0.4 }, "Up to 40 %"],
    [{ least: 0.12, most: 0.401 }, "12 to 41 %"],
  ])("never rounds a share down: %o", (share, said) => {
    expect(shareInWords(share)).toBe(said);
  });
});

describe("a rehearsal", () => {
  it("sets the sums side by side, and lists what would be found besides", async () => {
    const workbook = await lookFurther();
    press(/^Rehearsal/);
    fireEvent.change(screen.getByRole("combobox", { name: "Rules to try" }), { target: { value: "GB" } });
    press("Compare");
    const table = await screen.findByRole("table", { name: "Findings now, and as tried" });
    expect(
      within(table)
        .getAllByRole("columnheader")
        .map((cell) => cell.textContent),
    ).toEqual(["Severity", "Now", "United Kingdom"]);
    expect(workbook.settings.get("brimbook")).toEqual(US_SHOP);
  });

  it("tries a stricter limit, and keeps nothing of it", async () => {
    const workbook = await lookFurther();
    press(/^Rehearsal/);
    const compare = screen.getByRole("button", { name: "Compare" });
    expect(compare.getAttribute("aria-disabled")).toBe("true");
    fireEvent.change(screen.getByRole("combobox", { name: "A limit to try" }), {
      target: { value: "mixTolerancePoints" },
    });
    const figure = screen.getByRole("textbox", { name: /^Analysed against ordered: a breach/ });
    fireEvent.change(figure, { target: { value: "0.3" } });
    fireEvent.blur(figure);
    press("Compare");
    expect(await screen.findByRole("button", { name: /^Only as tried: [1-9]/ })).toBeTruthy();
    expect(workbook.settings.get("brimbook")).toEqual(US_SHOP);
  });

  it("can be called off", async () => {
    await lookFurther();
    press(/^Rehearsal/);
    fireEvent.change(screen.getByRole("combobox", { name: "Rules to try" }), { target: { value: "GB" } });
    press("Compare");
    press("Cancel");
    await waitFor(() => {
      expect(screen.queryByRole("button", { name: "Cancel" })).toBeNull();
    });
    expect(screen.queryByRole("table")).toBeNull();
  });
});

describe("house patterns", () => {
  it("say a bias in words, draw it, and have the figures in a table behind", async () => {
    await lookFurther();
    press(/^House patterns.*bias/);
    expect(
      screen.getByText(/^Filled by T\.: 0\.6 points of oxygen over what was ordered, in 6 fills/),
    ).toBeTruthy();
    const chart = screen.getByRole("img");
    expect(chart.getAttribute("aria-label")).toMatch(
      /^(Filled by T\.|By premix): \+0\.62 points, between \+0\.5\d and/,
    );
    press("Table of these figures");
    const row = screen.getByRole("row", { name: /^Filled by T\./ });
    expect(row.textContent).toMatch(/^Filled by T\.6\+0\.62\+0\.54 to \+0\.70$/);
  });

  it("tell that there are too few blends to learn from", async () => {
    await lookFurther(new FakeWorkbook(smallLog(), US_SHOP));
    press(/^House patterns/);
    expect(screen.getByText(/too few of one person, method or bank/)).toBeTruthy();
  });

  it.each([
    [0.004, "0.00"],
    [-0.004, "0.00"],
    [0.25, "+0.25"],
    [-1.2, "−1.20"],
  ])("write %d as %s", (value, said) => {
    expect(points(value)).toBe(said);
  });
});
