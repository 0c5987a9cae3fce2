/** How far the first, rough answer of the page may be from the exact one that follows it. */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { Board } from './answer.ts';
import type { ForecastView } from './ask.ts';

const steel = {
  grade: '1.4307',
  flow: { law: 'swift', K_MPa: 1350, n: 0.45, e0: 0.0155 },
  rate: { on: 'yield', perEfold_MPa: 3, reference_per_s: 1e-5 },
};

describe('the first, rough answer', () => {
  for (const name of ['dunlin-fuel', 'dunlin-oxidiser']) {
    const file: object = JSON.parse(
      readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8'),
    );
    const asked = { ...file, steel };
    const drawn = (fineness: 'rough' | 'exact'): ForecastView => {
      const reply = new Board(() => 0).answer({
        file: asked,
        fineness,
        cursor: { kind: 'stop', stop: 'left' },
      });
      if (reply.kind !== 'drawn') throw new Error(JSON.stringify(reply.issues));
      return reply.forecast;
    };

    test(`${name}: growth within 0.01 % of girth, maximum within 0.2 %, barrel yield within 1 %`, () => {
      const [rough, exact] = [drawn('rough'), drawn('exact')];
      for (const at of ['arrived', 'held'] as const) {
        const [a, b] = [rough[at], exact[at]];
        expect(a === undefined).toBe(b === undefined);
        if (a !== undefined && b !== undefined)
          expect(Math.abs(a.largest.growth - b.largest.growth)).toBeLessThan(1e-4);
      }
      expect(off(rough.maximum?.pressure, exact.maximum?.pressure)).toBeLessThan(2e-3);
      expect(off(rough.barrelYield, exact.barrelYield)).toBeLessThan(1e-2);
      expect(off(rough.firstYield?.pressure, exact.firstYield?.pressure)).toBeLessThan(8e-2);
      expect(rough.path.length).toBeLessThan(0.65 * exact.path.length);
    });
  }
});

const off = (ours = Number.NaN, theirs = Number.NaN): number => Math.abs(ours / theirs - 1);
