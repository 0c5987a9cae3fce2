import { describe, expect, test } from 'vitest';
import type { StepKind } from '../plan/plan.ts';
import { channelsOf } from '../reading/channel.ts';
import type { Row } from '../reading/row.ts';
import { samplePlan } from '../reading/sample.ts';
import { Adviser } from './adviser.ts';

const plan = samplePlan((text) => text.slice(0, 8).padEnd(64, '0'));

/** Growth (percent) of both girths and pressure over that of the step, at a time within it. */
interface Given {
  readonly at: number;
  readonly bar: number;
  readonly grown: number;
  readonly values?: Row['values'];
}

function rowsIn(kind: StepKind, list: readonly Given[]): Row[] {
  const step = plan.steps.findLast((one) => one.kind === kind);
  if (step === undefined) throw new Error(`no ${kind}`);
  const girths = plan.steps.find(({ expected }) => expected !== undefined)?.expected?.girths ?? [];
  return list.map(({ at, bar, grown, values }) => ({
    seconds: 4000 + at,
    step: step.number,
    values: {
      'gauge A': step.pressure_bar + bar,
      'gauge B': step.pressure_bar + bar,
      ...Object.fromEntries(girths.map(({ name, girth_mm }) => [name, girth_mm.value * (1 + grown / 100)])),
      ...values,
    },
  }));
}

const without = ({ values, ...row }: Row, name: string): Row => ({
  ...row,
  values: Object.fromEntries(Object.entries(values).filter(([key]) => key !== name)),
});

/** What is advised after a day as foreseen up to its first girth readings, and these rows. */
function advised(rows: readonly Row[], aside: readonly string[] = [], seen_bar?: number) {
  const seen = seen_bar === undefined ? {} : { seen_bar };
  const adviser = new Adviser({ plan, channels: channelsOf(plan), ...seen });
  const seat = plan.steps.find(({ expected }) => expected !== undefined);
  const zero = rowsIn(seat?.kind ?? 'seat', [{ at: -3900, bar: 0, grown: 0 }]);
  adviser.setAside(new Set(aside));
  for (const row of [...zero, ...rows]) adviser.take(row);
  const { state, reasons, channels } = adviser.advice(rows.at(-1)?.seconds ?? 0);
  return { state, whys: reasons.map(({ why }) => why), channels };
}

describe('growth while the pressure falls', () => {
  const quiet = { at: 0, bar: -1.4, grown: 1.1 };
  const fallen = { at: 50, bar: -2.5, grown: 1.52 };

  test('stops a rise, and goes by the second gauge where the first is set aside', () => {
    expect(advised(rowsIn('rise', [quiet, fallen])).whys).toEqual(['growth without pressure']);
    const stuck = rowsIn(
      'rise',
      [quiet, fallen].map((one) => ({ ...one, values: { 'gauge A': 12 } })),
    );
    const found = { state: 'stop and release', channels: ['gauge B', 'low'] };
    expect(advised(stuck, ['gauge A'])).toMatchObject(found);
    const silent = rowsIn('rise', [quiet, fallen]).map((row) => without(row, 'gauge A'));
    expect(advised(silent)).toMatchObject(found);
    expect(advised(rowsIn('rise', [quiet, { ...fallen, bar: -1.1 }])).whys).toEqual([
      'within limits',
      'nothing foreseen',
    ]);
  });

  test('stops an open hold where it comes within a minute, not where it creeps over many', () => {
    expect(advised(rowsIn('final hold', [quiet, fallen])).state).toBe('stop and release');
    expect(advised(rowsIn('final hold', [quiet, { ...fallen, at: 300 }])).state).toBe('hold');
  });
});

describe('a tank that an earlier day has stretched', () => {
  test('says nothing of its steel under the pressure it has seen: a jump of a girth there is no oddity', () => {
    const { pressure_bar: top } = plan.steps.findLast(({ kind }) => kind === 'rise') ?? { pressure_bar: NaN };
    // One girth a reading a second; from the tenth on it stands 4 mm further, the other does not.
    const rows = rowsIn(
      'rise',
      Array.from({ length: 16 }, (_, k) => ({ at: k, bar: -2, grown: 1 })),
    ).map((row, k) => ({ ...row, values: { ...row.values, low: row.values['low'] + (k > 11 ? 4 : 0) } }));
    expect(advised(rows).whys).toContain('oddity');
    expect(advised(rows, [], top).whys).not.toContain('oddity');
    expect(advised(rows, [], top - 3).whys).toContain('oddity');
  });
});

describe('the rows that were taken', () => {
  test('are held against the limits of the plan', () => {
    const high = plan.steps
      .findLast(({ kind }) => kind === 'rise')
      ?.expected?.girths.find(({ name }) => name === 'high');
    const apart = plan.limits.find(({ limit }) => limit === 'girthsApart_percent')?.value ?? NaN;
    const values = { high: (high?.girth_mm.value ?? NaN) * (1 + (apart + 1) / 100) };
    expect(advised(rowsIn('rise', [{ at: 0, bar: -1, grown: 0.2, values }]))).toMatchObject({
      state: 'stop and release',
      channels: ['high', 'low'],
    });
  });

  test('say nothing of the pressure where both gauges are set aside: stop', () => {
    const rows = rowsIn('rise', [{ at: 0, bar: -1, grown: 1.3 }]);
    expect(advised(rows).state).toBe('nothing against going on');
    expect(advised(rows, ['gauge A']).state).toBe('nothing against going on');
    expect(advised(rows, ['gauge A', 'gauge B']).whys[0]).toBe('gauges lost');
  });
});
