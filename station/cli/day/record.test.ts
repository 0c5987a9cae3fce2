import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Desk } from '../desk/desk.ts';
import { run } from '../run.ts';

const folder = mkdtempSync(join(tmpdir(), 'hoopwright-record-'));
afterAll(() => rmSync(folder, { recursive: true }));

const tank = JSON.stringify({
  hoopwright: 1,
  name: 'INVENTED: Dunlin test tank',
  barrel: { insideDiameter_mm: 400, length_mm: 700, wall_mm: 1.5 },
  heads: { top: { shape: 'semi-ellipsoidal' }, bottom: { shape: 'semi-ellipsoidal' } },
  steel: { flow: { law: 'swift', K_MPa: 1330, n: 0.43, e0: 0.021 } },
  duty: { workingPressure_bar: 20, stretchFactor: 1.5, pump_L_per_min: 0.9 },
});

/** Runs a command line; what it said and how it ended. */
async function said(...words: string[]): Promise<{ code: number; out: string; err: string }> {
  const heard = { out: '', err: '' };
  const desk: Desk = {
    read: () => Promise.resolve(tank),
    readBytes: () => Promise.reject(new Error('no such file')),
    write: () => Promise.resolve(),
    out: (text) => void (heard.out += text),
    err: (text) => void (heard.err += text),
    seconds: () => 0,
    terminal: false,
  };
  return { code: await run(words, desk), ...heard };
}

const file = join(folder, 'day.ndjson');
const headIn = (text: string): string => /Head: ((?:[0-9a-f]{4} ?){8})/.exec(text)?.[1].trim() ?? '';
let first = { code: -1, out: '', err: '' };

beforeAll(async () => {
  first = await said('rehearse', 'tank.json', '--seed', '4', '--fault', 'burst@4min', '--record', file);
});

describe('hoopwright rehearse', () => {
  test('says that it is a rehearsal, shows the head at its start and at its end, and names the end', () => {
    expect(first.out).toMatch(/^REHEARSAL of INVENTED: Dunlin test tank/);
    expect(first.out).toMatch(/\d:\d\d:\d\d {2}head ([0-9a-f]{4} ){7}[0-9a-f]{4}\n/);
    expect(first.out).toContain('end: burst');
    expect(headIn(first.out)).toHaveLength(39);
    expect(first.code).toBe(3);
  });

  test('never writes over a record', async () => {
    const before = readFileSync(file);
    const again = await said('rehearse', 'tank.json', '--record', file);
    expect(again.code).toBe(2);
    expect(again.err).toContain('never written over');
    expect(readFileSync(file)).toEqual(before);
  });

  test('gives the same bytes for the same seed', async () => {
    const other = join(folder, 'again.ndjson');
    await said('rehearse', 'tank.json', '--seed', '4', '--fault', 'burst@4min', '--record', other);
    expect(readFileSync(other)).toEqual(readFileSync(file));
  });

  test.each([
    [['--seed', 'x'], '--seed: came "x"'],
    [['--speed', '500'], '--speed: came "500"'],
    [['--fault', 'flood@3min'], 'wanted NAME@TIME'],
  ])('refuses %j in words, before anything is written', async (words, says) => {
    const answer = await said('rehearse', 'tank.json', '--record', join(folder, 'none.ndjson'), ...words);
    expect(answer.code).toBe(2);
    expect(answer.err).toContain(says);
  });
});

describe('hoopwright record', () => {
  test('verifies a whole record, and says that nobody has witnessed it', async () => {
    const { code, out } = await said('record', 'verify', file);
    expect(code).toBe(0);
    expect(out).toContain('Whole in itself, not witnessed');
  });

  test('verifies it against its head, as written down', async () => {
    const { code, out } = await said('record', 'verify', file, '--head', headIn(first.out).toUpperCase());
    expect(code).toBe(0);
    expect(out).toContain('Whole and witnessed');
  });

  test('finds one altered byte and says where', async () => {
    const lines = readFileSync(file, 'utf8').split('\n');
    const broken = join(folder, 'broken.ndjson');
    lines[7] = lines[7].replace('"seq":7', '"seq":8');
    writeFileSync(broken, lines.join('\n'));
    const { code, out } = await said('record', 'verify', broken);
    expect(code).toBe(3);
    expect(out).toContain('line 8 (entry 7)');
  });

  test('refuses a head that is none, and knows one that is not in the record', async () => {
    expect((await said('record', 'verify', file, '--head', '12 ab')).code).toBe(2);
    const other = await said('record', 'verify', file, '--head', '0'.repeat(32));
    expect(other.code).toBe(3);
    expect(other.out).toContain('this head is not in it');
  });

  test('shows every entry as a line', async () => {
    const { out } = await said('record', 'show', file);
    expect(out).toMatch(/^REHEARSAL: INVENTED: Dunlin test tank, rehearsed with seed 4\n/);
    expect(out).toMatch(/reading +gauge /);
    expect(out).toContain('burst  the pressure fell to nothing at once');
  });

  test('exports readings with unit, and the kind of the record on every row', async () => {
    const { out } = await said('record', 'export', file, '--csv');
    const [heads, ...rows] = out.trimEnd().split('\r\n');
    expect(heads).toContain('gauge [bar],middle [mm],weighing [L]');
    expect(rows.length).toBeGreaterThan(3);
    expect(rows.every((row) => row.startsWith('rehearsal,'))).toBe(true);
  });

  test('exports every entry as JSON', async () => {
    const { out } = await said('record', 'export', file, '--ndjson');
    const entries = out
      .trimEnd()
      .split('\n')
      .map((line) => JSON.parse(line) as { record: string; seq: number });
    expect(entries.map(({ seq }) => seq)).toEqual(entries.map((_, i) => i + 1));
    expect(new Set(entries.map(({ record }) => record))).toEqual(new Set(['rehearsal']));
  });

  test('wants to know which export', async () => {
    expect((await said('record', 'export', file)).err).toContain('either --csv or --ndjson');
  });
});
