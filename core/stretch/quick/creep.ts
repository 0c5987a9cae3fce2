/** Creep of the quick tank at constant pressure: time is an integral over the growth. */
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { root } from '../../math/root.ts';
import { overStress, type QuickPath, rateUnder, valueAt } from './path.ts';

/** E-folds of fall in the rate that one step of the integral takes. */
const STEP = 0.08;
const LARGEST = 0.002;

interface Crept {
  readonly growth: number;
  readonly time: number;
  readonly rate: number;
}

/** A place on the path of the curve's own rate, and how the tank stands there under the pressure that is kept. */
interface Place {
  /** Growth on the path; that of the tank is more by what is elastic in `over`. */
  readonly at: number;
  readonly flow: number;
  /** Stress over the flow stress, MPa. */
  readonly over: number;
}

/**
 * Creeps at constant pressure for `time`, or until the rate of growth is under `settled`; undefined where it runs away. A
 * tank that is still elastic stands still.
 */
export function creep(
  path: QuickPath,
  draw: SteelDraw,
  from: { readonly growth: number; readonly pressure: number },
  time: number,
  settled: number,
): Crept | undefined {
  if (!(valueAt(path.growth, path.plastic, from.growth) > 0))
    return { growth: from.growth, time: settled > 0 ? 0 : time, rate: 0 };
  const reach = path.growth[path.growth.length - 1];
  const { perEfold } = draw.rate;
  const placeAt = (at: number): Place => {
    const flow = valueAt(path.growth, path.flow, at);
    return { at, flow, over: (from.pressure / valueAt(path.growth, path.pressure, at) - 1) * flow };
  };
  const grown = ({ at, over }: Place): number => at + over * path.elastic;
  let now = startOf(path, placeAt, (place) => grown(place) - from.growth);
  const most = now.over + perEfold;
  let passed = 0;
  // Where no rate counts as settled, what stands still stands to the end.
  const still = (after: number): number => (settled > 0 ? after : time);
  while (rateUnder(draw, grown(now), now.over) > settled) {
    const slope = (placeAt(now.at + NEAR).over - now.over) / NEAR / perEfold;
    const step = Math.min(LARGEST, STEP / Math.max(1e-9, Math.abs(slope)));
    const next = placeAt(now.at + step);
    if (next.at > reach || next.over > most) return undefined;
    const plastic = step - (next.flow - now.flow) * path.elastic;
    const spent = plastic / rateUnder(draw, now.at + 0.5 * step, 0.5 * (now.over + next.over));
    const part = (f: number): number => grown(now) + f * (grown(next) - grown(now));
    const overAt = (f: number): number => now.over + f * (next.over - now.over);
    if (passed + spent >= time) {
      const f = (time - passed) / spent;
      return { growth: part(f), time, rate: rateUnder(draw, part(f), overAt(f)) };
    }
    if (rateUnder(draw, grown(next), next.over) <= settled) {
      const f = (now.over - overStress(draw, next.at, settled)) / (now.over - next.over);
      return { growth: part(f), time: still(passed + f * spent), rate: settled };
    }
    passed += spent;
    now = next;
  }
  return { growth: grown(now), time: still(passed), rate: rateUnder(draw, grown(now), now.over) };
}
/** Growth to which the start is found: a thousandth of what the slowest hold creeps. */
const FINE = 1e-9;
/** Growth over which the slope of the over-stress is taken. */
const NEAR = 1e-5;

/** The place of the tank, where `off` is nothing: not under first yield, where what is elastic is all of the growth. */
function startOf(path: QuickPath, placeAt: (at: number) => Place, off: (place: Place) => number): Place {
  const yields = path.growth[Math.max(0, path.plastic.findIndex((plastic) => plastic > 0) - 1)];
  const reach = path.growth[path.growth.length - 1];
  const [low, high] = [placeAt(yields), placeAt(reach)];
  if (off(low) >= 0) return low;
  return off(high) <= 0 ? high : placeAt(root((at) => off(placeAt(at)), yields, reach, { width: FINE }));
}
