import type { Row } from '@hoopwright/wire/reading';
import { expect, test } from 'vitest';
import { aboutDigest, tie } from '@hoopwright/wire/record';
import { channelsOf } from '@hoopwright/wire/reading';
import { fold, type Fold, startFold } from '@hoopwright/wire/day';
import { rehearsed, testPlan } from '../day/rehearsed.ts';
import { judgedWorld } from '../rig/judged/days.ts';
import { chainHash } from '../store/hash.ts';
import { answerAdvise, type Said } from './advise.ts';

const { stretch } = judgedWorld(90_000);

function rowsOfDay() {
  const { about, drafts } = rehearsed(3);
  const digest = aboutDigest(about, chainHash);
  let now: Fold = startFold(about, digest);
  for (const link of tie({ seq: 0, digest }, drafts, chainHash)) now = fold(now, link);
  return now.inside.rows.filter(({ step }) =>
    testPlan().steps.some(({ number, kind }) => number === step && kind !== 'drain'),
  );
}

const rows = rowsOfDay();
const after = rows.slice(10, 11);
/** Ten rows by hand, and two more that came by wire a second apart. */
const tenth = rows[9];
const before = [
  ...rows.slice(0, 10),
  ...[1, 2].map((k) => ({ ...tenth, seq: tenth.seq + k, seconds: tenth.seconds + k })),
];
const [last] = before.slice(-1);

const begin = (record: string): void =>
  void answerAdvise({ kind: 'open', record, plan: testPlan(), channels: channelsOf(testPlan()), stretch });

const hear = (record: string, fresh: typeof rows, batch?: Row): Said | undefined =>
  answerAdvise({
    kind: 'hear',
    record,
    rows: fresh,
    ...(batch === undefined ? {} : { batch }),
    anew: false,
    aside: [],
    seconds: (batch ?? fresh.at(-1) ?? last).seconds,
  });

/** As much later, and so much higher than the last row. */
const batchOf = (bar: number): Row => {
  const { seconds, step, values } = last;
  const read = Object.entries(values).map(([name, value]) => [
    name,
    value + (name.startsWith('gauge') ? bar : 0),
  ]);
  return { seconds: seconds + 0.3, step, values: Object.fromEntries(read) };
};

test('a batch is foreseen with its readings at its time, and forgotten when the next row comes', () => {
  for (const record of ['with', 'without']) begin(record);
  const byRows = hear('with', before)?.forecast;
  expect(hear('without', before)?.forecast).toEqual(byRows);
  const low = hear('with', [], batchOf(0))?.forecast;
  const high = hear('with', [], batchOf(1.5))?.forecast;
  expect(low?.seconds).toBe(last.seconds + 0.3);
  expect(
    Math.abs((high?.growth_percent.median ?? NaN) - (low?.growth_percent.median ?? NaN)),
  ).toBeGreaterThan(0.05);
  const next = hear('with', after)?.forecast;
  expect(next?.seconds).toBe(after[0].seconds);
  expect(hear('without', after)?.forecast).toEqual(next);
});

test('without anything new nothing is foreseen again, and a batch older than the last row says nothing', () => {
  begin('quiet');
  expect(hear('quiet', before)?.forecast).toBeDefined();
  expect(hear('quiet', [])?.forecast).toBeUndefined();
  expect(hear('quiet', [], { ...batchOf(1), seconds: last.seconds - 1 })?.forecast).toBeUndefined();
});

test('two rows of one time, of two steps, say nothing of the rate of growth between them', () => {
  begin('together');
  const next = { ...tenth, seq: tenth.seq + 1, step: rows[10].step };
  expect(hear('together', [...rows.slice(0, 10), next])?.forecast?.growth_percent.median).toBeGreaterThan(0);
});
