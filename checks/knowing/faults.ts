/** Faults on invented tanks: a soft course, a weak girth seam, a gauge that is high, a wire that slips; and sound tanks. */
import { type Dice, diceOf } from '../../core/math/dice.ts';
import { middleDraw } from '../../core/steel/belief/curve.ts';
import { advance, justFilled, livedTank } from '../../core/stretch/lived/lived.ts';
import { type Truth, truthBetween, truthOf } from '../../core/stretch/lived/truth.ts';
import { drawnTank } from '../../core/stretch/quick/drawn.ts';
import type { QuickPath } from '../../core/stretch/quick/path.ts';
import { quickPath, type QuickTank } from '../../core/stretch/quick/quick.ts';
import { elasticBy, type ElasticPoint, gaugesApart } from '../../core/stretch/know/odd/gauges.ts';
import {
  type Explained,
  type Explanation,
  gaugesExplained,
  partedExplained,
} from '../../core/stretch/know/odd/explain.ts';
import { partedGirth } from '../../core/stretch/know/odd/parted.ts';
import { SLIP_READINGS, slipOf } from '../../core/stretch/know/odd/slip.ts';
import type { Steel } from '../../core/steel/steel.ts';
import type { Tank } from '../../core/tank/tank.ts';
import { FLOW, GIRTH, STEEL, TANK } from './tank.ts';
import { GAUGE, WIRE } from './instruments.ts';
import { PLANNED, plannedFor } from './trial.ts';
import { type World, worldOf } from './world.ts';

export const FAULTS = ['none', 'soft course', 'weak girth seam', 'gauge high', 'wire slips'] as const;
export type FaultKind = (typeof FAULTS)[number];

export interface FaultTrial {
  readonly fault: FaultKind;
  /** Growth of the largest girth when it was called, and when it could first be seen; undefined: never. */
  readonly called?: number;
  readonly observable?: number;
  readonly explained?: Explained;
  /** What it is. */
  readonly truth?: Explanation;
}

const MESH = { elements: 60, layers: 5 } as const;
const SOFT = 0.92;
const WEAK = 0.8;
const SEAM_WIDTH = 6;
const HIGH = 1.05;
const SLIP = 2;
/** Standard deviations of noise at which the effect of a fault could be seen in one reading. */
const SEEN = 3;

export interface FaultOrders {
  readonly seed: number;
  readonly fault: FaultKind;
  readonly quick: QuickTank;
}

export function faultTrial({ seed, fault, quick }: FaultOrders): FaultTrial {
  const world = worldOf(seed, 4, 100);
  const dice = diceOf(seed).named('fault');
  const path = quickPath(quick, middleDraw(world.draws));
  const { target } = plannedFor(quick, world.draws);
  const site = siteOf(world, { fault, dice, target });
  const watch = new Watch(path, { gauge: GAUGE, seamAt: SEAM_GIRTH });
  let observable: number | undefined;
  for (const { truth, shown } of site) {
    if (observable === undefined && shown.effect > SEEN) observable = truth.growth;
    const found = watch.look(shown);
    if (found === undefined) continue;
    return {
      fault,
      called: truth.growth,
      explained: found,
      ...(observable === undefined ? {} : { observable }),
      ...(TRUE[fault] === undefined ? {} : { truth: TRUE[fault] }),
    };
  }
  return { fault, ...(observable === undefined ? {} : { observable }) };
}

const TRUE: Readonly<Partial<Record<FaultKind, Explanation>>> = {
  'soft course': 'soft course',
  'weak girth seam': 'weak girth seam',
  'gauge high': 'first gauge high',
  'wire slips': 'wire slipped',
};
const SEAM_GIRTH = TANK.girths.findIndex(({ name }) => name === 'seam');

interface ShownNow {
  readonly gauges: readonly [number, number];
  readonly girths: readonly number[];
  /** How far the fault shows in one reading, in standard deviations of its noise. */
  readonly effect: number;
}

interface SiteGivens {
  readonly fault: FaultKind;
  readonly dice: Dice;
  readonly target: number;
}

/** The way up to the stretch pressure and ten minutes of the hold there, once a second. */
function* siteOf(
  world: World,
  { fault, dice, target }: SiteGivens,
): Generator<{ truth: Truth; shown: ShownNow }> {
  const tank = faulty(drawnTank(TANK, STEEL, world.truth), fault, dice);
  const lived = livedTank(tank, { shell: MESH });
  let now = justFilled(lived);
  let before = truthOf(lived, now);
  const zero = before.girths;
  const grownIn = ({ girths }: Truth): number[] => girths.map((girth, i) => girth - zero[i]);
  const gains = [0, 1].map(() => 1 + GAUGE.gain * dice.normal());
  if (fault === 'gauge high') gains[0] *= HIGH;
  const zeros = [0, 1].map(() => GAUGE.zero * dice.normal());
  const wires = TANK.girths.map(() => 1 + WIRE.gain * dice.normal());
  // Somewhere on the way: while it is still elastic, or while it yields.
  const slipAt = (0.3 + 0.65 * dice.uniform()) * target;
  const slips = dice.below(TANK.girths.length);
  let slipped = 0;
  const gaugeAt = (k: 0 | 1, { pressure }: Truth): number =>
    gains[k] * pressure + zeros[k] + GAUGE.noise * dice.normal();
  const show = (truth: Truth): ShownNow => {
    if (fault === 'wire slips' && truth.pressure > slipAt) slipped = SLIP;
    return {
      gauges: [gaugeAt(0, truth), gaugeAt(1, truth)],
      girths: truth.girths.map(
        (girth, i) =>
          (wires[i] * (girth - zero[i]) + (i === slips ? slipped : 0) + WIRE.noise * dice.normal()) / zero[i],
      ),
      effect: effectOf(fault, grownIn(truth), { pressure: truth.pressure, slipped }),
    };
  };
  for (let spent = 0; spent < 600 && now.burst === undefined; ) {
    const there = now.walk.now.pressure >= target * (1 - 1e-6);
    const step = there ? 10 : 2;
    now = advance(lived, now, { does: 'pump', flow: FLOW, upTo: target, seconds: step });
    if (there) spent += step;
    if (now.burst !== undefined) return;
    const truth = truthOf(lived, now);
    for (let s = Math.ceil(before.seconds + 1e-9); s <= truth.seconds; s++) {
      const at = truthBetween(before, truth, s);
      yield { truth: at, shown: show(at) };
    }
    before = truth;
  }
}

/** What a reading without noise is off by because of the fault, over the noise and calibration of what shows it. */
function effectOf(
  fault: FaultKind,
  [low, seam, high]: readonly number[],
  { pressure, slipped }: { readonly pressure: number; readonly slipped: number },
): number {
  const sound = Math.hypot(WIRE.noise, WIRE.gain * low) * Math.SQRT2;
  switch (fault) {
    case 'none':
      return 0;
    case 'soft course':
      return Math.abs(high - low) / sound;
    case 'weak girth seam':
      return Math.abs(seam - 0.5 * (low + high)) / sound;
    case 'gauge high':
      return (
        ((HIGH - 1) * pressure) / (Math.SQRT2 * Math.hypot(GAUGE.noise, GAUGE.zero, GAUGE.gain * pressure))
      );
    case 'wire slips':
      return slipped / WIRE.noise;
  }
}

const weaker = (steel: Steel, factor: number): Steel => ({
  ...steel,
  biaxialFactor: factor * steel.biaxialFactor,
});

function faulty(tank: Tank, fault: FaultKind, dice: Dice): Tank {
  const [{ steel }] = tank.courses;
  const { at } = TANK.girths[SEAM_GIRTH];
  if (fault === 'weak girth seam')
    return { ...tank, girthSeams: [{ at, width: SEAM_WIDTH, steel: weaker(steel, WEAK) }] };
  if (fault !== 'soft course') return tank;
  const soft = dice.below(tank.courses.length);
  return {
    ...tank,
    courses: tank.courses.map((course, i) =>
      i === soft ? { ...course, steel: weaker(steel, SOFT) } : course,
    ),
  };
}

interface WatchGivens {
  readonly gauge: typeof GAUGE;
  readonly seamAt: number;
}

/** Guards what was shown so far; calls each fault once. */
class Watch {
  private readonly path: QuickPath;
  private readonly givens: WatchGivens;
  private readonly girths: number[][] = TANK.girths.map(() => []);
  private readonly elastic: ElasticPoint[] = [];
  private readonly parted: { by: number; growth: number }[] = [];
  private sums = { first: 0, second: 0, count: 0 };

  constructor(path: QuickPath, givens: WatchGivens) {
    this.path = path;
    this.givens = givens;
  }

  look(shown: ShownNow): Explained | undefined {
    return this.slip(shown) ?? this.gauges(shown) ?? this.apart(shown);
  }

  private slip({ girths }: ShownNow): Explained | undefined {
    girths.forEach((girth, i) => {
      this.girths[i].push(girth);
      if (this.girths[i].length > SLIP_READINGS) this.girths[i].shift();
    });
    const blur = WIRE.noise / GIRTH;
    const jumps = this.girths.map((readings) => slipOf({ readings, blur }));
    // All that jump together are the tank, not a wire.
    if (jumps.filter((jump) => jump !== undefined).length !== 1) return undefined;
    const i = jumps.findIndex((jump) => jump !== undefined);
    const points = [{ by: jumps[i] ?? 0, growth: girths[i] }];
    return partedExplained({ points, blur, nearSeam: i === this.givens.seamAt, jumped: true });
  }

  private gauges({ gauges, girths }: ShownNow): Explained | undefined {
    const mean = girths.reduce((sum, x) => sum + x, 0) / girths.length;
    if (mean < ELASTIC) this.elastic.push({ pressures: gauges, growth: mean });
    const { noise, zero, gain } = this.givens.gauge;
    this.sums = {
      first: this.sums.first * KEEP + gauges[0],
      second: this.sums.second * KEEP + gauges[1],
      count: this.sums.count * KEEP + 1,
    };
    const { count } = this.sums;
    if (count < 4) return undefined;
    const ratio = gaugesApart({
      first: this.sums.first / count,
      second: this.sums.second / count,
      count,
      noise,
      zero,
      gain,
    });
    if (ratio === undefined) return undefined;
    const model = this.path.girths[0][0] / this.path.pressure[0];
    return gaugesExplained(ratio, elasticBy(this.elastic, model), SLOPE);
  }

  private apart({ girths }: ShownNow): Explained | undefined {
    const growths = this.girths.map((readings) => {
      const last = readings.slice(-5);
      return last.reduce((sum, x) => sum + x, 0) / last.length;
    });
    const blur = WIRE.noise / GIRTH / Math.sqrt(5);
    const found = partedGirth({ growths, path: this.path, blur, gain: WIRE.gain });
    if (found === undefined) return undefined;
    this.parted.push({ by: found.by, growth: girths[found.girth] });
    if (this.parted.length < 3) return undefined;
    return partedExplained({
      points: this.parted,
      blur,
      nearSeam: found.girth === this.givens.seamAt,
      jumped: false,
    });
  }
}

/** Growth under which the tank is elastic for the slopes of its girths. */
const ELASTIC = 0.0008;
/** Share of the gauges' past that is kept from one second to the next. */
const KEEP = 0.9;
/** Spread of an elastic slope over the model: wall 2 %, gain of the wires. */
const SLOPE = 0.021;
export { PLANNED };
