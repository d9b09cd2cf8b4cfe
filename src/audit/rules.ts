import type { Rule } from "./rule";
import { aboveRating } from "./rules/aboveRating";
import { hydroPastDue } from "./rules/hydroPastDue";
import { noTestDate } from "./rules/noTestDate";
import { notInRegister } from "./rules/notInRegister";
import { notOxygenClean } from "./rules/notOxygenClean";
import { swallowedStamp } from "./rules/swallowedStamp";
import { visualPastDue } from "./rules/visualPastDue";

/** Every rule of the audit. */
export const RULES: readonly Rule[] = [
  notOxygenClean,
  hydroPastDue,
  aboveRating,
  visualPastDue,
  noTestDate,
  notInRegister,
  swallowedStamp("hydro"),
  swallowedStamp("visual"),
];

/** The three that a log must let us judge for every fill before nothing found means nothing wrong. */
export const DECISIVE: readonly Rule[] = [hydroPastDue, visualPastDue, aboveRating];
