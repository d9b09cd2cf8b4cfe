import { fireEvent, screen } from "@testing-library/react";
import type { CellWrite } from "../../../src/sheet/sheet";
import { FakeWorkbook, sheet, US_SHOP } from "../fakeWorkbook";
import { showPane } from "../render";

/** A workbook that notes the rows written into it. */
export class Writable extends FakeWorkbook {
  readonly rows: { sheet: string; cells: readonly CellWrite[] }[] = [];
  appendRow(name: string, cells: readonly CellWrite[]) {
    this.rows.push({ sheet: name, cells });
    return Promise.resolve({ sheet: name, row: 6, column: 0 });
  }
}

export function shopLog() {
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

export async function openFill(workbook = shopLog()) {
  showPane({ workbook });
  fireEvent.click(await screen.findByRole("tab", { name: "Fill a cylinder" }));
  await screen.findByRole("heading", { name: "Receive" });
  return workbook;
}

export function type(label: string | RegExp, text: string): void {
  fireEvent.change(screen.getByRole("textbox", { name: label }), { target: { value: text } });
}

export function part(name: string): HTMLElement {
  const found = document.querySelector<HTMLElement>(`[data-part=${name}]`);
  if (!found) throw new Error(`no ${name}`);
  return found;
}

export async function receive(serial: string) {
  type("Serial or shop number", serial);
  fireEvent.keyDown(screen.getByRole("textbox", { name: "Serial or shop number" }), { key: "Enter" });
  await screen.findByRole("region", { name: "What the records say" });
}
