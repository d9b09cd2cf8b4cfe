/** Made once: a list has thousands of counts in it. */
const COUNT = new Intl.NumberFormat("en-US");

/** `12,345`, the same in every locale. */
export function count(n: number): string {
  return COUNT.format(n);
}

/** `1 row`, `2 rows`. */
export function counted(n: number, one: string, several = `${one}s`): string {
  return `${count(n)} ${n === 1 ? one : several}`;
}
