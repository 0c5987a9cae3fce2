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

  test('takes the lower of what a seam carries in the stretch and of its Rm', () => {
    const seams = steelOf(tankOf(), coupons)?.read.evidence.seams;
    // Overmatched weld metal (1.16 and 1.09), but the coupons part at 0.96 and 0.98 of the plate.
    expect(seams?.map(({ strength }) => Number(strength.toFixed(2)))).toEqual([0.96, 0.98]);
  });

  test('leaves girth seams, preloaded coupons and coupons in the wrong list out, with the reason', () => {
    const steel = steelOf(
      tankOf((file) => {
        const own = file['steel'] as Record<'coupons' | 'seamCoupons', Record<string, unknown>[]>;
        own.coupons[0]['file'] = 'coupons/seam-1.csv';
        own.seamCoupons[0]['seam'] = 'girth';
        own.seamCoupons[1]['preload'] = { preloadStrain_percent: 9 };
      }),
      coupons,
    );
    const reasons = steel?.read.tests.map(({ reason }) => reason ?? '');
    expect(reasons?.[0]).toContain('across a seam');
    expect(reasons?.[4]).toContain('girth seam');
    expect(reasons?.[5]).toContain('preloaded');
    expect(steel?.read.evidence.seams.every(({ excluded }) => excluded !== undefined)).toBe(true);
  });

  test('starts the shell from the layers that rolling left, those of the note', () => {
    const layers = (change?: (file: Record<string, unknown>) => void) =>
      tankOf(change).tank.courses[0].layers;
    const note = (rolling: unknown) => (file: Record<string, unknown>) => {
      (file['steel'] as Record<string, unknown>)['rolling'] = rolling;
    };
    expect(layers()).toHaveLength(41);
    expect(layers()?.[0].hoop).toBeGreaterThan(50);
    expect(
      layers((file) => {
        delete (file['steel'] as Record<string, unknown>)['rolling'];
      }),
    ).toBeUndefined();
    expect(
      layers(note({ machine: 'four-roll', passes: 2, overbendRadius_mm: 150 }))?.[0].plastic,
    ).toBeGreaterThan(1.1 * (layers()?.[0].plastic ?? Infinity));
    const steel = steelOf(tankOf(), coupons);
    const drawn = steel?.tank.courses[0].layers ?? [];
    expect(drawn).toHaveLength(41);
    expect(drawn[20].plastic).toBeLessThan(drawn[0].plastic / 10);
  });

  test('takes a stated tolerance for the wall nobody measured, and the stated strength of a seam nobody pulled', () => {
    const steel = steelOf(
      tankOf((file) => {
        const own = file['steel'] as Record<string, unknown>;
        delete own['wallMeasured_mm'];
        delete own['seamCoupons'];
        own['wallTolerance_mm'] = 0.2;
        (file['seams'] as { long: { strength: number } }).long.strength = 0.8;
      }),
      coupons,
    );
    const { draws } = steel!.belief;
    const spread = (read: (draw: SteelDraw) => number): [number, number] => {
      const values = draws.map(read);
      const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
      return [mean, Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length)];
    };
    // 400 draws: the mean is good to 0.005, the spread to 7 % of itself.
    expect(Math.abs(spread(({ wallFactor }) => wallFactor)[1] - 0.05)).toBeLessThan(0.008);
    expect(Math.abs(spread(({ seamStrength }) => seamStrength)[0] - 0.8)).toBeLessThan(0.02);
  });

  test('says where the tests of the curve end, so that what lies beyond is known to be a continuation', () => {
    expect(steelOf(tankOf(), coupons)?.middle.flow).toMatchObject({ evidence: 0.4 });
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
