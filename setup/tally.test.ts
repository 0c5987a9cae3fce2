import { expect, test } from 'vitest';
import { closing, sum, tally } from './tally.mjs';

const check = (status: string, fullName: string): { status: string; fullName: string } => ({
  status,
  fullName,
});
const file = (name: string, status: string, ...assertionResults: ReturnType<typeof check>[]) => ({
  name,
  status,
  assertionResults,
});

test('a run is counted by its tests, and what was skipped or left to do is named', () => {
  const record = {
    success: false,
    testResults: [
      file('a.test.ts', 'failed', check('passed', 'one'), check('failed', 'two'), check('skipped', 'three')),
      file('b.test.ts', 'passed', check('passed', 'four'), check('todo', 'five'), check('passed', 'six')),
    ],
  };
  expect(tally(record, 1)).toEqual({
    passed: 3,
    failed: ['a.test.ts > two'],
    skipped: ['a.test.ts > three', 'b.test.ts > five'],
  });
});

test('a file that does not load is a failure, though it has no tests', () => {
  const record = { success: false, testResults: [file('broken.test.ts', 'failed')] };
  expect(tally(record, 1).failed).toEqual(['broken.test.ts']);
});

test('an error outside every test is a failure', () => {
  const record = { success: false, testResults: [file('a.test.ts', 'passed', check('passed', 'one'))] };
  expect(tally(record, 1).failed).toHaveLength(1);
  expect(tally(record, 0).failed).toHaveLength(0);
});

test('a runner that dies before it writes its record is a failure', () => {
  expect(tally(undefined, 134)).toMatchObject({
    passed: 0,
    failed: [expect.stringContaining('without a result')],
  });
});

test('the closing line stands alone, after the names', () => {
  const total = sum([
    { passed: 2, failed: ['types'], skipped: [] },
    { passed: 11, failed: [], skipped: ['web.test.ts > opens'] },
  ]);
  expect(closing(total).split('\n')).toEqual([
    'Skipped:',
    '  web.test.ts > opens',
    '',
    'Failed:',
    '  types',
    '',
    '13 passed, 1 failed, 1 skipped',
  ]);
});
