/** The simulated tank of a rehearsal: of the seed's steel, as welded or as the last day left it. */
import type { Begin, Follows } from '@hoopwright/wire/day';
import type { Issue } from '@hoopwright/wire/issue';
import type { FrozenPlan } from '@hoopwright/wire/plan';
import { parseTankFile } from '@hoopwright/wire/tank';
import { couponsAttached } from '../../range/coupons.ts';
import { type Fault, readFault } from '../../rig/fault.ts';
import { realTank } from '../../rig/realTank.ts';
import type { Store } from '../../store/store.ts';
import { channelsFor } from '../begin.ts';
import { RigDay, type RigDayParts } from './rigDay.ts';

export interface RigParts {
  readonly attachments: Store['attachments'];
  readonly mesh: RigDayParts['mesh'] | undefined;
  /** Reads the text of the tank file that the plan was made from. */
  readonly file: () => string;
}

export interface RigAsked {
  readonly begin: Begin;
  readonly frozen: FrozenPlan;
  readonly follows?: Follows | undefined;
}

/** Nothing for a test; why not, where it cannot be made. */
export function rigFor(
  { attachments, mesh, file }: RigParts,
  { begin, frozen, follows }: RigAsked,
): { readonly rig?: RigDay } | Issue {
  const { rehearsal } = begin;
  if (rehearsal === undefined) return {};
  const faults: Fault[] = [];
  for (const text of rehearsal.faults) {
    const read = readFault(text);
    if (!read.ok)
      return { path: 'rehearsal.faults', expected: 'NAME@TIME, such as leak@45min', received: text };
    faults.push(read.fault);
  }
  const parsed = parseTankFile(file());
  if (!parsed.ok) return { path: 'plan', expected: 'a tank file that can be read', received: 'another' };
  const { seed, speed, readings } = rehearsal;
  const tank = realTank({ given: parsed, files: couponsAttached(attachments, begin.project), seed });
  const given = {
    tank,
    plan: frozen.plan,
    channels: channelsFor(frozen, begin),
    seed,
    speed,
    readings,
    faults,
  };
  const seen = follows === undefined ? {} : { seen_bar: follows.highest_bar };
  return { rig: new RigDay({ ...given, ...seen, ...(mesh === undefined ? {} : { mesh }) }) };
}
