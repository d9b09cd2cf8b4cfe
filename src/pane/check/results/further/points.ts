/** `+0.62`, `−0.20`: the sign always stands. */
export function points(value: number, decimals = 2): string {
  const rounded = Math.abs(value).toFixed(decimals);
  if (Number(rounded) === 0) return rounded;
  return `${value > 0 ? "+" : "−"}${rounded}`;
}
