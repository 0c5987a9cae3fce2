import { expect, test } from 'vitest';
import { QUANTITIES, quantityAt } from './quantity.ts';
import { tankFileSchema } from './tankFile.ts';

interface Node {
  readonly type?: string;
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly items?: Node;
  readonly oneOf?: readonly Node[];
}

interface Place {
  readonly path: readonly PropertyKey[];
  readonly node: Node;
}

function placesOf(node: Node, path: readonly PropertyKey[] = []): Place[] {
  return [
    { path, node },
    ...(node.oneOf ?? []).flatMap((option) => placesOf(option, path)),
    ...(node.items === undefined ? [] : placesOf(node.items, [...path, 0])),
    ...Object.entries(node.properties ?? {}).flatMap(([key, each]) => placesOf(each, [...path, key])),
  ];
}

const places = placesOf(tankFileSchema());
const numbers = places.filter(({ node, path }) => node.type === 'number' && path.at(-1) !== 'hoopwright');

test('every number of the format is found in the table by its path, with the meaning the schema tells', () => {
  expect(numbers.length).toBeGreaterThan(60);
  for (const { path, node } of numbers) {
    const quantity = quantityAt(path);
    expect(quantity, path.join('.')).toBeDefined();
    expect(node.description, path.join('.')).toContain(quantity?.means);
  }
});

test('every entry of the table is used by the format', () => {
  const used = new Set(numbers.map(({ path }) => quantityAt(path)));
  const idle = Object.entries(QUANTITIES).filter(([, quantity]) => !used.has(quantity));
  expect(idle.map(([id]) => id)).toEqual([]);
});

test('every range runs upwards and its reason is told', () => {
  for (const [id, { low, high, why }] of Object.entries(QUANTITIES)) {
    expect(low, id).toBeLessThan(high);
    expect(why.length, id).toBeGreaterThan(5);
  }
});

test('every key of the format is described', () => {
  const silent = places.filter(({ node, path }) => typeof path.at(-1) === 'string' && !node.description);
  expect(silent.map(({ path }) => path.join('.'))).toEqual([]);
});

test('every number whose key has a unit tells that unit', () => {
  const signs: Readonly<Record<string, string>> = {
    per_s: '1/s',
    percent: '%',
    deg: 'degrees',
    C: '°C',
    kg_per_m3: 'kg/m³',
    L_per_min: 'L/min',
    mL_per_min: 'mL/min',
    per_stroke: 'mL',
    per_min: 'minute',
  };
  for (const { path } of numbers) {
    const key = String(path.findLast((step) => typeof step === 'string'));
    const unit = key.includes('_') ? key.slice(key.indexOf('_') + 1) : undefined;
    if (unit === undefined) continue;
    const words = quantityAt(path)?.means.split(/[\s,():]+/) ?? [];
    expect(words.includes(signs[unit] ?? unit) || words.includes(unit), path.join('.')).toBe(true);
  }
});
