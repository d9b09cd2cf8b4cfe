/**
 * How far a file is followed. Far above any log (a spreadsheet's largest sheet of twenty columns fits), and low
 * enough that a hostile file is refused within seconds and a browser tab survives it.
 */
export const LIMITS = {
  fileBytes: 200 * 1024 * 1024,
  /** All parts that are read, unpacked. */
  unpackedBytes: 800 * 1024 * 1024,
  /** How many times its packed size a large part may have: sheets reach some twenty, a trap a thousand. */
  growth: 250,
  /** Places in all rows, up to each row's last cell that holds anything. */
  cells: 25_000_000,
  /** Files inside the file. */
  parts: 10_000,
  /** A spreadsheet's own limit for a cell is 32,767. */
  textCharacters: 1_000_000,
  xmlDepth: 100,
  /** Characters of all formulas; one that is copied from cell to cell counts eightfold, as it takes as long. */
  formulaCharacters: 120_000_000,
  /** Array formulas that fill cells of one and the same row. */
  spills: 200,
  rows: 1_048_576,
  columns: 16_384,
} as const;
