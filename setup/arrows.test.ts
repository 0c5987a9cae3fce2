/** Planted faults: each rule of the arrows is seen to catch what it forbids, and to let pass what it allows. */
import { expect, test } from 'vitest';
import { type Fault, faultsIn } from './arrows.ts';
import { linksOf } from './links.ts';

const DOORS = {
  'core/units.ts': 'export const GRAVITY = 9806.65;',
  'core/steel/door.ts': `export { flow } from './flow.ts';`,
  'core/steel/flow.ts': 'export const flow = 3;',
  'core/math/root.ts': 'export const root = 2;',
};

/** Faults of a small clone: the doors above and what is planted beside them. */
function planted(files: Readonly<Record<string, string>>, others: readonly string[] = []): Fault[] {
  const all = Object.entries({ ...DOORS, ...files }).map(([path, text]) => linksOf({ path, text }));
  const declared = { core: [], wire: ['zod'], station: ['commander', '@hono/node-server'] };
  return faultsIn({ files: all, declared, others: new Set(others) });
}

const rules = (files: Readonly<Record<string, string>>): string[] =>
  planted(files).map((fault) => fault.rule);

test('imports along the arrows pass', () => {
  expect(
    planted(
      {
        'core/shell/solve.ts': `import { flow } from '../steel/flow.ts'; import { GRAVITY } from '../units.ts';`,
        'core/gauge/tape.ts': `import { root } from '../math/root.ts';`,
        'wire/tank/parse.ts': `import { z } from 'zod'; import { flow } from '@hoopwright/core/steel';`,
        'station/cli/main.ts': `import { GRAVITY } from '@hoopwright/core/units'; import 'node:fs'; import '@hono/node-server/x';`,
        'web/view/sheet.tsx': `import './sheet.css'; import type { flow } from '@hoopwright/core/steel';`,
        'core/shell/solve.test.ts': `import { test } from 'vitest'; import { readFile } from 'node:fs/promises';`,
      },
      ['web/view/sheet.css'],
    ),
  ).toEqual([]);
});

test.each([
  ['a static import', `import { x } from '../shell/solve.ts';`],
  ['a type import', `import type { X } from '../shell/solve.ts';`],
  ['an inline type', `export type Y = import('../shell/solve.ts').X;`],
  ['a dynamic import', `export const y = () => import('../shell/solve.ts');`],
  ['a template', 'export const y = () => import(`../shell/solve.ts`);'],
  ['a re-export', `export * from '../shell/solve.ts';`],
  ['a named re-export', `export { x } from '../shell/solve.ts';`],
  ['a worker', `export const w = new URL('../shell/solve.ts', import.meta.url);`],
])('%s against the arrow is found', (_, text) => {
  const faults = planted({ 'core/steel/plane.ts': text, 'core/shell/solve.ts': 'export const x = 5;' });
  expect(faults).toEqual([
    {
      path: 'core/steel/plane.ts',
      rule: 'arrow',
      says: 'imports core/shell from core/steel; it may use math, stats',
    },
  ]);
});

test('of every two folders of the core at most one may import the other, as the order says', () => {
  const order = ['math', 'stats', 'steel', 'tank', 'shell', 'stretch'];
  const mayImport = (from: string, to: string): boolean =>
    rules({ [`core/${from}/a.ts`]: `import '../${to}/b.ts';`, [`core/${to}/b.ts`]: 'export {};' }).length ===
    0;
  for (const from of order) {
    const may = [...order, 'gauge'].filter((to) => to !== from && mayImport(from, to));
    expect(may, from).toEqual(order.slice(0, order.indexOf(from)));
  }
  expect(order.filter((to) => mayImport('gauge', to))).toEqual(['math', 'stats', 'tank']);
});

test('words in comments and strings are no imports', () => {
  expect(
    planted({ 'core/math/newton.ts': `// import '../shell/x.ts'\nexport const s = "import 'zod'";` }),
  ).toEqual([]);
});

test.each([
  ['core', 'wire/tank'],
  ['wire', 'report/drawing'],
  ['report', 'station/store'],
  ['station', 'web/view'],
  ['web', 'station/server'],
])('%s must not know %s', (own, other) => {
  const files = {
    [`${own}/math/x.ts`]: `import '@hoopwright/${other}';`,
    [`${other}/door.ts`]: 'export {};',
  };
  expect(rules(files)).toContain('arrow');
});

test('the core imports neither libraries nor Node, and a test of it may', () => {
  const text = `import 'zod'; import 'node:fs';`;
  expect(rules({ 'core/math/x.ts': text })).toEqual(['library', 'library']);
  expect(rules({ 'core/math/x.test.ts': text })).toEqual([]);
});

test('a library that the package does not declare is found, though hoisting lets it run', () => {
  expect(rules({ 'station/cli/main.ts': `import 'zod';` })).toEqual(['library']);
});

test('the pure packages and the page do not name Node', () => {
  for (const own of ['wire', 'report', 'web']) {
    expect(rules({ [`${own}/x/y.ts`]: `import 'node:path';` })).toEqual(['library']);
  }
});

test('another package is entered by its door only, one folder deep', () => {
  expect(rules({ 'wire/x/y.ts': `import '../../core/steel/flow.ts';` })).toEqual(['door']);
  const [deep] = planted({ 'wire/x/y.ts': `import '@hoopwright/core/steel/flow.ts';` });
  expect(deep.says).toContain('a door is @hoopwright/core/FOLDER');
  expect(rules({ 'wire/x/y.ts': `import '@hoopwright/core';` })).toEqual(['arrow']);
  expect(rules({ 'wire/x/y.ts': `import '@hoopwright/core/tank';` })).toEqual(['arrow']);
});

test('inside a package nobody goes through a door', () => {
  expect(rules({ 'core/tank/x.ts': `import '../steel/door.ts';` })).toEqual(['door']);
  expect(rules({ 'core/tank/x.ts': `import '@hoopwright/core/steel';` })).toEqual(['door']);
});

test('two files that import each other are found, even by types and across doors', () => {
  const round = {
    'core/math/a.ts': `import type { B } from './b.ts'; export type A = B;`,
    'core/math/b.ts': `import { C } from './c.ts'; export type B = 1;`,
    'core/math/c.ts': `import type { A } from './a.ts'; export const C = 2;`,
  };
  const [fault, ...more] = planted(round);
  expect(more).toEqual([]);
  expect(fault.says).toBe(
    'imports itself in a round: core/math/a.ts -> core/math/b.ts -> core/math/c.ts -> core/math/a.ts',
  );
  expect(rules({ 'core/math/a.ts': `import './a.ts';` })).toEqual(['cycle']);
});

test('a default export is found in either spelling', () => {
  expect(rules({ 'core/math/x.ts': 'export default 3;' })).toEqual(['default export']);
  expect(rules({ 'core/math/x.ts': 'const x = 3; export { x as default };' })).toEqual(['default export']);
});

test('an import of a file that is not there is found', () => {
  expect(rules({ 'core/math/x.ts': `import './gone.ts';` })).toEqual(['missing']);
  expect(rules({ 'core/math/x.ts': `import './root';` })).toEqual(['missing']);
});

test('an import with a computed name is found', () => {
  expect(rules({ 'core/math/x.ts': 'export const f = (n: string) => import(n);' })).toEqual(['arrow']);
});

test('a file of 299 lines passes, one of 300 does not, and a test may be longer', () => {
  const lines = (n: number): string => 'export {};\n'.repeat(n);
  expect(rules({ 'core/math/x.ts': lines(299) })).toEqual([]);
  expect(rules({ 'core/math/x.ts': lines(300) })).toEqual(['lines']);
  expect(rules({ 'core/math/x.test.ts': lines(300) })).toEqual([]);
});

test('a folder of 13 files passes, one of 14 does not, and tests are not counted', () => {
  const folder = (n: number, end = '.ts'): Record<string, string> =>
    Object.fromEntries(Array.from({ length: n }, (_, i) => [`wire/tank/part${i}${end}`, 'export {};']));
  expect(rules(folder(13))).toEqual([]);
  expect(rules({ ...folder(13), ...folder(13, '.test.ts') })).toEqual([]);
  expect(rules(folder(14))).toEqual(['files']);
});

test('a name that says nothing is found as a folder, a file or a part of one', () => {
  expect(rules({ 'wire/utils/x.ts': '' })).toEqual(['name']);
  expect(rules({ 'wire/tank/helpers.ts': '' })).toEqual(['name']);
  expect(rules({ 'wire/tank/hold-manager.ts': '' })).toEqual(['name']);
  expect(rules({ 'wire/tank/database.ts': '' })).toEqual([]);
});

test('a folder of the core without a place among the arrows is found when it imports another', () => {
  expect(rules({ 'core/weather/rain.ts': `import '../math/root.ts';` })).toEqual(['arrow']);
});

test('a file that does not parse stops the check', () => {
  expect(() => linksOf({ path: 'core/x.ts', text: 'import {' })).toThrow('core/x.ts does not parse');
});
