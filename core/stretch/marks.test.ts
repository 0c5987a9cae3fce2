import { expect, test } from 'vitest';
import { fromKgPerM3, fromLitre } from '../units.ts';
import type { Steel } from '../steel/steel.ts';
import type { Duty, Head, Tank } from '../tank/tank.ts';
import { forecast } from './forecast.ts';

const steel: Steel = {
  young: 200000,
  poisson: 0.3,
  density: fromKgPerM3(7900),
  flow: { law: 'ludwigson', K: 1380, n: 0.49, k1: 5.3, k2: -21 },
  biaxialFactor: 1,
  rate: { on: 'yield', perEfold: 2.7, reference: 1e-4 },
};
const head: Head = { shape: { kind: 'semi-ellipsoidal', depth: 131 }, wall: 2.3, straightFlange: 0, steel };
const tank: Tank = {
  name: 'with holds',
  insideDiameter: 540,
  length: 610,
  courses: [{ length: 610, wall: 1.9, steel }],
  heads: { top: head, bottom: head },
  girthSeams: [],
  baffles: [],
  skirts: [],
  girths: [{ name: 'middle', at: 290 }],
  openings: [],
  water: { temperature: 14, trappedAir: 0 },
};
const duty: Duty = {
  workingPressure: 1.7,
  stretchFactor: 1.5,
  pump: fromLitre(1.1) / 60,
  holds: [{ pressure: 2.31, time: 540, valve: 'open' }],
};

/** Marks just above the hold, where no slope is known, are the hard ones. */
const marks = [1.1, 1.9, 2.2, 2.312, 2.34, 2.38, 2.5];

test('pressures to land on change neither the growth nor the maximum, also right after a hold', () => {
  const bare = forecast(tank, duty);
  const marked = forecast(tank, duty, { marks });
  // Steps of another length: backward Euler of the rate effect differs by some 1e-5 of girth.
  expect(marked.arrived?.largest.growth).toBeCloseTo(bare.arrived?.largest.growth ?? NaN, 4);
  expect(marked.maximum?.pressure).toBeCloseTo(bare.maximum?.pressure ?? NaN, 2);
  for (const mark of marks)
    expect(Math.min(...marked.path.map((m) => Math.abs(m.pressure - mark)))).toBeLessThan(1e-9);
});

test('between a hold and the maximum the pump never loses pressure on the way to a mark', () => {
  const { path } = forecast(tank, duty, { marks });
  const up = path.filter(({ phase, pressure }) => phase === 'stretch' && pressure <= 2.5);
  up.slice(1).forEach((moment, i) => expect(moment.pressure).toBeGreaterThanOrEqual(up[i].pressure));
});

test('a step that lands on a pressure takes the time that the pump needs for its litres', () => {
  const { path } = forecast(tank, duty, { marks });
  const landed = path.flatMap((moment, i) => {
    // The first after the hold begins with a little step that only feels for the slope.
    const plastic = moment.phase === 'stretch' && moment.pressure > 1.5 && path[i - 1].phase === 'stretch';
    return plastic && marks.some((mark) => Math.abs(mark - moment.pressure) < 1e-9) ? [i] : [];
  });
  expect(landed.length).toBeGreaterThan(3);
  for (const i of landed) {
    const [a, b] = [path[i - 1], path[i]];
    const drawn = b.pumped.all - a.pumped.all;
    // The time is settled to 0.5 %.
    expect(Math.abs(drawn / (b.time - a.time) / (duty.pump ?? NaN) - 1)).toBeLessThan(0.006);
  }
});
