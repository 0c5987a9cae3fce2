import { describe, expect, test } from 'vitest';
import { withOneLess, withOneMore, withSupply } from './day.ts';
import { redimensioned, valueAt, without, withValue } from './edit.ts';

const file = {
  hoopwright: 1,
  barrel: {
    insideDiameter_mm: 510,
    length_mm: 600,
    wall_mm: 2,
    courses: [{ length_mm: 240 }, { length_mm: 360 }],
  },
  heads: {
    top: { shape: 'semi-ellipsoidal', ratio: 1.9 },
    bottom: { shape: 'torispherical', standard: 'DIN 28011' },
  },
  steel: { certificate: { Rm_MPa: 611 }, wallMeasured_mm: [1.97, 2.03] },
};

test('a value is put where its path leads, and the file before is not touched', () => {
  expect(valueAt(withValue(file, 'heads.top.wall_mm', 2.4), 'heads.top.wall_mm')).toBe(2.4);
  expect(valueAt(file, 'heads.top.wall_mm')).toBeUndefined();
});

test('what is taken away takes an empty record with it', () => {
  expect(valueAt(without(file, 'steel.certificate.Rm_MPa'), 'steel.certificate')).toBeUndefined();
});

test('a depth drawn by hand stands instead of the ratio, radii instead of the standard', () => {
  expect(valueAt(redimensioned(file, 'heads.top.depth_mm', 131), 'heads.top.ratio')).toBeUndefined();
  expect(
    valueAt(redimensioned(file, 'heads.bottom.knuckleRadius_mm', 55), 'heads.bottom.standard'),
  ).toBeUndefined();
});

test('courses keep their shares of a barrel that was made longer', () => {
  expect(valueAt(redimensioned(file, 'barrel.length_mm', 700), 'barrel.courses')).toEqual([
    { length_mm: 280 },
    { length_mm: 420 },
  ]);
});

test('walls that were measured stay with their sheet and go with another', () => {
  expect(valueAt(redimensioned(file, 'barrel.wall_mm', 2.05), 'steel.wallMeasured_mm')).toEqual([1.97, 2.03]);
  expect(valueAt(redimensioned(file, 'barrel.wall_mm', 2.5), 'steel.wallMeasured_mm')).toBeUndefined();
});

describe('the set-up of the day', () => {
  const draft = {
    duty: { workingPressure_bar: 18, stretchFactor: 1.5 },
    girths: [{ name: 'low' }, { name: 'high' }],
  };

  test('a gauge is added with the next nominal range over 1.25 times the stretch pressure', () => {
    expect(valueAt(withOneMore(draft, 'day.gauges'), 'day.gauges')).toEqual([
      { name: 'gauge 1', range_bar: 40, resolution_bar: 0.2 },
    ]);
  });

  test('a reading is added for a girth that nobody reads yet, and taken away with its list', () => {
    const two = withOneMore(withOneMore(draft, 'day.readings'), 'day.readings');
    expect(valueAt(two, 'day.readings[1].girth')).toBe('high');
    expect(withOneLess(withOneLess(two, 'day.readings', 1), 'day.readings', 0)).toEqual(draft);
  });

  test('a supply known by strokes has the step of the stroke', () => {
    const pumped = withValue(draft, 'day.pump.mL_per_stroke', 12.5);
    expect(valueAt(withSupply(pumped, 'strokes'), 'day.supply')).toEqual({
      by: 'strokes',
      resolution_mL: 12.5,
    });
    expect(withSupply(withSupply(draft, 'meter'), undefined)).toEqual(draft);
  });
});
