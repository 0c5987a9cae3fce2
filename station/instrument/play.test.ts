import { expect, test } from 'vitest';
import type { Entry } from '@hoopwright/wire/record';
import { Listener } from './contract/contract.ts';
import { replaySource } from './replay.ts';

/** A clock that stands until it is moved on. */
function startClock() {
  let now = 0;
  let due: { readonly at: number; readonly work: () => void }[] = [];
  return {
    later: (ms: number, work: () => void) => {
      const one = { at: now + ms, work };
      due.push(one);
      return () => void (due = due.filter((other) => other !== one));
    },
    pass: (ms: number): void => {
      const end = now + ms;
      for (;;) {
        const [next] = due.filter(({ at }) => at <= end).sort((a, b) => a.at - b.at);
        if (next === undefined) break;
        due = due.filter((one) => one !== next);
        now = next.at;
        next.work();
      }
      now = end;
    },
  };
}

const at = (seq: number, wall_ms: number, kind: Entry['kind'], P1: number): Entry => ({
  seq,
  run: 1,
  mono_ms: wall_ms,
  wall_ms,
  kind,
  body: { values: { P1, note: 'x' } },
});
const entries = [
  at(1, 5000, 'start', 9),
  at(2, 6000, 'reading', 1.5),
  at(3, 10_000, 'reading', 2.5),
  at(4, 10_500, 'reading', 3.5),
];

test('a replay says the readings in their own pace, so many times as fast, and ends', () => {
  const { later, pass } = startClock();
  const told = new Listener();
  replaySource({ name: 'replay', entries: () => entries, speed: 20, later }).start(told);
  pass(0);
  expect(told.readings).toEqual([{ P1: 1.5 }]);
  pass(199);
  expect(told.readings).toHaveLength(1);
  pass(1);
  expect(told.readings).toHaveLength(2);
  pass(25);
  expect(told.readings.at(-1)).toEqual({ P1: 3.5 });
  expect(told.standing).toBe('lost');
});

test('a replay that is stopped says nothing more', async () => {
  const { later, pass } = startClock();
  const told = new Listener();
  const running = replaySource({ name: 'replay', entries: () => entries, speed: 1, later }).start(told);
  pass(100);
  await running.stop();
  pass(10_000);
  expect(told.readings).toEqual([{ P1: 1.5 }]);
});
