// @vitest-environment jsdom
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { screen } from "@testing-library/react";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { run } from "../../src/cli/run";
import { sentenceOf } from "../../src/cli/problem";
import type { Receipt } from "../../src/counter/receive/receipt";
import { evaluate } from "../../src/functions/evaluate";
import { writeXlsx } from "../../src/workbook/file/writeXlsx";
import { openFill, part, receive, shopLog, type } from "../pane/fill/counter";
import { press } from "../pane/render";

/* What the command line says of a cylinder and of a fill is what the counter's screens say. */

let folder: string;

beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "brimbook-counter-"));
  const sheets = shopLog().sheets.map((each) => ({ ...each, columns: [], frozenRows: 0, frozenColumns: 0 }));
  await writeFile(join(folder, "shop.xlsx"), await writeXlsx({ sheets, settings: new Map(), leftOut: [] }));
});

afterAll(() => rm(folder, { recursive: true, force: true }));

async function command(...words: string[]): Promise<{ code: number; lines: string[] }> {
  const lines: string[] = [];
  async function* noInput() {
    // nothing is typed
  }
  const terminal = { print: (line: string) => void lines.push(line), input: noInput(), folder };
  try {
    return { code: await run(words, terminal), lines };
  } catch (thrown) {
    return { code: 2, lines: [sentenceOf(thrown)] };
  }
}

/** Without the spaces between elements, which no text has. */
const packed = (text: string) => text.replace(/\s/g, "");

describe("receive", () => {
  it.each([
    ["GP1001", 0, "Fill"],
    ["c-015", 1, "Do not fill"],
    ["ZZ9", 3, "Not known"],
  ])("%s: exit code %i and every line of the screen", async (serial, code, verdict) => {
    await openFill();
    await receive(serial);
    const shown = screen.getByRole("region", { name: "What the records say" });
    const said = await command("receive", serial, "shop.xlsx", "--rules", "US");
    expect(said.code).toBe(code);
    expect(said.lines[0]).toBe(verdict);
    expect(part("verdict").textContent).toBe(verdict);
    const onScreen = packed(shown.textContent);
    for (const line of said.lines.slice(0, said.lines.indexOf("")))
      expect(onScreen).toContain(packed(line.replace(/ \(([^()]*(?:\([^()]*\)[^()]*)*)\)$/, " $1").replace(/^(\w[\w ]*): /, (whole, what: string) => (FACTS.includes(what) ? what : whole)))); // prettier-ignore
  });

  it("as JSON is the whole receipt", async () => {
    const { lines } = await command("receive", "GP1003", "shop.xlsx", "--rules", "US", "--json");
    const receipt = JSON.parse(lines.join("\n")) as Receipt;
    // cleaned for 40 % at most: no pure oxygen (common practice, no source)
    expect(receipt).toMatchObject({
      serial: "GP1003",
      verdict: "fill",
      maxOxygen: 0.4,
      pureOxygen: { may: "no" },
    });
  });

  it.each([
    [["receive"], /Name the cylinder by its serial, and then the file/],
    [["receive", "GP1001"], /then the file that holds the log/],
    [["receive", "GP1001", "none.xlsx"], /does not exist/],
    [["receive", "GP1001", "shop.xlsx"], /No country's rules/],
  ])("%j is refused with a sentence", async (words, sentence) => {
    const { code, lines } = await command(...words);
    expect(code).toBe(2);
    expect(lines[0]).toMatch(sentence);
  });
});

/** What the screen shows as a term with its fact, and a terminal with a colon. */
const FACTS = ["Oxygen rating", "Air", "Partial pressure", "Pressure limit"];

describe("plan", () => {
  const ORDER = { startPressure: "500", startMix: "air", endPressure: "3000", endMix: "EAN32" };

  it.each([
    ["GP1001", 0],
    ["GP1003", 1],
    [undefined, 3],
  ] as const)("for %s: the ways, stops and mix of the screen, exit code %i", async (serial, code) => {
    await openFill();
    if (serial !== undefined) await receive(serial);
    press("Plan");
    await screen.findByRole("heading", { name: "Plan" });
    type(/^Pressure, psi/, ORDER.startPressure);
    type("Mix, analysed", ORDER.startMix);
    type(/^Pressure, settled/, ORDER.endPressure);
    type("Mix", ORDER.endMix);
    const order = JSON.stringify({ ...ORDER, ...(serial !== undefined && { asked: serial }) });
    const log = serial === undefined ? [] : ["shop.xlsx"];
    const said = await command("plan", order, ...log, "--rules", "US");
    expect(said.code).toBe(code);
    const plan = packed(part("plan").textContent);
    const ways = packed(part("ways").textContent);
    expect(plan).toContain(packed(said.lines[0]!));
    const stops = said.lines.flatMap((line) => /stop at (\d+) psi/.exec(line)?.[1] ?? []);
    expect(stops).toEqual([...document.querySelectorAll("[data-part=stop]")].map((each) => each.textContent));
    // and those of the worksheet function
    const [, ...steps] = evaluate("FILLSTEPS", [500, "air", 3000, 32, "psi"]);
    expect(stops).toEqual(steps.map((row) => Number(row[3]).toFixed(0)));
    const first = said.lines.indexOf("Ways to do it:") + 1;
    for (const line of said.lines.slice(first, said.lines.indexOf("", first)))
      expect(ways).toContain(packed(line.replace(/\. |\.$/, "")));
    expect(plan).toContain(packed(said.lines.find((line) => line.startsWith("Mix: "))!.slice(4)));
  });

  it("as JSON says of each way whether it may be gone, with its steps", async () => {
    const { lines } = await command(
      "plan",
      JSON.stringify(ORDER),
      "--rules",
      "GB",
      "--units",
      "us",
      "--json",
    );
    expect(JSON.parse(lines.join("\n"))).toMatchObject({
      units: "us",
      // 32 % at 1.4 bar: (1.4 / 0.32 - 1) × 33 ft = 111.4, rounded down
      modAt: { depth: 111, unit: "ft" },
      ways: [{ may: "not known", steps: [{ step: "oxygen" }, { step: "top" }] }],
    });
  });

  it.each([
    [["plan"], /Say what is wanted/],
    [["plan", "500"], /JSON object of texts and numbers/],
    [["plan", "{500"], /is not JSON/],
    [["plan", '{"start":500}'], /no field "start": write one of asked, size, startPressure/],
    [["plan", '{"startPressure":{}}', "--rules", "US"], /texts and numbers/],
    [["plan", "{}", "--rules", "US"], /Nothing to plan/],
    [["plan", "{}"], /No country's rules are chosen/],
    [["plan", '{"endMix":"140"}', "--rules", "US"], /^endMix: /],
    [["plan", '{"asked":"GP1001"}', "--rules", "US"], /file of its log/],
  ])("%j is refused with a sentence", async (words, sentence) => {
    const { code, lines } = await command(...words);
    expect(code).toBe(2);
    expect(lines[0]).toMatch(sentence);
  });
});
