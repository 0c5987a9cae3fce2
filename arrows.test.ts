/** Who may import whom, checked on every source of this clone. The rules are in setup/arrows.ts. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Fault, faultsIn } from './setup/arrows.ts';
import { filesIn, inRoot } from './setup/folders.mjs';
import { linksOf } from './setup/links.ts';

interface Exception {
  readonly path: string;
  readonly rule: Fault['rule'];
  readonly reason: string;
}

/** A fault that is meant, with its reason. One that no longer occurs must go. */
const EXCEPTIONS: readonly Exception[] = [
  {
    path: 'station/instrument/contract/contract.ts',
    rule: 'library',
    reason: 'the contract is a suite of claims that several test files call; it runs in tests only',
  },
];

const PACKAGES = ['core', 'wire', 'report', 'station', 'web'];
const paths = PACKAGES.flatMap((own) => filesIn(own));
const isSource = (path: string): boolean => /(?<!\.d)\.tsx?$/.test(path);
const files = paths
  .filter(isSource)
  .map((path) => linksOf({ path, text: readFileSync(inRoot(path), 'utf8') }));
/** The checks are no package to learn the house by; only their doors count. */
const checkDoors = filesIn('checks').filter((path) => path.endsWith('/door.ts'));
const others = new Set([...paths.filter((path) => !isSource(path)), ...checkDoors]);
const faults = faultsIn({
  files,
  others,
  declared: Object.fromEntries(PACKAGES.map((own) => [own, declaredBy(own)])),
});

test('the scan sees the sources', () => {
  expect(files.length).toBeGreaterThan(20);
  expect(files.flatMap((file) => file.specifiers).length).toBeGreaterThan(20);
});

test('imports follow the arrows, and files and folders keep their shape', () => {
  const meant = new Set(EXCEPTIONS.map(({ path, rule }) => `${path}: ${rule}`));
  const left = faults.filter(({ path, rule }) => !meant.has(`${path}: ${rule}`));
  expect(left.map(({ path, says }) => `${path} ${says}`)).toEqual([]);
});

test('every exception is still needed and says why', () => {
  for (const { path, rule, reason } of EXCEPTIONS) {
    expect(reason.length, `the reason for ${path}`).toBeGreaterThan(20);
    expect(faults, `${path}: ${rule}`).toContainEqual(expect.objectContaining({ path, rule }));
  }
});

/** Libraries of a package, its own doors left out: those are under the arrows. */
function declaredBy(own: string): string[] {
  const { dependencies = {}, optionalDependencies = {} } = JSON.parse(
    readFileSync(inRoot(own, 'package.json'), 'utf8'),
  );
  return Object.keys({ ...dependencies, ...optionalDependencies });
}
