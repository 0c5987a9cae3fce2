/** The command line forecasts what it is given, and says what it will not take. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Desk } from './desk/desk.ts';
import { run } from './run.ts';

const minimal = readFileSync(new URL('../../examples/minimal.json', import.meta.url), 'utf8');

async function told(
  words: readonly string[],
  file = minimal,
): Promise<{ readonly code: number; readonly out: string; readonly err: string }> {
  let out = '';
  let err = '';
  const desk: Desk = {
    read: () => Promise.resolve(file),
    readBytes: () => Promise.resolve(new TextEncoder().encode(file)),
    write: () => Promise.reject(new Error('nothing is written here')),
    out: (text) => void (out += text),
    err: (text) => void (err += text),
    seconds: () => 0,
    terminal: false,
  };
  return { code: await run(['forecast', 'tank.json', ...words], desk), out, err };
}

describe('hoopwright forecast', () => {
  test('a pressure that can hardly be meant is refused, and taken as given', async () => {
    const refused = await told(['--to', '2.7e6bar']);
    expect([refused.code, refused.out]).toEqual([2, '']);
    expect(refused.err).toMatch(/--to: came "2\.7e6bar", wanted at most 1000 bar.*--as-given/);
    const taken = await told(['--to', '2.7e6bar', '--as-given']);
    expect(taken.code).toBe(3);
    expect(taken.out).toContain('does not reach the stretch pressure of 2700000.0 bar');
  });

  test('a growth over that at the end of the tank is answered with that end', async () => {
    const { code, out, err } = await told(['--to-growth', '95%']);
    expect(code).toBe(3);
    expect(out).not.toContain('100000');
    expect(err).toContain('before the growth of 95.00 % that was asked for');
  });

  test('a wall of two metres is refused, and taken as given', async () => {
    const file = minimal.replace(/"wall_mm": [\d.]+/, '"wall_mm": 2000');
    const refused = await told([], file);
    expect([refused.code, refused.out]).toEqual([2, '']);
    expect(refused.err).toContain('--as-given');
    const taken = await told(['--as-given'], file);
    expect(taken.err).not.toContain('fault of the program');
    expect([0, 3]).toContain(taken.code);
  });
});
