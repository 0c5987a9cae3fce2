/** The command line plans, refuses, freezes and prints. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { FrozenPlan, Plan } from '@hoopwright/wire/plan';
import { pagesOf } from '../paper/readBack.ts';
import type { Desk } from './desk/desk.ts';
import { run } from './run.ts';
import { PROGRAM } from '../plan/version.ts';

const root = (path: string): URL => new URL(`../../${path}`, import.meta.url);
const fuel = readFileSync(root('examples/dunlin-fuel.json'), 'utf8');

interface Said {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  readonly files: ReadonlyMap<string, string | Uint8Array>;
}

async function told(words: readonly string[], given: Readonly<Record<string, string>> = {}): Promise<Said> {
  const files = new Map<string, string | Uint8Array>(Object.entries({ 'tank.json': fuel, ...given }));
  let out = '';
  let err = '';
  const read = async (path: string): Promise<string> => {
    const text = files.get(path);
    if (typeof text !== 'string') throw new Error(`no such file: ${path}`);
    return text;
  };
  const desk: Desk = {
    read,
    readBytes: async (path) => new TextEncoder().encode(await read(path)),
    write: async (path, text) => void files.set(path, text),
    out: (text) => void (out += text),
    err: (text) => void (err += text),
    seconds: () => 0,
    terminal: false,
  };
  return { code: await run(['plan', ...words], desk), out, err, files };
}

const freezing = ['--freeze', 'first stretch', '--revision', 'A', '--date', '2026-10-03'];
const duty = (bar: number): string =>
  fuel.replace('"workingPressure_bar": 18', `"workingPressure_bar": ${bar}`);

describe('hoopwright plan', () => {
  test('prints the steps, and the same figures as JSON and on paper', async () => {
    const text = await told(['tank.json', '--pdf', 'day.pdf']);
    const json = await told(['tank.json', '--json']);
    const plan = JSON.parse(json.out) as Plan;
    expect([text.code, json.code]).toEqual([0, 0]);
    const card = pagesOf(text.files.get('day.pdf') as Uint8Array)[0];
    for (const step of plan.steps) {
      const row = text.out.split('\n').find((line) => line.startsWith(`${step.number} `)) ?? '';
      expect(row).toContain(step.pressure_bar.toFixed(1));
      expect(card).toContain(step.pressure_bar.toFixed(1));
      const wire = step.expected?.girths[1].change_mm.value.toFixed(1) ?? '';
      expect(row).toContain(wire);
      expect(card).toContain(wire);
      expect(row).toContain(step.expected?.pumped_L.value.toFixed(2) ?? '');
    }
    expect(text.out).toContain('Pressurised tanks kill');
  });

  test('says all reasons on standard error and nothing on standard output, with 2 for the set-up and 3 for the metal', async () => {
    const valve = await told(['tank.json'], {
      'tank.json': fuel.replace('"opens_bar": 28.5', '"opens_bar": 20'),
    });
    expect(valve).toMatchObject({ code: 2, out: '' });
    expect(valve.err).toContain(
      'The relief valve opens at 20.0 bar, which is not over the stretch pressure 27.0 bar',
    );
    const metal = await told(['tank.json', '--as-given'], { 'tank.json': duty(40) });
    expect(metal).toMatchObject({ code: 3, out: '' });
    expect(metal.err).toContain('gives way before the stretch pressure');
  });

  test('freezes under a name, a revision and a day, and wants all three', async () => {
    const frozen = JSON.parse((await told(['tank.json', '--json', ...freezing])).out) as FrozenPlan;
    expect(frozen.frozen).toMatchObject({ name: 'first stretch', revision: 'A', date: '2026-10-03' });
    expect(frozen.frozen.digest).toMatch(/^[0-9a-f]{64}$/);
    expect((await told(['tank.json', '--freeze', 'x'])).err).toContain('--revision A --date 2026-10-03');
    const day = await told(['tank.json', '--freeze', 'x', '--revision', 'A', '--date', '3.10.2026']);
    expect(day).toMatchObject({ code: 2, out: '' });
  });

  test('shows a frozen plan as it was, struck out once the tank has changed', async () => {
    const text = (await told(['tank.json', '--json', ...freezing])).out;
    const same = await told(['tank.json', '--frozen', 'a.json'], { 'a.json': text });
    expect(same.code).toBe(0);
    expect(same.out).toContain('Revision A “first stretch”, frozen 2026-10-03');
    expect(same.out).not.toContain('OUT OF DATE');
    const later = await told(['tank.json', '--frozen', 'a.json', '--pdf', 'a.pdf'], {
      'a.json': text,
      'tank.json': duty(17),
    });
    expect(later.out).toContain('OUT OF DATE: the tank file has changed');
    expect(later.out).toContain('Stretch pressure 27.0 bar');
    for (const page of pagesOf(later.files.get('a.pdf') as Uint8Array)) expect(page).toContain('OUT OF DATE');
  });

  test('refuses a frozen plan in which somebody changed a figure', async () => {
    const text = (await told(['tank.json', '--json', ...freezing])).out;
    const forged = await told(['tank.json', '--frozen', 'a.json'], {
      'a.json': text.replace('"stretchFactor": 1.5', '"stretchFactor": 1.6'),
    });
    expect(forged).toMatchObject({ code: 2, out: '' });
    expect(forged.err).toContain('changed after it was frozen');
  });

  test('takes the paper from the tank file, and another where it is asked', async () => {
    const letter = await told(['tank.json', '--paper', 'Letter', '--pdf', 'a.pdf']);
    expect(Buffer.from(letter.files.get('a.pdf') as Uint8Array).toString('latin1')).toContain(
      '[0 0 612 792]',
    );
    expect((await told(['tank.json', '--paper', 'A5'])).code).toBe(2);
  });

  test('names the program by the version of the package', () => {
    const { version } = JSON.parse(readFileSync(root('package.json'), 'utf8')) as { version: string };
    expect(PROGRAM).toBe(version);
  });
});
