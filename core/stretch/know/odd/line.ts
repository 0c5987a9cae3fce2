/** Slope of a straight line through points by least squares; undefined where they do not spread. */
export function lineThrough(
  points: readonly { readonly x: number; readonly y: number }[],
): number | undefined {
  const n = points.length;
  const mean = (read: (point: (typeof points)[number]) => number): number =>
    points.reduce((sum, point) => sum + read(point), 0) / n;
  const [x0, y0] = [mean(({ x }) => x), mean(({ y }) => y)];
  const sxx = points.reduce((sum, { x }) => sum + (x - x0) ** 2, 0);
  if (!(sxx > 0)) return undefined;
  return points.reduce((sum, { x, y }) => sum + (x - x0) * (y - y0), 0) / sxx;
}
