/** An axis: where a figure lies between 0 and 1, and the figures to write beside it. */
export interface Scale {
  readonly at: (figure: number) => number;
  readonly ticks: readonly number[];
}

const TICKS_WANTED = 5;

/** A scale that holds all figures, with round ticks; counts begin at 0. */
export function scaleFor(figures: readonly number[], fromZero: boolean): Scale {
  const least = fromZero ? Math.min(0, ...figures) : Math.min(...figures);
  const most = Math.max(...figures, least + 1);
  const step = roundStep((most - least) / TICKS_WANTED);
  const first = Math.floor(least / step + 1e-9);
  const last = Math.ceil(most / step - 1e-9);
  const ticks = Array.from({ length: last - first + 1 }, (_, index) =>
    Number(((first + index) * step).toFixed(6)),
  );
  const span = (last - first) * step;
  return { at: (figure) => (figure - first * step) / span, ticks };
}

/** 1, 2 or 5 times a power of ten, no smaller than asked. */
function roundStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step));
  return ([1, 2, 5, 10].find((times) => times * power >= step - 1e-9) ?? 10) * power;
}
