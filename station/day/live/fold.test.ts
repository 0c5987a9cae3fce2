import { describe, expect, test } from 'vitest';
import { type Fold, fold, foldAll, startFold } from '@hoopwright/wire/day';
import { type Body, type Draft, type Link, aboutDigest, headGroups, tie } from '@hoopwright/wire/record';
import { chainHash } from '../../store/hash.ts';
import { rehearsed } from '../rehearsed.ts';

const links = (...faults: readonly string[]): { readonly start: Fold; readonly links: Link[] } => {
  const { about, drafts } = rehearsed(3, ...faults);
  const digest = aboutDigest(about, chainHash);
  return { start: startFold(about, digest), links: tie({ seq: 0, digest }, drafts, chainHash) };
};

const decided = (decision: string): ((link: Link) => boolean) => {
  return ({ entry }) => entry.kind === 'decision' && entry.body['decision'] === decision;
};

describe('a day without a fault', () => {
  const { start, links: all } = links();
  const upTo = (i: number): Fold => foldAll(start, all.slice(0, i + 1));
  const end = foldAll(start, all).state;

  test('stands at its named end, with the head that the chain has', () => {
    expect(end.phase).toBe('ended');
    expect(end.end?.name).toBe('done');
    expect(end.head).toBe(headGroups(all[all.length - 1].digest));
    expect(end.seq).toBe(all.length);
  });

  test('shows the head at the start, at each hold and at the end', () => {
    const holds = all.filter(decided('hold ended')).length;
    expect(end.heads.map(({ at }) => at)).toEqual(['start', ...Array(holds).fill('hold'), 'end']);
  });

  test('is under way from the shutting of the vent to the draining', () => {
    const shut = all.findIndex(decided('vent shut'));
    expect(upTo(shut - 1).state.phase).toBe('set up');
    expect(upTo(shut).state.phase).toBe('under way');
    const drain = all.findIndex(({ entry }) => entry.body['kind'] === 'drain');
    expect(upTo(drain - 1).state.phase).toBe('under way');
    expect(upTo(drain).state.phase).toBe('after');
  });

  test('has the three numbers of the last row, and growth as the readings have it', () => {
    const at = all.findLastIndex(({ entry }) => entry.body['step'] === '9' || entry.kind === 'reading');
    const { values } = all[at].entry.body as { values: Record<string, number> };
    const { figures, channels } = upTo(at).state;
    expect(figures.pressure?.value).toBe(values['gauge A']);
    expect(figures.litres?.value).toBe(values['weighing']);
    const valueAt = (i: number, name: string): number =>
      (all[i].entry.body as { values?: Record<string, number> }).values?.[name] ?? NaN;
    const zero = all.findIndex((_, i) => Number.isFinite(valueAt(i, 'high')));
    const grown = ['low', 'high'].map(
      (name) =>
        (100 *
          ((channels.find(({ channel }) => channel.name === name)?.last?.value ?? NaN) -
            valueAt(zero, name))) /
        valueAt(zero, name),
    );
    // Foreseen growth up to the seating is some hundredths of a percent.
    expect(Math.abs((figures.growth?.value ?? NaN) - Math.max(...grown))).toBeLessThan(0.35);
  });

  test('tells the rate of a hold with its range, and none before two minutes of rows', () => {
    const rates = all.flatMap((_, i) => (i % 3 === 0 ? (upTo(i).state.hold?.rate ?? []) : []));
    expect(rates.length).toBeGreaterThan(2);
    for (const { value, low, high } of rates) expect(low < value && value < high).toBe(true);
  });

  test('is the same whether folded at once or entry by entry, and never changes what it was given', () => {
    let now = start;
    for (const link of all) now = fold(now, Object.freeze(link));
    expect(now.state).toEqual(end);
    expect(start.state.seq).toBe(0);
  });
});

test('after a restart under pressure the day is broken off until the director confirms the step', () => {
  const { start, links: all } = links('server-restart@40min');
  const at = all.findIndex(({ entry }) => entry.run === 2);
  const broken = foldAll(start, all.slice(0, at + 1)).state;
  const before = foldAll(start, all.slice(0, at)).state;
  expect(broken.phase).toBe('broken off');
  expect(broken.broken).toEqual({
    since_ms: all[at - 1].entry.wall_ms,
    lastPressure_bar: before.figures.pressure?.value,
  });
  const confirmed = foldAll(start, all.slice(0, at + 3)).state;
  expect(confirmed.phase).toBe('under way');
  expect(confirmed.broken).toBeUndefined();
  expect(confirmed.step).toEqual(before.step);
  if (confirmed.hold) expect(confirmed.hold.windowFrom_ms).toBe(all[at + 2].entry.wall_ms);
});

test('a crossed limit is latched with its sentence, and the stop is to be seen', () => {
  const { start, links: all } = links('leak@10min');
  const end = foldAll(start, all).state;
  expect(end.causes[0]).toMatchObject({ limit: 'leak_mL_per_min', state: 'stop and release' });
  expect(end.causes[0].says).toMatch(/mL\/min/);
  const stop = all.findIndex(decided('stop and release'));
  expect(foldAll(start, all.slice(0, stop + 1)).state.phase).toBe('stopping');
});

test('bleeding again takes its cause away, and leads back to the seating', () => {
  const { start, links: all } = links('air');
  const bled = all.findIndex(decided('bleed again'));
  const { state, inside } = foldAll(start, all.slice(0, bled + 1));
  expect(state.causes).toEqual([]);
  expect(inside.rows).toEqual([]);
  expect(state.plan?.plan.steps.find(({ number }) => number === state.next)?.kind).toBe('seat');
});

/** One row more after the day, some seconds later. */
const after = (last: Link, seconds: number, change: Partial<Draft> & { readonly body: Body }): Draft => {
  const { run, mono_ms, wall_ms } = last.entry;
  return {
    run,
    mono_ms: mono_ms + 1000 * seconds,
    wall_ms: wall_ms + 1000 * seconds,
    kind: 'reading',
    ...change,
  };
};

describe('entries by themselves', () => {
  const { start, links: all } = links();
  const hold = all.findIndex(({ entry }) => entry.body['kind'] === 'hold') + 1;
  const so = all.slice(0, hold);
  const then = (...drafts: readonly Draft[]): Fold => {
    const last = so[so.length - 1];
    const more = tie({ seq: last.entry.seq, digest: last.digest }, drafts, chainHash);
    return foldAll(start, [...so, ...more]);
  };
  const last = so[so.length - 1];

  test('a correction is read instead, and the entry it corrects stays where it was', () => {
    const seq = last.entry.seq + 1;
    const row = after(last, 5, { body: { values: { 'gauge A': 31.5 }, step: '4', how: 'by hand', by: 'B' } });
    const mend = after(last, 6, {
      kind: 'correction',
      body: { corrects: seq, values: { 'gauge A': 13.5 }, by: 'B' },
    });
    expect(then(row).state.figures.pressure?.value).toBe(31.5);
    const { state, inside } = then(row, mend);
    expect(state.figures.pressure?.value).toBe(13.5);
    expect(state.channels[0].last?.seq).toBe(seq);
    expect(inside.rows.at(-1)?.values['gauge A']).toBe(13.5);
    // The row that can be picked shows both, what was written and what was added.
    const [newest, older] = state.rows;
    expect(newest).toMatchObject({ seq, by: 'B', values: { 'gauge A': 31.5 } });
    expect(newest.corrections).toEqual([{ seq: seq + 1, by: 'B', values: { 'gauge A': 13.5 } }]);
    expect(older.corrections).toEqual([]);
  });

  test('a row by wire holds what was read within a second, and how far apart the gauges were', () => {
    const wired = (seconds: number, values: Record<string, number>): Draft =>
      after(last, seconds, { body: { values, step: '4', how: 'by wire', source: 'box' } });
    const slow = wired(5, { 'gauge B': 12.2, low: 1266.5 });
    const near = wired(5.75, { 'gauge A': 12.5 });
    const later = wired(6.5, { 'gauge A': 12.75 });
    const { inside } = then(slow, near, later);
    expect(inside.rows.slice(-2).map(({ values, gauges_s }) => [values, gauges_s])).toEqual([
      [{ 'gauge A': 12.5, 'gauge B': 12.2, low: 1266.5 }, 0.75],
      [{ 'gauge A': 12.75 }, undefined],
    ]);
  });

  test('paper typed in later never stands as the present', () => {
    const row = after(last, 5, { body: { values: { 'gauge A': 12.5 }, step: '4', how: 'by hand' } });
    const paper = after(last, 1, {
      body: { values: { 'gauge A': 11.5 }, step: '4', how: 'typed in from paper' },
    });
    const { state, inside } = then(row, paper);
    expect(state.figures.pressure?.value).toBe(12.5);
    expect(inside.rows.slice(-2).map(({ values }) => values['gauge A'])).toEqual([11.5, 12.5]);
  });

  test('a channel that is set aside is kept and not believed, until it is taken back', () => {
    const aside = after(last, 1, {
      kind: 'decision',
      body: { decision: 'set aside', channel: 'gauge A', why: 'sticks', by: 'A', step: '4' },
    });
    const row = after(last, 5, {
      body: { values: { 'gauge A': 25.5, 'gauge B': 12.2 }, step: '4', how: 'by hand' },
    });
    const { state, inside } = then(aside, row);
    expect(state.figures.pressure).toMatchObject({ channel: 'gauge B', value: 12.2 });
    expect(inside.rows.at(-1)?.values).toEqual({ 'gauge B': 12.2 });
    expect(state.channels.find(({ channel }) => channel.name === 'gauge A')?.last?.value).toBe(25.5);
    const back = after(last, 6, {
      kind: 'decision',
      body: { decision: 'take back', channel: 'gauge A', by: 'A' },
    });
    expect(then(aside, row, back).state.figures.pressure?.channel).toBe('gauge B');
    const again = after(last, 7, { body: { values: { 'gauge A': 12.4 }, step: '4', how: 'by hand' } });
    expect(then(aside, row, back, again).state.figures.pressure?.channel).toBe('gauge A');
  });

  test('where the clocks part, the window of the hold starts anew and rows count in another part', () => {
    const gap = after(last, 60, { kind: 'gap', body: { cause: 'parted', parted_ms: 4000 } });
    const row = after(last, 61, { body: { values: { 'gauge A': 12.5 }, step: '4', how: 'by hand' } });
    const { state, inside } = then(gap, row);
    expect(state.gaps).toHaveLength(1);
    expect(state.hold?.windowFrom_ms).toBe(gap.wall_ms);
    expect(inside.rows.at(-1)?.part).toBe(1);
  });

  test('a trouble stands until it is over', () => {
    const full = after(last, 1, { kind: 'trouble', body: { what: 'disk full', says: 'The disk is full.' } });
    expect(then(full).state.troubles).toMatchObject([{ what: 'disk full' }]);
    const clear = after(last, 2, {
      kind: 'trouble',
      body: { what: 'disk full', says: 'Room again.', over: true },
    });
    expect(then(full, clear).state.troubles).toEqual([]);
  });

  test('forecast and advice stand as they were last written', () => {
    const forecast = after(last, 1, { kind: 'forecast', body: { growth: { value: 5.5 } } });
    const advice = after(last, 2, {
      kind: 'advice',
      body: { state: 'hold', reasons: ['The rate is high.'], readings: [12] },
    });
    const { state } = then(forecast, advice);
    expect(state.foresight?.body).toEqual({ growth: { value: 5.5 } });
    expect(state.advice).toMatchObject({ state: 'hold', reasons: ['The rate is high.'], readings: [12] });
    expect(state.causes).toEqual([]);
  });

  test('an entry with a body of another kind harms nothing', () => {
    const odd = (
      ['reading', 'step', 'advice', 'decision', 'measure', 'trouble', 'gap', 'set-up'] as const
    ).map((kind, i) =>
      after(last, i, {
        kind,
        body: { values: 'none', step: 7, limit: [], decision: {}, what: 1, channels: 'x' },
      }),
    );
    expect(() => then(...odd)).not.toThrow();
  });
});
