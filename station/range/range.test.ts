import { readdirSync, readFileSync } from 'node:fs';
import type { SteelDraw } from '@hoopwright/core/steel';
import type { ShellRun } from '@hoopwright/core/stretch';
import { parseTankFile } from '@hoopwright/wire/tank';
import { describe, expect, test } from 'vitest';
import { keeperFrom, keptText, openKeeper } from './keeper.ts';
import { here, type ShellRunner } from './runner.ts';
import { steelOf, steelRange } from './steelRange.ts';

const at = (path: string): URL => new URL(`../../examples/${path}`, import.meta.url);
const tankOf = (change: (file: Record<string, unknown>) => void = () => undefined) => {
  const file: Record<string, unknown> = JSON.parse(readFileSync(at('dunlin-oxidiser.json'), 'utf8'));
  change(file);
  const parsed = parseTankFile(file);
  if (!parsed.ok) throw new Error('the demo tank file has issues');
  return parsed;
};
const coupons = new Map(
  readdirSync(at('coupons')).map((name) => [`coupons/${name}`, readFileSync(at(`coupons/${name}`))]),
);

/** Counts what is solved, with the real solver. */
const counting = (): { run: ShellRunner; solved: () => number } => {
  let count = 0;
  return {
    run: (messages, watch) => {
      count += messages.length;
      return here(messages, watch);
    },
    solved: () => count,
  };
};

describe('the range of the demo tank', () => {
  test('rests on the coupons that count, and names the one that slipped', () => {
    const steel = steelOf(tankOf(), coupons);
    const left = steel?.read.tests.filter(({ reason }) => reason !== undefined);
    expect(left?.map(({ entry }) => entry.file)).toEqual(['coupons/plate-3-slipped.csv']);
    expect(left?.[0].reason).toContain('slipped');
    expect(steel?.read.evidence.coupons.filter(({ excluded }) => excluded === undefined)).toHaveLength(3);
  });

  test('says which coupon file is not there, and goes on without it', () => {
    const fewer = new Map([...coupons].filter(([name]) => !name.includes('plate-2')));
    const steel = steelOf(tankOf(), fewer);
    expect(steel?.read.issues.map(({ received }) => received).join()).toContain('plate-2.csv');
    expect(steel?.read.evidence.coupons.filter(({ excluded }) => excluded === undefined)).toHaveLength(2);
  });

  test('is not there without evidence: never a range of no width', () => {
    const assumed = tankOf((file) => {
      file['steel'] = { grade: '1.4307', flow: { law: 'swift', K_MPa: 1350, n: 0.45, e0: 0.0155 } };
    });
    expect(steelOf(assumed, coupons)).toBeUndefined();
  });

  test('solves the shell once; a certificate that changes a little asks for nothing new', async () => {
    const { run, solved } = counting();
    const keeper = openKeeper();
    const first = await steelRange(tankOf(), coupons, run, { keeper });
    const once = solved();
    expect(once).toBeGreaterThan(10);
    const changed = tankOf((file) => {
      const steel = file['steel'] as { certificate: { Rp02_MPa: number } };
      steel.certificate.Rp02_MPa += 1;
    });
    const second = await steelRange(changed, coupons, run, { keeper });
    expect(solved()).toBe(once);
    expect(second?.stretch?.settled.growth.median).not.toBe(first?.stretch?.settled.growth.median);
    const median = first?.stretch?.settled.growth.median ?? 0;
    expect(median).toBeGreaterThan(0.02);
    expect(median).toBeLessThan(0.05);
  });

  test('stops when it is asked to', async () => {
    const stop = new AbortController();
    stop.abort();
    await expect(steelRange(tankOf(), coupons, here, { signal: stop.signal })).rejects.toThrow();
  });
});

describe('kept solutions', () => {
  const draws = steelOf(tankOf(), coupons)?.belief.draws ?? [];
  const run = { growth: [0.01], pressure: [1] } as unknown as ShellRun;
  const kept = draws.slice(0, 30).map((draw) => ({ draw, run }));

  test('serve steels among them, not steels far off, and no other tank', () => {
    const keeper = openKeeper();
    keeper.keep('tank', kept);
    expect(keeper.serving('tank', draws)).toBe(kept);
    expect(keeper.serving('another', draws)).toBeUndefined();
    const far = draws.map((draw): SteelDraw => ({ ...draw, wallFactor: 1.2 * draw.wallFactor }));
    expect(keeper.serving('tank', far)).toBeUndefined();
  });

  test('survive as text for the same program, and are nothing to another or when damaged', () => {
    const text = keptText('program 1', 'tank', kept);
    expect(keeperFrom(text, 'program 1').serving('tank', draws)).toHaveLength(30);
    expect(keeperFrom(text, 'program 2').serving('tank', draws)).toBeUndefined();
    expect(keeperFrom(text.slice(0, 500), 'program 1').serving('tank', draws)).toBeUndefined();
  });
});
