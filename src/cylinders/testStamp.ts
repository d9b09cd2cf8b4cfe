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
