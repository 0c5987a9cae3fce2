/**
 * The whole stretch of one tank: up through first yield and the holds to the release pressure, release, and on to the
 * maximum, so that the margin is known. One state of steel, no range: ranges are made of many of these.
 */
import { massOf, profileOf, type WallPlace } from '../shell/read.ts';
import { shellOf, type ShellSettings, STANDARD } from '../shell/shell.ts';
import { solverFor } from '../shell/solve.ts';
import { cloneState } from '../shell/state.ts';
import { type Duty, type Hold, stretchPressure, type Tank } from '../tank/tank.ts';
import { type Datum, datumOf, largestGrowth, type Moment, momentAt, pumpedFor } from './growth.ts';
import { hold } from './hold.ts';
import { type Limit, limitOf, neckingReserve, seamUse, type Waypoint } from './limit.ts';
import { release, type Released } from './release.ts';
import {
  elasticStride,
  rise,
  type RiseEnd,
  type RiseOrders,
  type RiseSettings,
  STANDARD_RISE,
  type YieldPoint,
} from './rise.ts';
import { type Unstretched, unstretchedFor } from './unstretched.ts';
import { type Cut, type Walk, walkFrom } from './walk.ts';
import { waterDensity } from './water.ts';
import { GRAVITY } from '../units.ts';

export interface ForecastOrders {
  /** Pressure of release, MPa; absent: the duty's stretch pressure; without a duty nothing is released. */
  readonly target?: number;
  /** Pressures that the path must land on besides, MPa. */
  readonly marks?: readonly number[];
  readonly shell?: ShellSettings;
  readonly rise?: RiseSettings;
  /** Ends the path once the largest girth growth passes this fraction, instead of going on to the maximum. */
  readonly until?: number;
  /** Called with a fraction done, 0..1; returning true gives up and throws `GivenUp`. */
  readonly progress?: (fraction: number) => boolean;
}

/** Thrown where `progress` asked to stop. */
export class GivenUp extends Error {
  constructor() {
    super('the forecast was given up');
  }
}

/** What the person should know, as a code with its numbers; the sentence is made at the edge. */
export type Remark =
  | { readonly code: 'no maximum'; readonly reason: string }
  | { readonly code: 'bursts before target'; readonly target: number; readonly limit: Limit }
  | {
      readonly code: 'beyond evidence';
      readonly plastic: number;
      readonly evidence: number;
      readonly pressure: number;
    }
  | { readonly code: 'hold above target'; readonly pressure: number }
  | { readonly code: 'release stuck'; readonly reason: string }
  | { readonly code: 'no rate effect' }
  | { readonly code: 'power law' }
  | { readonly code: 'path stuck'; readonly reason: string; readonly pressure: number };

export interface Place {
  readonly part: string;
  /** Height over the bottom tangent line, mm. */
  readonly z: number;
  readonly r: number;
  readonly face: 'inside' | 'middle' | 'outside';
}

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
  readonly unstretched?: Unstretched;
  readonly mass: number;
  readonly profile: readonly WallPlace[];
  readonly remarks: readonly Remark[];
  /** How the solver fared. */
  readonly effort: {
    readonly steps: number;
    readonly iterations: number;
    readonly most: number;
    readonly cuts: readonly Cut[];
  };
}

export function forecast(tank: Tank, duty: Duty | undefined, orders: ForecastOrders = {}): Forecast {
  const course = new Course(tank, duty, orders);
  return course.run();
}

/** Proof strain of `barrelYield`. */
const PROOF = 0.002;

/** One run. Guards the walk and what has been seen of it; nothing else changes. */
class Course {
  readonly tank: Tank;
  readonly duty: Duty | undefined;
  readonly orders: ForecastOrders;
  readonly walk: Walk;
  readonly datum: Datum;
  readonly target: number | undefined;
  readonly moments: Moment[] = [];
  readonly way: Waypoint[] = [];
  readonly remarks: Remark[] = [];
  phase: Moment['phase'] = 'stretch';

  constructor(tank: Tank, duty: Duty | undefined, orders: ForecastOrders) {
    this.tank = tank;
    this.duty = duty;
    this.orders = orders;
    this.target = orders.target ?? (duty === undefined ? undefined : stretchPressure(duty));
    const shell = shellOf(tank, orders.shell ?? STANDARD);
    const upright = tank.stand?.axis === 'upright';
    const weight = upright ? waterDensity(tank.water.temperature) * GRAVITY : 0;
    const solver = solverFor(shell, weight, tank.stand?.gauge ?? tank.length / 2);
    this.walk = walkFrom(solver);
    this.datum = datumOf(solver, cloneState(this.walk.now));
  }

  run(): Forecast {
    const { tank, datum, walk } = this;
    const start = momentAt(datum, datum.state, 'stretch', 0);
    this.way.push({
      pressure: 0,
      volume: walk.now.volume,
      growth: 0,
      necking: Infinity,
      seam: seamUse(datum, 0),
      plastic: 0,
    });
    const yieldPoint = elasticStride(walk, this.riseOrders(this.holdPressures(), true));
    const end = this.upTheHolds();
    const arrived = this.arrival(end);
    const held = arrived === undefined ? undefined : this.holdAtTarget(arrived);
    const branch = held ?? arrived;
    const released = branch === undefined ? undefined : this.letOut(branch);
    const finish = end.kind === 'landed' ? this.onToTheMaximum() : end;
    const maximum = limitOf(this.way, this.evidence());
    this.remarkOn(finish, maximum, branch);
    return {
      datum,
      start,
      path: [...this.moments, ...(released?.moments ?? [])],
      ...(this.target === undefined ? {} : { target: this.target }),
      ...(arrived === undefined ? {} : { arrived }),
      ...(held === undefined ? {} : { held }),
      ...this.yields(yieldPoint),
      ...(maximum === undefined ? {} : { maximum }),
      ...(released === undefined ? {} : { released }),
      ...(this.duty === undefined
        ? {}
        : { unstretched: unstretchedFor(tank, this.duty, massOf(datum.solver.shell)) }),
      mass: massOf(datum.solver.shell),
      profile: profileOf(
        datum.solver.shell,
        (branch ?? this.moments[this.moments.length - 1] ?? start).state,
      ),
      remarks: this.remarks,
      effort: {
        steps: walk.iterations.length,
        iterations: walk.iterations.reduce((sum, n) => sum + n, 0),
        most: Math.max(0, ...walk.iterations),
        cuts: walk.cuts,
      },
    };
  }

  /** Holds under the target, rising. */
  holdsBelow(): Hold[] {
    const { duty, target } = this;
    if (duty === undefined || target === undefined) return [];
    return duty.holds.filter((h) => h.pressure < target * (1 - 1e-9)).sort((a, b) => a.pressure - b.pressure);
  }

  holdsAtTarget(): Hold[] {
    const { duty, target } = this;
    if (duty === undefined || target === undefined) return [];
    return duty.holds.filter((h) => Math.abs(h.pressure - target) <= 1e-9 * target);
  }

  holdPressures(): number[] {
    return this.holdsBelow().map((h) => h.pressure);
  }

  /** Pressures to land on up to `top`, rising, each once. */
  marksTo(top: number): number[] {
    const marks = [...(this.orders.marks ?? []).filter((mark) => mark < top * (1 - 1e-9)), top];
    return [...new Set(marks)].sort((a, b) => a - b);
  }

  riseOrders(marks: readonly number[], elastic: boolean): RiseOrders {
    const top = this.target ?? Infinity;
    const all = elastic
      ? [...(this.orders.marks ?? []), ...marks].filter((m) => m <= top).sort((a, b) => a - b)
      : marks;
    return {
      marks: all,
      beyond: false,
      seconds: (volume, pressure) => this.secondsFor(volume, pressure),
      watch: () => this.see(),
    };
  }

  /** Time the pump needs for a step: the room it makes and what the water and the air take up. */
  secondsFor(volume: number, pressure: number): number {
    const pump = this.duty?.pump;
    if (pump === undefined) return 0;
    const { walk, datum } = this;
    const grown = walk.now.volume - datum.state.volume;
    const now = pumpedFor(datum, grown, walk.now.pressure).all;
    return Math.max(0, pumpedFor(datum, grown + volume, walk.now.pressure + pressure).all - now) / pump;
  }

  /** Notes where the tank stands; true where the path has been asked to end. */
  see(): boolean {
    const { walk, datum, orders } = this;
    const moment = momentAt(datum, cloneState(walk.now), this.phase, walk.time);
    this.moments.push(moment);
    if (this.phase === 'stretch') {
      this.way.push({
        pressure: moment.pressure,
        volume: walk.now.volume,
        growth: moment.largest.growth,
        necking: neckingReserve(walk, datum),
        seam: seamUse(datum, moment.largest.growth),
        plastic: moment.plastic.anywhere,
      });
    }
    if (orders.progress?.(Math.min(1, moment.largest.growth / (orders.until ?? 0.5))) === true)
      throw new GivenUp();
    return orders.until !== undefined && moment.largest.growth >= orders.until;
  }

  /** Up to each hold, the hold, and on to the target. */
  upTheHolds(): RiseEnd {
    const { walk, target } = this;
    const origin = this.datum.state.volume;
    if (target === undefined) return { kind: 'landed' };
    for (const one of this.holdsBelow()) {
      const end = rise(walk, origin, this.riseOrders(this.marksTo(one.pressure), false), this.orders.rise);
      if (end.kind !== 'landed') return end;
      this.keep(one);
    }
    return rise(walk, origin, this.riseOrders(this.marksTo(target), false), this.orders.rise);
  }

  keep(one: Hold): void {
    this.phase = 'hold';
    hold(this.walk, this.datum, { valve: one.valve, time: one.time, watch: () => this.see() });
    this.phase = 'stretch';
  }

  arrival(end: RiseEnd): Moment | undefined {
    return end.kind === 'landed' && this.target !== undefined
      ? this.moments[this.moments.length - 1]
      : undefined;
  }

  /** The tank after the holds at the target; undefined where there are none. */
  holdAtTarget(arrived: Moment): Moment | undefined {
    const holds = this.holdsAtTarget();
    for (const one of holds) this.keep(one);
    const last = this.moments[this.moments.length - 1];
    return holds.length > 0 && last !== arrived ? last : undefined;
  }

  letOut(from: Moment): Released | undefined {
    const answer = release(this.datum, from.state, from.time);
    if (!('reason' in answer)) return answer;
    this.remarks.push({ code: 'release stuck', reason: answer.reason });
    return undefined;
  }

  onToTheMaximum(): RiseEnd {
    const { walk, orders } = this;
    if (orders.until !== undefined && largestGrowth(this.datum, walk.now).growth >= orders.until)
      return { kind: 'stopped' };
    const marks = (orders.marks ?? [])
      .filter((mark) => mark > walk.now.pressure * (1 + 1e-9))
      .sort((a, b) => a - b);
    const on = { ...this.riseOrders(marks, false), beyond: true };
    return rise(walk, this.datum.state.volume, on, orders.rise ?? STANDARD_RISE);
  }

  /** Plastic strain up to which every curve rests on evidence. */
  evidence(): number {
    return Math.min(...this.datum.solver.shell.metals.map((metal) => metal.flow.evidence));
  }

  yields(point: YieldPoint): Pick<Forecast, 'firstYield' | 'barrelYield'> {
    const { shell } = this.datum.solver;
    const piece = shell.mesh.pieces[point.element];
    const third = (3 * point.layer) / shell.settings.layers;
    const face = third < 1 ? 'inside' : third < 2 ? 'middle' : 'outside';
    const at: Place = {
      part: piece.span.part,
      z: 0.5 * (piece.a.z + piece.b.z),
      r: shell.radius[point.element],
      face,
    };
    const powerLaw = shell.steels[shell.metal[point.element]].flow.law === 'hollomon';
    if (powerLaw) this.remarks.push({ code: 'power law' });
    const barrelYield = this.proofPressure();
    return {
      ...(powerLaw ? {} : { firstYield: { pressure: point.pressure, at } }),
      ...(barrelYield === undefined ? {} : { barrelYield }),
    };
  }

  /** Pressure at which the barrel passes 0.2 % plastic strain at mid-wall, straight between moments. */
  proofPressure(): number | undefined {
    const { moments } = this;
    const past = moments.findIndex((m) => m.plastic.barrel >= PROOF);
    if (past < 0) return undefined;
    const b = moments[past];
    const a = past > 0 ? moments[past - 1] : undefined;
    if (a === undefined) return b.pressure;
    const f = (PROOF - a.plastic.barrel) / (b.plastic.barrel - a.plastic.barrel);
    return a.pressure + f * (b.pressure - a.pressure);
  }

  remarkOn(finish: RiseEnd, maximum: Limit | undefined, branch: Moment | undefined): void {
    const { target, walk, duty } = this;
    for (const h of duty?.holds ?? []) {
      if (target !== undefined && h.pressure > target * (1 + 1e-9))
        this.remarks.push({ code: 'hold above target', pressure: h.pressure });
    }
    if (finish.kind === 'stuck')
      this.remarks.push({ code: 'path stuck', reason: finish.reason, pressure: walk.now.pressure });
    if (maximum === undefined && finish.kind !== 'stopped') {
      this.remarks.push({
        code: 'no maximum',
        reason: finish.kind === 'stuck' ? finish.reason : finish.kind,
      });
    }
    const short =
      target !== undefined &&
      maximum !== undefined &&
      (branch === undefined || maximum.growth < branch.largest.growth);
    if (short) this.remarks.push({ code: 'bursts before target', target, limit: maximum });
    const evidence = this.evidence();
    if (branch !== undefined && branch.plastic.anywhere > evidence) {
      this.remarks.push({
        code: 'beyond evidence',
        plastic: branch.plastic.anywhere,
        evidence,
        pressure: branch.pressure,
      });
    }
    const holdsWithoutRate =
      (duty?.holds.length ?? 0) > 0 && this.datum.solver.shell.metals.every((m) => m.viscosity === 0);
    if (holdsWithoutRate) this.remarks.push({ code: 'no rate effect' });
  }
}
