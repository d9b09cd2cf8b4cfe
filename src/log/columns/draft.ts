import type { Role } from "../headings/headingFields";
import type { HeadingMeaning } from "../headings/headingText";
import type { ColumnSample } from "./sample";

/** A column before anybody said what it is. */
export interface ColumnDraft {
  readonly column: number;
  readonly heading: string;
  readonly meaning: HeadingMeaning;
  readonly sample: ColumnSample;
}

/** A column with the role it has so far. */
export interface ColumnInRole extends ColumnDraft {
  role: Role | undefined;
}
