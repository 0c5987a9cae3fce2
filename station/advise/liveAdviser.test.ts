import { expect, test } from 'vitest';
import { ADVICE_STATES, type Fold, fold, startFold } from '@hoopwright/wire/day';
import { aboutDigest, type Body, tie } from '@hoopwright/wire/record';
import { rehearsed } from '../day/rehearsed.ts';
import { judgedWorld } from '../rig/judged/days.ts';
import { chainHash } from '../store/hash.ts';
import { answerAdvise } from '../worker/advise.ts';
import { LiveAdviser } from './liveAdviser.ts';

const { stretch } = judgedWorld(90_000);

/** A rehearsed day is heard entry by entry, as the live day has it; its clock stands where the test puts it. */
async function heard(until: number) {
  const { about, drafts } = rehearsed(3);
  const digest = aboutDigest(about, chainHash);
  let now: Fold = startFold(about, digest);
  let wall = 0;
  const looks: (() => void)[] = [];
  const written: { kind: string; body: Body; at: number }[] = [];
  const adviser = new LiveAdviser({
    ask: async (message) => answerAdvise(message),
    stretch: Promise.resolve(stretch),
    later: (_ms, work) => {
      looks.push(work);
      return () => {};
    },
    now: () => wall,
    log: (error) => {
      throw error;
    },
  });
  for (const link of tie({ seq: 0, digest }, drafts.slice(0, until), chainHash)) {
    now = fold(now, link);
    wall = link.entry.wall_ms;
    adviser.heard(now, (kind, body) => written.push({ kind, body, at: now.state.seq }));
    await settled();
  }
  return { adviser, written, now, looks, pass: (ms: number) => void (wall += ms) };
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
