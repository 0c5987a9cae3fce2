/** The day that is killed: 12 channels at 50 Hz into a test that is under way, as the server runs it. */
import { performance } from 'node:perf_hooks';
import { channelsOf, type Channel } from '@hoopwright/wire/reading';
import { fold } from '@hoopwright/wire/day';
import { freeze } from '@hoopwright/wire/plan';
import type { Body, Link } from '@hoopwright/wire/record';
import type { Laptop } from '../day/surroundings.ts';
import { emptyFold } from '../day/live/kept.ts';
import { LiveDay } from '../day/live/live.ts';
import { testPlan } from '../day/rehearsed.ts';
import type { Later, Source } from '../instrument/source.ts';
import { sha256 } from '../store/hash.ts';
import { openStore } from '../store/sqlite/open.ts';
import type { Store } from '../store/store.ts';

const EVERY_MS = 20;
/** Counts the readings of a run, so that a missing one shows. */
export const COUNTER = 'strain 1';

const laptop: Laptop = { power: () => 'mains', free_MB: () => 9000, stayAwake: () => () => {} };
const later: Later = (ms, work) => {
  const timer = setTimeout(work, ms);
  return () => clearTimeout(timer);
};

/** Goes on with the day that the base holds, or begins one; runs until it is killed. `told`: each durable entry. */
export async function sufferDay(dir: string, told: (link: Link) => void): Promise<void> {
  const store = openStore(dir);
  const [line] = store.records.list();
  const about = line?.about ?? store.records.begin({ kind: 'test', title: 'Dunlin, invented' }).about;
  let { fold: before, digest } = emptyFold(about);
  for (const link of store.records.entries(about.record))
    [before, digest] = [fold(before, link), link.digest];
  const day = dayOn(store, { before, digest }, told);
  if (line === undefined) await opened(day);
  else await day.write('start', { program: 'victim', again: true });
  day.start();
}

type Stand = ReturnType<typeof standOf>;
const standOf = (before: ReturnType<typeof emptyFold>['fold'], digest: string) => ({ before, digest });

function dayOn(store: Store, { before, digest }: Stand, told: (link: Link) => void): LiveDay {
  const { about } = before.state;
  const parts = {
    records: store.records,
    about,
    clock: { now: () => ({ mono_ms: performance.now(), wall_ms: Date.now() }), speed: 1 },
    later,
    laptop,
    sources: [counting()],
    mirror: { wrote: told, flush: () => undefined },
    log: (error: unknown) => console.error(error),
  };
  return new LiveDay(parts, before, digest);
}

/** Beside the plan's own channels. */
const MORE = Array.from({ length: 7 }, (_, i) => `strain ${i + 1}`);

function channels(): Channel[] {
  const more = MORE.map((name): Channel => {
    const place = { from: 'behind the wall', upTo_bar: 30, resolution: 1 } as const;
    return { name, reads: 'strain', by: 'gauge', ...place };
  });
  return [...channelsOf(testPlan()), ...more].map((channel) => ({ ...channel, fresh_s: 5 }));
}

async function opened(day: LiveDay): Promise<void> {
  const frozen = freeze(testPlan(), { name: 'victim', revision: 'A', date: '2026-05-03' }, sha256);
  const asBody = (value: object): Body => JSON.parse(JSON.stringify(value));
  await Promise.all([
    day.write('start', { program: 'victim' }),
    day.write('set-up', asBody({ channels: channels() })),
    day.write('plan', asBody(frozen)),
    day.write('step', { step: '1', kind: 'fill', pressure_bar: 0 }),
    day.write('decision', { decision: 'vent shut', step: '1', by: 'A. Invented' }),
    day.write('step', { step: '2', kind: 'seat', pressure_bar: 1.5 }),
  ]);
}

/** What a tank shows that stands still at the seating pressure, by the plan's channels. */
const STILL = { 'gauge A': 1.5, 'gauge B': 1.6, low: 1263.1, high: 1263.2, weighing: 0.25 };

/** 12 channels that stand still, and one of them counts. */
function counting(): Source {
  const still = { ...STILL, ...Object.fromEntries(MORE.map((name) => [name, 40])) };
  return {
    name: 'box',
    start: (told) => {
      let count = 0;
      const timer = setInterval(() => {
        count += 1;
        told.reading({ ...still, [COUNTER]: count });
      }, EVERY_MS);
      return { accept: () => {}, stop: () => Promise.resolve(clearInterval(timer)) };
    },
  };
}
