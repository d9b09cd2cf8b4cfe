/** Ordered by harm. */
export const SEVERITIES = ["stop", "breach", "warn", "note"] as const;
export type Severity = (typeof SEVERITIES)[number];
