/** One invented tank through its day, foreseen at a quarter, half and three quarters of its final growth. */
import { diceOf } from '../../core/math/dice.ts';
import { growthAt } from '../../core/stretch/quick/path.ts';
import { quickDay, rampAndHold } from '../../core/stretch/quick/day.ts';
import { quickPath, type QuickTank } from '../../core/stretch/quick/quick.ts';
import type { SteelDraw } from '../../core/steel/belief/draw.ts';
import { middleDraw } from '../../core/steel/belief/curve.ts';
import { type Range, rangeOf } from '../../core/stats/range.ts';
import { foresee, type Foresight, pointsFor } from '../../core/stretch/know/foresee.ts';
import {
  gather,
  type Gathered,
  type GatherRule,
  gatherRow,
  NOTHING_GATHERED,
  TAPE_LAID,
} from '../../core/stretch/know/gather.ts';
import { type Knowledge, knowFrom } from '../../core/stretch/know/know.ts';
import { straysOf } from '../../core/stretch/know/strays.ts';
import { type Errors, unknownsOf } from '../../core/stretch/know/unknowns.ts';
import { type LivedDay, livedDay } from './day.ts';
import {
  everySecond,
  GAUGE,
  handRows,
  realPressure,
  type Rig,
  rigOf,
  shownOf,
  TAPE,
  WIRE,
} from './instruments.ts';
import { GIRTH, TANK } from './tank.ts';
import type { World } from './world.ts';

/** The team plans for this growth on what its evidence says. */
export const PLANNED = 0.04;
/** Growth rate on arrival that the pump gives, 1/s. */
export const RATE = 4e-5;
/** Share of the planned growth at which the tank is held on the way. */
const HELD_AT = 0.25;
/** Tanks that each may be, at each look. */
const POINTS = 300;

export interface Look {
  readonly share: number;
  readonly foresight: Foresight;
  readonly knowledge: Knowledge;
}

export interface KnowTrial {
  /** Final growth; Infinity: it burst. */
  readonly growth: number;
  readonly before: Range;
  readonly looks: readonly Look[];
}

export interface TrialOrders {
  readonly seed: number;
  readonly quick: QuickTank;
  readonly world: World;
  readonly shares: readonly number[];
  readonly by: Rig['by'];
  /** How the day is lived; kept ones save time. */
  readonly live?: typeof livedDay;
}

export function knowTrial({ seed, quick, world, shares, by, live = livedDay }: TrialOrders): KnowTrial {
  const { draws, truth } = world;
  const rig = rigOf(diceOf(seed).named('rig'), by, TANK.girths.length);
  const planned = plannedFor(quick, draws);
  const day = live(truth, {
    hold: realPressure(rig, planned.hold),
    target: realPressure(rig, planned.target),
  });
  const before = rangeOf(draws.map((draw) => grownBy(quick, draw, planned.target)));
  return { growth: day.growth, before, looks: looksAt({ quick, draws, day, rig, shares, ...planned }) };
}

const grownBy = (quick: QuickTank, draw: SteelDraw, target: number): number => {
  const end = quickDay(quickPath(quick, draw), draw, rampAndHold(target, RATE));
  return end.kind === 'stands' ? end.growth : Infinity;
};

interface Looking {
  readonly quick: QuickTank;
  readonly draws: readonly SteelDraw[];
  readonly day: LivedDay;
  readonly rig: Rig;
  readonly shares: readonly number[];
  readonly target: number;
}

function looksAt({ quick, draws, day, rig, shares, target }: Looking): Look[] {
  const unknowns = unknownsOf(draws, errorsOf(rig), straysOf(quick.error));
  const points = pointsFor(unknowns, POINTS, diceOf(5));
  const rule = ruleFor(rig, target);
  const rows = new Set(rig.by === 'tape' ? handRows(day, target) : []);
  const looks: Look[] = [];
  let gathered: Gathered = NOTHING_GATHERED;
  for (let k = 1; k < day.truths.length && looks.length < shares.length; k++) {
    if (rows.has(k))
      gathered = gatherRow(gathered, shownOf(rig, day.zero, day.truths[k], day.phases[k]), rule);
    if (rig.by === 'wire')
      for (const truth of everySecond(day, k))
        gathered = gather(gathered, shownOf(rig, day.zero, truth, day.phases[k]), rule);
    const share = shares[looks.length];
    if (day.truths[k].growth < share * day.growth) continue;
    const knowledge = knowFrom(quick, unknowns, gathered.seen, looks.at(-1)?.knowledge.centre);
    looks.push({
      share,
      knowledge,
      foresight: foresee(quick, unknowns, knowledge, { target, rate: RATE, points }),
    });
  }
  return looks;
}

export const errorsOf = ({ by, girths }: Rig): Errors => {
  const { gain, zero } = by === 'wire' ? WIRE : TAPE;
  return { gauge: GAUGE, girths: girths.map(() => ({ gain, zero: zero / GIRTH })) };
};

/** Blur of one reading of a girth, mm. The tapes of the trials are read to the millimetre and always laid alike. */
const BLUR = { wire: WIRE.noise, tape: Math.hypot(TAPE.noise, TAPE_LAID) } as const;

export const ruleFor = ({ by, girths }: Rig, target: number): GatherRule => ({
  noise: { pressure: GAUGE.noise, girths: girths.map(() => BLUR[by] / GIRTH) },
  span: { pressure: 0.03 * target, growth: 0.03 * PLANNED },
});

/** Stretch pressure for the planned growth, and that of the hold on the way, of the middle steel. */
export function plannedFor(quick: QuickTank, draws: readonly SteelDraw[]): { target: number; hold: number } {
  const draw = middleDraw(draws);
  const path = quickPath(quick, draw);
  const target = pressureWhere((pressure) => grownBy(quick, draw, pressure) < PLANNED);
  const hold = pressureWhere(
    (pressure) => (growthAt(path, draw, pressure, RATE) ?? Infinity) < HELD_AT * PLANNED,
  );
  return { target, hold };
}

/** Highest pressure that is still under, by halving, MPa. */
function pressureWhere(under: (pressure: number) => boolean): number {
  let [low, high] = [0.1, 6];
  while (high - low > 1e-4) {
    const middle = (low + high) / 2;
    if (under(middle)) low = middle;
    else high = middle;
  }
  return low;
}
