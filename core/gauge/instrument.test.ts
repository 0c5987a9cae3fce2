import { expect, test } from 'vitest';
import { type Ailment, type Instrument, shown, truthFor } from './instrument.ts';

const gauge: Instrument = {
  gain: 1.02,
  offset: 0.3,
  noise: 0.05,
  resolution: 0.2,
  range: { from: 0, to: 40 },
};
const fine: Instrument = { ...gauge, noise: 0, resolution: 0 };
const at = (truth: number, seconds = 100, dice = 0) => ({ truth, seconds, dice });

test('a reading is the truth through gain and offset, on the nearest step of the scale', () => {
  // 1.02 x 7.3 + 0.3 = 7.746.
  expect(shown(fine, at(7.3))).toBeCloseTo(7.746, 12);
  expect(shown(gauge, at(7.3))).toBe(7.8);
  expect(shown(gauge, at(7.3, 100, -3))).toBe(7.6);
});

test('a scale has ends', () => {
  expect(shown(gauge, at(55))).toBe(40);
  expect(shown(gauge, at(-3))).toBe(0);
});

test('a stuck gauge stands at what it read, from then on', () => {
  const stuck: Ailment[] = [{ kind: 'stuck', from: 60, at: 11.4 }];
  expect(shown(gauge, at(7.3, 59), stuck)).toBe(7.8);
  expect(shown(gauge, at(23, 61), stuck)).toBe(11.4);
});

test('a drift goes on with time, a slip stays, and both add up', () => {
  const ill: Ailment[] = [
    { kind: 'drifts', from: 40, rate: 0.01 },
    { kind: 'slipped', from: 80, by: -1.5 },
  ];
  expect(shown(fine, at(7.3, 70), ill)).toBeCloseTo(7.746 + 0.3, 12);
  expect(shown(fine, at(7.3, 90), ill)).toBeCloseTo(7.746 + 0.5 - 1.5, 12);
});

test('a dead instrument says nothing, which is not zero', () => {
  expect(shown(gauge, at(7.3), [{ kind: 'dead', from: 3 }])).toBeUndefined();
});

test('what must be there for an instrument to show a figure is the reading backwards', () => {
  const ill: Ailment[] = [{ kind: 'drifts', from: 40, rate: 0.02 }];
  const truth = truthFor(fine, 12.4, 90, ill) ?? NaN;
  expect(shown(fine, at(truth, 90), ill)).toBeCloseTo(12.4, 12);
  expect(truthFor(fine, 12.4, 90, [{ kind: 'stuck', from: 1, at: 3 }])).toBeUndefined();
});
