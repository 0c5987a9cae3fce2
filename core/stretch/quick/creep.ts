/** Creep of the quick tank at constant pressure: time is an integral over the growth. */
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { RATE_FLOOR } from '../../steel/plane.ts';
import { PLASTIC_PER_GROWTH, plasticRate, type QuickPath, valueAt } from './path.ts';

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

/** Creeps at constant pressure for `time`, or until the rate of growth is under `settled`; undefined where it runs away. */
export function creep(
  path: QuickPath,
  draw: SteelDraw,
  from: { readonly growth: number; readonly pressure: number },
  time: number,
  settled: number,
): Crept | undefined {
  const reach = path.growth[path.growth.length - 1];
  const { perEfold } = draw.rate;
  const placeAt = (at: number): Place => {
    const flow = valueAt(path.growth, path.flow, at);
    return { at, flow, over: (from.pressure / valueAt(path.growth, path.pressure, at) - 1) * flow };
  };
  const grown = ({ at, over }: Place): number => at + over * path.elastic;
  const rateAt = (over: number, growth: number): number =>
    (Math.max(0, draw.rate.reference * Math.exp(over / perEfold) - RATE_FLOOR) * (1 + growth)) /
    PLASTIC_PER_GROWTH;
  let now = placeAt(startOf(placeAt, from.growth, path.elastic));
  const most = now.over + perEfold;
  let passed = 0;
  while (rateAt(now.over, grown(now)) > settled) {
    const slope = (placeAt(now.at + NEAR).over - now.over) / NEAR / perEfold;
    const step = Math.min(LARGEST, STEP / Math.max(1e-9, Math.abs(slope)));
    const next = placeAt(now.at + step);
    if (next.at > reach || next.over > most) return undefined;
    const plastic = step - (next.flow - now.flow) * path.elastic;
    const spent = plastic / rateAt(0.5 * (now.over + next.over), now.at + 0.5 * step);
    const part = (f: number): number => grown(now) + f * (grown(next) - grown(now));
    const overAt = (f: number): number => now.over + f * (next.over - now.over);
    if (passed + spent >= time) {
      const f = (time - passed) / spent;
      return { growth: part(f), time, rate: rateAt(overAt(f), part(f)) };
    }
    if (rateAt(next.over, grown(next)) <= settled) {
      const end = perEfold * Math.log((plasticRate(next.at, settled) + RATE_FLOOR) / draw.rate.reference);
      const f = (now.over - end) / (now.over - next.over);
      return { growth: part(f), time: passed + f * spent, rate: settled };
    }
    passed += spent;
    now = next;
  }
  return { growth: grown(now), time: passed, rate: rateAt(now.over, grown(now)) };
}
const NEAR = 1e-5;

/** Place on the path of a tank of this growth. */
function startOf(placeAt: (at: number) => Place, growth: number, elastic: number): number {
  let at = growth;
  for (let k = 0; k < STARTS; k++) at = growth - placeAt(at).over * elastic;
  return at;
}
/** The elastic part is a hundredth of the growth at most: each turn takes that much off what is left. */
const STARTS = 3;
