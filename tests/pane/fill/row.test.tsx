// @vitest-environment jsdom
import { fireEvent, screen, waitFor } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { evaluate } from "../../../src/functions/evaluate";
import type { Receipt } from "../../../src/counter/receive/receipt";
import { newForm, writeField, type FieldName } from "../../../src/counter/form";
import { rowModel } from "../../../src/counter/plan/rowList";
import { sheet, US_SHOP } from "../fakeWorkbook";
import { press } from "../render";
import { openFill, part, type, Writable } from "./counter";

describe("a row of cylinders", () => {
  it("judges each, and says from which bottle to fill it and what is left", async () => {
    await openFill();
    press("A row");
    type(/^Cylinders, one a line/, "GP1001, AL80, 500, air\nGP1002, AL80, 800, air");
    press("Check them all");
    await waitFor(() => {
      expect(part("row-verdicts").textContent).toMatch(/GP1001Fill.*GP1002Do not fill/);
    });
    type(/^The bank, one a line/, "A, 50, 2500\nB, 50, 3600");
    type(/^Fill to/, "3000");
    const answer = part("row-answer").textContent;
    expect(answer).toMatch(/A on GP1001/);
    expect(answer).not.toMatch(/on GP1002/);
    expect(part("row-refused").textContent).toMatch(/GP1002/);
    expect(answer).toMatch(/Bank afterwards: A \d+ psi, B \d+ psi/);
    expect(answer).toMatch(/Then \d+ more/);
  });
  it("from a bank it tells the mix each comes out with, as MIXAFTER on its own residue, and where that is not the bank's", async () => {
    await openFill();
    press("A row");
    type(
      /^Cylinders, one a line/,
      "GP1001, AL80, 1000, air\nGP1003, AL80, 100, air\nGP1004, AL80, 500, EAN32",
    );
    type(/^The bank, one a line/, "A, 50, 3600\nB, 50, 3600");
    type("Gas in the bank", "EAN32");
    type(/^Fill to/, "3000");
    const [[far]] = evaluate("MIXAFTER", [1000, "air", 3000, 32, "psi"]) as [[number]];
    const [[near]] = evaluate("MIXAFTER", [100, "air", 3000, 32, "psi"]) as [[number]];
    expect(32 - far).toBeGreaterThan(1);
    expect(32 - near).toBeLessThan(1);
    expect(part("row-mixes").textContent).toBe(
      `GP1001O2 ${far.toFixed(1)} %, not the bank’s EAN32` +
        `GP1003O2 ${near.toFixed(1)} %, within tolerance of EAN32GP1004O2 32.0 %`,
    );
  });
  it("says where the size in the list is not that of the register, in whatever words it is written", async () => {
    await openFill();
    press("A row");
    type(/^Cylinders, one a line/, "GP1001, HP100, 500, air\nGP1003, 11.1, 500, air");
    press("Check them all");
    await waitFor(() => {
      expect(part("row-size").textContent).toBe(
        "GP1001: the list has HP100, the register AL80. It is worked out with HP100: look at the shoulder.",
      );
    });
    expect(document.querySelectorAll("[data-part=row-size]")).toHaveLength(1);
    type(/^Cylinders, one a line/, "GP1001, AL80, 500, air");
    expect(document.querySelector("[data-part=row-size]")).toBeNull();
  });
  async function continuousRow(cylinders: string, mix: string) {
    await openFill();
    press("A row");
    type(/^Cylinders, one a line/, cylinders);
    press("Check them all");
    await screen.findByText("Records say");
    fireEvent.change(screen.getByRole("combobox", { name: "Filled" }), { target: { value: "continuous" } });
    type("Mix wanted", mix);
    type(/^Fill to/, "3000");
  }
  it("by continuous blending it tells the stream each needs as TOPWITH does, and what one stream makes of all", async () => {
    await continuousRow("GP1001, AL80, 500, air\nGP1003, AL80, 300, air\nGP1002, AL80, 500, air", "EAN32");
    const [[one]] = evaluate("TOPWITH", [500, "air", 3000, 32, "psi"]) as [[number]];
    expect(part("row-answer").textContent).toContain(`GP1001500${one.toFixed(1)} %`);
    const [[other]] = evaluate("TOPWITH", [300, "air", 3000, 32, "psi"]) as [[number]];
    expect(part("row-answer").textContent).toContain(`GP1003300${other.toFixed(1)} %`);
    expect(part("row-refused").textContent).toMatch(/GP1002: Hydro .* ran out/);
    expect(part("row-common").textContent).toMatch(/2 of 2 come out right.*GP1001, GP1003/);
    type("One stream for all", "36");
    expect(part("row-common").textContent).toMatch(/36\.0 % 0 of 2 come out right.*: none/);
    const [[flow]] = evaluate("INJECT", [36, 100]) as [[number]];
    expect(part("row-common").textContent).toContain(`${flow.toFixed(1)} % is the oxygen supply`);
  });
  it("by continuous blending one stream is kept to what a cylinder takes that is not known to be clean, and it is said", () => {
    const form = [
      ["row", "A1, AL80, 1100, air\nA2, AL80, 1150, air\nA3, AL80, 150, air"],
      ...[["rowWay", "continuous"], ["rowMix", "EAN30"], ["rowTarget", "3000"], ["tolerance", "0.5"]],
    ].reduce((so, [name, text]) => writeField(so, name as FieldName, text!), newForm("us")); // prettier-ignore
    const limits = { cleanAbovePercent: 33, tolerancePoints: 0.5 };
    const cleanOnes = ["A1", "A2"].map((asked) => ({
      asked,
      verdict: "fill",
      reasons: [],
      unknowns: [],
      limit: undefined,
      maxOxygen: 1,
      rating: "oxygen clean",
      pureOxygen: { may: "yes", why: "" },
    }));
    const receipts = cleanOnes as unknown as readonly Receipt[];
    const { streamed } = rowModel(form, limits, receipts);
    const [[own]] = evaluate("TOPWITH", [150, "air", 3000, 30, "psi"]) as [[number]];
    expect(streamed!.row.common!.oxygen * 100).toBeCloseTo(own, 6);
    expect(streamed!.row.fills.map(({ isRight }) => isRight)).toEqual([false, false, true]);
    expect(streamed!.row.heldBack).toEqual({ mostOxygen: 0.33, by: ["A3"] });
  });
  it("by continuous blending nothing is made above the compressor's limit, and it is said", async () => {
    await continuousRow("GP1001, AL80, 500, air", "EAN42");
    expect(screen.getByText(/EAN42 is above the compressor's limit of 40 %/)).toBeTruthy();
    expect(document.querySelector("[data-part=row-answer]")).toBeNull();
    type("Mix wanted", "EAN36");
    type(/^Compressor's limit/, "38");
    expect(part("row-answer").textContent).toMatch(/GP1001 not by a stream of its own:.*limit of 38 %/);
  });
  it("by continuous blending a cylinder that nobody looked up is not known to be in order", async () => {
    await openFill();
    press("A row");
    type(/^Cylinders, one a line/, "GP1001, AL80, 500, air");
    fireEvent.change(screen.getByRole("combobox", { name: "Filled" }), { target: { value: "continuous" } });
    type("Mix wanted", "EAN32");
    type(/^Fill to/, "3000");
    expect(part("row-not-known").textContent).toMatch(/GP1001/);
    type(/^Fill to/, "3300");
    press("Check them all");
    await waitFor(() => {
      expect(part("row-refused").textContent).toMatch(/GP1001: 3300 psi is above its limit of 3000 psi/);
    });
  });
  it("names the line that cannot be read", async () => {
    await openFill();
    press("A row");
    type(/^Cylinders, one a line/, "GP1001, AL80, 500, air\nGP1002");
    type(/^Fill to/, "3000");
    expect(screen.getByText(/^Line 2: “GP1002”: still without size, pressure and mix/)).toBeTruthy();
    expect(document.querySelector("[data-part=row-answer]")).toBeNull();
  });
});

describe("rows selected in the sheet", () => {
  /** Four rows of today that wait below two fills, the last of a cylinder without a start mix. */
  function waitingLog() {
    return new Writable(
      [
        sheet("Fills", [
          ["Date", "Serial", "Start psi", "Start mix", "End psi", "Ordered mix", "Analysed O2", "Method"],
          ["2026-10-02", "GP1001", 500, "air", 3000, "EAN32", 31.6, "partial pressure"],
          ["2026-10-03", "GP1002", 500, "air", 3000, "air", 20.9, "air"],
          ["2026-10-31", "GP1001", 450, "EAN32", null, "EAN32", null, null],
          ["2026-10-31", "GP1003", 700, "air", null, "EAN32", null, null],
          [null],
          ["2026-10-31", "GP1002", 300, null, null, "air", null, null],
        ]),
        sheet("Cylinders", [
          ["Serial", "Size", "Service pressure psi", "Hydro", "Visual", "Oxygen rating"],
          ["GP1001", "AL80", 3000, "2024-03-14", "2026-09-20", "O2 clean"],
          ["GP1002", "AL80", 3000, "2019-06-15", "2026-09-20", "O2 clean"],
          ["GP1003", "AL80", 3000, "2024-03-14", "2026-09-20", "40"],
        ]),
      ],
      US_SHOP,
    );
  }
  const said = (words: RegExp) =>
    waitFor(() => {
      expect(part("rows-taken").textContent).toMatch(words);
    });
  const list = () =>
    screen.getByRole<HTMLTextAreaElement>("textbox", { name: /^Cylinders, one a line/ }).value;
  async function selected(rows: readonly number[], typed = "", outOfSight = 0, name = "Fills") {
    const workbook = await openFill(waitingLog());
    workbook.selection = { sheet: name, rows, outOfSight };
    press("A row");
    if (typed !== "") type(/^Cylinders, one a line/, typed);
    press("Take the rows selected in the sheet");
    return workbook;
  }

  it("come into the list as the log is read, each judged by its records, and work out at once", async () => {
    await selected([3, 4]);
    await said(/2 cylinders added to the list./);
    expect(list()).toBe("GP1001, AL80, 450 psi, EAN32\nGP1003, AL80, 700 psi, air");
    expect(part("row-verdicts").textContent).toMatch(/GP1001Fill.*GP1003Fill/);
    expect(part("rows-taken").textContent).toContain("From Fills: GP1001 (row 4), GP1003 (row 5).");
    expect(part("rows-taken").textContent).toContain("Ordered: EAN32.");
    fireEvent.change(screen.getByRole("combobox", { name: "Filled" }), { target: { value: "continuous" } });
    type("Mix wanted", "EAN32");
    type(/^Fill to/, "3000");
    const [[stream]] = evaluate("TOPWITH", [450, "EAN32", 3000, 32, "psi"]) as [[number]];
    expect(part("row-answer").textContent).toContain(`GP1001450${stream.toFixed(1)} %`);
  });

  it("stand below what was typed, which stays; a cylinder already there is left as it is, and said", async () => {
    await selected([3, 4], "GP1003, AL80, 900, air");
    await said(/One cylinder added to the list./);
    expect(list()).toBe("GP1003, AL80, 900, air\nGP1001, AL80, 450 psi, EAN32");
    expect(part("rows-taken").textContent).toContain(
      "In the list already, and left as they are: GP1003 (row 5).",
    );
    press("Take them out again");
    expect(list()).toBe("GP1003, AL80, 900, air");
    expect(document.querySelector("[data-part=rows-taken]")).toBeNull();
  });

  it("that order different mixes are said so, as one gas fills the row", async () => {
    await selected([3, 4, 6]);
    await said(/They order different mixes: EAN32 \(GP1001, GP1003\); air \(GP1002\)\./);
  });

  it("are not offered back once the list was changed by hand", async () => {
    await selected([3]);
    await said(/One cylinder added to the list./);
    type(/^Cylinders, one a line/, "GP1001, AL80, 460, EAN32");
    expect(screen.queryByRole("button", { name: "Take them out again" })).toBeNull();
  });

  it("that say too little are said so, row by row, and so are those that are no cylinder or out of sight", async () => {
    await selected([0, 1, 5, 6], "", 2);
    await said(/2 cylinders added to the list./);
    expect(list()).toBe("GP1001, AL80\nGP1002, AL80, 300 psi");
    const lines = part("rows-taken").textContent;
    expect(lines).toMatch(/GP1001 \(row 2\): filled on 2 October 2026.*what is left in it now is not known/);
    expect(lines).toContain("GP1002 (row 7): start mix is blank.");
    expect(lines).toContain("Not taken: row 1. A heading.");
    expect(lines).toContain("Not taken: row 6. A blank row.");
    expect(lines).toContain("2 selected rows are hidden or filtered away: left out.");
    expect(screen.getByText(/^Line 1: “GP1001”: still without pressure and mix/)).toBeTruthy();
    expect(document.querySelector("[data-part=row-answer]")).toBeNull();
  });

  it("are not taken where none is selected, all are hidden, or far too many are: the list stays", async () => {
    const workbook = await selected([], "GP1003, AL80, 900, air");
    await screen.findByText(/^Nothing is selected in “Fills”/);
    workbook.selection = { sheet: "Fills", rows: [], outOfSight: 3 };
    press("Take the rows selected in the sheet");
    await screen.findByText(/^All selected rows of “Fills” are hidden or filtered away/);
    workbook.selection = { sheet: "Fills", rows: Array.from({ length: 51 }, (_, row) => row), outOfSight: 0 };
    press("Take the rows selected in the sheet");
    await screen.findByText(/^51 rows of “Fills” are selected.*50 at most/);
    expect(list()).toBe("GP1003, AL80, 900, air");
  });

  it("of a sheet that is gone are said not to be taken", async () => {
    await selected([1], "", 0, "Gone");
    await said(/None of the selected rows was taken./);
    expect(part("rows-taken").textContent).toMatch(/Not taken: row 2\. This sheet was not read/);
  });
});

describe("the list", () => {
  it("says at the second line that a cylinder is in it twice, and counts it once", async () => {
    await openFill();
    press("A row");
    type(/^Cylinders, one a line/, "GP1001, AL80, 500, air\nGP1003, AL80, 300, air\ngp-1001, AL80, 900, air");
    fireEvent.change(screen.getByRole("combobox", { name: "Filled" }), { target: { value: "continuous" } });
    type("Mix wanted", "EAN32");
    type(/^Fill to/, "3000");
    expect(part("row-repeated").textContent).toBe("Line 3: gp-1001 is in line 1 already, and counts once.");
    expect(part("row-answer").querySelectorAll("tbody tr")).toHaveLength(2);
  });

  it("keeps its pressures when the units are switched and it is typed on", async () => {
    await openFill();
    press("A row");
    type(/^Cylinders, one a line/, "GP1001, AL80, 500, air");
    type(/^The bank, one a line/, "A, 50, 3600");
    type(/^Fill to/, "3000");
    const before = part("row-answer").querySelectorAll("td")[1]!.textContent;
    expect(before).toBe("500");
    press("bar, m, °C");
    const box = screen.getByRole<HTMLTextAreaElement>("textbox", { name: /^Cylinders, one a line/ });
    expect(box.value).toBe("GP1001, AL80, 500 psi, air");
    type(/^Cylinders, one a line/, `${box.value}\nGP1003, AL80, 40, air`);
    expect(part("row-answer").textContent).toMatch(/34\.5.*40\.0/);
    press("psi, ft, °F");
    expect(box.value).toBe("GP1001, AL80, 500 psi, air\nGP1003, AL80, 40 bar, air");
  });

  it("takes an empty cylinder without a mix, as it holds air", async () => {
    await openFill();
    press("A row");
    type(/^Cylinders, one a line/, "GP1001, AL80, empty");
    fireEvent.change(screen.getByRole("combobox", { name: "Filled" }), { target: { value: "continuous" } });
    type("Mix wanted", "EAN32");
    type(/^Fill to/, "3000");
    const [[stream]] = evaluate("TOPWITH", ["empty", "", 3000, 32, "psi"]) as [[number]];
    expect(part("row-answer").textContent).toContain(`GP10010${stream.toFixed(1)} %`);
  });
});
