/** Creep of the quick tank at constant pressure: time is an integral over the growth. */
import type { SteelDraw } from '../../steel/belief/draw.ts';
import { RATE_FLOOR } from '../../steel/plane.ts';
import { PLASTIC_PER_GROWTH, type QuickPath, valueAt } from './path.ts';

/** E-folds of fall in the rate that one step of the integral takes. */
const STEP = 0.08;
const LARGEST = 0.002;

interface Crept {
  readonly growth: number;
  readonly time: number;
  readonly rate: number;
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
  const drive = (growth: number): number => {
    const over = from.pressure / valueAt(path.growth, path.pressure, growth) - 1;
    return (over * valueAt(path.growth, path.flow, growth)) / draw.rate.perEfold;
  };
  const rateAt = (d: number): number =>
    Math.max(0, draw.rate.reference * Math.exp(d) - RATE_FLOOR) / PLASTIC_PER_GROWTH;
  let growth = from.growth;
  let now = drive(growth);
  let passed = 0;
  const start = now;
  while (rateAt(now) > settled) {
    const slope = (drive(growth + 1e-5) - now) / 1e-5;
    const step = Math.min(LARGEST, STEP / Math.max(1e-9, Math.abs(slope)));
    const next = drive(growth + step);
    if (growth + step > reach || next > start + 1) return undefined;
    const spent = step / rateAt(0.5 * (now + next));
    if (passed + spent >= time) {
      const f = (time - passed) / spent;
      return { growth: growth + f * step, time, rate: rateAt(now + f * (next - now)) };
    }
    if (rateAt(next) <= settled) {
      const end = Math.log((PLASTIC_PER_GROWTH * settled + RATE_FLOOR) / draw.rate.reference);
      const f = (now - end) / (now - next);
      return { growth: growth + f * step, time: passed + f * spent, rate: settled };
    }
    passed += spent;
    growth += step;
    now = next;
  }
  return { growth, time: passed, rate: rateAt(now) };
}
