import { NEVER_CALCULATED, type Area, type CellValue } from "../../../sheet/sheet";
import type { CellOrigin, ColumnContent, LinkedCell, RowContent, SheetContent } from "../content";
import { FileFault } from "../fault";
import { LIMITS } from "../limits";
import { RowGatherer, type Look } from "../rows";
import { attribute, flag, unescapeXml, type XmlReader } from "../xml";
import { cellPlace, readArea } from "./places";
import { movedFormula, typedFormula } from "./formulas";
import { TextGatherer, unescapeControls } from "./sharedStrings";
import { isoSerial } from "../serials";
import { MarkGatherer, readLink } from "./overlays";

/** What a sheet's cells refer to. */
export interface BookTables {
  readonly dateSystem: 1900 | 1904;
  readonly texts: readonly string[];
  readonly looks: readonly Look[];
}

/** What stands in a sheet beside its cells, and a saved copy will not hold. */
const LEFT_OUT: ReadonlyMap<string, string> = new Map([
  ["autoFilter", "filters"],
  ["dataValidations", "drop-down lists and input rules"],
  ["drawing", "charts and pictures"],
  ["legacyDrawing", "comments"],
  ["sheetProtection", "sheet protection"],
  ["tableParts", "tables"],
]);

/** How much longer a formula takes that is copied from another cell. */
const COPYING = 8;

/** Reads a sheet's part (ECMA-376 part 1, 18.3) as it streams by. */
export class SheetReader implements XmlReader {
  readonly leftOut = new Set<string>();
  private readonly rows: RowGatherer;
  private readonly columns: (ColumnContent | undefined)[] = [];
  private readonly merges: Area[] = [];
  private readonly links: LinkedCell[] = [];
  private readonly overlays = new MarkGatherer();
  private readonly sharedFormulas = new Map<string, { text: string; row: number; column: number }>();
  /** Cells that array formulas above or left fill with their answers. */
  private spills: Area[] = [];
  /** Formulas whose answer is missing or 0. */
  private readonly unanswered: { row: number; column: number; isZero: boolean }[] = [];
  private frozenRows = 0;
  private frozenColumns = 0;
  private inCells = false;
  private inExtension = false;

  private row = -1;
  private column = -1;
  private type = "";
  private look: Look | undefined;
  private formula: string | undefined;
  private formulaTag: string | undefined;
  private raw: string | undefined;
  private gathering: "value" | "formula" | undefined;
  private isInline = false;
  private readonly inline = new TextGatherer();

  constructor(
    private readonly tables: BookTables,
    private readonly budget: { cells: number; formulaCharacters: number },
  ) {
    this.rows = new RowGatherer(budget);
  }

  content(name: string, hidden: boolean): SheetContent {
    const rows: readonly RowContent[] = this.rows.finish();
    this.sayWhatWasNeverCalculated(rows);
    const used = rows.reduce(
      (widest, row) => Math.max(widest, row.values.length, row.styles?.length ?? 0),
      0,
    );
    return {
      name,
      hidden,
      dateSystem: this.tables.dateSystem,
      rows,
      merges: this.merges,
      columns: this.columns.slice(0, used),
      frozenRows: this.frozenRows,
      frozenColumns: this.frozenColumns,
      ...(this.links.length > 0 && { links: this.links }),
      ...(this.overlays.marks.length > 0 && { marks: this.overlays.marks }),
    };
  }

  /** Programs that calculate nothing store no answer, or 0 for every one: beside a formula without answer 0 is none. */
  private sayWhatWasNeverCalculated(rows: readonly RowContent[]): void {
    if (this.unanswered.every(({ isZero }) => isZero)) return;
    for (const { row, column } of this.unanswered) {
      const values = rows[row]?.values as CellValue[] | undefined;
      if (values && column < values.length) values[column] = { error: NEVER_CALCULATED };
    }
  }

  open(name: string, tag: string): void {
    if (!this.inCells) this.beside(name, tag);
    else if (name === "c") this.beginCell(tag);
    else if (name === "row") this.beginRow(tag);
    else if (name === "v") {
      this.raw ??= "";
      this.gathering = "value";
    } else if (name === "f") {
      this.formulaTag = tag;
      this.gathering = "formula";
    } else if (name === "is") {
      this.isInline = true;
      this.inline.begin();
    } else this.inline.open(name);
  }

  text(raw: string): void {
    if (this.gathering === "value") this.raw = (this.raw ?? "") + raw;
    else if (this.gathering === "formula") this.formula = (this.formula ?? "") + raw;
    else if (this.inCells) this.inline.text(raw);
    else this.overlays.text(raw);
  }

  close(name: string): void {
    if (!this.inCells) this.closeBeside(name);
    else if (name === "c") this.endCell();
    else if (name === "v" || name === "f") this.gathering = undefined;
    else if (name === "row") this.rows.endRow();
    else if (name === "sheetData") this.inCells = false;
    else this.inline.close(name);
  }

  private beside(name: string, tag: string): void {
    if (this.inExtension) return;
    if (name === "sheetData") this.inCells = true;
    else if (name === "extLst") this.inExtension = true;
    else if (name === "col") this.defineColumns(tag);
    else if (name === "mergeCell") this.merge(tag);
    else if (name === "pane") this.freeze(tag);
    else if (name === "hyperlink") this.link(tag);
    else {
      this.overlays.open(name, tag);
      const words = LEFT_OUT.get(name);
      if (words) this.leftOut.add(words);
    }
  }

  private closeBeside(name: string): void {
    if (this.inExtension) this.inExtension = name !== "extLst";
    else if (!this.overlays.close(name)) this.leftOut.add("conditional formats");
  }

  private link(tag: string): void {
    const link = readLink(tag);
    if (!link) this.leftOut.add("links");
    else if ((this.budget.cells -= 1) < 0) throw new FileFault("it has more links than Brimbook takes");
    else this.links.push(link);
  }

  private defineColumns(tag: string): void {
    const width = Number(attribute(tag, "width"));
    const column: ColumnContent = {
      ...(width > 0 && { widthCharacters: width }),
      ...(flag(tag, "hidden") && { hidden: true }),
    };
    const first = Math.max(1, Number(attribute(tag, "min")));
    const last = Math.min(Number(attribute(tag, "max")), LIMITS.columns);
    if (first <= this.columns.length) throw new FileFault("its columns are not in their order");
    for (let n = first; n <= last; n++) this.columns[n - 1] = column;
  }

  private merge(tag: string): void {
    const area = readArea(attribute(tag, "ref") ?? "");
    if (!area) throw new FileFault("it merges cells that do not exist");
    this.merges.push(area);
  }

  private freeze(tag: string): void {
    if (!(attribute(tag, "state") ?? "").startsWith("frozen")) return;
    this.frozenColumns = Math.min(Number(attribute(tag, "xSplit") ?? 0) || 0, LIMITS.columns);
    this.frozenRows = Math.min(Number(attribute(tag, "ySplit") ?? 0) || 0, LIMITS.rows);
  }

  private beginRow(tag: string): void {
    const number = attribute(tag, "r");
    this.row = number === undefined ? this.row + 1 : Number(number) - 1;
    this.column = -1;
    const height = flag(tag, "customHeight") ? Number(attribute(tag, "ht")) : 0;
    this.rows.beginRow(this.row, flag(tag, "hidden"), height > 0 ? height : undefined);
    this.spills = this.spills.filter((area) => area.lastRow >= this.row);
  }

  private beginCell(tag: string): void {
    const place = attribute(tag, "r");
    this.column = place === undefined ? this.column + 1 : cellPlace(place).column;
    this.type = attribute(tag, "t") ?? "n";
    const style = attribute(tag, "s");
    this.look = style === undefined ? undefined : this.tables.looks[Number(style)];
    this.raw = this.formula = this.formulaTag = undefined;
    this.isInline = false;
  }

  private endCell(): void {
    const origin = this.origin();
    const value = this.value();
    if (origin !== undefined && origin !== "spill" && (value === null || value === 0))
      this.unanswered.push({ row: this.row, column: this.column, isZero: value === 0 });
    this.rows.addCell(this.column, value === "" && !origin ? null : value, origin, this.look);
    this.raw = undefined;
  }

  private origin(): CellOrigin | undefined {
    if (this.formulaTag !== undefined) return this.formulaOrigin(this.formulaTag);
    if (this.spills.length === 0) return undefined;
    return this.spills.some((area) => this.column >= area.firstColumn && this.column <= area.lastColumn)
      ? "spill"
      : undefined;
  }

  private formulaOrigin(tag: string): CellOrigin | undefined {
    const text = unescapeXml(this.formula ?? "");
    const type = attribute(tag, "t");
    this.spendFormula(text.length);
    if (type === "dataTable") {
      this.leftOut.add("what-if tables");
      return undefined;
    }
    if (type === "shared") return this.sharedFormula(attribute(tag, "si") ?? "", text);
    if (text === "") return undefined;
    const fills = type === "array" ? readArea(attribute(tag, "ref") ?? "") : undefined;
    if (!fills || (fills.firstRow === fills.lastRow && fills.firstColumn === fills.lastColumn)) {
      return { formula: typedFormula(text) };
    }
    if (this.spills.push(fills) > LIMITS.spills)
      throw new FileFault("it has more array formulas than Brimbook takes");
    return { formula: typedFormula(text), fills };
  }

  private spendFormula(characters: number): void {
    this.budget.formulaCharacters -= characters;
    if (this.budget.formulaCharacters < 0) throw new FileFault("its formulas are longer than Brimbook takes");
  }

  private sharedFormula(key: string, text: string): CellOrigin | undefined {
    if (text !== "") {
      this.sharedFormulas.set(key, { text, row: this.row, column: this.column });
      return { formula: typedFormula(text) };
    }
    const first = this.sharedFormulas.get(key);
    if (!first) return undefined;
    this.spendFormula(first.text.length * COPYING);
    return {
      formula: typedFormula(movedFormula(first.text, this.row - first.row, this.column - first.column)),
    };
  }

  private value(): CellValue {
    if (this.isInline) return this.inline.end();
    const raw = this.raw;
    if (raw === undefined || (raw === "" && this.type !== "str")) return null;
    switch (this.type) {
      case "s": {
        const text = this.tables.texts[Number(raw)];
        if (text === undefined) throw new FileFault("it points to a text that is not there");
        return text;
      }
      case "n":
        return numberOrText(raw);
      case "b":
        return raw.trim() === "1" || raw.trim() === "true";
      case "e":
        return { error: unescapeXml(raw).trim() };
      case "d":
        return isoSerial(raw.trim(), this.tables.dateSystem) ?? unescapeXml(raw);
      default:
        return unescapeControls(unescapeXml(raw));
    }
  }
}

/** What should be a number and is none stays as the text it is, to be judged by whoever reads it. */
function numberOrText(raw: string): CellValue {
  const number = Number(raw);
  if (Number.isFinite(number)) return raw.trim() === "" ? null : number;
  return unescapeXml(raw);
}
