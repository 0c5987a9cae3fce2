import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { openAnswers } from '../range/answers.ts';
import type { Ranger } from '../range/ranger.ts';
import { steelOf } from '../range/steelRange.ts';
import type { Attachments } from '../store/store.ts';
import { rangeRoutes } from './routes/range.ts';

const file: { name: string } = JSON.parse(
  readFileSync(new URL('../../examples/dunlin-oxidiser.json', import.meta.url), 'utf8'),
);

test('a question asked again is answered from what was kept; another file, or another coupon, is worked out anew', async () => {
  let worked = 0;
  let overtaken = 0;
  const ranger: Ranger = {
    range: (_window, given, files) => {
      worked++;
      return Promise.resolve(steelOf(given, files));
    },
    overtake: () => void overtaken++,
  };
  let coupon = 'strain;stress\n0;0\n';
  const list: readonly { id: string; name: string }[] = [{ id: '1', name: 'a.csv' }];
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the routes ask only for these two
  const attachments = {
    list: () => list,
    bytes: () => new TextEncoder().encode(coupon),
  } as unknown as Attachments;
  const routes = rangeRoutes(ranger, attachments);
  const ask = async (asked: object): Promise<unknown> => {
    const body = JSON.stringify({ window: 'w', file: asked });
    const headers = { 'content-type': 'application/json' };
    return (await routes.request('/?project=p', { method: 'POST', headers, body })).json();
  };
  const first = await ask(file);
  expect(await ask(file)).toEqual(first);
  // What the window had asked for meanwhile is not wanted any more.
  expect([worked, overtaken]).toEqual([1, 1]);
  await ask({ ...file, name: 'another' });
  expect(worked).toBe(2);
  coupon += '0.1;200\n';
  await ask(file);
  expect(worked).toBe(3);
});

test('only the answers asked for last are kept', () => {
  const answers = openAnswers<number>(2);
  answers.keep('a', 1);
  answers.keep('b', 2);
  expect(answers.of('a')).toBe(1);
  answers.keep('c', 3);
  expect(['a', 'b', 'c'].map((one) => answers.of(one))).toEqual([1, undefined, 3]);
});
