/** Who says so, as shown. */
export const BASIS_WORDS = {
  law: "Law",
  practice: "Practice of the trade",
  house: "Rule of this shop",
} as const;
