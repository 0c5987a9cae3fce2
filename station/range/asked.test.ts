import type { SteelDraw } from '@hoopwright/core/steel';
import { expect, test } from 'vitest';
import { TEST_TANK } from '../day/rehearsed.ts';
import { parseTankFile } from '@hoopwright/wire/tank';
import { shellsAsked } from './asked.ts';
import { plateOf } from './steelRange.ts';

const given = parseTankFile(JSON.stringify(TEST_TANK));
if (!given.ok) throw new Error(JSON.stringify(given.issues));
const { tank } = given;

test('solutions that are fitted and those held back both come from all of the steels', () => {
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- which steel it is, is all that is looked at
  const steels = Array.from({ length: 400 }, (_, k) => ({ wallFactor: k }) as SteelDraw);
  const asked = shellsAsked(tank, plateOf(tank), steels, 2.6, 40);
  const places = asked.map(({ draw }) => draw.wallFactor);
  expect(new Set(places).size).toBe(60);
  for (const part of [places.slice(0, 40), places.slice(40)]) {
    const sorted = part.toSorted((a, b) => a - b);
    const steps = [...sorted, 400].map((place, k) => place - (k === 0 ? 0 : sorted[k - 1]));
    expect(Math.max(...steps)).toBeLessThan((1.6 * 400) / part.length);
  }
  expect(asked.map(({ target }) => target)).toEqual([
    ...Array.from({ length: 40 }, () => 2.6),
    ...Array.from({ length: 20 }, () => undefined),
  ]);
});

test('fewer steels than wanted are all taken', () => {
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- which steel it is, is all that is looked at
  const steels = Array.from({ length: 7 }, (_, k) => ({ wallFactor: k }) as SteelDraw);
  const places = shellsAsked(tank, plateOf(tank), steels, 2.6).map(({ draw }) => draw.wallFactor);
  expect(places.toSorted((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6]);
});
