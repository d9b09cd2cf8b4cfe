import type { Basis } from "../../audit/judge/finding";

/** Who says so, as shown. */
export const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  law: "Law",
  practice: "Practice of the trade",
  house: "Rule of this shop",
};
