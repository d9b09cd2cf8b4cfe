import type { CountryRules } from "./countryRules";
import type { TestStamp } from "./testStamp";

/** Marks beside a date that show an inspection, by what they are: no pressure was on it, so such a date is no hydro. */
export function isInspection({ marks }: TestStamp, { visualMarks }: CountryRules): boolean {
  return marks.some((mark) => visualMarks.includes(mark));
}

/** E: looked at from outside only (49 CFR 180.213(f)); what the visual of a scuba cylinder is about is the inside. */
export function isExternalOnly({ marks }: TestStamp): boolean {
  return marks.includes("E");
}
