import { Temporal } from "temporal-polyfill";
import { expect, it } from "vitest";
import { stampOf, stampText } from "../../src/cylinders/testStamp";

it("a date cell is a test on that day, with no marks, unless it says when the next one is due", () => {
  const day = Temporal.PlainDate.from("2019-10-15");
  const month = Temporal.PlainYearMonth.from("2019-10");
  expect(stampOf(day)).toEqual({ month, day, means: "test", plus: false, marks: [] });
  expect(stampOf(day, "due").means).toBe("due");
  expect(stampText(stampOf(day))).toBe("2019-10-15");
});
