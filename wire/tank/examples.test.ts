import { readdirSync, readFileSync } from 'node:fs';
import type { FlowLaw } from '@hoopwright/core/steel';
import { expect, test } from 'vitest';
import { issueLine } from '../issue/issue.ts';
import { writeTankFile } from './format/tankFile.ts';
import { parseTankFile } from './parseTankFile.ts';

const folder = new URL('../../examples/', import.meta.url);
const textOf = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
const examples = readdirSync(folder).filter((name) => name.endsWith('.json'));

function parsed(name: string) {
  const result = parseTankFile(textOf(name));
  if (!result.ok) throw new Error(result.issues.map(issueLine).join('\n'));
  return result;
}

test('there are examples to try', () => {
  expect(examples).toEqual(
    expect.arrayContaining(['dunlin-oxidiser.json', 'dunlin-fuel.json', 'minimal.json', 'c3.json']),
  );
});

test.each(examples)('%s is a sound tank file that is written back unchanged in meaning', (name) => {
  const { file } = parsed(name);
  expect(file).toEqual(JSON.parse(textOf(name)));
  expect(JSON.parse(writeTankFile(file))).toEqual(file);
});

test.each(['dunlin-oxidiser.json', 'dunlin-fuel.json'])('%s says that it is invented', (name) => {
  const { file } = parsed(name);
  expect(file.name).toMatch(/^INVENTED: /);
  expect(file.note).toMatch(/^Invented demonstration data/);
});

/** Hoop log strain of a long closed cylinder under `pressure`, rigid-plastic, thin wall, von Mises, plane strain. */
function rigidPlasticStrain(flow: FlowLaw, hoopStress: number): number {
  if (flow.law !== 'ludwigson') throw new Error(`the demo tanks have a Ludwigson curve, not ${flow.law}`);
  const { K, n, k1, k2 } = flow;
  const C = 2 / Math.sqrt(3);
  let [low, high] = [1e-6, 0.2];
  for (let round = 0; round < 60; round++) {
    const hoop = (low + high) / 2;
    const plastic = C * hoop;
    const carried = C * (K * plastic ** n + Math.exp(k1 + k2 * plastic)) * Math.exp(-2 * hoop);
    [low, high] = carried < hoopStress ? [hoop, high] : [low, hoop];
  }
  return low;
}

// The oxidiser's curve comes from its evidence: station/range/range.test.ts holds its growth.
test.each(['dunlin-fuel.json'])(
  '%s grows 3 to 4 %% in the closed form without elastic part and creep, which leaves room to 5 %%',
  (name) => {
    const { tank, duty } = parsed(name);
    const pressure = (duty?.workingPressure ?? 0) * (duty?.stretchFactor ?? 0);
    const [{ wall, steel }] = tank.courses;
    const hoopStress = (pressure * (tank.insideDiameter / 2 + wall / 2)) / wall;
    const growth = Math.expm1(rigidPlasticStrain(steel.flow, hoopStress));
    expect(growth).toBeGreaterThan(0.03);
    expect(growth).toBeLessThan(0.04);
  },
);

test.each(['dunlin-fuel.json'])('%s pauses at about a quarter of its growth', (name) => {
  const { tank, duty } = parsed(name);
  const [{ wall, steel }] = tank.courses;
  const strainAt = (pressure: number) =>
    rigidPlasticStrain(steel.flow, (pressure * (tank.insideDiameter / 2 + wall / 2)) / wall);
  const [first, last] = duty?.holds ?? [];
  const part = strainAt(first.pressure) / strainAt(last.pressure);
  expect(part).toBeGreaterThan(0.2);
  expect(part).toBeLessThan(0.32);
  expect(first.time).toBe(600);
});
