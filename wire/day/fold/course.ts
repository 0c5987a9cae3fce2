/** What is set up, which plan stands, and the steps as they are begun. */
import { type FrozenPlan, looksFrozen } from '../../plan/freeze.ts';
import { type Step, STEP_KINDS } from '../../plan/plan.ts';
import { type Channel, channelShape, channelsOf, freshFor } from '../../reading/channel.ts';
import type { Entry } from '../../record/entry.ts';
import { planAfter } from '../followed.ts';
import type { Fold } from './inside.ts';
import type { ChannelNow, DayState } from '../state.ts';
import { given, number, oneOf, text } from './read.ts';

export function onStart({ state, inside }: Fold, { body }: Entry): Fold {
  const director = text(body, 'by');
  return { inside, state: { ...state, crew: { ...state.crew, ...given('director', director) } } };
}

/** Channels, each under its name: one that is there already keeps what was read. A calibration changes one so. */
export function onSetUp({ state, inside }: Fold, { body }: Entry): Fold {
  const listed = Array.isArray(body['channels']) ? body['channels'] : [];
  const read = listed.flatMap((one) => channelShape.safeParse(one).data ?? []);
  return {
    inside,
    state: {
      ...state,
      channels: withChannels(state.channels, read),
      crew: { ...state.crew, ...rolesIn(body['roles']) },
      ...given('follows', followed(body['follows'])),
    },
  };
}

function withChannels(before: readonly ChannelNow[], read: readonly Channel[]): ChannelNow[] {
  const names = new Set(read.map(({ name }) => name));
  const kept = before.filter(({ channel }) => !names.has(channel.name));
  const fresh = read.map((channel): ChannelNow => {
    const old = before.find((one) => one.channel.name === channel.name);
    return { ...old, channel, fresh_s: freshFor(channel) };
  });
  return before.length === 0 ? fresh : [...kept, ...fresh];
}

function rolesIn(roles: unknown): Partial<DayState['crew']> {
  if (!isRecord(roles)) return {};
  const name = (key: string): string | undefined => {
    const value = roles[key];
    return typeof value === 'string' ? value : undefined;
  };
  return {
    ...given('director', name('director')),
    ...given('noteTaker', name('noteTaker')),
    ...given('pump', name('pump')),
  };
}

function followed(value: unknown): DayState['follows'] {
  if (!isRecord(value)) return undefined;
  const { record, highest_bar, left_percent } = value;
  if (typeof record !== 'string' || typeof highest_bar !== 'number') return undefined;
  const left = isRecord(left_percent) ? Object.entries(left_percent) : [];
  const percents = left.flatMap(([name, one]) => (typeof one === 'number' ? [[name, one] as const] : []));
  return {
    record,
    highest_bar,
    ...(percents.length === 0 ? {} : { left_percent: Object.fromEntries(percents) }),
  };
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** A frozen plan; on the day another one is a new revision. Without a set-up its channels are the plan's. */
export function onPlan({ state, inside }: Fold, { body }: Entry): Fold {
  const value: unknown = body;
  if (!looksFrozen(value)) return { state, inside };
  // What is foreseen is that of the tank as it stands; the seal is that of the plan.
  const plan: FrozenPlan = { plan: planAfter(value.plan, state.follows), frozen: value.frozen };
  const channels = state.channels.length > 0 ? state.channels : withChannels([], channelsOf(plan.plan));
  const now = { ...state, plan, channels };
  return { inside, state: { ...now, ...given('next', nextAfter(plan, state.step?.number)) } };
}

export const nextAfter = ({ plan }: FrozenPlan, step: string | undefined): string | undefined =>
  plan.steps[plan.steps.findIndex(({ number: one }) => one === step) + 1]?.number;

export const stepNumbered = (state: DayState, wanted: string | undefined): Step | undefined =>
  state.plan?.plan.steps.find(({ number: one }) => one === wanted);

export function onStep({ state, inside }: Fold, { body, wall_ms }: Entry): Fold {
  const step = text(body, 'step') ?? '';
  const kind = oneOf(STEP_KINDS, text(body, 'kind')) ?? 'rise';
  const { hold: _, next: __, ...rest } = state;
  const begun = { number: step, kind, pressure_bar: number(body, 'pressure_bar') ?? 0, begun_ms: wall_ms };
  const holds = kind === 'hold' || kind === 'final hold';
  const next = state.plan === undefined ? undefined : nextAfter(state.plan, step);
  return {
    inside: { ...inside, stepped: [...inside.stepped, { step, wall_ms }] },
    state: {
      ...rest,
      step: begun,
      phase: phaseIn(state, kind),
      ...given('next', next),
      ...(holds ? { hold: { begun_ms: wall_ms, windowFrom_ms: wall_ms } } : {}),
    },
  };
}

function phaseIn({ phase, ventShut_ms }: DayState, kind: Step['kind']): DayState['phase'] {
  if (kind === 'drain') return 'after';
  if (phase === 'stopping' || phase === 'ended') return phase;
  return ventShut_ms === undefined ? phase : 'under way';
}
