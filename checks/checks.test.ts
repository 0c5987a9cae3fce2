import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { type Check, outcomeOf, plusMinus, runChecks } from './check.ts';
import { SOURCES, WITHOUT_CHECK } from './registry.ts';
import { convergenceTables } from './shell/convergenceTable.ts';
import { verificationPage } from './table.ts';

describe.each(SOURCES)('$key', ({ checks }) => {
  test.each(checks)('$what', (check) => {
    const { ours, theirs, within, difference, failure } = { theirs: check.theirs, ...outcomeOf(check) };
    expect(within, `${check.id}: ours ${ours}, theirs ${theirs}, off by ${difference} ${failure ?? ''}`).toBe(
      true,
    );
  });
});

test('a check fails when ours leaves its tolerance, and when ours throws', () => {
  const check: Check = {
    id: 'planted/1',
    what: 'a planted figure',
    ours: () => 1.021,
    theirs: 1,
    unit: '1',
    tolerance: plusMinus(0.02),
    reason: 'planted',
    standing: 'published',
  };
  expect(outcomeOf(check).within).toBe(false);
  expect(outcomeOf({ ...check, ours: () => 1.02 }).within).toBe(true);
  expect(outcomeOf({ ...check, ours: () => Number.NaN }).within).toBe(false);
  const thrown = outcomeOf({
    ...check,
    ours: () => {
      throw new Error('no root');
    },
  });
  expect(thrown).toMatchObject({ within: false, failure: 'no root' });
});

/** A figure that agrees only because nothing depends on it is no check. */
test('every check with a number would fail if ours were off by twice its tolerance', () => {
  for (const check of SOURCES.flatMap((source) => source.checks)) {
    if (typeof check.theirs === 'string') continue;
    const { kind, value } = check.tolerance;
    const size = kind === 'absolute' ? value : value * Math.abs(check.theirs);
    const theirs = check.theirs;
    expect(outcomeOf({ ...check, ours: () => theirs + 2 * size + 1e-12 }).within, check.id).toBe(false);
  }
});

test('no two checks share an id, and every check states its reason', () => {
  const checks = SOURCES.flatMap((source) => source.checks);
  expect(new Set(checks.map((check) => check.id)).size).toBe(checks.length);
  for (const check of checks) expect(check.reason.length, check.id).toBeGreaterThan(3);
});

test('every source is in the bibliography', () => {
  const bibliography = readFileSync(new URL('../sources.bib', import.meta.url), 'utf8');
  const keys = new Set([...bibliography.matchAll(/^@\w+\{([^,]+),/gm)].map((match) => match[1]));
  expect(SOURCES.map((source) => source.key).filter((key) => !keys.has(key))).toEqual([]);
});

test('VERIFICATION.md is what the checks say today (renew it with: npx vitest run checks -u)', async () => {
  const page = verificationPage({
    sources: runChecks(SOURCES),
    withoutCheck: WITHOUT_CHECK,
    appendices: [convergenceTables()],
  });
  await expect(page).toMatchFileSnapshot('../VERIFICATION.md');
});

test('a failed check stands out on the page', () => {
  const [first] = SOURCES;
  const [check] = first.checks;
  const sources = runChecks([{ ...first, checks: [{ ...check, ours: () => 99 }] }]);
  const page = verificationPage({ sources, withoutCheck: [] });
  expect(page).toContain('1 OUTSIDE their tolerance');
  expect(page).toContain('**99.');
});
