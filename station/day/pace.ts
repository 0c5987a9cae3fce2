/** For the long-running checks: a test under way whose readings a node sends by HTTP, its clock so many times faster. */
import { performance } from 'node:perf_hooks';
import { freeze, type Plan } from '@hoopwright/wire/plan';
import { type Channel, channelsOf, type SourceSetUp } from '@hoopwright/wire/reading';
import { sha256 } from '../store/hash.ts';
import type { Store } from '../store/store.ts';
import { Days, type DaysParts } from './days.ts';
import type { LiveDay } from './live/live.ts';
import { TEST_TANK, testPlan } from './rehearsed.ts';

const NAMES: Readonly<Record<string, string>> = {
  a: 'gauge A',
  b: 'gauge B',
  l: 'low',
  h: 'high',
  w: 'weighing',
};
const STRAINS = ['s1', 's2', 's3', 's4', 's5', 's6', 's7'];
/** s after which a reading by wire is old. */
const FRESH = 5;

/** Standard deviation of the wobble that the node sends, by what is read. */
const NOISE: Readonly<Partial<Record<Channel['reads'], number>>> = {
  pressure: 0.02,
  girth: 0.05,
  litres: 0.001,
  strain: 3,
};

export interface PaceDay {
  readonly days: Days;
  readonly live: LiveDay;
  readonly record: string;
}

export interface PaceOrders {
  /** Times real time. */
  readonly fast: number;
  /** Another tank than the test tank: its file, its plan, and the channels that the node sends, by its own names for them. */
  readonly on?: {
    readonly file: object;
    readonly plan: Plan;
    readonly names: Readonly<Record<string, string>>;
  };
  readonly adviser?: NonNullable<DaysParts['adviser']>;
  /** Beside the node that sends by HTTP. */
  readonly sources?: readonly SourceSetUp[];
}

/** 12 channels, the plan's and strain gauges; the vent is shut and the seating runs. */
export async function openPaceDay(
  store: Store,
  { fast, sources = [], on, adviser }: PaceOrders,
): Promise<PaceDay> {
  const { file, plan, names: own } = on ?? { file: TEST_TANK, plan: testPlan(), names: NAMES };
  const { project } = store.projects.create({ name: 'INVENTED: Dunlin', file: JSON.stringify(file) });
  const frozen = freeze(plan, { name: 'pace', revision: 'A', date: '2026-05-03' }, sha256);
  store.plans.keep(project.id, frozen);
  const began = Date.now();
  const real = (): number => fast * performance.now();
  const start = real();
  const days = new Days({
    store,
    laptop: { power: () => 'mains', free_MB: () => 9000, stayAwake: () => () => {} },
    later: (ms, work) => {
      const timer = setTimeout(work, ms);
      return () => clearTimeout(timer);
    },
    real,
    wall: () => began + real() - start,
    log: (error) => console.error(error),
    ...(adviser === undefined ? {} : { adviser }),
  });
  const names = { ...own, ...Object.fromEntries(STRAINS.map((name) => [name, name])) };
  const begun = await days.begin({
    project: project.id,
    plan: frozen.frozen.digest,
    kind: 'test',
    director: 'A. Invented',
    sources: [{ kind: 'http', name: 'node', names }, ...sources],
    channels: channels(plan, fast),
  });
  if (begun.kind !== 'done') throw new Error(JSON.stringify(begun.issue));
  const live = begun.day;
  const by = 'A. Invented';
  await live.order({ order: 'vent shut', by });
  await live.order({ order: 'go on', by, from: plan.steps[0].number });
  return { days, live, record: live.parts.about.record };
}

function channels(plan: Plan, fast: number): Channel[] {
  const strains = STRAINS.map(
    (name): Channel => ({
      name,
      reads: 'strain',
      by: 'gauge',
      from: 'behind the wall',
      upTo_bar: 30,
      resolution: 0.1,
    }),
  );
  return [...channelsOf(plan), ...strains].map((channel) => ({
    ...channel,
    noise: NOISE[channel.reads] ?? 0,
    resolution: channel.reads === 'pressure' ? 0.01 : channel.resolution,
    fresh_s: FRESH * fast,
  }));
}

/** What the node sends at its n-th look: 5 channels of the plan and 7 strains, each a little noisy. */
export function paceLine(n: number): string {
  const wobble = (i: number): number => Math.sin(12.9898 * (n + 1) + 78.233 * i);
  const values: Record<string, number> = {
    a: 1.5 + 0.02 * wobble(0),
    b: 1.5 + 0.02 * wobble(1),
    l: 1263.1 + 0.05 * wobble(2),
    h: 1263.2 + 0.05 * wobble(3),
    w: 0.25 + 0.001 * wobble(4),
  };
  for (let i = 1; i <= 7; i++) values[`s${i}`] = 40 + 3 * wobble(4 + i);
  return `${JSON.stringify(values)}\n`;
}
