/** Many rehearsed days with random faults, and what their advice must never do. */
import { diceOf } from '@hoopwright/core/gauge';
import { believe } from '@hoopwright/core/steel';
import { fitQuickTank, shellRun, variedTank } from '@hoopwright/core/stretch';
import type { Tank } from '@hoopwright/core/tank';
import { Adviser, type Stretchable } from '@hoopwright/wire/advice';
import type { Plan } from '@hoopwright/wire/plan';
import { channelsOf, FRESH_BY_HAND } from '@hoopwright/wire/reading';
import type { Draft } from '@hoopwright/wire/record';
import { MESH, testPlan, testTank } from '../../day/rehearsed.ts';
import { plateOf } from '../../range/steelRange.ts';
import { sha256 } from '../../store/hash.ts';
import { type Fault, FAULTS } from '../fault.ts';
import { rehearsal } from '../rehearsal.ts';

/** Shell solutions of the quick tank, fewer than a day has: what is judged is the advice; and steels that its range is. */
const RUNS = 36;
const DRAWS = 200;

export interface JudgedDays {
  readonly advices: number;
  readonly forecasts: number;
  readonly stops: number;
  readonly ends: ReadonlyMap<string, number>;
  /** Advice that names more than the planned stretch pressure. */
  readonly over: number;
  readonly staleLooks: number;
  readonly quietWhileStale: number;
  /** Stops whose record lacks the reason or a reading. */
  readonly bareStops: number;
}

export function judgedDays(count: number, seed: number): JudgedDays {
  const world = judgedWorld(seed);
  const ends = new Map<string, number>();
  const sum = none();
  for (let k = 0; k < count; k++) {
    const { drafts, end } = dayOf(world, seed + k);
    ends.set(end, (ends.get(end) ?? 0) + 1);
    add(sum, judged(world, drafts));
  }
  return { ...sum, ends };
}

export interface World {
  readonly tank: Tank;
  readonly plan: Plan;
  readonly stretch: Stretchable;
}

export const judgedWorld = (seed: number): World =>
  worldOf({ tank: testTank().tank, plan: testPlan() }, seed);

/** Steels of the invented test tanks, and a quick tank for them. */
export function worldOf({ tank, plan }: Omit<World, 'stretch'>, seed: number): World {
  const plate = plateOf(tank);
  const evidence = {
    plate: {
      grade: '1.4307',
      form: 'cold-rolled',
      thickness: 1.5,
      wall: 1.5,
      radius: 200,
      ...(tank.longSeam === undefined ? {} : { seamStrength: tank.longSeam.strength }),
    },
    certificates: [],
    coupons: [],
    seams: [],
    walls: [],
    rolling: [],
    trials: [],
  } as const;
  const { draws } = believe(evidence, { seed, draws: DRAWS });
  const runs = draws.slice(0, RUNS).map((draw) => ({ draw, run: shellRun(tank, plate, draw) }));
  const quick = fitQuickTank(tank, plate, runs);
  return { tank, plan, stretch: { quick, draws } };
}

/** Half of the days have a fault, one in eight two; every fourth steel is far stronger or softer than planned for. */
function dayOf({ tank, plan, stretch }: World, seed: number): { drafts: Draft[]; end: string } {
  const dice = diceOf(seed).named('judged');
  const faults: Fault[] = [];
  const chance = dice.uniform();
  for (let k = 0; k < (chance < 0.125 ? 2 : chance < 0.5 ? 1 : 0); k++)
    faults.push({ name: FAULTS[dice.below(FAULTS.length)], at: 60 + Math.floor(5000 * dice.uniform()) });
  const stubborn = dice.uniform() < 0.25 ? 0.85 + 0.35 * dice.uniform() : 1;
  const given = { plan, seed, faults, hash: sha256, program: 'soak', mesh: MESH, stretch };
  const { happenings } = rehearsal({ ...given, tank: stronger(variedTank(tank, diceOf(seed)), stubborn) });
  const drafts: Draft[] = [];
  for (;;) {
    const next = happenings.next();
    if (next.done === true) return { drafts, end: next.value.end };
    drafts.push(next.value.draft);
  }
}

function stronger(tank: Tank, times: number): Tank {
  const steel = { ...tank.courses[0].steel, biaxialFactor: times * tank.courses[0].steel.biaxialFactor };
  return { ...tank, courses: tank.courses.map((course) => ({ ...course, steel })) };
}

type Counted = { -readonly [K in keyof Omit<JudgedDays, 'ends'>]: number };

const none = (): Counted => ({
  advices: 0,
  forecasts: 0,
  stops: 0,
  over: 0,
  staleLooks: 0,
  quietWhileStale: 0,
  bareStops: 0,
});

const KEYS = ['advices', 'forecasts', 'stops', 'over', 'staleLooks', 'quietWhileStale', 'bareStops'] as const;
const add = (sum: Counted, more: Counted): void => KEYS.forEach((key) => void (sum[key] += more[key]));

/** The advice as it stands in the record; and what would be said after each row if nobody read on. */
function judged({ plan, stretch }: World, drafts: readonly Draft[]): Counted {
  const adviser = new Adviser({ plan, channels: channelsOf(plan), stretch });
  const sum = none();
  const readings = new Set<number>();
  let seconds = 0;
  drafts.forEach(({ kind, body, wall_ms }, k) => {
    if (kind === 'reading') readings.add(k + 1);
    if (kind === 'forecast') sum.forecasts += 1;
    if (kind === 'advice' && body['limit'] === undefined) {
      sum.advices += 1;
      const { reasons, readings: behind } = body;
      const said = Array.isArray(reasons) ? reasons.map(String) : [];
      sum.over += said.some((sentence) => barsIn(sentence) > plan.target.pressure_bar + 0.05) ? 1 : 0;
      if (body['state'] !== 'stop and release') return;
      sum.stops += 1;
      const known =
        Array.isArray(behind) && behind.length > 0 && behind.every((seq) => readings.has(Number(seq)));
      if (said.length === 0 || said[0] === '' || !known) sum.bareStops += 1;
    }
    if (kind !== 'reading' || typeof body['values'] !== 'object' || body['values'] === null) return;
    const values = Object.fromEntries(
      Object.entries(body['values']).map(([name, value]) => [name, Number(value)]),
    );
    const step = typeof body['step'] === 'string' ? body['step'] : '';
    seconds = wall_ms / 1000;
    adviser.take({ seconds, step, values });
    const fresh = adviser.advice(seconds, step);
    sum.over += (fresh.upTo_bar ?? 0) > plan.target.pressure_bar ? 1 : 0;
    if ((plan.steps.find(({ number }) => number === step)?.pressure_bar ?? 0) <= 0) return;
    sum.staleLooks += 1;
    const { state } = adviser.advice(seconds + FRESH_BY_HAND + 1, step);
    if (state !== 'cannot judge' && state !== 'stop and release') sum.quietWhileStale += 1;
  });
  return sum;
}

/** Pressure up to which a sentence of advice says that one may go; others name readings, which may be anything. */
const barsIn = (sentence: string): number =>
  Math.max(0, ...[...sentence.matchAll(/up to (\d+(?:\.\d+)?) bar/g)].map(([, bar]) => Number(bar)));
