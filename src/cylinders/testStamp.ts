import type { Temporal } from "temporal-polyfill";

/** A test as it is stamped, stickered or written: a month, sometimes a day. */
export interface TestStamp {
  readonly month: Temporal.PlainYearMonth;
  /** Where the log gives a full date. */
  readonly day?: Temporal.PlainDate;
  /** When the test was, or (as many German stamps) when the next one is due. */
  readonly means: "test" | "due";
  /** A `+` after the date: may be filled to 110 % until the next test (US 3A, 3AA). */
  readonly plus: boolean;
  /** Other marks behind the date, such as `S`, `E`, `UE`, `VE`, star. */
  readonly marks: readonly string[];
}

/** A stamp from a full date, such as a date cell holds. */
export function stampOf(day: Temporal.PlainDate, means: TestStamp["means"] = "test"): TestStamp {
  return { month: day.toPlainYearMonth(), day, means, plus: false, marks: [] };
}

/** The stamp as sentences name it: `2019-10`, or `2019-10-15` where the day is known. */
export function stampText(stamp: TestStamp): string {
  return (stamp.day ?? stamp.month).toString();
}
