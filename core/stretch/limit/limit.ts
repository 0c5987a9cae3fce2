/** Where it ends: pressure maximum, local necking of the barrel, or the long seam, whichever comes first. */
import type { Datum } from '../growth.ts';
import type { Walk } from '../walk.ts';

export interface Limit {
  readonly kind: 'pressure maximum' | 'local necking' | 'seam';
  readonly pressure: number;
  /** Largest growth of any girth there, as a fraction. */
  readonly growth: number;
  /** The curve was used beyond its evidence before this point. */
  readonly extrapolated: boolean;
}

/**
 * Local necking of the barrel in the hoop, d sigma/d eps = sigma: how far the wall is from it. With the stresses in
 * proportion, sigma_hoop / flow is constant along a step, and the condition reads slope x (d ep/d eps hoop) = flow.
 * Returns slope x (d ep/d eps hoop)/flow - 1 of the nearest element: negative where it necks.
 * Source of the condition: Considère 1885; for a hoop in plane strain Hosford & Caddell, Metal Forming.
 */
export function neckingReserve(walk: Walk, datum: Datum): number {
  const { shell } = datum.solver;
  const { layers } = shell.settings;
  const [last] = walk.past;
  const flow = new Float64Array(2);
  let least = Infinity;
  if (last === undefined) return least;
  for (const i of datum.barrel) {
    const middle = i * layers + Math.floor(layers / 2);
    const grown = walk.lastPlastic[middle];
    const a = 3 * shell.from[i];
    const b = 3 * shell.to[i];
    const radius = shell.radius[i] + 0.5 * (walk.now.move[a] + walk.now.move[b]);
    const hoop = (0.5 * (last.move[a] + last.move[b])) / radius;
    // While the wall is still half elastic it is far stiffer than this condition knows.
    if (hoop <= 0 || grown < 0.5 * hoop) continue;
    shell.metals[shell.metal[i]].flow.at(walk.now.plasticEq[middle], flow);
    least = Math.min(least, (flow[1] * grown) / (hoop * flow[0]) - 1);
  }
  return least;
}

/** One point of the way to the end: what the limits are read from. */
export interface Waypoint {
  readonly pressure: number;
  readonly volume: number;
  readonly growth: number;
  readonly necking: number;
  readonly seam: number | undefined;
  readonly plastic: number;
}

/** First of the three limits along the way; undefined where none was met. */
export function limitOf(way: readonly Waypoint[], evidence: number): Limit | undefined {
  const found = [summit(way), crossing(way, 'local necking', (w) => w.necking), seamCrossing(way)]
    .filter((limit) => limit !== undefined)
    .sort((a, b) => a.growth - b.growth)[0];
  if (found === undefined) return undefined;
  const plastic = Math.max(...way.filter((w) => w.growth <= found.growth + 1e-12).map((w) => w.plastic));
  return { ...found, extrapolated: plastic > evidence };
}

type Found = Omit<Limit, 'extrapolated'>;

/** Top of the parabola through the highest point and its neighbours, over volume. */
function summit(way: readonly Waypoint[]): Found | undefined {
  let top = 0;
  way.forEach((w, i) => {
    if (w.pressure > way[top].pressure) top = i;
  });
  if (top === 0 || top === way.length - 1) return undefined;
  const [a, b, c] = [way[top - 1], way[top], way[top + 1]];
  const left = (b.pressure - a.pressure) / (b.volume - a.volume);
  const right = (c.pressure - b.pressure) / (c.volume - b.volume);
  const bend = (right - left) / (c.volume - a.volume);
  const at = 0.5 * (a.volume + b.volume) - left / (2 * bend);
  const pressure = a.pressure + (at - a.volume) * (left + bend * (at - b.volume));
  const [p, q] = at < b.volume ? [a, b] : [b, c];
  const growth = p.growth + ((at - p.volume) / (q.volume - p.volume)) * (q.growth - p.growth);
  return { kind: 'pressure maximum', pressure, growth };
}

/** First place where a reserve falls through zero, by straight interpolation. */
function crossing(
  way: readonly Waypoint[],
  kind: Limit['kind'],
  reserve: (w: Waypoint) => number,
): Found | undefined {
  for (let i = 1; i < way.length; i++) {
    const before = reserve(way[i - 1]);
    const after = reserve(way[i]);
    if (!(after < 0)) continue;
    const f = Number.isFinite(before) && before > 0 ? before / (before - after) : 1;
    const mix = (x: number, y: number): number => x + f * (y - x);
    return {
      kind,
      pressure: mix(way[i - 1].pressure, way[i].pressure),
      growth: mix(way[i - 1].growth, way[i].growth),
    };
  }
  return undefined;
}

const seamCrossing = (way: readonly Waypoint[]): Found | undefined =>
  way.some((w) => w.seam !== undefined) ? crossing(way, 'seam', (w) => 1 - (w.seam ?? 0)) : undefined;
