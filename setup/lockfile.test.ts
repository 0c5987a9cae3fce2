import { expect, test } from 'vitest';
import { treeHolds } from './lockfile.mjs';

/** The lockfile also lists the root and the workspaces, which npm's own list of the tree may leave out. */
const lock = {
  packages: {
    '': { version: '0.1.0' },
    core: { version: '0.1.0' },
    'node_modules/zod': { version: '4.6.7' },
    'node_modules/driver': { version: '12.11.1', optional: true },
    'station/node_modules/zod': { version: '3.2.5' },
  },
};
const tree = {
  core: { version: '0.1.0' },
  'node_modules/zod': { version: '4.6.7' },
  'station/node_modules/zod': { version: '3.2.5' },
};

test('a tree that holds what is asked for needs no installing, with the optional driver or without', () => {
  expect(treeHolds({ packages: tree }, lock)).toBe(true);
  expect(treeHolds({ packages: { ...tree, 'node_modules/driver': { version: '12.11.1' } } }, lock)).toBe(
    true,
  );
});

test('another version, a missing package and one too many each ask for installing', () => {
  const { core, ...withoutCore } = tree;
  const { 'node_modules/zod': _, ...withoutZod } = tree;
  expect(core.version).toBe('0.1.0');
  expect(treeHolds({ packages: withoutCore }, lock)).toBe(true);
  expect(treeHolds({ packages: withoutZod }, lock)).toBe(false);
  expect(treeHolds({ packages: { ...tree, 'station/node_modules/zod': { version: '3.2.4' } } }, lock)).toBe(
    false,
  );
  expect(treeHolds({ packages: { ...tree, 'node_modules/driver': { version: '12.10.0' } } }, lock)).toBe(
    false,
  );
  expect(treeHolds({ packages: { ...tree, 'node_modules/left': { version: '1.3.0' } } }, lock)).toBe(false);
});
