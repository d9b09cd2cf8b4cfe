import type { Area } from "../../../sheet/sheet";
import { isMarkRule } from "../../marking";
import type { LinkedCell } from "../content";
import { attribute, unescapeXml } from "../xml";
import { readArea } from "./places";

/** More cells than these are marked by nobody: such a format is somebody's own. */
const MOST_CELLS = 10_000;

/** Tells our marks from other conditional formats of a sheet, as these stream by. */
export class MarkGatherer {
  readonly marks: Area[] = [];
  private areas: readonly Area[] | undefined;
  private formula: string | undefined;
  private rules = 0;
  private ours = 0;

  open(name: string, tag: string): void {
    if (name === "conditionalFormatting") {
      const references = (attribute(tag, "sqref") ?? "").split(/\s+/);
      this.areas = references.flatMap((reference) => readArea(reference) ?? []);
      this.rules = this.ours = 0;
    } else if (name === "cfRule") this.rules += 1;
    else if (name === "formula" && this.areas) this.formula = "";
  }

  text(raw: string): void {
    if (this.formula !== undefined) this.formula += raw;
  }

  /** False where a conditional format ends that is not ours. */
  close(name: string): boolean {
    if (name === "formula" && this.formula !== undefined) {
      if (isMarkRule(unescapeXml(this.formula))) this.ours += 1;
      this.formula = undefined;
    }
    if (name !== "conditionalFormatting" || !this.areas) return true;
    const areas = this.areas;
    this.areas = undefined;
    const cells = areas.reduce((sum, area) => sum + cellsIn(area), 0);
    if (this.ours === 0 || this.ours < this.rules || cells > MOST_CELLS) return false;
    this.marks.push(...areas);
    return true;
  }
}

function cellsIn({ firstRow, lastRow, firstColumn, lastColumn }: Area): number {
  return (lastRow + 1 - firstRow) * (lastColumn + 1 - firstColumn);
}

const PLACE = /^(?:'((?:[^']|'')+)'|([^'!]+))!(\$?[A-Z]{1,3}\$?[1-9]\d{0,6})(?::.*)?$/i;

/** A link from one cell to another of the same workbook; undefined for every other link. */
export function readLink(tag: string): LinkedCell | undefined {
  if (attribute(tag, "id") !== undefined) return undefined;
  const from = readArea(attribute(tag, "ref") ?? "");
  const [, quoted, plain, cell = ""] = PLACE.exec(attribute(tag, "location") ?? "") ?? [];
  const to = readArea(cell);
  const sheet = quoted?.replaceAll("''", "'") ?? plain;
  if (!from || cellsIn(from) > 1 || !to || sheet === undefined) return undefined;
  return {
    row: from.firstRow,
    column: from.firstColumn,
    link: { cell: { sheet, row: to.firstRow, column: to.firstColumn } },
  };
}
