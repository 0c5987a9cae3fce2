import { expect, test } from 'vitest';
import { isOver, lineOf, merged, readLedger, writeLedger } from './ledger.mjs';

const path = { name: 'path to 10 %', median_ms: 21.4, spread: 0.031, limit_ms: 25, note: '37 steps' };
const mesh = { name: '1280 elements', median_ms: 178, spread: 0.05 };

test('what is written is read back', () => {
  const ledger = merged(merged(new Map(), 'laptop, 2 cores', [path, mesh]), 'desk, 8 cores', [mesh]);
  expect(readLedger(writeLedger(ledger))).toEqual(ledger);
});

test('a new timing takes the place of its namesake on the same machine only', () => {
  const before = merged(merged(new Map(), 'laptop', [path, mesh]), 'desk', [path]);
  const after = merged(before, 'laptop', [{ ...path, median_ms: 19.5 }]);
  expect(after.get('laptop')?.get(path.name)?.median_ms).toBe(19.5);
  expect(after.get('laptop')?.get(mesh.name)).toEqual(mesh);
  expect(after.get('desk')?.get(path.name)?.median_ms).toBe(21.4);
  expect(before.get('laptop')?.get(path.name)?.median_ms).toBe(21.4);
});

test('a change within twice the spread is noise, a larger one is told', () => {
  expect(lineOf({ ...path, median_ms: 22.7 }, path)).toContain('as before');
  expect(lineOf({ ...path, median_ms: 23.9 }, path)).toContain('+12 % since 21.4 ms');
  expect(lineOf({ ...path, median_ms: 15.2 }, path)).toContain('-29 % since 21.4 ms');
});

test('a median over its limit is called over', () => {
  expect(isOver(path)).toBe(false);
  expect(isOver({ ...path, median_ms: 25.1 })).toBe(true);
  expect(isOver(mesh)).toBe(false);
  expect(lineOf({ ...path, median_ms: 25.1 }, undefined)).toContain('OVER 25 ms');
});
