/** The simulated site: the tank, the pump, the valves and the instruments, and the time that passes there. */
import { type Ailment, type Dice, type Instrument, shown } from '@hoopwright/core/gauge';
import {
  type Act,
  advance,
  burst,
  filledAgain,
  justFilled,
  type Lived,
  type LivedTank,
  type Truth,
  truthBetween,
  truthOf,
} from '@hoopwright/core/stretch';
import { fromBar, toBar } from '@hoopwright/core/units';
import type { Channel } from '@hoopwright/wire/reading';
import type { Fault } from './fault.ts';
import { pressureFor, reads, type RigChannel, rigChannel, type RigWorld, truthIn } from './instruments.ts';

export interface SiteParts {
  readonly lived: LivedTank;
  readonly channels: readonly Channel[];
  readonly dice: Dice;
  readonly faults: readonly Fault[];
  /** mm³/s that the pump gives at most. */
  readonly flow: number;
  /** mL a stroke. */
  readonly stroke: number;
  /** Pressure at which the relief valve opens, bar: no pump brings the tank above it. */
  readonly relief: number;
  /** Highest pressure that the tank has seen on an earlier day, bar; absent: as welded. */
  readonly seen_bar?: number;
}

/** What pump and valves have been told to do. Pressures as the gauge shows them, bar. */
export type Order =
  | { readonly kind: 'pump'; readonly to: number }
  | { readonly kind: 'shut' }
  | { readonly kind: 'release'; readonly to: number };

/** Guards the state of the site; nothing else changes in a rehearsal. */
export class Site {
  readonly parts: SiteParts;
  readonly world: RigWorld;
  private now: Lived;
  private rigs: Map<string, RigChannel>;
  private waiting: readonly Fault[];
  private before: Truth;
  private truth: Truth;

  constructor(parts: SiteParts) {
    this.parts = parts;
    this.world = { girths: parts.lived.tank.girths.map(({ name }) => name), stroke: parts.stroke };
    const { lived, seen_bar, flow } = parts;
    this.now = seen_bar === undefined ? justFilled(lived) : filledAgain(lived, fromBar(seen_bar), flow);
    this.rigs = new Map(parts.channels.map((channel) => [channel.name, rigChannel(channel, parts.dice)]));
    this.waiting = [...parts.faults].sort((a, b) => a.at - b.at);
    this.truth = truthOf(parts.lived, this.now);
    this.before = this.truth;
  }

  get seconds(): number {
    return this.now.seconds;
  }

  get burst(): Lived['burst'] {
    return this.now.burst;
  }

  /** What a perfect instrument would read at the end of the time passed so far. */
  get real(): Truth {
    return this.truth;
  }

  /** Lets time pass under an order; faults come when they are due. */
  pass(seconds: number, order: Order): void {
    const end = this.now.seconds + seconds;
    this.before = this.truth;
    while (this.now.seconds < end - 1e-9) {
      const [next] = this.waiting;
      const until = next === undefined ? end : Math.min(Math.max(next.at, this.now.seconds), end);
      if (until > this.now.seconds) this.now = advance(this.parts.lived, this.now, this.actFor(order, until));
      this.truth = truthOf(this.parts.lived, this.now);
      if (next !== undefined && next.at <= this.now.seconds + 1e-9) this.befall(next);
    }
  }

  private actFor(order: Order, until: number): Act {
    const seconds = until - this.now.seconds;
    if (order.kind === 'shut') return { does: 'rest', seconds };
    const gauge = this.gauge();
    const wanted = gauge === undefined ? order.to : pressureFor(gauge, order.to, this.now.seconds);
    if (order.kind === 'pump') {
      const upTo = fromBar(Math.min(wanted, this.parts.relief));
      return upTo > 0 ? { does: 'pump', seconds, flow: this.parts.flow, upTo } : { does: 'rest', seconds };
    }
    const down = toBar(this.truth.pressure) <= (order.to === 0 ? 0 : wanted);
    return down ? { does: 'rest', seconds } : { does: 'bleed', seconds, opening: OPENING };
  }

  private gauge(): RigChannel | undefined {
    return [...this.rigs.values()].find(({ channel }) => channel.reads === 'pressure');
  }

  /** Reads an instrument; undefined where it says nothing. `at`: within the time passed last. */
  read(name: string, at: number = this.now.seconds): number | undefined {
    const rig = this.rigs.get(name);
    if (rig === undefined) return undefined;
    const truth = at >= this.truth.seconds ? this.truth : truthBetween(this.before, this.truth, at);
    return reads(rig, truth, { world: this.world, dice: this.parts.dice.named(`${name} ${at}`) });
  }

  /** The vent is opened, most of the air let out, the tank topped up and shut again; litres count anew. */
  bleedAir(): void {
    this.moreAir((LEFT_AFTER_BLEEDING - 1) * this.now.air);
    this.now = { ...this.now, drawn: 0 };
  }

  /** Air in the place of water, at no pressure. */
  private moreAir(volume: number): void {
    this.now = { ...this.now, air: this.now.air + volume, water: this.now.water - volume };
  }

  /** A fault that nobody had planned: it comes with the time that passes next. */
  suffer(fault: Fault): void {
    this.waiting = [fault, ...this.waiting];
  }

  private befall({ name }: Fault): void {
    this.waiting = this.waiting.slice(1);
    if (name === 'leak') this.now = { ...this.now, leak: LEAK };
    if (name === 'air') this.moreAir(EXTRA_AIR * this.parts.lived.datum.volume);
    if (name === 'burst') {
      this.now = burst(this.parts.lived, this.now, 'ordered');
      this.truth = truthOf(this.parts.lived, this.now);
    }
    const from = this.now.seconds;
    if (name === 'gauge-stuck') this.ail('pressure', (rig) => ({ kind: 'stuck', from, at: this.clean(rig) }));
    if (name === 'gauge-drifting') this.ail('pressure', () => ({ kind: 'drifts', from, rate: DRIFT }));
    if (name === 'wire-slipping') this.ail('girth', () => ({ kind: 'slipped', from, by: SLIP }));
  }

  private clean({ channel, instrument }: RigChannel): number {
    const truth = truthIn(channel, this.truth, this.world) ?? 0;
    const quiet: Instrument = { ...instrument, noise: 0 };
    return shown(quiet, { truth, seconds: this.now.seconds, dice: 0 }) ?? 0;
  }

  /** Befalls the first channel of its kind. */
  private ail(what: Channel['reads'], ailment: (rig: RigChannel) => Ailment): void {
    const rig = [...this.rigs.values()].find(({ channel }) => channel.reads === what);
    if (rig === undefined) return;
    this.rigs.set(rig.channel.name, { ...rig, ailments: [...rig.ailments, ailment(rig)] });
  }
}

// Strength of the faults and of the release valve: our choice for rehearsals, no source.
/** mm³/s at 1 MPa: 60 mL/min at 27 bar. */
const LEAK = 600;
/** Of the volume of the tank. */
const EXTRA_AIR = 6e-3;
const LEFT_AFTER_BLEEDING = 0.1;
/** bar/s: 0.1 bar a minute. */
const DRIFT = 0.1 / 60;
/** mm. */
const SLIP = 2;
/** mm³/s at 1 MPa: lets a demo tank down in three minutes. */
const OPENING = 15e3;
