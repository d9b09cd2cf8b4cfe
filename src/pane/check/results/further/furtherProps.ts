import type { CheckReport } from "../../report";
import type { Check } from "../../useCheck";
import type { Jump } from "../../useJump";

/** What every question to the log is about. */
export interface FurtherProps {
  readonly report: CheckReport;
  readonly check: Check;
  readonly jump: Jump;
}
