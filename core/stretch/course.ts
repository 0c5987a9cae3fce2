/** A tank on its way: up to a pressure, through a hold, on to the maximum, with everything seen noted down. */
import { shellOf, STANDARD } from '../shell/shell.ts';
import { solverFor } from '../shell/solve.ts';
import { cloneState } from '../shell/state.ts';
import type { Duty, Hold, Tank } from '../tank/tank.ts';
import { GRAVITY } from '../units.ts';
import { type Datum, datumOf, type Moment, momentAt, pumpedFor } from './growth.ts';
import { hold } from './hold.ts';
import { neckingReserve, type Waypoint } from './limit/limit.ts';
import type { ForecastOrders } from './orders.ts';
import { GivenUp } from './orders.ts';
import { elasticStride, rise, type RiseEnd, type RiseOrders, type YieldPoint } from './rise.ts';
import { seamUse } from './limit/seams.ts';
import { type Walk, walkFrom } from './walk.ts';
import { waterDensity } from './water.ts';

/** Why the way ended. */
export type Finish =
  | RiseEnd
  /** In a hold no balance is found any more. */
  | { readonly kind: 'gives way'; readonly pressure: number; readonly after: number }
  /** A flat head dishes. */
  | { readonly kind: 'flat head' };

/** Growth of girth at which the progress shown is complete: few paths go further. */
const USUAL_END = 0.5;

/** Guards the walk and what has been seen of it; nothing else changes. */
export class Course {
  readonly walk: Walk;
  readonly datum: Datum;
  readonly start: Moment;
  readonly moments: Moment[] = [];
  readonly way: Waypoint[] = [];
  /** Place and pressure of first yield, as far as it is known. */
  yieldPoint: YieldPoint | undefined;
  private readonly orders: ForecastOrders;
  private readonly pump: number | undefined;
  private phase: Moment['phase'] = 'stretch';
  private elastic = true;
  private stopped = false;

  constructor(tank: Tank, duty: Duty | undefined, orders: ForecastOrders) {
    this.orders = orders;
    this.pump = duty?.pump;
    const shell = shellOf(tank, orders.shell ?? STANDARD);
    const upright = tank.stand?.axis === 'upright';
    const weight = upright ? waterDensity(tank.water.temperature) * GRAVITY : 0;
    this.walk = walkFrom(solverFor(shell, weight, tank.stand?.gauge ?? tank.length / 2));
    this.datum = datumOf(this.walk.solver, cloneState(this.walk.now));
    this.start = momentAt(this.datum, this.datum.state, 'stretch', 0);
    this.note(this.start, Infinity);
  }

  /** Pumps up to a pressure; elastic in long strides, then step by step. */
  upTo(pressure: number): RiseEnd {
    return this.rise(
      [...this.marksUnder(pressure), pressure].filter((mark) => mark > 0),
      false,
    );
  }

  /** Pumps on until the pressure falls. */
  beyond(): RiseEnd {
    return this.rise(this.marksUnder(Infinity), true);
  }

  /** Holds where it stands. */
  keep({ valve, time }: Pick<Hold, 'valve' | 'time'>): Finish | undefined {
    const { pressure } = this.walk.now;
    this.phase = 'hold';
    const settings = this.orders.hold;
    const end = hold(this.walk, this.datum, { valve, time, settings, watch: () => this.see() });
    this.phase = 'stretch';
    if (end.kind === 'gives way') return { kind: 'gives way', pressure, after: end.after };
    return this.stopped ? { kind: 'stopped' } : undefined;
  }

  /** Plastic strain up to which every curve rests on evidence. */
  evidence(): number {
    return Math.min(...this.datum.solver.shell.metals.map((metal) => metal.flow.evidence));
  }

  private rise(marks: readonly number[], beyond: boolean): RiseEnd {
    const { walk } = this;
    const orders: RiseOrders = {
      marks,
      beyond,
      seconds: (volume, pressure) => this.secondsFor(volume, pressure),
      watch: () => this.see(),
    };
    if (this.elastic) {
      this.yieldPoint = elasticStride(walk, orders);
      const top = marks.at(-1);
      // A stride that ends under the last mark has ended at first yield.
      this.elastic = !beyond && top !== undefined && walk.now.pressure >= top * (1 - 1e-9);
    }
    return this.stopped ? { kind: 'stopped' } : rise(walk, walk.origin, orders, this.orders.rise);
  }

  /** Pressures to land on from here up to `top`, rising, each once. */
  private marksUnder(top: number): number[] {
    const from = this.walk.now.pressure * (1 + 1e-9);
    const marks = (this.orders.marks ?? []).filter((mark) => mark > from && mark < top * (1 - 1e-9));
    return [...new Set(marks)].sort((a, b) => a - b);
  }

  /** Time the pump needs for a step: the room it makes and what the water and the air take up. */
  private secondsFor(volume: number, pressure: number): number {
    const { walk, datum, pump } = this;
    if (pump === undefined) return 0;
    const grown = walk.now.volume - datum.state.volume;
    const now = pumpedFor(datum, grown, walk.now.pressure).all;
    return Math.max(0, pumpedFor(datum, grown + volume, walk.now.pressure + pressure).all - now) / pump;
  }

  /** Notes where the tank stands; true where the path has been asked to end. */
  private see(): boolean {
    const { walk, datum, orders } = this;
    const moment = momentAt(datum, cloneState(walk.now), this.phase, walk.time);
    this.moments.push(moment);
    if (this.phase === 'stretch') this.note(moment, neckingReserve(walk, datum));
    const { growth } = moment.largest;
    if (orders.progress?.(Math.min(1, growth / (orders.until ?? USUAL_END))) === true) throw new GivenUp();
    this.stopped = orders.until !== undefined && growth >= orders.until;
    return this.stopped;
  }

  private note(moment: Moment, necking: number): void {
    this.way.push({
      pressure: moment.pressure,
      volume: moment.state.volume,
      growth: moment.largest.growth,
      necking,
      seam: seamUse(this.datum, moment.largest.growth),
      plastic: moment.plastic.anywhere,
    });
  }
}
