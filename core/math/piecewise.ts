/** Value at the share 0..1 of the way through values at equal distances, straight between them; one value is constant. */
export function piecewise(values: readonly number[], share: number): number {
  const last = values.length - 1;
  const place = Math.min(Math.max(share, 0), 1) * last;
  const below = Math.min(Math.floor(place), Math.max(last - 1, 0));
  const above = Math.min(below + 1, last);
  return values[below] + (place - below) * (values[above] - values[below]);
}
