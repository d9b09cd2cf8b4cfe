/** What is left of 28 when it is computed as 100 x 1.4 / 5. */
const FLOAT_NOISE = 1e-9;

/**
 * Rounds down to a whole number, as labels and tables do, without falling for float noise: 1.4 / 0.4 - 1 times 10
 * is 25, not 24.
 */
export function roundDown(value: number): number {
  return Math.floor(value + FLOAT_NOISE);
}

/** A depth for a label: whole feet or metres, never deeper than it is. */
export const roundDepthDown = roundDown;
