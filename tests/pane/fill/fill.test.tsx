// @vitest-environment jsdom
import { fireEvent, screen, waitFor, within } from "@testing-library/react";
import { describe, expect, it } from "vitest";
import { evaluate } from "../../../src/functions/evaluate";
import { styledCell } from "../../../src/sheet/draft/draft";
import { sheet, US_SHOP } from "../fakeWorkbook";
import { press, showPane } from "../render";
import { openFill, part, receive, shopLog, type, Writable } from "./counter";

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
    const card = screen.getByRole("region", { name: "What the records say" });
    expect(card.textContent).toContain("Airnot as it is");
    expect(screen.queryByRole("button", { name: /Next/ })).toBeNull();
    expect(screen.getByRole("button", { name: "Print a refusal slip" })).toBeTruthy();
  });
  it("says to analyse first what was never analysed, and plans nothing upon it as if it were known", async () => {
    const workbook = shopLog();
    workbook.sheets[0] = sheet("Fills", [
      ["Date", "Serial", "Start psi", "Start mix", "End psi", "Ordered mix", "Analysed O2", "Method"],
      ["2026-10-02", "GP1001", 500, "air", 3000, "EAN32", null, "partial pressure"],
      ["2026-10-03", "GP1003", 500, "air", 3000, "air", 20.9, "air"],
    ]);
    await openFill(workbook);
    await receive("GP1001");
    expect(part("verdict").textContent).toBe("Analyse it first");
    const card = screen.getByRole("region", { name: "What the records say" }).textContent;
    expect(card).toContain("EAN32 was handed over and no analysis is written down.");
    expect(card).toContain("Airyes, once it is analysed");
    await planOf("500", "EAN32", "3000", "EAN32");
    expect(part("may").textContent).toMatch(/^Not known\. .*no analysis is written down/);
    type(/^Pressure, psi/, "empty");
    expect(document.querySelector("[data-part=may]")).toBeNull();
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
  it("takes prices that were not typed from the workbook's price list, shows where they stand, and lets them be typed over", async () => {
    const workbook = shopLog();
    workbook.sheets.push(
      sheet("Prices", [
        ["What", "We pay", "Per"],
        ["Oxygen", 0.5, "cu ft"],
        ["Air", 0.1, "cu ft"],
      ]),
    );
    await openFill(workbook);
    await receive("GP1001");
    await planOf("500", "air", "3000", "EAN32");
    const costBy = (oxygen: number) => {
      const prices = [["oxygen", oxygen], ["top", 0.1]]; // prettier-ignore
      const [[cost]] = evaluate("FILLCOST", ["AL80", 500, "air", 3000, 32, prices, "psi"]) as [[number]];
      return cost.toFixed(2);
    };
    expect(part("plan").textContent).toContain(`Cost${costBy(0.5)}`);
    expect(part("plan").textContent).toContain("By the prices of the sheet “Prices”.");
    press(/The station/);
    expect(screen.getByText("Blank: 0.5 by Prices, row 2")).toBeTruthy();
    expect(screen.getByText("Blank: 0.1 by Prices, row 3")).toBeTruthy();
    type(/^Oxygen price/, "0.75");
    expect(part("plan").textContent).toContain(`Cost${costBy(0.75)}`);
    expect(part("plan").textContent).toContain("oxygen as typed under the station.");
  });
  it("leaves the cursor in the field that a button has filled in", async () => {
    await openFill();
    await receive("GP1001");
    press("Plan");
    await screen.findByRole("heading", { name: "Plan" });
    press(/^Take EAN31\.6 from the log/);
    expect(document.activeElement).toBe(screen.getByRole("textbox", { name: "Mix, analysed" }));
    press(/^To its limit/);
    expect(document.activeElement).toBe(screen.getByRole("textbox", { name: /^Pressure, settled/ }));
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
  it("inserts the card as a sheet, with the stops of FILLSTEPS, and the label for the stock, only when asked", async () => {
    const workbook = await filled();
    press("Analyse");
    type(/^Oxygen, %/, "31.8");
    type("Analysed by", "R.");
    press("Hand over");
    expect(workbook.added).toEqual([]);
    press("Insert the card as a sheet");
    await screen.findByText(/^It is in the sheet Fill card GP1001/);
    const values = workbook.added[0]!.rows.flatMap(({ cells }) =>
      cells.map((cell) => styledCell(cell).value),
    );
    for (const stop of stepsByFunction(500, "air", 3000, 32, "psi")) expect(values).toContain(Number(stop));
    type("Begin at label", "99");
    expect(screen.getByText("Write 1 to 10; until then it begins at 1.")).toBeTruthy();
    type("Begin at label", "2");
    press("Insert the label as a sheet");
    await screen.findByText(/^It is in the sheet Labels/);
    expect(workbook.added[1]!.rows[0]!.cells.map((cell) => styledCell(cell).value)).toEqual([
      null,
      null,
      "EAN31.8",
    ]);
  });
  it("says what is still open before the next cylinder, and the certification in the log's row too", async () => {
    const workbook = await filled();
    workbook.sheets[0] = sheet("Fills", [
      ["Date", "Serial", "Start psi", "End psi", "Mix", "Certification"],
      ["2026-10-02", "GP1001", 500, 3000, "EAN32", "N-1"],
    ]);
    press("Receive");
    press("Look it up");
    await waitFor(() => {
      expect(screen.getByRole<HTMLButtonElement>("button", { name: "Look it up" })).toBeTruthy();
      expect(screen.queryByText("Looking through the workbook")).toBeNull();
    });
    press("Hand over");
    expect(part("still-open").textContent).toBe(
      "Still open: not analysed; certification not seen; not signed.",
    );
    within(part("log-row")).getByText("The row says that no certification was seen.");
    press("Add the row");
    await within(part("log-row")).findByText(/^Written into row/);
    expect(workbook.rows[0]!.cells.find(({ column }) => column === 5)).toEqual({ column: 5, value: "no" });
    type("Certification seen", "N-4711");
    fireEvent.click(screen.getByRole("checkbox", { name: /^Card signed/ }));
    expect(part("still-open").textContent).toBe("Still open: not analysed.");
  });
  it("adds the row to the person's own columns, once, and only when asked", async () => {
    const workbook = await filled();
    press("Analyse");
    type(/^Oxygen, %/, "31.8");
    type("Analysed by", "R.");
    press("Hand over");
    expect(workbook.rows).toEqual([]);
    await waitFor(() => {
      expect(part("left-blank").textContent).toBe("Left blank: Filled by (nobody named).");
    });
    type("Filled by", "T.");
    expect(document.querySelector("[data-part=left-blank]")).toBeNull();
    press("Add the row");
    await within(part("log-row")).findByText("Written into row 7 of Fills.");
    const [{ sheet: name, cells }] = workbook.rows as [(typeof workbook.rows)[0]];
    expect(name).toBe("Fills");
    expect(cells.map(({ column, value }) => [column, value]).slice(1)).toEqual([
      [1, "GP1001"], [2, 500], [3, "air"], [4, 3000], [5, 32], [6, 31.8], [7, "partial pressure"], [8, "T."],
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
