import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { editDistance } from '../issue/nearest.ts';
import { writeTankFile } from './format/tankFile.ts';
import { type ParsedTank, parseTankFile } from './parseTankFile.ts';

const SEED = 20260918;
const COUNT = 2000;
const examples = ['dunlin-oxidiser', 'dunlin-fuel', 'c3', 'minimal'].map((name) =>
  readFileSync(new URL(`../../examples/${name}.json`, import.meta.url), 'utf8'),
);

/** Even numbers from 0 to 1 (mulberry32), the same in every run. */
function dice(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Holder = Record<string, unknown>;
interface Place {
  readonly holder: Holder;
  readonly key: string;
}

const isHolder = (value: unknown): value is Holder => typeof value === 'object' && value !== null;

const placesIn = (value: unknown): Place[] =>
  isHolder(value)
    ? Object.keys(value).flatMap((key) => [{ holder: value, key }, ...placesIn(value[key])])
    : [];

interface Throw {
  readonly next: () => number;
  readonly pick: <T>(list: readonly T[]) => T;
}

/** Changes a value in place. */
type Mutation = (places: readonly Place[], dice: Throw) => void;

const NUMBER_LIKE = [
  'NaN',
  'Infinity',
  '2 mm',
  '2,5',
  '1.234,5',
  '1e3',
  '0x10',
  '',
  '−2',
  '2..5',
  'two',
  '24 bar',
];
const WRONG = [null, true, [], {}, [1], { value: 2 }, 'text', -1, 0, 7, Number.NaN, Number.NEGATIVE_INFINITY];

const atOne =
  (change: (place: Place, dice: Throw) => void): Mutation =>
  (places, roll) =>
    change(roll.pick(places), roll);

const atNumber =
  (change: (place: Place, value: number, dice: Throw) => void): Mutation =>
  (places, roll) => {
    const place = roll.pick(places.filter(({ holder, key }) => typeof holder[key] === 'number'));
    change(place, place.holder[place.key] as number, roll);
  };

const MUTATIONS: Readonly<Record<string, Mutation>> = {
  'deleted key': atOne(({ holder, key }) => delete holder[key]),
  'wrong type': atOne(({ holder, key }, { pick }) => void (holder[key] = structuredClone(pick(WRONG)))),
  'number as text': atNumber(({ holder, key }, _value, { pick }) => void (holder[key] = pick(NUMBER_LIKE))),
  'wrong scale': atNumber(
    ({ holder, key }, value, { pick }) => void (holder[key] = value * pick([1000, 0.001, 1e6])),
  ),
  'wrong sign': atNumber(({ holder, key }, value) => void (holder[key] = -value)),
  'nudged value': atNumber(({ holder, key }, value, { next }) => void (holder[key] = value * (0.5 + next()))),
  'unknown key': atOne(
    ({ holder }, { pick, next }) => void (holder[`${pick(['x', 'wall', 'heads'])}${next()}`] = 1),
  ),
  'wrong nest': (places, { pick }) => {
    const from = pick(places);
    const to = pick(places.filter(({ holder, key }) => isHolder(holder[key])));
    const moved = structuredClone(from.holder[from.key]);
    delete from.holder[from.key];
    Object.assign(to.holder[to.key] ?? {}, { [from.key]: moved });
  },
  'wrapped value': atOne(({ holder, key }) => void (holder[key] = [holder[key]])),
  'exchanged values': (places, { pick }) => {
    const [one, other] = [pick(places), pick(places)];
    const kept = structuredClone(one.holder[one.key]);
    one.holder[one.key] = structuredClone(other.holder[other.key]);
    other.holder[other.key] = kept;
  },
};

/** One slip of the finger: a letter dropped, doubled, replaced, or swapped with its neighbour. */
function mistyped(key: string, { next, pick }: Throw): string {
  const at = Math.floor(next() * key.length);
  // oxlint-disable-next-line typescript/no-misused-spread -- code points are meant
  const letter = pick([...'abcdefghijklmnopqrstuvwxyz_']);
  return pick([
    key.slice(0, at) + key.slice(at + 1),
    key.slice(0, at) + key[at] + key.slice(at),
    key.slice(0, at) + letter + key.slice(at + 1),
    key.slice(0, at) + (key[at + 1] ?? '') + key[at] + key.slice(at + 2),
  ]);
}

function thrower(seed: number): Throw {
  const next = dice(seed);
  return { next, pick: (list) => list[Math.floor(next() * list.length)] };
}

function expectSound(result: ParsedTank, what: string): void {
  if (result.ok) {
    expect(numbersIn(result.tank).every(Number.isFinite), what).toBe(true);
    expect(parseTankFile(writeTankFile(result.file), { asGiven: true }), what).toMatchObject({
      ok: true,
      file: result.file,
    });
    return;
  }
  expect(result.issues.length, what).toBeGreaterThan(0);
  for (const { path, expected, received } of result.issues) {
    expect(
      [path, expected, received].every((text) => typeof text === 'string' && text !== ''),
      what,
    ).toBe(true);
  }
}

const numbersIn = (value: unknown): number[] =>
  typeof value === 'number' ? [value] : isHolder(value) ? Object.values(value).flatMap(numbersIn) : [];

test(`${COUNT} mutated tank files each give a tank or issues with path, expected, received and suggestion`, () => {
  const roll = thrower(SEED);
  const refused = new Map<string, number>();
  for (let round = 0; round < COUNT; round++) {
    const value: unknown = JSON.parse(roll.pick(examples));
    const kind = roll.pick(Object.keys(MUTATIONS));
    MUTATIONS[kind](placesIn(value), roll);
    const asGiven = roll.next() < 0.3;
    const what = `seed ${SEED}, round ${round}, ${kind}`;
    for (const input of [value, JSON.stringify(value)]) expectSound(parseTankFile(input, { asGiven }), what);
    if (!parseTankFile(value).ok) refused.set(kind, (refused.get(kind) ?? 0) + 1);
  }
  // Every kind of slip is caught at least sometimes; these always.
  expect([...refused.keys()].sort()).toEqual(Object.keys(MUTATIONS).sort());
});

test('a text cut short or with a letter changed gives issues with a place, or a tank', () => {
  const roll = thrower(SEED + 1);
  for (let round = 0; round < 600; round++) {
    const text = roll.pick(examples);
    const at = Math.floor(roll.next() * text.length);
    // oxlint-disable-next-line typescript/no-misused-spread -- code points are meant
    const rest = roll.pick(['', text.slice(at + 1), `${roll.pick([...'{}[]",:0e-'])}${text.slice(at)}`]);
    expectSound(parseTankFile(text.slice(0, at) + rest), `seed ${SEED + 1}, round ${round}`);
  }
});

test('a mistyped key is always refused with a suggestion, which names the key that was meant', () => {
  const roll = thrower(SEED + 2);
  let [typos, named] = [0, 0];
  for (let round = 0; round < COUNT / 4; round++) {
    const value: unknown = JSON.parse(roll.pick(examples));
    const { holder, key } = roll.pick(placesIn(value).filter((place) => !Array.isArray(place.holder)));
    const wrong = mistyped(key, roll);
    if (wrong in holder) continue;
    holder[wrong] = holder[key];
    delete holder[key];
    const result = parseTankFile(value);
    const what = `seed ${SEED + 2}, round ${round}: ${key} as ${wrong}`;
    expect(result.ok, what).toBe(false);
    if (result.ok) continue;
    expectSound(result, what);
    const found = result.issues.filter(({ suggestion }) => suggestion !== undefined);
    expect(found.length, what).toBeGreaterThan(0);
    typos++;
    if (found.some(({ suggestion }) => new RegExp(`\\b${key}\\b`).test(suggestion ?? ''))) named++;
    else if (key.length > 3) expect(nearOther(key, wrong, holder), what).toBe(true);
  }
  expect(typos).toBeGreaterThan(400);
  // What is left are keys of one or two letters, of which a slip makes another key of the format.
  expect(named / typos).toBeGreaterThan(0.97);
});

/** The slip lies as near to some other key. */
const nearOther = (key: string, wrong: string, holder: Holder): boolean =>
  Object.keys(holder).some(
    (other) => other !== wrong && editDistance(other, wrong) <= editDistance(key, wrong),
  );
