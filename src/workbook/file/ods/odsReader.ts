import type { Area, CellValue } from "../../../sheet/sheet";
import type { SheetContent } from "../content";
import { LIMITS } from "../limits";
import { RowGatherer, type Look } from "../rows";
import { isoSerial } from "../serials";
import { attribute, unescapeXml, type XmlReader } from "../xml";

interface RepeatedCell {
  readonly column: number;
  readonly times: number;
  readonly value: CellValue;
  readonly look: Look | undefined;
}

/** Whatever stands in here is no cell's content. */
const ASIDE = new Set([
  "annotation",
  "frame",
  "custom-shape",
  "shapes",
  "tracked-changes",
  "forms",
  "control",
]);

/** What a value's type shows it as; the file's own formats are not read. */
const LOOKS: Readonly<Record<string, Look>> = {
  date: { format: "yyyy-mm-dd", style: undefined },
  percentage: { format: "0.0%", style: undefined },
  time: { format: "h:mm:ss", style: undefined },
};

/** Reads the content part of an OpenDocument spreadsheet as it streams by. */
export class OdsReader implements XmlReader {
  readonly sheets: SheetContent[] = [];
  private readonly hiddenStyles = new Set<string>();
  private readonly strikingStyles = new Set<string>();
  private tableStyle = "";
  private aside = 0;

  private name = "";
  private hidden = false;
  private rows: RowGatherer;
  private merges: Area[] = [];

  private row = 0;
  private rowTimes = 1;
  private rowHidden = false;
  private column = 0;
  private cells: RepeatedCell[] = [];

  private cellTag = "";
  private paragraphs = 0;
  private inParagraph = 0;
  private shown = "";

  constructor(private readonly budget: { cells: number }) {
    this.rows = new RowGatherer(budget);
  }

  open(name: string, tag: string): void {
    if (ASIDE.has(name)) this.aside++;
    if (this.aside > 0) return;
    if (name === "table-cell" || name === "covered-table-cell") this.beginCell(tag);
    else if (name === "p") {
      if (this.paragraphs++ > 0) this.shown += "\n";
      this.inParagraph++;
    } else if (name === "s") this.shown += " ".repeat(Math.min(Number(attribute(tag, "c") ?? 1) || 1, 1000));
    else if (name === "tab") this.shown += "\t";
    else if (name === "line-break") this.shown += "\n";
    else if (name === "table-row") this.beginRow(tag);
    else if (name === "table") this.beginTable(tag);
    else if (name === "style") this.tableStyle = attribute(tag, "name") ?? "";
    else if (name === "table-properties" && attribute(tag, "display") === "false") {
      this.hiddenStyles.add(this.tableStyle);
    } else if (name === "text-properties" && strikes(tag)) this.strikingStyles.add(this.tableStyle);
  }

  text(raw: string): void {
    if (this.inParagraph > 0 && this.aside === 0) this.shown += unescapeXml(raw);
  }

  close(name: string): void {
    if (this.aside > 0) {
      if (ASIDE.has(name)) this.aside--;
    } else if (name === "p") this.inParagraph--;
    else if (name === "table-cell" || name === "covered-table-cell") this.endCell();
    else if (name === "table-row") this.endRow();
    else if (name === "table") this.endTable();
  }

  private beginTable(tag: string): void {
    this.name = attribute(tag, "name") ?? "";
    this.hidden = this.hiddenStyles.has(attribute(tag, "style-name") ?? "");
    this.rows = new RowGatherer(this.budget);
    this.merges = [];
    this.row = 0;
  }

  private endTable(): void {
    this.sheets.push({
      name: this.name,
      hidden: this.hidden,
      dateSystem: 1900,
      rows: this.rows.finish(),
      merges: this.merges,
      columns: [],
      frozenRows: 0,
      frozenColumns: 0,
    });
  }

  private beginRow(tag: string): void {
    this.rowTimes = count(tag, "number-rows-repeated", LIMITS.rows);
    this.rowHidden = (attribute(tag, "visibility") ?? "visible") !== "visible";
    this.column = 0;
    this.cells = [];
  }

  /** A row of cells stands for as many as it says; blank ones only move on. */
  private endRow(): void {
    if (this.cells.length > 0) {
      for (let n = 0; n < this.rowTimes; n++) {
        this.rows.beginRow(this.row + n, this.rowHidden, undefined);
        for (const { column, times, value, look } of this.cells) {
          for (let m = 0; m < times; m++) this.rows.addCell(column + m, value, undefined, look);
        }
        this.rows.endRow();
      }
    }
    this.row += this.rowTimes;
  }

  private beginCell(tag: string): void {
    this.cellTag = tag;
    this.shown = "";
    this.paragraphs = this.inParagraph = 0;
  }

  private endCell(): void {
    const tag = this.cellTag;
    const times = count(tag, "number-columns-repeated", LIMITS.columns);
    const type = attribute(tag, "value-type") ?? "";
    const value = this.value(tag, type);
    if (value !== null) {
      this.cells.push({
        column: this.column,
        times,
        value,
        look: this.look(tag, type, value),
      });
    }
    const columns = count(tag, "number-columns-spanned", LIMITS.columns);
    const rows = count(tag, "number-rows-spanned", LIMITS.rows);
    if (columns > 1 || rows > 1) {
      this.merges.push({
        firstRow: this.row,
        firstColumn: this.column,
        lastRow: this.row + rows - 1,
        lastColumn: this.column + columns - 1,
      });
    }
    this.column += times;
  }

  private look(tag: string, type: string, value: CellValue): Look | undefined {
    const look = typeof value === "number" ? (LOOKS[type] ?? lettersBeside(this.shown)) : undefined;
    return this.strikingStyles.has(attribute(tag, "style-name") ?? "")
      ? { format: look?.format, style: { strike: true } }
      : look;
  }

  private value(tag: string, type: string): CellValue {
    const { shown } = this;
    if (tag.includes('calcext:value-type="error"')) return { error: shown || "#VALUE!" };
    switch (type) {
      case "float":
      case "currency":
      case "percentage":
        return finite(Number(attribute(tag, "value")), shown);
      case "date":
        return isoSerial(attribute(tag, "date-value") ?? "") ?? textOf(shown);
      case "time":
        return finite(daysOf(attribute(tag, "time-value") ?? ""), shown);
      case "boolean":
        return attribute(tag, "boolean-value") === "true";
      default:
        return textOf(attribute(tag, "string-value") ?? shown);
    }
  }
}

function strikes(tag: string): boolean {
  const style =
    attribute(tag, "text-line-through-style") ?? attribute(tag, "text-line-through-type") ?? "none";
  return style !== "none";
}

/** The letters that a cell shows beside its number, as a number format: `200 bar` is `General" bar"`. */
function lettersBeside(shown: string): Look | undefined {
  const [, before = "", digits = "", behind = ""] =
    /^([^\d"]*?)([-+]?\d[\d.,\s']*?)([^\d"]*)$/.exec(shown) ?? [];
  if (digits === "" || !/\p{L}/u.test(before + behind)) return undefined;
  const padded = /^0\d+$/.test(digits) ? "0".repeat(digits.length) : "General";
  return { format: `${before && `"${before}"`}${padded}${behind && `"${behind}"`}`, style: undefined };
}

function textOf(text: string): CellValue {
  return text === "" ? null : text;
}

function finite(number: number, shown: string): CellValue {
  return Number.isFinite(number) ? number : textOf(shown);
}

function count(tag: string, name: string, most: number): number {
  const value = Number(attribute(tag, name) ?? 1);
  return Number.isInteger(value) && value >= 1 ? Math.min(value, most) : 1;
}

/** A duration such as `PT08H30M00S`, in days. */
function daysOf(duration: string): number {
  const match = /^PT(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:[.,]\d+)?)S)?$/.exec(duration);
  if (!match) return NaN;
  const [hours, minutes, seconds] = [match[1], match[2], match[3]?.replace(",", ".")].map((part) =>
    Number(part ?? 0),
  );
  return (hours! * 3600 + minutes! * 60 + seconds!) / 86_400;
}
