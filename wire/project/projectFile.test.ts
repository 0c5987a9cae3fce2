import { describe, expect, it } from 'vitest';
import { type ProjectFile, projectFileText, readProjectFile } from './projectFile.ts';

const file: ProjectFile = {
  format: 'hoopwright project',
  version: 1,
  name: 'Dunlin (invented)',
  current: 4,
  versions: [
    { number: 2, saved_ms: 1_790_000_000_001, file: '{"wall_mm": 1.50}\r\n' },
    { number: 4, parent: 2, saved_ms: 1_790_000_060_002, by: 'left window', note: 'thinner', file: '{}' },
  ],
  attachments: [{ name: 'coupon 1.csv', sha256: 'a1'.repeat(32), base64: 'AP/+' }],
};

const frozen = (revision: string) => ({
  plan: {
    hoopwrightPlan: 1 as const,
    tank: { digest: 'b2'.repeat(32), name: 'Dunlin' },
    forecast: { program: '0.1.0' },
  },
  frozen: { name: 'Saturday', revision, date: '2026-10-03', digest: 'c3'.repeat(32) },
});
const plan = (revision: string, version = 4) => ({ version, frozen_ms: 7, frozen: frozen(revision) });

const changed = (change: object) => readProjectFile(JSON.stringify({ ...file, ...change }));

describe('a project file', () => {
  it('is read back as it was written, the tank file character for character', () => {
    expect(readProjectFile(projectFileText(file))).toEqual({ ok: true, value: file });
  });

  it('that is cut off names the line and column', () => {
    const text = projectFileText(file);
    const read = readProjectFile(text.slice(0, text.length / 2));
    expect(read).toMatchObject({
      ok: false,
      issues: [{ path: expect.stringMatching(/^line \d+, column \d+$/) }],
    });
  });

  it('with attachments of 20 MB is read, and refused in a sentence when it is cut off', () => {
    const [attachment] = file.attachments;
    const heavy = { ...file, attachments: [{ ...attachment, base64: 'AAAA'.repeat(7_000_000) }] };
    const text = projectFileText(heavy);
    expect(readProjectFile(text).ok).toBe(true);
    expect(readProjectFile(text.slice(0, -9))).toMatchObject({ ok: false, issues: [{ path: 'the file' }] });
  });

  it('with a version that is no JSON is refused at its place', () => {
    const [first, second] = file.versions;
    const broken = { versions: [first, { ...second, file: '{"wall_mm": }' }] };
    expect(changed(broken)).toMatchObject({
      ok: false,
      issues: [{ path: 'versions[1].file, line 1, column 13' }],
    });
  });

  it('of another format, or of a later version, is refused', () => {
    expect(changed({ format: 'something else' })).toMatchObject({ ok: false, issues: [{ path: 'format' }] });
    expect(changed({ version: 2 })).toMatchObject({
      ok: false,
      issues: [{ path: 'version', expected: '1' }],
    });
  });

  it('whose versions do not hang together is refused at the version', () => {
    const [first, second] = file.versions;
    const orphan = { versions: [first, { ...second, parent: 3 }] };
    expect(changed(orphan)).toMatchObject({
      ok: false,
      issues: [{ path: 'versions[1].parent', received: '3' }],
    });
    const back = { versions: [first, { ...second, number: 2 }], current: 2 };
    expect(changed(back)).toMatchObject({ ok: false, issues: [{ path: 'versions[1].number' }] });
    expect(changed({ current: 3 })).toMatchObject({
      ok: false,
      issues: [{ path: 'current', received: '3' }],
    });
  });

  it('brings its frozen plans, key by key as they were frozen', () => {
    const read = changed({ plans: [plan('A', 2), plan('B')] });
    expect(JSON.stringify(read.ok && read.value.plans)).toBe(JSON.stringify([plan('A', 2), plan('B')]));
  });

  it('with a revision given twice, a plan of no version or no plan at all is refused at the plan', () => {
    expect(changed({ plans: [plan('A'), plan('A', 2)] })).toMatchObject({
      ok: false,
      issues: [{ path: 'plans[1].frozen.frozen.revision', received: 'A' }],
    });
    expect(changed({ plans: [plan('A', 3)] })).toMatchObject({
      ok: false,
      issues: [{ path: 'plans[0].version', received: '3' }],
    });
    expect(changed({ plans: [{ ...plan('A'), frozen: { plan: {} } }] })).toMatchObject({
      ok: false,
      issues: [{ path: 'plans[0].frozen' }],
    });
  });
});
