/*
 * The house: which rooms each room may import from, besides itself. The table of DEVELOPERS.md says the same, and a
 * test compares the two.
 */
const BELOW_LOG = ["words", "sheet", "gas", "cylinders"];
const COUNTED = ["words", "log", "sheet", "blending", "cylinders", "gas"];
const JUDGED = ["words", "log", "sheet", "blending", "depth", "cylinders", "gas"];

/** Rooms that know nothing of Office, React, DOM, Node, clock or time zone. */
export const PURE_ROOMS = [
  "gas",
  "sheet",
  "depth",
  "blending",
  "cylinders",
  "words",
  "log",
  "typed",
  "audit",
  "costs",
  "counter",
  "reports",
];

export const MAY_IMPORT = {
  gas: [],
  sheet: [],
  depth: ["gas"],
  blending: ["gas"],
  cylinders: ["gas"],
  words: ["gas", "cylinders", "sheet"],
  log: BELOW_LOG,
  typed: ["words", "log", "sheet", "depth", "cylinders", "gas"],
  audit: JUDGED,
  costs: COUNTED,
  counter: ["typed", "audit", "costs", ...JUDGED],
  reports: ["words", "audit", "costs", "log", "sheet", "depth", "cylinders", "gas"],
  functions: ["typed", "reports", "audit", "costs", ...JUDGED],
  suites: ["functions", "typed", "sheet"],
  workbook: ["sheet"],
  session: [...PURE_ROOMS, "workbook"],
  pane: [...PURE_ROOMS, "functions", "workbook", "session"],
  page: [...PURE_ROOMS, "functions", "workbook", "session", "pane"],
  cli: [...PURE_ROOMS, "functions", "workbook", "session"],
  taskpane: [...PURE_ROOMS, "functions", "workbook", "session", "pane"],
};
