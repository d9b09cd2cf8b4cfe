import { describe, expect, it } from "vitest";
import { identityOf, type Acceptance } from "../../src/audit/judge/acceptance";
import type { Finding } from "../../src/audit/judge/finding";
import { findingsSheet, MOST_FINDINGS_WRITTEN } from "../../src/reports/findingsSheet";
import { ownSheetOf } from "../../src/sheet/ownSheet";
import { draftValue, styledCell, type SheetDraft } from "../../src/sheet/draft/draft";

function finding(row: number): Finding {
  return {
    rule: "V01",
    severity: "stop",
    basis: "law",
    source: "49 CFR 180.205(c)",
    cell: { sheet: "October", row, column: 1 },
    serial: `GP${1000 + row}`,
    fillDate: "2026-10-05",
    message: "Filled past hydro.",
    todo: "Call the owner.",
    evidence: "a1",
  };
}

function written(count: number, accepted = false, gone: readonly Acceptance[] = []): SheetDraft {
  return findingsSheet({
    findings: Array.from({ length: count }, (_, row) => ({
      finding: finding(row),
      filledBy: "T.",
      acceptance: accepted
        ? { ...identityOf(finding(row)), reason: "Certificate seen", by: "R.", on: "2026-10-31" }
        : undefined,
    })),
    found: count,
    noLongerFound: gone,
    notChecked: [{ rule: "V06", count: 14, why: "visual is blank", cells: [], runs: [] }],
    overrides: [],
    asOf: "2026-10-31",
    rules: "United States",
    rows: "612 rows = 598 fills + 14 blank + 0 unreadable",
    paper: "Letter",
    program: "Brimbook",
  });
}

const texts = (draft: SheetDraft) => draft.rows.map(({ cells }) => cells.map(draftValue).join(" | "));

describe("the findings sheet", () => {
  it("is known as ours", () => {
    const rows = written(2).rows.map(({ cells }) => ({ values: cells.map(draftValue) }));
    expect(ownSheetOf({ rows })).toBe("findings");
  });

  it("has a row for each finding, with the way to its cell", () => {
    const draft = written(2);
    const [first] = draft.rows.filter(({ cells }) => cells.some((cell) => draftValue(cell) === "GP1000"));
    const link = first!.cells.map(styledCell).find((cell) => cell.link);
    expect(link).toMatchObject({
      value: "October!B1",
      link: { cell: { sheet: "October", row: 0, column: 1 } },
    });
    expect(first!.cells.map(draftValue)).toEqual([
      "Stop",
      "Filled past hydro.",
      "Call the owner.",
      "GP1000",
      46_300,
      "T.",
      "October!B1",
      expect.stringMatching(/^V01 /),
      "law: 49 CFR 180.205(c)",
      "",
    ]);
    expect(draft.tables.map(({ name }) => name)).toEqual(["Findings", "Not_checked"]);
  });

  it("says under whose rules, of how many rows, and what was not checked", () => {
    const said = texts(written(2)).join("\n");
    expect(said).toContain("Rules of | United States");
    expect(said).toContain("612 rows = 598 fills + 14 blank + 0 unreadable");
    expect(said).toContain("Not checked | 14 judgements");
    expect(said).toMatch(/^14 \| visual is blank \| V06 /m);
  });

  it("counts accepted findings apart, and gives the reason", () => {
    const said = texts(written(3, true)).join("\n");
    expect(said).toContain("Open | 0 findings.");
    expect(said).toContain("Accepted | 3 findings, with a reason of the shop");
    expect(said).toContain("Certificate seen (R., 2026-10-31)");
  });

  it("lists what was accepted earlier and is no longer found, with its reason", () => {
    const gone = { ...identityOf(finding(9)), reason: "Certificate seen", by: "R.", on: "2026-10-31" };
    const draft = written(1, false, [gone]);
    expect(texts(draft)).toContain(
      "Accepted, no longer found: mended, in another row, or judged otherwise now",
    );
    expect(texts(draft)).toContain(
      "V01 Filled past its hydro date | GP1009 | 46300 | October!B10 | Certificate seen | R. | 46326",
    );
    expect(texts(written(1)).join("\n")).not.toContain("no longer found");
  });

  it("writes the gravest of very many, and says how many there are", () => {
    const draft = written(MOST_FINDINGS_WRITTEN + 3);
    expect(texts(draft).filter((row) => row.startsWith("Stop |"))).toHaveLength(MOST_FINDINGS_WRITTEN);
    expect(texts(draft).join("\n")).toContain("Listed: 5,000 findings of 5,003 findings.");
  });

  it("says so where nothing was found", () => {
    expect(texts(written(0)).join("\n")).toContain("Nothing was found in what was checked.");
  });
});
