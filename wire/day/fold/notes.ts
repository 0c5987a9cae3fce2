/** What is noted beside the readings: crossings, advice, forecasts, remarks, measures, troubles. */
import { WATCHED_LIMITS } from '../../plan/plan.ts';
import type { Body, Entry } from '../../record/entry.ts';
import type { Fold } from './inside.ts';
import { ADVICE_STATES, type Cause, type Measure, type TroubleNow } from '../state.ts';
import { given, number, numbers, oneOf, text, texts } from './read.ts';

/** A crossing of the plan's limits is latched below those before it; other advice replaces the advice before. */
export function onAdvice({ state, inside }: Fold, { seq, wall_ms, body }: Entry): Fold {
  const limit = oneOf(WATCHED_LIMITS, text(body, 'limit'));
  if (limit !== undefined) {
    const cause: Cause = {
      seq,
      wall_ms,
      limit,
      state: oneOf(['stop and release', 'bleed again'], text(body, 'state')) ?? 'stop and release',
      value: number(body, 'value') ?? 0,
      allowed: number(body, 'allowed') ?? 0,
      channels: texts(body, 'channels'),
      step: text(body, 'step') ?? '',
      says: text(body, 'says') ?? '',
    };
    return { inside, state: { ...state, causes: [...state.causes, cause] } };
  }
  const advice = {
    seq,
    wall_ms,
    state: oneOf(ADVICE_STATES, text(body, 'state')) ?? 'cannot judge',
    reasons: texts(body, 'reasons'),
    readings: numbers(body, 'readings'),
    ...(Array.isArray(body['explanations']) ? { explanations: texts(body, 'explanations') } : {}),
    ...given('tellApart', text(body, 'tellApart')),
  };
  return { inside, state: { ...state, advice } };
}

export function onForecast({ state, inside }: Fold, { seq, wall_ms, body }: Entry): Fold {
  const ready = bodyIn(body['ready']);
  const { readying: _, ...others } = state;
  if (ready === undefined) return { inside, state: { ...others, foresight: { seq, wall_ms, body } } };
  const readying = {
    seq,
    wall_ms,
    percent: number(ready, 'percent') ?? 0,
    says: text(ready, 'says') ?? '',
    ...(ready['failed'] === true ? { failed: true } : {}),
  };
  return { inside, state: { ...state, readying } };
}

const bodyIn = (value: unknown): Body | undefined =>
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- whatever stands in a body is JSON
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Body) : undefined;

/** Remarks that the state carries; older ones are in the record. */
const MOST_REMARKS = 200;

export function onRemark({ state, inside }: Fold, { seq, wall_ms, kind, body }: Entry): Fold {
  const remark = {
    seq,
    wall_ms,
    by: text(body, 'by') ?? '',
    text: text(body, 'text') ?? (kind === 'photo' ? 'photo' : ''),
    ...given('step', text(body, 'step')),
    ...given('photo', text(body, 'photo')),
    ...given('place', text(body, 'place')),
  };
  return { inside, state: { ...state, remarks: [...state.remarks.slice(1 - MOST_REMARKS), remark] } };
}

export const MEASURED = ['girth', 'wall', 'height', 'mass', 'fill'] as const;
export const MEASURE_UNIT = {
  girth: 'mm',
  wall: 'mm',
  height: 'mm',
  mass: 'kg',
  fill: 'L',
} as const satisfies Readonly<Record<Measure['what'], Measure['unit']>>;

export function onMeasure({ state, inside }: Fold, { seq, body }: Entry): Fold {
  const what = oneOf(MEASURED, text(body, 'what'));
  const value = number(body, 'value');
  if (what === undefined || value === undefined) return { state, inside };
  const measure: Measure = {
    seq,
    when: text(body, 'when') === 'after' ? 'after' : 'before',
    what,
    value,
    unit: MEASURE_UNIT[what],
    by: text(body, 'by') ?? '',
    with: text(body, 'with') ?? '',
    ...given('place', text(body, 'place')),
  };
  const phase = state.phase === 'set up' ? 'before' : state.phase;
  return { inside, state: { ...state, phase, measures: [...state.measures, measure] } };
}

const TROUBLES = [
  'disk nearly full',
  'disk full',
  'base locked',
  'mirror gone',
  'on battery',
  'not kept awake',
  'source lost',
  'source unproved',
] as const satisfies readonly TroubleNow['what'][];

/** One of a kind stands (of a source: one of each source), until an entry says that it is over. */
export function onTrouble({ state, inside }: Fold, { seq, body }: Entry): Fold {
  const what = oneOf(TROUBLES, text(body, 'what'));
  if (what === undefined) return { state, inside };
  const source = text(body, 'source');
  const others = state.troubles.filter((one) =>
    source === undefined ? one.what !== what : one.source !== source,
  );
  const over = body['over'] === true;
  const trouble = { seq, what, says: text(body, 'says') ?? '', ...given('source', source) };
  const named = texts(body, 'channels');
  const channels = state.channels.map((one) => {
    if (source === undefined || !named.includes(one.channel.name)) return one;
    const { unproved: _, ...rest } = one;
    return !over && what === 'source unproved' ? { ...rest, unproved: source } : rest;
  });
  return { inside, state: { ...state, channels, troubles: over ? others : [...others, trouble] } };
}
