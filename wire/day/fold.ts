/**
 * The state of a day as a fold over its record, entry by entry. Nothing else makes the state: the live server, a restart,
 * `hoopwright listen`, the pages and a replay fold the same entries and stand at the same place.
 * One entry costs a few small copies, whatever the length of the record.
 */
import { NO_MEMORY } from '../reading/judge/judge.ts';
import { headGroups } from '../record/chain.ts';
import type { About, Entry, Link } from '../record/entry.ts';
import { onAdvice, onForecast, onMeasure, onRemark, onTrouble } from './fold/notes.ts';
import { onDecision } from './fold/decision.ts';
import { onCorrection, onReading } from './fold/reading.ts';
import { onPlan, onSetUp, onStart, onStep } from './fold/course.ts';
import { onEnd, onGap } from './fold/breaks.ts';
import type { Fold } from './fold/inside.ts';
import type { DayState } from './state.ts';

/** @param digest of `about`: the head before the first entry */
export const startFold = (about: About, digest: string): Fold => ({
  state: {
    about,
    seq: 0,
    run: 0,
    wall_ms: about.began_ms,
    head: headGroups(digest),
    heads: [],
    phase: 'set up',
    channels: [],
    figures: {},
    causes: [],
    gaps: [],
    troubles: [],
    crew: { held: LAPTOP },
    soundArmed: false,
    measures: [],
    remarks: [],
    rows: [],
  },
  inside: { rows: [], zeros: {}, memory: {}, elapsed: 0, base: 0, gaps: 0, stepped: [] },
});

/** Holds the director's role until it is handed over. */
export const LAPTOP = 'laptop';

export function fold(before: Fold, { entry, digest }: Link): Fold {
  const timed = onClock(before, entry, headGroups(digest));
  const after = onEntry(timed, entry);
  return isHeadShown(entry) ? withHead(after, entry) : after;
}

export const foldAll = (start: Fold, links: Iterable<Link>): Fold => {
  let now = start;
  for (const link of links) now = fold(now, link);
  return now;
};

/** The entry's place and time; a new run breaks the day off where the tank was under pressure. */
function onClock({ state, inside }: Fold, entry: Entry, head: string): Fold {
  const { seq, run, wall_ms, mono_ms } = entry;
  const first = state.run === 0;
  const anew = run !== state.run;
  const base = !anew
    ? inside.base
    : first
      ? -mono_ms
      : inside.elapsed + Math.max(0, wall_ms - state.wall_ms) - mono_ms;
  const elapsed = Math.max(inside.elapsed, base + mono_ms);
  const paper = entry.body['how'] === 'typed in from paper';
  const now: Fold = {
    state: { ...state, seq, run, head, wall_ms: paper ? Math.max(state.wall_ms, wall_ms) : wall_ms },
    inside: { ...inside, base, elapsed },
  };
  return anew && !first ? brokenOff(now, state) : now;
}

function brokenOff({ state, inside }: Fold, before: DayState): Fold {
  const memory = Object.fromEntries(Object.keys(inside.memory).map((name) => [name, NO_MEMORY]));
  const gaps = inside.gaps + 1;
  const { phase, hold, figures } = before;
  if (phase !== 'under way' && phase !== 'stopping') return { state, inside: { ...inside, memory, gaps } };
  const pressure = figures.pressure?.value;
  const broken = {
    since_ms: before.wall_ms,
    ...(pressure === undefined ? {} : { lastPressure_bar: pressure }),
  };
  return {
    state: { ...state, phase: 'broken off', broken },
    inside: {
      ...inside,
      memory,
      gaps,
      before: phase,
      ...(hold === undefined ? {} : { windowBefore: hold.windowFrom_ms }),
    },
  };
}

function onEntry(now: Fold, entry: Entry): Fold {
  switch (entry.kind) {
    case 'start':
      return onStart(now, entry);
    case 'set-up':
    case 'calibration':
      return onSetUp(now, entry);
    case 'plan':
      return onPlan(now, entry);
    case 'step':
      return onStep(now, entry);
    case 'reading':
      return onReading(now, entry);
    case 'correction':
      return onCorrection(now, entry);
    case 'decision':
      return onDecision(now, entry);
    case 'advice':
      return onAdvice(now, entry);
    case 'forecast':
      return onForecast(now, entry);
    case 'remark':
    case 'photo':
      return onRemark(now, entry);
    case 'measure':
      return onMeasure(now, entry);
    case 'gap':
      return onGap(now, entry);
    case 'trouble':
      return onTrouble(now, entry);
    case 'end':
      return onEnd(now, entry);
  }
}

/** The head is copied to the log sheet at the start, at each hold and at the end. */
export const isHeadShown = ({ kind, body }: Pick<Entry, 'kind' | 'body'>): boolean =>
  kind === 'plan' || kind === 'end' || (kind === 'decision' && body['decision'] === 'hold ended');

function withHead({ state, inside }: Fold, { seq, kind }: Entry): Fold {
  const at = kind === 'plan' ? 'start' : kind === 'end' ? 'end' : 'hold';
  return { inside, state: { ...state, heads: [...state.heads, { seq, groups: state.head, at }] } };
}
