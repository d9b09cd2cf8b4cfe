const DELIMITERS = [";", "\t", ",", "|"];
const LINES_LOOKED_AT = 30;
/** Cells at the end of a line that may be left out. */
const RAGGED = 3;

/**
 * What separates the cells: the character that cuts most of the first lines into the same number of cells. A
 * decimal comma loses to the semicolon beside it, since the headings have none.
 */
export function findDelimiter(text: string): string {
  const lines = openingLines(text);
  const scores = DELIMITERS.map((delimiter) => ({ delimiter, ...evenness(lines, delimiter) }));
  const best = scores.reduce((a, b) =>
    b.lines > a.lines || (b.lines === a.lines && b.cuts > a.cuts) ? b : a,
  );
  return best.lines === 0 ? "," : best.delimiter;
}

/** How many lines have the commonest number of cuts, or a few fewer where the last cells were left out; and that number. */
function evenness(lines: readonly string[], delimiter: string): { lines: number; cuts: number } {
  const tally = new Map<number, number>();
  for (const line of lines) {
    const cuts = line.split(delimiter).length - 1;
    if (cuts > 0) tally.set(cuts, (tally.get(cuts) ?? 0) + 1);
  }
  const [cuts] = [...tally].reduce((best, each) => (each[1] > best[1] ? each : best), [0, 0] as const);
  const most = Math.max(cuts, ...[...tally.keys()].filter((each) => each <= cuts + RAGGED));
  const shared = [...tally].filter(([each]) => each <= most && each >= Math.max(1, most - RAGGED));
  return { lines: shared.reduce((sum, [, count]) => sum + count, 0), cuts };
}

function openingLines(text: string): readonly string[] {
  return text
    .slice(0, 64 * 1024)
    .replace(/"(?:[^"]|"")*"/g, '""')
    .split(/\r\n|\r|\n/, LINES_LOOKED_AT + 1)
    .filter((line) => line.trim() !== "")
    .slice(0, LINES_LOOKED_AT);
}
