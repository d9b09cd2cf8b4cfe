/**
 * The formats that a file names by number only (ECMA-376 part 1, 18.8.30), in the form of en-US. General (0) has
 * none. The numbers that stand for a date in the writer's own language read as a plain date: that it is one is
 * what counts.
 */
const BY_NUMBER: readonly (readonly [number, string])[] = [
  [1, "0"],
  [2, "0.00"],
  [3, "#,##0"],
  [4, "#,##0.00"],
  [9, "0%"],
  [10, "0.00%"],
  [11, "0.00E+00"],
  [12, "# ?/?"],
  [13, "# ??/??"],
  [14, "m/d/yyyy"],
  [15, "d-mmm-yy"],
  [16, "d-mmm"],
  [17, "mmm-yy"],
  [18, "h:mm AM/PM"],
  [19, "h:mm:ss AM/PM"],
  [20, "h:mm"],
  [21, "h:mm:ss"],
  [22, "m/d/yyyy h:mm"],
  [37, "#,##0_);(#,##0)"],
  [38, "#,##0_);[Red](#,##0)"],
  [39, "#,##0.00_);(#,##0.00)"],
  [40, "#,##0.00_);[Red](#,##0.00)"],
  [45, "mm:ss"],
  [46, "[h]:mm:ss"],
  [47, "mm:ss.0"],
  [48, "##0.0E+0"],
  [49, "@"],
];
const DATES_BY_LANGUAGE = [
  27, 28, 29, 30, 31, 34, 35, 36, 50, 51, 52, 53, 54, 55, 56, 57, 58, 71, 72, 73, 74,
];
const TIMES_BY_LANGUAGE = [32, 33, 75, 76, 77, 78, 79, 80];

export const BUILT_IN_FORMATS: ReadonlyMap<number, string> = new Map([
  ...BY_NUMBER,
  ...DATES_BY_LANGUAGE.map((number) => [number, "yyyy/m/d"] as const),
  ...TIMES_BY_LANGUAGE.map((number) => [number, "h:mm:ss"] as const),
]);

/** The number of a format that has one: only those that mean the same everywhere. */
export const BUILT_IN_NUMBERS: ReadonlyMap<string, number> = new Map(
  BY_NUMBER.map(([number, format]) => [format, number]),
);
