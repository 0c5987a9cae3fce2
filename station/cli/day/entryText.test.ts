import { expect, test } from 'vitest';
import type { Body, EntryKind } from '@hoopwright/wire/record';
import { entryText } from './entryText.ts';

const line = (kind: EntryKind, body: Body): string =>
  entryText({ seq: 7, run: 1, mono_ms: 3, wall_ms: 3_725_000, kind, body }, 0);

test.each<[EntryKind, Body, string]>([
  ['trouble', { what: 'disk full', says: 'The disk is full.' }, 'disk full  The disk is full.'],
  ['trouble', { what: 'disk full', says: 'Room again.', over: true }, 'disk full, over  Room again.'],
  ['advice', { state: 'hold', reasons: ['It grows.', 'It drips.'] }, 'HOLD  It grows. It drips.'],
  [
    'advice',
    { state: 'hold', reasons: ['Odd.'], explanations: ['A.', 'B.'], tellApart: 'C tells.' },
    'HOLD  Odd.  Likeliest first: A. B. C tells.',
  ],
  ['advice', { state: 'stop and release', limit: 'x', says: 'Too much.' }, 'STOP AND RELEASE  Too much.'],
  [
    'measure',
    { when: 'before', what: 'wall', place: 'knuckle', value: 1.48, unit: 'mm', by: 'B', with: 'gauge' },
    'before  wall knuckle  1.48 mm  (B, gauge)',
  ],
])('%s %j is told in words', (kind, body, says) => {
  expect(line(kind, body)).toBe(`    7  1:02:05  ${kind.padEnd(11)}${says}`);
});
