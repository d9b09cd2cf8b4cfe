// @vitest-environment jsdom
import { FluentProvider } from "@fluentui/react-components";
import { cleanup, render, screen, waitFor } from "@testing-library/react";
import { afterEach, describe, expect, it } from "vitest";
import { FormulaNote } from "../../src/pane/FormulaNote";
import { THEMES } from "../../src/pane/theme";
import type { Area, CellValue } from "../../src/sheet/sheet";
import { WorkbookProblem, type CellInHand, type FormulaHost } from "../../src/workbook/workbook";

afterEach(cleanup);

/** A host with one cell in hand and a column of mixes in A. */
class FakeHost implements FormulaHost {
  look: () => void = () => undefined;
  listening = true;

  constructor(
    public cell: CellInHand,
    private readonly mixes: readonly CellValue[] = [],
  ) {}

  readonly watchCellInHand = (onLook: () => void) => {
    this.look = onLook;
    return () => {
      this.listening = false;
    };
  };
  async readCellInHand() {
    return this.cell;
  }
  async readArea(sheet: string, { firstRow, lastRow }: Area) {
    if (sheet !== "Log") throw new WorkbookProblem(`There is no sheet "${sheet}".`);
    return this.mixes.slice(firstRow, lastRow + 1).map((mix) => [mix]);
  }
}

function show(host: FormulaHost) {
  return render(
    <FluentProvider theme={THEMES.light}>
      <FormulaNote host={host} />
    </FluentProvider>,
  );
}

const at = (row: number) => ({ sheet: "Log", row, column: 2 });
const note = () => screen.findByRole("region", { name: "Selected cell" });

describe("the note on the selected cell", () => {
  it("says how an answer of ours came about", async () => {
    show(new FakeHost({ address: at(1), value: 111.375, formula: 'BRIM.MOD("EAN32","ft")', down: 0 }));
    const text = (await note()).textContent;
    expect(text).toContain('C2=BRIM.MOD("EAN32","ft")');
    expect(text).toContain("MOD: 111.38 ft");
  });

  it("says of a column's answer what its own row came from", async () => {
    const host = new FakeHost({ address: at(2), value: 95.3, formula: 'BRIM.MOD(A1:A3,"ft")', down: 2 }, [
      "EAN32",
      "air",
      "EAN36",
    ]);
    show(host);
    expect((await note()).textContent).toContain("MOD: 95.33 ft");
  });

  it("has the sentence behind an error", async () => {
    show(new FakeHost({ address: at(1), value: { error: "#VALUE!" }, formula: 'BRIM.MOD(3,"ft")', down: 0 }));
    expect((await note()).textContent).toContain("write 0.32, 32 or EAN32");
  });

  it("is absent where there is nothing of ours to explain, and where a sheet is gone", async () => {
    const host = new FakeHost({ address: at(1), value: 2, formula: "SUM(1,1)", down: 0 });
    show(host);
    host.cell = { address: at(1), value: 111.375, formula: 'BRIM.MOD("EAN32","ft")', down: 0 };
    host.look();
    await note();
    host.cell = { ...host.cell, formula: 'BRIM.MOD(Gone!A1,"ft")' };
    host.look();
    await waitFor(() => {
      expect(screen.queryByRole("region", { name: "Selected cell" })).toBeNull();
    });
  });

  it("stops listening with the pane", async () => {
    const host = new FakeHost({ address: at(1), value: 1, down: 0 });
    const { unmount } = show(host);
    unmount();
    expect(host.listening).toBe(false);
  });
});
