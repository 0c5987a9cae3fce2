import { createHash } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { channelsOf } from './channel.ts';
import type { Row } from './row.ts';
import { samplePlan } from './sample.ts';
import { crossingSentence } from './say.ts';
import { crossings } from './watch.ts';

const plan = samplePlan((text) => createHash('sha256').update(text).digest('hex'));

/** A row as foreseen at the end of a step, `later` s into it; what is given replaces what was foreseen. */
const rowAt = (number: string, seconds: number, given: Row['values'] = {}): Row => {
  const step = plan.steps.find((one) => one.number === number);
  if (step === undefined) throw new Error(`no step ${number}`);
  const girths = Object.fromEntries(step.expected?.girths.map((g) => [g.name, g.girth_mm.value]) ?? []);
  const litres = step.expected?.pumped_L.value ?? 0;
  const gauges = { 'gauge A': step.pressure_bar, 'gauge B': step.pressure_bar };
  return { seconds, step: number, values: { ...gauges, ...girths, weighing: litres, ...given } };
};

const upTo = (last: string): Row[] => {
  const numbers = plan.steps
    .filter((s) => s.expected !== undefined && s.kind !== 'release')
    .map((s) => s.number);
  return numbers.slice(0, numbers.indexOf(last) + 1).map((number, i) => rowAt(number, 100 * (i + 1)));
};
const limitsOf = (rows: readonly Row[], aside: readonly string[] = []): string[] =>
  crossings({ plan, rows, aside: new Set(aside) }).map(({ limit }) => limit);
const allowed = (key: string): number => plan.limits.find(({ limit }) => limit === key)?.value ?? NaN;

test('a day as foreseen crosses nothing at any row', () => {
  const rows = [...upTo('13'), rowAt('14', 9000)];
  rows.forEach((_, i) => expect(limitsOf(rows.slice(0, i + 1))).toEqual([]));
});

describe('pressure', () => {
  test('is over the plan by more than one step of the gauge', () => {
    expect(limitsOf([...upTo('12'), rowAt('13', 2000, { 'gauge A': 30.1 })])).toEqual([]);
    expect(limitsOf([...upTo('12'), rowAt('13', 2000, { 'gauge A': 30.2 })])).toEqual(['pressure_bar']);
  });

  test('a coarse second gauge is believed only to what two gauges may be apart', () => {
    expect(limitsOf([...upTo('12'), rowAt('13', 2000, { 'gauge B': 30.6 })])).toEqual([]);
    const far = limitsOf([...upTo('12'), rowAt('13', 2000, { 'gauge B': 31.2 })]);
    expect(far).toEqual(['pressure_bar', 'gaugesApart_bar']);
  });

  test('gauges on two wires, read one after the other, may part by what the pressure moved meanwhile', () => {
    const before = rowAt('11', 1990, { 'gauge A': 20.5, 'gauge B': 20.3 });
    // 1 bar/s for 1.1 s, over the 0.87 bar that the plan lets them be apart.
    const now = { ...rowAt('11', 1995, { 'gauge A': 25.5, 'gauge B': 24.4 }), gauges_s: 1.1 };
    const far = { ...now, values: { ...now.values, 'gauge B': 23.4 } };
    const { gauges_s: _, ...atOnce } = now;
    const apart = (row: Row): boolean => limitsOf([...upTo('10'), before, row]).includes('gaugesApart_bar');
    expect([now, far, atOnce].map(apart)).toEqual([false, true, true]);
  });

  test('a gauge that is set aside says nothing', () => {
    const rows = [...upTo('12'), rowAt('13', 2000, { 'gauge B': 31.2 })];
    expect(limitsOf(rows, ['gauge B'])).toEqual([]);
  });
});

test('growth is counted from the first reading, whatever the tape read then', () => {
  const shifted = upTo('12').map((row) => ({
    ...row,
    values: { ...row.values, low: row.values['low'] + 3.7 },
  }));
  expect(limitsOf(shifted)).toEqual([]);
  const grown = 1266.1 * (1 + (allowed('growthUnderPressure_percent') + 0.05) / 100);
  const found = crossings({
    plan,
    rows: [...upTo('12'), rowAt('13', 2000, { low: grown, high: grown - 2 })],
  });
  expect(found.map(({ limit }) => limit)).toEqual(['growthUnderPressure_percent']);
  expect(found[0].channels).toEqual(['low']);
});

test('growth that is left is judged after the release only', () => {
  const wide = 1266.1 * (1 + (allowed('growthLeft_percent') + 0.05) / 100);
  const given = { low: wide, high: wide };
  expect(limitsOf([...upTo('12'), rowAt('13', 2000, given)])).toEqual([]);
  expect(limitsOf([...upTo('13'), rowAt('14', 9000, given)])).toEqual(['growthLeft_percent']);
});

test('two girths that part are both named', () => {
  const [found] = crossings({ plan, rows: [...upTo('10'), rowAt('11', 2000, { high: 1294.62 - 12 })] });
  expect(found.limit).toBe('girthsApart_percent');
  expect(found.channels).toEqual(['low', 'high']);
  expect(found.value).toBeGreaterThan(allowed('girthsApart_percent'));
});

test('pressure that does not rise with the litres crosses the slope, in a rise and not in a hold', () => {
  const flat = { 'gauge A': 28.02, 'gauge B': 28, weighing: 20 };
  expect(limitsOf([...upTo('10'), rowAt('11', 2000, flat)])).toEqual(['slopeShare']);
  expect(limitsOf([...upTo('12'), rowAt('13', 2000, { weighing: 20 })])).toEqual([]);
});

test('a few millilitres are too little to judge a slope by', () => {
  const [last] = upTo('10').slice(-1);
  const soon = { 'gauge A': 28, 'gauge B': 28, weighing: last.values['weighing'] + 0.05 };
  expect(limitsOf([...upTo('10'), rowAt('11', 2000, soon)])).toEqual([]);
});

test('water that a hold drew as creep is no rise without pressure', () => {
  const [arrived] = upTo('7').slice(-1);
  const drawn = (more: number): Row['values'] => ({ weighing: arrived.values['weighing'] + more });
  // The last row of the hold, ten minutes later and half a litre on; then the first 40 mL of the rise.
  const crept = rowAt('7', arrived.seconds + 600, drawn(0.5));
  const rise = { ...rowAt('8', crept.seconds + 3, drawn(0.54)) };
  const values = {
    ...rise.values,
    'gauge A': arrived.values['gauge A'] + 0.02,
    'gauge B': arrived.values['gauge B'],
  };
  expect(limitsOf([...upTo('7'), crept, { ...rise, values }])).toEqual([]);
});

test('what the pressure eases after the pump has stopped is no slope', () => {
  const [before] = upTo('9').slice(-1);
  const { weighing, 'gauge A': from } = before.values;
  const row = (seconds: number, litres: number, bar: number): Row =>
    rowAt('10', before.seconds + seconds, {
      weighing: weighing + litres,
      'gauge A': from + bar,
      'gauge B': from + bar,
    });
  const rise = [...upTo('9'), row(10, 0.2, 0.3), row(20, 0.4, 0.6), row(30, 0.6, 0.9)];
  expect(limitsOf([...rise, row(90, 0.6, 0.5)])).toEqual([]);
  expect(limitsOf([...rise, row(90, 0.9, 0.5)])).toEqual(['slopeShare']);
});

test('trapped air is found at the last point of the first step, and only there', () => {
  // Boyle: 1.2 L at filling give way by so much at a pressure of so many bar.
  const air = (bar: number): number => (1.2 * bar) / (1.01325 + bar);
  const aired = (number: string, seconds: number): Row => {
    const row = rowAt(number, seconds);
    return {
      ...row,
      values: { ...row.values, weighing: row.values['weighing'] + air(row.values['gauge A']) },
    };
  };
  const rows = [aired('2', 100), aired('3a', 200), aired('3b', 300)];
  expect(limitsOf(rows.slice(0, 2))).toEqual([]);
  const [found] = crossings({ plan, rows });
  expect(found.limit).toBe('trappedAir_L');
  expect(found.value).toBeGreaterThan(1.1);
  expect(found.value).toBeLessThan(1.3);
  expect(limitsOf([...rows, rowAt('4', 400)])).toEqual([]);
});

describe('loss of water in a hold', () => {
  /** Five minutes apart, the wall as still as a post, so much drawn a minute. */
  const hold = (perMinute: number, minutes: number): Row[] =>
    Array.from({ length: minutes / 2 + 1 }, (_, i) =>
      rowAt('13', 2000 + 120 * i, { weighing: 6 + (perMinute * 2 * i) / 1e3 }),
    );

  test('is named once the plan can see it', () => {
    const [found] = crossings({ plan, rows: [...upTo('12'), ...hold(47, 10)] });
    expect(found.limit).toBe('leak_mL_per_min');
    expect(found.value).toBeCloseTo(47, 6);
  });

  test('is not named before its minutes are over, nor within what the instruments blur', () => {
    expect(limitsOf([...upTo('12'), ...hold(47, 8)])).toEqual([]);
    expect(limitsOf([...upTo('12'), ...hold(allowed('leak_mL_per_min') * 1.05, 10)])).toEqual([]);
  });

  test('what the wall takes up is no loss', () => {
    // 0.06 % of girth in ten minutes takes 103 mL of room in this tank, by the plan's own figure.
    const crept = hold(0, 10).map((row, i) => {
      const girth = (mm: number): number => mm * (1 + 1.2e-4 * i);
      const values = { low: girth(1306.76), high: girth(1306.34), weighing: 6 + 0.0207 * i };
      return { ...row, values: { ...row.values, ...values } };
    });
    expect(limitsOf([...upTo('12'), ...crept])).toEqual([]);
  });

  test('with the valve shut it is the fall of pressure that tells', () => {
    const shut = hold(0, 10).map((row, i) => ({
      ...row,
      values: { ...row.values, 'gauge A': 29.8 - 4 * i, 'gauge B': 29.8 - 4 * i },
    }));
    const [found] = crossings({ plan, rows: [...upTo('12'), ...shut] });
    expect(found.limit).toBe('leak_mL_per_min');
    // 2 bar a minute, at 4.9 mL of compression a bar.
    expect(found.value).toBeCloseTo(9.8, 0);
  });
});

test('channels come from the places of the plan, each in its one unit, gauges as twins', () => {
  expect(channelsOf(plan)).toEqual([
    expect.objectContaining({ name: 'gauge A', reads: 'pressure', resolution: 0.1, twin: 'gauge B' }),
    expect.objectContaining({ name: 'gauge B', reads: 'pressure', resolution: 0.2, twin: 'gauge A' }),
    expect.objectContaining({ name: 'low', reads: 'girth', resolution: 0.05, by: 'draw-wire' }),
    expect.objectContaining({ name: 'high', reads: 'girth', resolution: 0.5 }),
    expect.objectContaining({ name: 'weighing', reads: 'litres', resolution: 0.005 }),
  ]);
});

test('a crossing is told as a sentence with its figures', () => {
  const [found] = crossings({ plan, rows: [...upTo('12'), rowAt('13', 2000, { 'gauge A': 30.4 })] });
  expect(crossingSentence(found)).toBe('gauge A shows 30.4 bar; the plan allows 30.0 bar.');
});
