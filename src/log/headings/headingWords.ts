import { plain } from "../cells/cell";

/** The words of a heading, in the form in which headings are compared. */
export function wordsOf(heading: string): readonly string[] {
  return plain(heading.replace(/(?<=[a-z])(?=[A-Z][a-z])/g, " "))
    .replace(/\b0(?=2\b)/g, "o")
    .replace(/([%#$€£+])/g, " $1 ")
    .replace(/[^\p{L}\p{M}\p{N}%#$€£+]+/gu, " ")
    .trim()
    .split(" ")
    .filter((word) => word !== "");
}
