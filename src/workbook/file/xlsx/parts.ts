import { escapeXml } from "../xml";

export const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
export const SHEET_TYPES = "application/vnd.openxmlformats-officedocument.spreadsheetml";

/** A part of the package, with what it is. */
export interface Part {
  readonly name: string;
  /** Absent for parts of relations, whose ending says it. */
  readonly contentType?: string;
  readonly xml: string;
}

export interface Relation {
  readonly type: string;
  readonly target: string;
  /** It leads out of the package, to another file. */
  readonly external?: boolean;
}

export function relationsXml(relations: readonly Relation[]): string {
  const entries = relations.map(
    ({ type, target, external }, index) =>
      `<Relationship Id="rId${index + 1}" Type="${type}" Target="${escapeXml(target)}"${external ? ` TargetMode="External"` : ""}/>`,
  );
  return `<Relationships xmlns="${PACKAGE}/relationships">${entries.join("")}</Relationships>`;
}
