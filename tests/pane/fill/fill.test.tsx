// @vitest-environment jsdom
import { fireEvent, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { evaluate } from "../../../src/functions/evaluate";
import type { CellWrite } from "../../../src/workbook/workbook";
import { FakeWorkbook, sheet, US_SHOP } from "../fakeWorkbook";
import { press, showPane } from "../render";

class Writable extends FakeWorkbook {
  readonly rows: { sheet: string; cells: readonly CellWrite[] }[] = [];
  appendRow(name: string, cells: readonly CellWrite[]) {
    this.rows.push({ sheet: name, cells });
    return Promise.resolve({ sheet: name, row: 6, column: 0 });
  }
}

function shopLog() {
  return new Writable(
    [
      sheet("Fills", [
        ["Date", "Serial", "Start psi", "Start mix", "End psi", "Ordered mix", "Analysed O2", "Method", "Filled by"],
        ["2026-10-02", "GP1001", 500, "air", 3000, "EAN32", 31.6, "partial pressure", "R."],
        ["2026-10-03", "GP1002", 500, "air", 3000, "air", 20.9, "air", "T."],
      ]),
      sheet("Cylinders", [
        ["Serial", "Shop number", "Size", "Service pressure psi", "Hydro", "Visual", "Oxygen rating"],
        ["GP1001", "C-014", "AL80", 3000, "2024-03-14", "2026-09-20", "O2 clean"],
        ["GP1002", "C-015", "AL80", 3000, "2019-06-15", "2026-09-20", "O2 clean"],
        ["GP1003", "C-016", "AL80", 3000, "2024-03-14", "2026-09-20", "40"],
      ]),
    ],
    US_SHOP,
  ); // prettier-ignore
}

async function openFill(workbook = shopLog()) {
  showPane({ workbook });
  fireEvent.click(await screen.findByRole("tab", { name: "Fill a cylinder" }));
  await screen.findByRole("heading", { name: "Receive" });
  return workbook;
}

function type(label: string | RegExp, text: string): void {
  fireEvent.change(screen.getByRole("textbox", { name: label }), { target: { value: text } });
}

function part(name: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(`[data-part=${name}]`);
  if (!found) throw new Error(`no ${name}`);
  return found;
}

async function receive(serial: string) {
  type("Serial or shop number", serial);
  fireEvent.keyDown(screen.getByRole("textbox", { name: "Serial or shop number" }), { key: "Enter" });
  await screen.findByRole("region", { name: "What the records say" });
}

const stops = () => [...document.querySelectorAll("[data-part=stop]")].map(({ textContent }) => textContent);

/** What FILLSTEPS answers, its stops as a psi gauge shows them. */
function stepsByFunction(...args: readonly (string | number)[]) {
  const [, ...rows] = evaluate("FILLSTEPS", [...args]);
  return rows.map((row) => Number(row[3]).toFixed(0));
}

async function planOf(start: string, startMix: string, end: string, endMix: string) {
  press("Plan");
  await screen.findByRole("heading", { name: "Plan" });
  type(/^Pressure, psi/, start);
  type("Mix, analysed", startMix);
  type(/^Pressure, settled/, end);
  type("Mix", endMix);
}

describe("receiving", () => {
  it("says fill, with tests, rating, limit and what is probably inside", async () => {
    await openFill();
    await receive("GP1001");
    expect(part("verdict").textContent).toBe("Fill");
    expect(screen.getByText("Hydro good until 31 March 2029")).toBeTruthy();
    expect(part("inside").textContent).toMatch(/EAN31\.6 .*by analysis/);
  });
  it("says do not fill, with the reason, and does not go on to plan", async () => {
    await openFill();
    await receive("c-015");
    expect(part("verdict").textContent).toBe("Do not fill");
    expect(screen.getByText("Hydro of 2019-06-15 ran out on 30 June 2024.")).toBeTruthy();
    expect(screen.queryByRole("button", { name: /Next/ })).toBeNull();
    expect(screen.getByRole("button", { name: "Print a refusal slip" })).toBeTruthy();
  });
  it("says not known of a cylinder that is in no register, and takes it down here", async () => {
    const workbook = await openFill();
    await receive("ZZ9");
    expect(part("verdict").textContent).toBe("Not known");
    type("Service pressure, psi", "3000");
    type("Hydro", "03/2024");
    type("Visual", "09/2026");
    type("Oxygen rating", "O2 clean");
    press("Judge it by this");
    await waitFor(() => {
      expect(part("verdict").textContent).toBe("Fill");
    });
    await waitFor(() => {
      expect(workbook.settings.get("brimbook.fill")).toMatchObject({ entered: [{ serial: "ZZ9" }] });
    });
  });
});

describe("planning", () => {
  it("shows the stops that FILLSTEPS gives, live", async () => {
    await openFill();
    await receive("GP1001");
    await planOf("500", "air", "3000", "EAN32");
    expect(stops()).toEqual(stepsByFunction(500, "air", 3000, 32, "psi"));
    expect(within(part("plan")).getByText(/Stops hold for gas settled at 70 °F/)).toBeTruthy();
    const [[mod]] = evaluate("MOD", [32, "ft"]) as [[number]];
    expect(part("mod").textContent).toBe(`${Math.floor(mod)} ft, rounded down`);
    type("Mix", "TX 18/45");
    expect(stops()).toEqual(stepsByFunction(500, "air", 3000, "TX 18/45", "psi"));
  });
  it("shows gas used and cost as GASUSED and FILLCOST have them", async () => {
    await openFill();
    await receive("GP1001");
    await planOf("500", "air", "3000", "EAN32");
    press(/The station/);
    type(/^Oxygen price/, "0.5");
    type(/^Top gas price/, "0.1");
    type("Per fill", "4");
    const [[oxygen]] = evaluate("GASUSED", ["oxygen", "AL80", 500, "air", 3000, 32, "psi"]) as [[number]];
    const prices = [["oxygen", 0.5], ["top", 0.1], ["per fill", 4]]; // prettier-ignore
    const [[cost]] = evaluate("FILLCOST", ["AL80", 500, "air", 3000, 32, prices, "psi"]) as [[number]];
    expect(part("plan").textContent).toContain(`Oxygen used${Number(oxygen.toFixed(1))} cu ft`);
    expect(part("plan").textContent).toContain(`Cost${cost.toFixed(2)}`);
  });
  it("does not offer partial pressure for a cylinder rated to 40 %, and says why", async () => {
    await openFill();
    await receive("GP1003");
    await planOf("500", "air", "3000", "EAN32");
    expect(part("may").textContent).toMatch(/Not this way.*not oxygen clean/);
    press(/The station/);
    type(/^Continuous, up to/, "40");
    await waitFor(() => {
      expect(part("plan").textContent).toMatch(/^Continuous/);
    });
    const [[top]] = evaluate("TOPWITH", [500, "air", 3000, 32, "psi"]) as [[number]];
    expect(part("plan").textContent).toContain(`EAN${Number(top.toFixed(1))} from the compressor`);
    expect(document.querySelector("[data-part=may]")).toBeNull();
  });
  it("without a cylinder received nothing is allowed in silence", async () => {
    await openFill();
    await planOf("0", "air", "3000", "EAN32");
    expect(part("may").textContent).toMatch(/Not known.*No cylinder was received/);
  });
  it("above the cylinder's limit it says so", async () => {
    await openFill();
    await receive("GP1001");
    await planOf("500", "air", "3300", "EAN32");
    expect(part("may").textContent).toMatch(/above its limit of 3000 psi/);
  });
  it("warns of a hypoxic mix with the depth above which it is not breathed, rounded up", async () => {
    await openFill();
    await planOf("0", "air", "3000", "TX 10/70");
    const [[depth]] = evaluate("MINDEPTH", ["TX 10/70", "ft"]) as [[number]];
    expect(part("plan").textContent).toContain(`not to be breathed above ${Math.ceil(depth)} ft`);
  });
  it("says in place what a field cannot be", async () => {
    await openFill();
    await planOf("500", "argon", "200", "EAN32");
    expect(screen.getByText(/argon/i)).toBeTruthy();
    expect(screen.getByText(/For bar write/)).toBeTruthy();
  });
  it("a switch of units keeps what was typed, and shows it in the other unit and back", async () => {
    await openFill();
    await planOf("500", "air", "3000", "EAN32");
    press("bar, m, °C");
    expect(screen.getByRole<HTMLInputElement>("textbox", { name: /^Pressure, settled/ }).value).toBe("206.8");
    expect(stops()).toHaveLength(2);
    press("psi, ft, °F");
    expect(screen.getByRole<HTMLInputElement>("textbox", { name: /^Pressure, settled/ }).value).toBe("3000");
    expect(stops()).toEqual(stepsByFunction(500, "air", 3000, 32, "psi"));
  });
  it("tells how exact the readings must be", async () => {
    await openFill();
    await planOf("0", "air", "3000", "EAN32");
    press(/How exact must I be/);
    expect(part("exactness").textContent).toMatch(/gauge must be good to ±\d+ psi/);
  });
});

describe("heat, analysis and handing over", () => {
  async function filled(workbook = shopLog()) {
    await openFill(workbook);
    await receive("GP1001");
    await planOf("500", "air", "3000", "EAN32");
    return workbook;
  }
  it("shows warm readings as SETTLED has them, and what to top from the reading found", async () => {
    await filled();
    press("Fill");
    type(/^Gas temperature/, "110");
    const warm = [...document.querySelectorAll("[data-part=warm]")].at(-1)!.textContent;
    const [[hot]] = evaluate("SETTLED", [3000, 32, 70, 110, "psi"]) as [[number]];
    expect(warm).toBe(`${hot.toFixed(0)} psi at 110 °F`);
    type(/^Reading found/, "2800");
    expect(part("top-off").textContent).toMatch(/Top to 3000 psi settled/);
  });
  it("offers a correction where the mix came out wrong, with what FILLSTEPS makes of it", async () => {
    await filled();
    press("Analyse");
    type(/^Oxygen, %/, "30.2");
    type(/^Pressure, settled/, "2900");
    const corrections = part("corrections");
    expect(part("analysis").textContent).toMatch(/out of tolerance/);
    expect(corrections.textContent).toMatch(/Partial pressure|Drain/);
    expect(stops()).toEqual(stepsByFunction(2900, 30.2, 3000, 32, "psi"));
  });
  it("prints no label without an analysis and a name; then it is that of LABELTEXT", async () => {
    await filled();
    press("Hand over");
    expect(document.querySelector("[data-part=label]")).toBeNull();
    press("Analyse");
    type(/^Oxygen, %/, "31.8");
    press("Hand over");
    expect(screen.getByText(/A label needs the name/)).toBeTruthy();
    press("Analyse");
    type("Analysed by", "R.");
    press("Hand over");
    const today = new Date();
    const iso = `${today.getFullYear()}-${String(today.getMonth() + 1).padStart(2, "0")}-${String(today.getDate()).padStart(2, "0")}`;
    const [[label]] = evaluate("LABELTEXT", [3000, 31.8, "R.", iso, "GP1001", "psi"]) as [[string]];
    expect(part("label").textContent).toContain(label);
  });
  it("adds the row to the person's own columns, once, and only when asked", async () => {
    const workbook = await filled();
    press("Analyse");
    type(/^Oxygen, %/, "31.8");
    type("Analysed by", "R.");
    press("Hand over");
    expect(workbook.rows).toEqual([]);
    press("Add the row");
    await within(part("log-row")).findByText("Written into row 7 of Fills.");
    const [{ sheet: name, cells }] = workbook.rows as [(typeof workbook.rows)[0]];
    expect(name).toBe("Fills");
    expect(cells.map(({ column, value }) => [column, value]).slice(1)).toEqual([
      [1, "GP1001"], [2, 500], [3, "air"], [4, 3000], [5, 32], [6, 31.8], [7, "partial pressure"], [8, "R."],
    ]); // prettier-ignore
    expect(cells[0]).toMatchObject({ column: 0, format: "yyyy-mm-dd" });
  });
  it("two posts that differ are a closed isolator", async () => {
    await filled();
    press("Analyse");
    press(/Second post/);
    type(/^Oxygen, %/, "32");
    type(/^Oxygen, post 2/, "28");
    expect(part("analysis").textContent).toMatch(/posts differ: open the isolator/);
  });
  it("nothing is lost when the pane closes", async () => {
    const workbook = await filled();
    await waitFor(() => {
      expect(workbook.settings.get("brimbook.fill")).toMatchObject({ stage: "plan" });
    });
    document.body.innerHTML = "";
    const again = new Writable(workbook.sheets, US_SHOP);
    again.settings.set("brimbook.fill", workbook.settings.get("brimbook.fill"));
    showPane({ workbook: again });
    fireEvent.click(await screen.findByRole("tab", { name: "Fill a cylinder" }));
    await screen.findByRole("heading", { name: "Plan" });
    await waitFor(() => {
      expect(stops()).toEqual(stepsByFunction(500, "air", 3000, 32, "psi"));
    });
  });
});

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
    expect(screen.getByText(/^Line 2: .*write name, size and pressure/)).toBeTruthy();
    expect(document.querySelector("[data-part=row-answer]")).toBeNull();
  });
});
