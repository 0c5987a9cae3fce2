/** Faults of a rehearsal: what shall go wrong, and when. */

export const FAULTS = [
  'leak',
  'gauge-stuck',
  'gauge-drifting',
  'wire-slipping',
  'air',
  'soft-course',
  'weak-seam',
  'server-restart',
  'burst',
] as const;
export type FaultName = (typeof FAULTS)[number];

export interface Fault {
  readonly name: FaultName;
  /** s since the vent was shut. */
  readonly at: number;
}

/** They are in the tank, or in the water, before anybody pumps. */
const FROM_THE_START: readonly FaultName[] = ['air', 'soft-course', 'weak-seam'];

export type FaultRead =
  | { readonly ok: true; readonly fault: Fault }
  | { readonly ok: false; readonly why: string };

/** "leak@45min", "burst@1h10min", "soft-course". Times count from the shutting of the vent. */
export function readFault(text: string): FaultRead {
  const [given, time, ...rest] = text.split('@');
  const name = FAULTS.find((one) => one === given);
  const refuse = (why: string): FaultRead => ({ ok: false, why: `--fault ${text}: ${why}` });
  if (name === undefined || rest.length > 0)
    return refuse(`wanted NAME@TIME with one of ${FAULTS.join(', ')}, such as leak@45min`);
  if (FROM_THE_START.includes(name)) {
    return time === undefined || secondsOf(time) === 0
      ? { ok: true, fault: { name, at: 0 } }
      : refuse(`${name} is there from the start; leave the time out`);
  }
  const at = time === undefined ? undefined : secondsOf(time);
  if (at === undefined) return refuse('wanted a time since the vent is shut, such as 45min, 1h10min or 90s');
  return { ok: true, fault: { name, at } };
}

function secondsOf(text: string): number | undefined {
  const match = /^(?:(\d+)h)?(?:(\d+(?:\.\d+)?)min)?(?:(\d+)s)?$/.exec(text);
  if (match === null || text === '') return undefined;
  const [, hours = '0', minutes = '0', seconds = '0'] = match;
  return 3600 * Number(hours) + 60 * Number(minutes) + Number(seconds);
}
