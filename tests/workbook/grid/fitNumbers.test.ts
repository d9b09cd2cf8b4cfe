import { expect, test } from "vitest";
import { fitted } from "../../../src/workbook/grid/fitNumbers";

test.each([
  [404.95731907733, 8, "404.9573"],
  [404.95731907733, 40, "404.9573191"],
  [-0.123456789, 8, "-0.12346"],
  [1088.0328162147, 6, "1088"],
  [1088.0328162147, 3, 1088.0328162147],
  [111.375, 8, 111.375],
  [2640, 3, 2640],
  [0.99999999, 6, "1"],
  [0.00000123456789, 6, 0.00000123456789],
])("%d in %d characters reads %s", (value, characters, shown) => {
  expect(fitted(value, characters)).toBe(shown);
});
