/** An axis from nothing to a round number. */

export interface RoundAxis {
  readonly most: number;
  readonly ticks: readonly number[];
  readonly digits: number;
}

/** Steps of 1, 2 or 5 times a power of ten, about `count` of them, the last at or over `value`. */
export function roundAxis(value: number, count: number): RoundAxis {
  const rough = (value > 0 ? value : 1) / count;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5, 10].find((m) => m * power >= rough * 0.999) ?? 10) * power;
  const steps = Math.ceil(value / step - 1e-9);
  const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
  return {
    most: steps * step,
    ticks: Array.from({ length: steps + 1 }, (_, i) => Number((i * step).toFixed(digits))),
    digits,
  };
}
