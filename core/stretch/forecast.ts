/**
 * The whole stretch of one tank: up through first yield and the holds to the release pressure, release, and on to the
 * maximum, so that the margin is known. One state of steel, no range: ranges are made of many of these.
 */
import { profileOf, type WallPlace } from '../shell/profile.ts';
import { massOf } from '../shell/read.ts';
import { type Duty, type Hold, stretchPressure, type Tank } from '../tank/tank.ts';
import { Course, type Finish } from './course.ts';
import { type FlatLimit, flatLimitOf } from './limit/flatHead.ts';
import type { Datum, Moment } from './growth.ts';
import { type Limit, limitOf } from './limit/limit.ts';
import type { ForecastOrders } from './orders.ts';
import { release, type Released } from './release.ts';
import { type Remark, remarksOn } from './remark.ts';
import { seamAt, type SeamState } from './limit/seams.ts';
import { type Unstretched, unstretchedFor } from './limit/unstretched.ts';
import type { Cut } from './walk.ts';
import { byPowerLaw, type Place, placeOf, proofPressure } from './limit/yields.ts';

export { type ForecastOrders, GivenUp } from './orders.ts';
export type { Remark } from './remark.ts';
export type { Place } from './limit/yields.ts';

export interface Forecast {
  readonly datum: Datum;
  /** The filled tank at zero gauge. */
  readonly start: Moment;
  /** Stretch and holds in the order they happen, on to the end; the release moments come last and start at the target. */
  readonly path: readonly Moment[];
  readonly target?: number;
  /** As it stands on arrival at the target, and after the holds there. */
  readonly arrived?: Moment;
  readonly held?: Moment;
  readonly firstYield?: { readonly pressure: number; readonly at: Place };
  /** Pressure at 0.2 % plastic strain at mid-wall in the barrel. */
  readonly barrelYield?: number;
  readonly maximum?: Limit;
  readonly released?: Released;
  /** Long seam where the tank is released, under pressure. */
  readonly seam?: SeamState;
  readonly unstretched?: Unstretched;
  readonly mass: number;
  readonly profile: readonly WallPlace[];
  readonly remarks: readonly Remark[];
  readonly effort: Effort;
}

/** How the solver fared. */
export interface Effort {
  readonly steps: number;
  readonly iterations: number;
  readonly most: number;
  readonly cuts: readonly Cut[];
}

export function forecast(tank: Tank, duty: Duty | undefined, orders: ForecastOrders = {}): Forecast {
  const target = orders.target ?? (duty === undefined ? undefined : stretchPressure(duty));
  const flat = flatLimitOf(tank);
  const course = new Course(tank, duty, orders);
  const ascent = climb(course, duty?.holds ?? [], target, flat);
  // A tank that gives way in its hold is not there any more to be released.
  const branch = ascent.end?.kind === 'gives way' ? undefined : (ascent.held ?? ascent.arrived);
  const letOut = branch === undefined ? undefined : release(course.datum, branch.state, branch.time);
  const released = letOut === undefined || 'reason' in letOut ? undefined : letOut;
  const finish = ascent.end ?? goOn(course, flat);
  const seam = branch === undefined ? undefined : seamAt(course.datum, branch.largest.growth);
  const maximum = maximumOf(course, finish);
  const { yieldPoint } = course;
  const powerLaw = yieldPoint !== undefined && byPowerLaw(course.datum, yieldPoint);
  return {
    ...seen(course, released),
    ...present({ target, arrived: ascent.arrived, held: ascent.held, maximum, released, seam }),
    ...(yieldPoint === undefined || powerLaw || yieldPoint.pressure === Infinity
      ? {}
      : { firstYield: { pressure: yieldPoint.pressure, at: placeOf(course.datum, yieldPoint) } }),
    ...massesOf(course, tank, duty),
    profile: profileOf(course.datum.solver.shell, (branch ?? lastOf(course)).state),
    remarks: remarksOn({
      target,
      duty,
      finish,
      maximum,
      branch,
      last: lastOf(course),
      flat,
      seam,
      evidence: course.evidence(),
      creeps: course.datum.solver.shell.metals.some((metal) => metal.viscosity > 0),
      powerLaw,
      releaseStuck: letOut !== undefined && 'reason' in letOut ? letOut.reason : undefined,
    }),
    effort: effortOf(course),
  };
}

interface Ascent {
  readonly arrived?: Moment;
  /** After the holds at the target; absent where there are none. */
  readonly held?: Moment;
  /** Why the way ended before its time; absent where it goes on. */
  readonly end?: Finish;
}

/** Up to each hold under the target, through it, on to the target and through the holds there. */
function climb(
  course: Course,
  holds: readonly Hold[],
  target: number | undefined,
  flat: FlatLimit | undefined,
): Ascent {
  if (target === undefined) return {};
  const top = Math.min(target, flat?.pressure ?? Infinity);
  const below = holds.filter((h) => h.pressure < top * (1 - 1e-9)).sort((a, b) => a.pressure - b.pressure);
  for (const one of below) {
    const end = through(course, one);
    if (end !== undefined) return { end };
  }
  const end = course.upTo(top);
  if (end.kind !== 'landed') return { end };
  if (top < target) return { end: { kind: 'flat head' } };
  const arrived = lastOf(course);
  const there = holds.filter((h) => Math.abs(h.pressure - target) <= 1e-9 * target);
  for (const one of there) {
    const failed = course.keep(one);
    if (failed !== undefined) return { arrived, end: failed };
  }
  return there.length === 0 ? { arrived } : { arrived, held: lastOf(course) };
}

function through(course: Course, one: Hold): Finish | undefined {
  const end = course.upTo(one.pressure);
  return end.kind === 'landed' ? course.keep(one) : end;
}

/** On to the maximum, or to where a flat head dishes. */
function goOn(course: Course, flat: FlatLimit | undefined): Finish {
  if (flat === undefined) return course.beyond();
  const end = course.upTo(flat.pressure);
  return end.kind === 'landed' ? { kind: 'flat head' } : end;
}

/** Where it ends; a tank that gives way in a hold has met its maximum there. */
function maximumOf(course: Course, finish: Finish): Limit | undefined {
  const limit = limitOf(course.way, course.evidence());
  if (limit !== undefined || finish.kind !== 'gives way') return limit;
  const { largest, plastic } = lastOf(course);
  return {
    kind: 'pressure maximum',
    pressure: finish.pressure,
    growth: largest.growth,
    extrapolated: plastic.anywhere > course.evidence(),
  };
}

const lastOf = ({ moments, start }: Course): Moment => moments.at(-1) ?? start;

function seen(
  course: Course,
  released: Released | undefined,
): Pick<Forecast, 'datum' | 'start' | 'path' | 'barrelYield'> {
  const { datum, start, moments } = course;
  const path = [...moments, ...(released?.moments ?? [])];
  return { datum, start, path, ...present({ barrelYield: proofPressure(start, moments) }) };
}

/** Only what there is. */
function present<T extends object>(values: T): { [K in keyof T]?: Exclude<T[K], undefined> } {
  const kept = Object.entries(values).filter(([, value]) => value !== undefined);
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- undefined entries were just taken out
  return Object.fromEntries(kept) as { [K in keyof T]?: Exclude<T[K], undefined> };
}

function massesOf(
  { datum }: Course,
  tank: Tank,
  duty: Duty | undefined,
): Pick<Forecast, 'mass' | 'unstretched'> {
  const mass = massOf(datum.solver.shell);
  return duty === undefined
    ? { mass }
    : { mass, ...present({ unstretched: unstretchedFor(tank, duty, mass) }) };
}

function effortOf({ walk }: Course): Effort {
  return {
    steps: walk.iterations.length,
    iterations: walk.iterations.reduce((sum, n) => sum + n, 0),
    most: Math.max(0, ...walk.iterations),
    cuts: walk.cuts,
  };
}
