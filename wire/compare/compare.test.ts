import { readFileSync } from 'node:fs';
import { forecast } from '@hoopwright/core/stretch';
import { expect, test } from 'vitest';
import { usualOrders } from '../forecast/orders.ts';
import { parseTankFile } from '../tank/parseTankFile.ts';
import type { TankFile } from '../tank/format/tankFile.ts';
import { compareSheet, compareSheets, withSheet } from './compare.ts';

const file = JSON.parse(
  readFileSync(new URL('../../examples/dunlin-fuel.json', import.meta.url), 'utf8'),
) as TankFile;

test('the row of the sheet that the file has is the forecast of the file, to the last digit', () => {
  const parsed = parseTankFile(file);
  if (!parsed.ok) throw new Error('the demo tank was refused');
  const whole = forecast(parsed.tank, parsed.duty, usualOrders(parsed.tank, parsed.duty));
  const { row } = compareSheet(file, file.barrel.wall_mm, {});
  expect(row.growthUnder_percent).toBe(100 * (whole.held?.largest.growth ?? NaN));
  expect(row.growthLeft_percent).toBe(100 * (whole.released?.left.largest.growth ?? NaN));
  expect(row.maximum_bar).toBe((whole.maximum?.pressure ?? NaN) / 0.1);
});

test('a thicker sheet grows less, weighs more and bears more; the order asked for is kept', () => {
  const compared = compareSheets(file, [2.3, 1.7]);
  const [thick, thin] = compared?.sheets ?? [];
  expect([thick.wall_mm, thin.wall_mm]).toEqual([2.3, 1.7]);
  expect(thick.growthUnder_percent).toBeLessThan(thin.growthUnder_percent ?? NaN);
  expect(thick.mass_kg).toBeGreaterThan(thin.mass_kg ?? NaN);
  expect(thick.maximum_bar).toBeGreaterThan(thin.maximum_bar ?? NaN);
});

test('every sheet is weighed against one unstretched tank, that of the file as it stands', () => {
  const compared = compareSheets(file, [1.7]);
  const own = compareSheet(file, file.barrel.wall_mm, {}).unstretched;
  expect(compared?.unstretched).toEqual(own);
  const [row] = compared?.sheets ?? [];
  expect(row.overUnstretched).toBeCloseTo((row.mass_kg ?? NaN) / (own?.mass_kg ?? NaN), 12);
});

test('a sheet that cannot bear the stretch pressure says so and gives no growth', () => {
  const { row } = compareSheet(file, 0.9, {});
  expect(row.end).toBe('bursts');
  expect(row.growthUnder_percent).toBeNull();
  expect(row.margin).toBeLessThan(1);
});

test('a sheet with which the file is no tank comes back with the reasons', () => {
  const { row } = compareSheet(file, 290, {});
  expect(row.end).toBe('refused');
  expect(row.issues.map(({ path }) => path)).toContain('barrel.wall_mm');
});

test('courses that had a wall of their own take the sheet; heads keep theirs', () => {
  const courses = [{ length_mm: 320, wall_mm: 2.2 }, { length_mm: 320 }];
  const changed = withSheet({ ...file, barrel: { ...file.barrel, courses } }, 1.8);
  const parsed = parseTankFile(changed);
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
  expect(parsed.tank.courses.map(({ wall }) => wall)).toEqual([1.8, 1.8]);
  expect(parsed.tank.heads.top.wall).toBe(3);
});

test('it stops before the next sheet when asked to', () => {
  const seen: number[] = [];
  const stop = (done: number): boolean => {
    seen.push(done);
    return done === 1;
  };
  expect(compareSheets(file, [1.7, 2.3], { stop })).toBeUndefined();
  expect(seen).toEqual([0, 1]);
});
