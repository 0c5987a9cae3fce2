import { mkdirSync, mkdtempSync, renameSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { filesIn, fingerprint } from './folders.mjs';

let base = '';
const print = (): string => fingerprint(['core'], base);
const write = (path: string, text: string): void => writeFileSync(join(base, path), text);

beforeEach(() => {
  base = mkdtempSync(join(tmpdir(), 'folders-'));
  mkdirSync(join(base, 'core', 'steel'), { recursive: true });
  mkdirSync(join(base, 'core', 'node_modules'));
  write('core/units.ts', 'export const a = 3;');
  write('core/steel/flow.ts', 'export const b = 5;');
  write('core/node_modules/x.ts', '');
});
afterEach(() => rmSync(base, { recursive: true }));

test('files are listed from the root with forward slashes, libraries left out', () => {
  expect(filesIn('core', base).sort()).toEqual(['core/steel/flow.ts', 'core/units.ts']);
});

test('nothing done leaves the fingerprint as it was', () => {
  expect(print()).toBe(print());
});

test.each<[string, () => void]>([
  ['a file of another length', () => write('core/steel/flow.ts', 'export const b = 55;')],
  ['another date, older ones included', () => utimesSync(join(base, 'core/steel/flow.ts'), 1e9, 1e9)],
  ['a new file', () => write('core/steel/creep.ts', '')],
  ['a file that went', () => rmSync(join(base, 'core/units.ts'))],
  ['a new name', () => renameSync(join(base, 'core/units.ts'), join(base, 'core/unit.ts'))],
  ['another lockfile', () => write('package-lock.json', '{}')],
])('%s changes it', (_, change) => {
  const before = print();
  change();
  expect(print()).not.toBe(before);
});

test('a test does not change it', () => {
  const before = print();
  write('core/steel/flow.test.ts', '');
  expect(print()).toBe(before);
});
