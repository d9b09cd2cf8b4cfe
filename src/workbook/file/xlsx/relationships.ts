import type { Pace } from "../pace";
import { attribute } from "../xml";
import { readXmlPart } from "../xmlPart";
import type { ZipArchive } from "../zip";

/** A part that another part names. */
export interface Relationship {
  readonly id: string;
  /** The last word of the relationship's type, such as `worksheet`. */
  readonly type: string;
  /** The part's full name in the zip. */
  readonly target: string;
}

/** What a part relates to, by the packaging standard (ECMA-376 part 2); links to the outside are left out. */
export async function readRelationships(
  archive: ZipArchive,
  part: string,
  pace: Pace,
): Promise<readonly Relationship[]> {
  const cut = part.lastIndexOf("/") + 1;
  const name = `${part.slice(0, cut)}_rels/${part.slice(cut)}.rels`;
  const relationships: Relationship[] = [];
  if (!archive.has(name)) return relationships;
  const open = (element: string, tag: string) => {
    if (element !== "Relationship" || attribute(tag, "TargetMode") === "External") return;
    relationships.push({
      id: attribute(tag, "Id") ?? "",
      type: (attribute(tag, "Type") ?? "").split("/").at(-1)!,
      target: resolved(part, attribute(tag, "Target") ?? ""),
    });
  };
  await readXmlPart(archive, name, { open }, pace);
  return relationships;
}

function resolved(part: string, target: string): string {
  const steps = target.startsWith("/") ? [] : part.split("/").slice(0, -1);
  for (const step of target.split("/")) {
    if (step === "..") steps.pop();
    else if (step !== "" && step !== ".") steps.push(step);
  }
  return steps.join("/");
}
