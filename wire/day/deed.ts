/** What an order becomes: entries for the record, or in words why it does not fit what stands. Pure. */
import { type Issue } from '../issue/issue.ts';
import type { Step } from '../plan/plan.ts';
import { CHANNEL_UNIT } from '../reading/channel.ts';
import type { Body, EntryKind } from '../record/entry.ts';
import { MEASURE_UNIT } from './fold/notes.ts';
import type { Fold } from './fold/inside.ts';
import type { Order } from './order.ts';
import type { DayState } from './state.ts';

export interface Written {
  readonly kind: EntryKind;
  readonly body: Body;
  /** When it was so, if that was before now. */
  readonly at_ms?: number;
}

export type Deed =
  | { readonly ok: true; readonly entries: readonly Written[] }
  | { readonly ok: false; readonly issue: Issue };

export interface DeedScene {
  readonly now: Fold;
  readonly now_ms: number;
}

export function deedOf(order: Order, { now, now_ms }: DeedScene): Deed {
  const { state } = now;
  if (state.phase === 'ended') return refused('order', 'a day that goes on', 'one that has ended');
  const step = state.step?.number ?? '';
  const decided = (more: Body = {}): Deed => done(decision(order, step, more));
  switch (order.order) {
    case 'row':
      return row(order, now, now_ms);
    case 'correct':
      return correction(order, state);
    case 'remark': {
      const { order: _, ...body } = order;
      return done({ kind: 'remark', body: { ...body, step } });
    }
    case 'measure': {
      const { order: _, ...body } = order;
      return done({ kind: 'measure', body: { ...body, unit: MEASURE_UNIT[order.what] } });
    }
    case 'vent shut':
      if (state.ventShut_ms !== undefined)
        return refused('order', 'an open vent', 'one that is shut already');
      if (state.step?.kind !== 'fill') return refused('order', 'the step of filling', stepSaid(state));
      return decided();
    case 'go on':
      return goOn(order, state);
    case 'hold ended':
      if (order.from !== step) return stale(state, order.from);
      if (state.hold === undefined || state.hold.over === true)
        return refused('order', 'a hold that runs', stepSaid(state));
      return decided({ why: order.why });
    case 'bleed again':
      if (state.phase !== 'under way') return refused('order', 'a day under way', state.phase);
      return decided({ why: order.why });
    case 'stop and release':
      return stop(order, state);
    case 'confirm step':
      return confirm(order, state);
    case 'acknowledge': {
      const cause = state.causes.find(({ seq }) => seq === order.cause);
      if (cause === undefined) return refused('cause', 'a cause that stands', `entry ${order.cause}`);
      return cause.acknowledged === undefined
        ? decided({ cause: order.cause })
        : refused('cause', 'a cause that nobody has acknowledged', `entry ${order.cause}`);
    }
    case 'set aside':
    case 'take back': {
      const one = state.channels.find(({ channel }) => channel.name === order.channel);
      if (one === undefined) return unknown(state, order.channel);
      return decided({ channel: order.channel, why: order.why });
    }
    case 'accept source':
      return state.troubles.some(({ source, what }) => source === order.source && what === 'source unproved')
        ? decided({ source: order.source })
        : refused('source', 'a source that came back unproved', order.source);
    case 'sound armed':
      return decided();
    case 'hand over':
      return decided({ to: order.to });
    case 'new revision':
      return decided({ digest: order.digest, why: order.why });
    case 'end': {
      const { end, why, by } = order;
      return done({ kind: 'end', body: { end, why, by, step } });
    }
  }
}

type Of<K extends Order['order']> = Extract<Order, { order: K }>;

const decision = (order: Order, step: string, more: Body): Written => ({
  kind: 'decision',
  body: { decision: order.order, step, by: order.by, ...more },
});

const done = (...entries: readonly Written[]): Deed => ({ ok: true, entries });

const refused = (path: string, expected: string, received: string, suggestion?: string): Deed => ({
  ok: false,
  issue: { path, expected, received, ...(suggestion === undefined ? {} : { suggestion }) },
});

const stepSaid = ({ step }: DayState): string =>
  step === undefined ? 'no step' : `step ${step.number}, ${step.kind}`;

const stale = (state: DayState, from: string): Deed =>
  refused('from', stepSaid(state), `step ${from}`, 'somebody was faster; look at the screen, then decide');

const unknown = (state: DayState, channel: string): Deed =>
  refused('channel', `one of ${state.channels.map((one) => one.channel.name).join(', ')}`, channel);

/** A reading cannot lie so far ahead of the clock, ms. */
const AHEAD_MS = 2000;

function row({ by, values, at_ms, how }: Of<'row'>, now: Fold, now_ms: number): Deed {
  const { state, inside } = now;
  const strange = Object.keys(values).find(
    (name) => !state.channels.some(({ channel }) => channel.name === name),
  );
  if (strange !== undefined) return unknown(state, strange);
  if (Object.keys(values).length === 0) return refused('values', 'one figure at least', 'none');
  const at = at_ms ?? now_ms;
  if (at > now_ms + AHEAD_MS) return refused('at_ms', 'a time that has come', 'one that has not');
  const step = inside.stepped.findLast(({ wall_ms }) => wall_ms <= at) ?? inside.stepped[0];
  const body = { values, step: step?.step ?? '', how, by };
  return done({ kind: 'reading', body, ...(at_ms === undefined ? {} : { at_ms }) });
}

function correction({ by, corrects, values, why }: Of<'correct'>, state: DayState): Deed {
  if (corrects > state.seq) return refused('corrects', `an entry up to ${state.seq}`, String(corrects));
  const strange = Object.keys(values).find(
    (name) => !state.channels.some(({ channel }) => channel.name === name),
  );
  if (strange !== undefined) return unknown(state, strange);
  return done({ kind: 'correction', body: { corrects, values, by, why } });
}

const begin = ({ number, kind, pressure_bar }: Step): Written => ({
  kind: 'step',
  body: { step: number, kind, pressure_bar },
});

function goOn(order: Of<'go on'>, state: DayState): Deed {
  const { plan, step, next, hold, phase, ventShut_ms } = state;
  if (order.from !== step?.number) return stale(state, order.from);
  if (phase === 'broken off')
    return refused(
      'order',
      'a confirmed step',
      'a day that is broken off',
      'read the gauge and confirm the step',
    );
  const loud = state.causes.find(({ acknowledged }) => acknowledged === undefined);
  if (phase === 'under way' && loud !== undefined)
    return refused(
      'order',
      'a cause that the director has acknowledged',
      loud.says,
      'acknowledge it, then decide',
    );
  if (hold !== undefined && hold.over !== true)
    return refused('order', 'a hold that was ended', 'one that runs', 'end the hold first');
  if (step.kind === 'fill' && ventShut_ms === undefined)
    return refused('order', 'a vent that is shut', 'an open one', 'shut the vent first');
  const to = plan?.plan.steps.find(({ number }) => number === next);
  if (to === undefined)
    return refused('order', 'a step that follows', 'the last one', 'name the end of the day');
  return done(decision(order, step.number, {}), begin(to));
}

function stop(order: Of<'stop and release'>, state: DayState): Deed {
  const { phase, plan, step } = state;
  if (phase !== 'under way' && phase !== 'broken off') return refused('order', 'a day under way', phase);
  const release = plan?.plan.steps.find(({ kind }) => kind === 'release');
  const first = decision(order, step?.number ?? '', { why: order.why });
  return release === undefined ? done(first) : done(first, begin(release));
}

function confirm({ by, step, values, order }: Of<'confirm step'>, state: DayState): Deed {
  if (state.phase !== 'broken off') return refused('order', 'a day that is broken off', state.phase);
  const gauge = state.channels.some(
    ({ channel }) => channel.reads === 'pressure' && values[channel.name] !== undefined,
  );
  if (!gauge) {
    const wanted = `a fresh reading of a gauge (${CHANNEL_UNIT.pressure})`;
    return refused('values', wanted, 'none', 'read the gauge, then confirm');
  }
  const found = state.plan?.plan.steps.find(({ number }) => number === step);
  if (found === undefined) return refused('step', 'a step of the plan', step);
  const read: Written = { kind: 'reading', body: { values, step, how: 'by hand', by } };
  const why = 'fresh reading of the gauge after the restart';
  const confirmed: Written = { kind: 'decision', body: { decision: order, step, by, why } };
  return step === state.step?.number ? done(read, confirmed) : done(read, confirmed, begin(found));
}
