import type { Solved, Stretchable } from '@hoopwright/wire/advice';
import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { ADVICE_STATES, type Fold, fold, type Readying, startFold } from '@hoopwright/wire/day';
import { aboutDigest, type Body, type Draft, tie } from '@hoopwright/wire/record';
import { rehearsed } from '../day/rehearsed.ts';
import { judgedWorld } from '../rig/judged/days.ts';
import { chainHash } from '../store/hash.ts';
import { answerAdvise } from '../worker/advise.ts';
import { LiveAdviser, type LiveAdviserParts, newIn } from './liveAdviser.ts';

const { stretch } = judgedWorld(90_000);

interface Making {
  readonly make?: LiveAdviserParts['stretch'];
  /** Called before each entry is heard. */
  readonly before?: (seq: number) => void;
  readonly log?: LiveAdviserParts['log'];
  readonly ask?: LiveAdviserParts['ask'];
  readonly change?: (drafts: readonly Draft[]) => Draft[];
}
const kept = async () => stretch;
const raised = (error: unknown): never => {
  throw error;
};

/** A rehearsed day is heard entry by entry, as the live day has it; its clock stands where the test puts it. */
async function heard(until: number, { make = kept, before, log = raised, ask, change }: Making = {}) {
  const { about, drafts: byHand } = rehearsed(3);
  const drafts = change?.(byHand) ?? byHand;
  const digest = aboutDigest(about, chainHash);
  let now: Fold = startFold(about, digest);
  let wall = 0;
  const looks: (() => void)[] = [];
  const written: { kind: 'forecast' | 'advice'; body: Body; at: number }[] = [];
  const adviser = new LiveAdviser({
    ask: ask ?? (async (message) => answerAdvise(message)),
    stretch: make,
    later: (_ms, work) => {
      looks.push(work);
      return () => {};
    },
    now: () => wall,
    log,
  });
  for (const link of tie({ seq: 0, digest }, drafts.slice(0, until), chainHash)) {
    before?.(link.entry.seq);
    now = fold(now, link);
    wall = link.entry.wall_ms;
    adviser.heard(now, (kind, body) => written.push({ kind, body, at: now.state.seq }));
    await settled();
  }
  return { about, digest, adviser, written, now, looks, pass: (ms: number) => void (wall += ms) };
}

const settled = (): Promise<void> =>
  new Promise((resolve) => {
    setImmediate(resolve);
  });

test('a day that is heard row by row has its forecasts and advice, with reasons and readings', async () => {
  const { written, adviser } = await heard(40);
  adviser.close();
  const forecasts = written.filter(({ kind }) => kind === 'forecast');
  const advice = written.filter(({ kind }) => kind === 'advice');
  expect(forecasts.length).toBeGreaterThan(3);
  expect(advice.length).toBeGreaterThan(2);
  for (const { body } of advice) {
    expect(ADVICE_STATES).toContain(body['state']);
    expect(Array.isArray(body['reasons']) && body['reasons'].length).toBeGreaterThan(0);
  }
  // The quiet sentence names the pressure of its own step.
  const quiet = advice.flatMap(({ body }) =>
    body['state'] === ADVICE_STATES[0] ? [JSON.stringify(body['reasons'])] : [],
  );
  expect(new Set(quiet.map((says) => /up to ([\d.]+) bar/.exec(says)?.[1])).size).toBeGreaterThan(2);
  // What says the same again is not written again.
  const said = advice.map(({ body }) => JSON.stringify([body['state'], body['reasons']]));
  expect(said.filter((one, i) => one === said[i - 1])).toEqual([]);
});

test('when the readings stop it says by itself that it cannot judge', async () => {
  const { written, looks, pass, adviser } = await heard(40);
  pass(400_000);
  const before = written.length;
  looks.at(-1)?.();
  await settled();
  adviser.close();
  expect(written.length).toBeGreaterThan(before);
  expect(written.at(-1)?.body['state']).toBe('cannot judge');
});

/** Of a rise, read by wire 100 times a second for two seconds, 0.02 bar and 0.02 mm apart. */
function quickly(drafts: readonly Draft[], ofWall = true): Draft[] {
  const wired = drafts
    .slice(0, RISES)
    .map((draft) => ({ ...draft, body: { ...draft.body, how: 'by wire' } }));
  const last = drafts[RISES - 1];
  const { values } = z.object({ values: z.record(z.string(), z.number()) }).parse(last.body);
  const read = Object.entries(values).filter(([name]) => ofWall || name === 'weighing');
  const moved = (k: number) => read.map(([name, value]) => [name, value + 0.02 * k]);
  const more = Array.from({ length: 200 }, (_, k) => ({
    ...last,
    mono_ms: last.mono_ms + 10 * (k + 1),
    wall_ms: last.wall_ms + 10 * (k + 1),
    body: { ...last.body, how: 'by wire', values: Object.fromEntries(moved(k + 1)) },
  }));
  return [...wired, ...more];
}
/** Entries of the rehearsed day up to its reading at the end of a rise. */
const RISES = 45;

async function batchesOf(change: Making['change']) {
  const heardAt: number[] = [];
  const ask: LiveAdviserParts['ask'] = async (message) => {
    if (message.kind === 'hear' && message.batch !== undefined) heardAt.push(message.batch.seconds);
    return answerAdvise(message);
  };
  const { written, adviser, now } = await heard(RISES + 200, { ...(change && { change }), ask });
  adviser.close();
  const from = now.inside.elapsed / 1000 - (now.inside.ventShut ?? 0) / 1000 - 2;
  return { written, all: heardAt, batches: heardAt.filter((at) => at > from) };
}

test('what wires read is handed over ten times a second, and each batch is foreseen at its own time', async () => {
  const { written, batches } = await batchesOf((drafts) => quickly(drafts));
  expect(batches.length).toBeGreaterThanOrEqual(18);
  expect(batches.length).toBeLessThanOrEqual(20);
  const foreseen = written.flatMap(({ kind, body }) => (kind === 'forecast' ? Number(body['seconds']) : []));
  // Those that say something else than the one before; rows alone would give four.
  expect(foreseen.filter((at) => batches.includes(at)).length).toBeGreaterThan(5);
});

test('readings that say nothing of the wall make no batch of what was read before them', async () => {
  const { all, batches } = await batchesOf((drafts) => quickly(drafts, false));
  expect(batches.length).toBeLessThanOrEqual(1);
  expect(new Set(all).size).toBe(all.length);
});

describe('rows that are news', () => {
  const row = (seq: number, seconds = 10 * seq) => ({
    seq,
    seconds,
    step: '5',
    values: { low: 1262.3 + seq },
    part: 0,
  });
  const heardBefore = [1, 2, 3, 4, 5].map((seq) => row(seq));
  const [a, , c, , e] = heardBefore;

  test('are those at the end, and rows that are only thinned out are not forgotten', () => {
    const next = row(6);
    expect(newIn([...heardBefore, next], heardBefore)).toEqual({ rows: [next], anew: false });
    expect(newIn([a, c, e, next], heardBefore)).toEqual({ rows: [next], anew: false });
    expect(newIn(heardBefore, [])).toEqual({ rows: heardBefore, anew: false });
  });

  test('are all of them after a correction, a row typed in late, or bleeding', () => {
    const corrected = heardBefore.map((one) => (one === c ? { ...c, values: { low: 1291.7 } } : one));
    expect(newIn(corrected, heardBefore)).toEqual({ rows: corrected, anew: true });
    const late = [a, row(7, 17), ...heardBefore.slice(1)];
    expect(newIn(late, heardBefore)).toEqual({ rows: late, anew: true });
    expect(newIn([], heardBefore)).toEqual({ rows: [], anew: true });
    expect(newIn([row(9)], heardBefore)).toEqual({ rows: [row(9)], anew: true });
  });
});

describe('making ready to foresee', () => {
  const readyOf = (written: readonly { body: Body }[]) => written.flatMap(({ body }) => body['ready'] ?? []);

  test('is written in tenths under a plan, and advice does not wait for it: rows before it are heard again', async () => {
    const all = 60;
    let told: (solved: Solved) => void = () => {};
    let made: (stretch: Stretchable) => void = () => {};
    const { adviser, written, about, digest } = await heard(40, {
      make: (tell) => {
        told = tell;
        return new Promise((resolve) => (made = resolve));
      },
      before: (seq) => {
        for (let k = 2 * seq - 1; k <= 2 * seq && k <= all; k++) told({ done: k, all });
        if (seq === 34) made(stretch);
      },
    });
    adviser.close();
    const percents = written.flatMap(({ body }) => percentIn(body));
    expect(percents.length).toBeLessThan(12);
    expect(percents.at(-1)).toBe(100);
    expect([...percents].sort((a, b) => a - b)).toEqual(percents);
    expect(written.find(({ kind }) => kind === 'advice')?.at).toBeLessThan(34);
    const first = written.find(({ body }) => body['growth_percent'] !== undefined);
    expect(first?.at).toBeGreaterThanOrEqual(34);
    // Rows that were read before are behind the first forecast.
    expect(Number(first?.body['rows'])).toBeGreaterThanOrEqual(8);
    const said = written.map(({ kind, body }) => ({ kind, body, run: 1, mono_ms: 0, wall_ms: 0 }) as const);
    const states: (Readying | undefined)[] = [];
    let state: Fold = startFold(about, digest);
    for (const link of tie({ seq: 0, digest }, said, chainHash)) {
      state = fold(state, link);
      states.push(state.state.readying);
    }
    expect(states[0]).toMatchObject({ percent: percents[0], says: expect.stringContaining(' of 60 tanks') });
    expect(state.state.readying).toBeUndefined();
    expect(state.state.foresight?.body['growth_percent']).toBeDefined();
  });

  test('of what was kept with the plan is told once', async () => {
    const { adviser, written } = await heard(12);
    adviser.close();
    expect(readyOf(written)).toEqual([{ percent: 100, says: 'Ready to foresee, as kept with the plan.' }]);
  });

  test('that fails, or has no range, is told, and the limits are advised on without it', async () => {
    const errors: unknown[] = [];
    const make = async (): Promise<Stretchable> => raised(new Error('the disk is on fire'));
    const failed = await heard(40, { make, log: (error) => errors.push(error) });
    expect(errors).toHaveLength(1);
    expect(readyOf(failed.written)).toMatchObject([{ percent: 0, failed: true }]);
    expect(failed.written.some(({ kind }) => kind === 'advice')).toBe(true);
    const bare = await heard(12, { make: async () => undefined });
    expect(readyOf(bare.written)).toMatchObject([
      { failed: true, says: expect.stringContaining('no range') },
    ]);
  });
});

const percentIn = ({ ready }: Body): number[] =>
  typeof ready === 'object' && ready !== null && 'percent' in ready ? [Number(ready['percent'])] : [];
