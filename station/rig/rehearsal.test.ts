import { describe, expect, test } from 'vitest';
import { diceOf } from '@hoopwright/core/gauge';
import { variedTank } from '@hoopwright/core/stretch';
import { TEST_TANK } from '@hoopwright/wire/sample';
import { parseTankFile } from '@hoopwright/wire/tank';
import { planFor } from '@hoopwright/wire/plan';
import type { Draft } from '@hoopwright/wire/record';
import { sha256 } from '../store/hash.ts';
import type { DayEnd } from './happening.ts';
import { readFault } from './fault.ts';
import { rehearsal } from './rehearsal.ts';

const parsed = parseTankFile(JSON.stringify(TEST_TANK));
if (!parsed.ok) throw new Error(JSON.stringify(parsed.issues));
const answer = planFor({ ...parsed, program: 'test', hash: sha256, shell: { elements: 40, layers: 3 } });
if (answer.kind !== 'plan') throw new Error(JSON.stringify(answer.reasons));
const { plan } = answer;
const mesh = { elements: 24, layers: 3 };

/** Crossings of the plan's limits, beside which other advice stands. */
const crossed = (drafts: readonly Draft[]): unknown[] =>
  drafts.flatMap(({ kind, body }) => (kind === 'advice' && body['limit'] !== undefined ? [body] : []));

function played(seed: number, ...texts: string[]): { drafts: Draft[]; end: DayEnd } {
  const faults = texts.map((text) => {
    const read = readFault(text);
    if (!read.ok) throw new Error(read.why);
    return read.fault;
  });
  if (!parsed.ok) throw new Error('no tank');
  const tank = variedTank(parsed.tank, diceOf(seed));
  const { happenings } = rehearsal({ tank, plan, seed, faults, hash: sha256, program: 'test', mesh });
  const drafts: Draft[] = [];
  for (;;) {
    const next = happenings.next();
    if (next.done === true) return { drafts, end: next.value };
    drafts.push(next.value.draft);
  }
}

const kinds = (drafts: readonly Draft[], kind: Draft['kind']): Draft['body'][] =>
  drafts.filter((draft) => draft.kind === kind).map(({ body }) => body);
const stepsOf = (drafts: readonly Draft[]): unknown[] => kinds(drafts, 'step').map(({ kind }) => kind);

describe('a day without a fault', () => {
  const { drafts, end } = played(3);

  test('is followed to its end: every step of the frozen plan once, in order', () => {
    expect(end.end).toBe('done');
    expect(kinds(drafts, 'step').map(({ step }) => step)).toEqual(plan.steps.map(({ number }) => number));
  });

  test('begins with program, set-up and the frozen plan under its digest', () => {
    expect(drafts.slice(0, 3).map(({ kind }) => kind)).toEqual(['start', 'set-up', 'plan']);
    expect(drafts[2].body).toMatchObject({
      frozen: { name: 'rehearsal', digest: expect.stringMatching(/^[0-9a-f]{64}$/) },
    });
  });

  test('moves on by an entry of the director, and by nothing else', () => {
    const moves = drafts.flatMap(({ kind, body }, i) =>
      kind === 'step' && i > 3 ? [[drafts[i - 1].kind, drafts[i - 1].body['decision'], body['step']]] : [],
    );
    expect(moves).toHaveLength(plan.steps.length - 1);
    expect(moves.every(([kind, decision]) => kind === 'decision' && decision === 'go on')).toBe(true);
  });

  test('holds its pressure until the growth of half an hour is under 0.05 %', () => {
    const last = kinds(drafts, 'decision').findLast(({ decision }) => decision === 'hold ended');
    expect(Number(/growth of girth (\S+) %/.exec(JSON.stringify(last?.['why']))?.[1])).toBeLessThan(0.05);
  });

  test('says at its end what was hidden', () => {
    expect(kinds(drafts, 'end')[0]).toMatchObject({
      end: 'done',
      hidden: { seed: 3, wall_mm: expect.any(Number) },
    });
  });

  test('reads in steps of the scales', () => {
    for (const { values } of kinds(drafts, 'reading')) {
      const { low } = values as Record<string, number>;
      expect(Math.abs(low / 0.05 - Math.round(low / 0.05))).toBeLessThan(1e-6);
    }
  });
});

test('the same seed gives the same drafts, another one others', () => {
  expect(played(5).drafts).toEqual(played(5).drafts);
  expect(played(6).drafts).not.toEqual(played(5).drafts);
});

describe('faults', () => {
  test('a leak is called in a hold, the tank is released, and the end is named', () => {
    const { drafts, end } = played(3, 'leak@10min');
    expect(end.end).toBe('leaked');
    expect(crossed(drafts)[0]).toMatchObject({ state: 'stop and release', limit: 'leak_mL_per_min' });
    expect(stepsOf(drafts).at(-1)).toBe('release');
  });

  test('a stuck gauge parts from its twin', () => {
    const { drafts, end } = played(3, 'gauge-stuck@3min');
    expect(end.end).toBe('broken off');
    expect(crossed(drafts)[0]).toMatchObject({ limit: 'gaugesApart_bar' });
  });

  test('a drifting gauge parts from its twin', () => {
    expect(crossed(played(3, 'gauge-drifting@2min').drafts)[0]).toMatchObject({
      limit: 'gaugesApart_bar',
    });
  });

  test('a slipping wire puts its girth off by two millimetres, once', () => {
    const [sound, slipped] = [played(3), played(3, 'wire-slipping@20min')].map(({ drafts }) =>
      drafts
        .filter(({ kind }) => kind === 'reading')
        .map(({ mono_ms, body }) => ({ mono_ms, values: body['values'] as Record<string, number> })),
    );
    const apart = slipped.map(({ mono_ms, values }, i) => [mono_ms, values['low'] - sound[i].values['low']]);
    const filled = (60_000 * plan.water.fill_L) / 12;
    for (const [mono_ms, off] of apart) expect(off).toBeCloseTo(mono_ms - filled > 1_200_000 ? 2 : 0, 6);
  });

  test('too much air sends the crew down to bleed, once, and the first step is done again', () => {
    const { drafts, end } = played(3, 'air');
    expect(end.end).toBe('done');
    expect(crossed(drafts)[0]).toMatchObject({ state: 'bleed again', limit: 'trappedAir_L' });
    expect(stepsOf(drafts).filter((kind) => kind === 'seat')).toHaveLength(2);
  });

  test('a soft course makes its girth grow more than the other', () => {
    const grown = (...texts: string[]): number => {
      const { values } = kinds(played(3, ...texts).drafts, 'reading').at(-1) ?? {};
      const { low, high } = values as Record<string, number>;
      return high - low;
    };
    expect(grown('soft-course')).toBeGreaterThan(grown() + 2);
  });

  test('a burst ends the day at once', () => {
    const { drafts, end } = played(3, 'burst@30min');
    expect(end.end).toBe('burst');
    expect(stepsOf(drafts)).not.toContain('release');
    expect(kinds(drafts, 'end')[0]).toMatchObject({ end: 'burst' });
  });

  test('a restart begins another run with a gap, a fresh gauge reading and a confirmed step', () => {
    const { drafts, end } = played(3, 'server-restart@40min');
    const at = drafts.findIndex(({ run }) => run === 2);
    expect(drafts.slice(at, at + 3).map(({ kind }) => kind)).toEqual(['gap', 'reading', 'decision']);
    expect(drafts[at].mono_ms).toBe(0);
    expect(drafts[at + 2].body).toMatchObject({ decision: 'confirm step' });
    expect(end.end).toBe('done');
  });
});
