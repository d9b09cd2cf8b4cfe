import type { Locator, Page } from "playwright-core";
import { evaluate } from "../../src/functions/evaluate";

/** Of the sample: in date and oxygen clean; rated to 40 %; past hydro. */
export const CLEAN = "0019700";
export const TO_FORTY = "K21197";
export const PAST_HYDRO = "K42277";

export async function openFill(page: Page): Promise<Locator> {
  const pane = page.getByRole("main");
  await pane.getByRole("combobox").first().selectOption({ label: "United States" });
  await pane.getByRole("radio", { name: /^US/ }).check();
  await pane.getByRole("button", { name: "Start" }).click();
  await pane.getByRole("tab", { name: "Fill a cylinder" }).click();
  await pane.getByRole("heading", { name: "Receive" }).waitFor();
  return pane;
}

export async function receive(pane: Locator, serial: string): Promise<string> {
  await pane.getByRole("textbox", { name: "Serial or shop number" }).fill(serial);
  await pane.getByRole("textbox", { name: "Serial or shop number" }).press("Enter");
  await pane.locator("[data-part=verdict]").waitFor();
  return pane.locator("[data-part=verdict]").innerText();
}

export const stops = (pane: Locator) => pane.locator("[data-part=stop]").allInnerTexts();

export function stepsByFunction(...args: readonly (string | number)[]): string[] {
  const [, ...rows] = evaluate("FILLSTEPS", [...args]);
  return rows.map((row) => Number(row[3]).toFixed(0));
}

type Role = "button" | "textbox" | "combobox";

/** A person without a mouse. */
export function keyboardIn(page: Page, pane: Locator) {
  const reach = async (name: string | RegExp, role: Role = "button"): Promise<void> => {
    const wanted = pane.getByRole(role, { name }).first();
    for (let tabs = 0; tabs < 80; tabs++) {
      if (await wanted.evaluate((element) => element === document.activeElement)) return;
      await page.keyboard.press("Tab");
    }
    throw new Error(`${String(name)} is not reached by Tab.`);
  };
  const type = async (name: string | RegExp, text: string): Promise<void> => {
    await reach(name, "textbox");
    await page.keyboard.press("Control+A");
    await page.keyboard.type(text);
  };
  return { reach, type };
}
