/** How a day begins: what was looked at, the set-up, the frozen plan, the first step. */
import type { Begin, Follows, SetUpBody, StartBody } from '@hoopwright/wire/day';
import type { FrozenPlan } from '@hoopwright/wire/plan';
import { type Channel, channelsFrom, channelsOf, FRESH_BY_WIRE } from '@hoopwright/wire/reading';
import type { About, Body, Link } from '@hoopwright/wire/record';
import { PROGRAM } from '../plan/version.ts';
import type { LiveDay } from './live/live.ts';

/** Channels of the day: the plan's, as the set-up changes them; what comes by wire is old after a few beats. */
export function channelsFor({ plan }: FrozenPlan, begin: Begin): Channel[] {
  const changed = begin.channels ?? [];
  const wired = new Set((begin.sources ?? []).flatMap(channelsFrom));
  const { rehearsal } = begin;
  const simulated = rehearsal?.readings === 'by wires';
  // A rehearsal that runs faster reads as often in real time, so its readings lie further apart.
  const fresh_s = FRESH_BY_WIRE * Math.max(1, rehearsal?.speed ?? 1);
  const own = channelsOf(plan).map((channel): Channel => {
    const one = changed.find(({ name }) => name === channel.name) ?? channel;
    const byWire = simulated || wired.has(channel.name);
    return byWire && one.fresh_s === undefined ? { ...one, fresh_s } : one;
  });
  const more = changed.filter(({ name }) => !own.some((one) => one.name === name));
  return [...own, ...more];
}

export interface Opening {
  readonly begin: Begin;
  readonly frozen: FrozenPlan;
  readonly channels: readonly Channel[];
  readonly follows?: Follows;
}

/** Writes the opening entries; resolves when they are durable. */
export async function openingOf(day: LiveDay, { begin, frozen, channels, follows }: Opening): Promise<void> {
  const { laptop } = day.parts;
  const free_MB = laptop.free_MB();
  const start: StartBody = {
    program: PROGRAM,
    by: begin.director,
    power: laptop.power(),
    keptAwake: day.keptAwake,
    ...(free_MB === undefined ? {} : { free_MB }),
    ...(begin.rehearsal === undefined ? {} : { rehearsed: true, seed: begin.rehearsal.seed }),
  };
  const { tank, roles, steps } = frozen.plan;
  const setUp = {
    tank,
    channels,
    roles: { ...roles, director: begin.director },
    ...(begin.sources === undefined ? {} : { sources: begin.sources }),
    ...(begin.rehearsal === undefined ? {} : { rehearsal: begin.rehearsal }),
    ...(begin.mirror === undefined ? {} : { mirror: begin.mirror }),
    ...(follows === undefined ? {} : { follows }),
  };
  const [{ number, kind, pressure_bar }] = steps;
  await Promise.all([
    day.write('start', asBody(start)),
    day.write('set-up', asBody(setUp)),
    day.write('plan', asBody(frozen)),
    day.write('step', { step: number, kind, pressure_bar }),
  ]);
  if (!day.keptAwake) {
    const says = 'This laptop cannot be kept awake by the program: set it never to sleep.';
    await day.write('trouble', { what: 'not kept awake', says });
  }
}

/** Entries within which the first step stands. */
const OPENING = 20;

/** How the day was begun, out of its opening entries. */
export function begunWith(
  entries: Iterable<Link>,
  about: About,
): { readonly begin: Begin; readonly frozen: FrozenPlan; readonly follows?: Follows } | undefined {
  const links: Link[] = [];
  for (const link of entries) {
    links.push(link);
    if (link.entry.kind === 'step' || links.length > OPENING) break;
  }
  const bodyOf = (kind: string): Body | undefined =>
    links.find(({ entry }) => entry.kind === kind)?.entry.body;
  const [setUp, plan, start] = [bodyOf('set-up'), bodyOf('plan'), bodyOf('start')];
  if (setUp === undefined || plan === undefined || about.project === undefined || about.kind === 'replay')
    return undefined;
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- written by `openingOf`, and chained since
  const { frozen } = plan as unknown as FrozenPlan;
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the same
  const rest = setUp as unknown as Pick<Begin, 'sources' | 'channels' | 'mirror' | 'rehearsal'> &
    Pick<SetUpBody, 'follows'>;
  const { sources, channels, mirror, rehearsal, follows } = rest;
  const begin: Begin = {
    project: about.project,
    plan: frozen.digest,
    kind: about.kind,
    director: typeof start?.['by'] === 'string' ? start['by'] : '',
    ...(sources === undefined ? {} : { sources }),
    ...(channels === undefined ? {} : { channels }),
    ...(mirror === undefined ? {} : { mirror }),
    ...(rehearsal === undefined ? {} : { rehearsal }),
  };
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the same
  return { begin, frozen: plan as unknown as FrozenPlan, ...(follows === undefined ? {} : { follows }) };
}

/** Records hold JSON: what is undefined is left out. */
const asBody = (value: object): Body => JSON.parse(JSON.stringify(value));
