/**
 * What is advised, from rules that anybody can read: the gravest first. People decide. No rule names a pressure above that
 * of the step, and none of the step's is above the planned stretch pressure.
 */
import type { AdviceState } from '../day/state.ts';
import { ADVISED_USUALLY } from '../plan/part/limits.ts';
import { allowedBy, isHold, type LimitKey } from '../plan/plan.ts';
import type { Crossing } from '../reading/watch.ts';
import type { Facts, HoldFacts, LeakFacts, Oddity, Read, SeamFacts } from './facts.ts';

export type Reason =
  | { readonly why: 'limit'; readonly crossing: Crossing }
  | { readonly why: 'gauges lost' }
  | { readonly why: 'near maximum'; readonly low_bar: number; readonly now_bar: number }
  | { readonly why: 'gives way'; readonly chance: number }
  | {
      readonly why: 'growth without pressure';
      readonly grown_percent: number;
      readonly fallen_bar: number;
      readonly channels: readonly string[];
    }
  | { readonly why: 'leak'; readonly leak: LeakFacts }
  | {
      readonly why: 'seam strain' | 'seam foreseen' | 'seam noted';
      readonly seam: SeamFacts;
      readonly allowed_percent: number;
    }
  | { readonly why: 'seam not judged' }
  | { readonly why: 'no reading'; readonly of: 'pressure' | 'girth' }
  | { readonly why: 'old reading'; readonly read: Read }
  | { readonly why: 'nothing foreseen' }
  | { readonly why: 'oddity'; readonly oddity: Oddity }
  | { readonly why: 'noted'; readonly oddity: Oddity }
  | { readonly why: 'at the step'; readonly pressure_bar: number }
  | { readonly why: 'hold goes on'; readonly hold: HoldFacts; readonly rate_percent_per_h: number }
  | { readonly why: 'hold is over'; readonly hold: HoldFacts }
  | { readonly why: 'too quick'; readonly pace: number; readonly minutes: number }
  | {
      readonly why: 'stronger wall';
      readonly growth_percent: number;
      readonly foreseen_percent: number;
    }
  | { readonly why: 'no leak'; readonly leak: LeakFacts }
  | { readonly why: 'within limits'; readonly upTo_bar: number };

export interface Advice {
  readonly state: AdviceState;
  /** The first one first; never empty. */
  readonly reasons: readonly Reason[];
  /** Channels whose readings are behind it. */
  readonly channels: readonly string[];
  /** Pressure up to which nothing speaks against pumping; only where nothing does, or less than the pace. */
  readonly upTo_bar?: number;
}

/** Share of such tanks that may give way at the stretch pressure. Our choice. */
const MAY_GIVE = 0.05;
/** Rows that must be left before the ceiling at the present pace. Our choice. */
const LOOKS_LEFT = 2;

export function advise(facts: Facts): Advice {
  const stop = stopReasons(facts);
  const blind = blindReasons(facts);
  if (stop.length > 0) return told('stop and release', [...stop, ...blind], facts);
  if (blind.length > 0) return told('cannot judge', blind, facts);
  const hold = holdReasons(facts);
  if (hold.length > 0) return told('hold', [...hold, ...besides(facts)], facts);
  const quick = paceReason(facts);
  const upTo_bar = Math.min(facts.step?.pressure_bar ?? 0, facts.plan.target.pressure_bar);
  if (quick !== undefined) return { ...told('slow down', [quick, ...besides(facts)], facts), upTo_bar };
  const quiet: Reason = { why: 'within limits', upTo_bar };
  return { ...told('nothing against going on', [quiet, ...besides(facts)], facts), upTo_bar };
}

function told(state: AdviceState, reasons: readonly Reason[], facts: Facts): Advice {
  const named = reasons.flatMap(channelsOf);
  const read = [...goneBy(facts.gauges), ...facts.girths.slice(0, 1)].map(({ channel }) => channel);
  return { state, reasons, channels: [...new Set(named.length > 0 ? named : read)] };
}

function channelsOf(reason: Reason): readonly string[] {
  switch (reason.why) {
    case 'limit':
      return reason.crossing.channels;
    case 'growth without pressure':
      return reason.channels;
    case 'old reading':
      return [reason.read.channel];
    case 'seam strain':
    case 'seam foreseen':
      return [reason.seam.channel];
    case 'oddity':
      return reason.oddity.channels;
    default:
      return [];
  }
}

function stopReasons(facts: Facts): Reason[] {
  const { crossings, gauges, gaugesInAll, fallen, leak, forecast, girths } = facts;
  const list: Reason[] = crossings
    .filter(({ limit }) => limit !== 'gaugesApart_bar')
    .map((crossing) => ({ why: 'limit', crossing }));
  if (gaugesInAll > 0 && gauges.length === 0 && underPressure(facts)) list.push({ why: 'gauges lost' });
  const now = goneBy(gauges)[0]?.value ?? 0;
  const low = forecast?.maximum_bar.wide[0];
  const margin = allowedIn(facts, 'marginToMaximum') ?? 1;
  if (low !== undefined && low !== null && rising(facts) && low < margin * now)
    list.push({ why: 'near maximum', low_bar: low, now_bar: now });
  if (
    fallen !== undefined &&
    fallen.growth_percent > (allowedIn(facts, 'growthWithoutPressure_percent') ?? 0) &&
    fallen.pressure_bar > fallen.blur_bar
  )
    list.push({
      why: 'growth without pressure',
      grown_percent: fallen.growth_percent,
      fallen_bar: fallen.pressure_bar,
      channels: [...goneBy(gauges), ...girths.slice(0, 1)].map(({ channel }) => channel),
    });
  list.push(...seamStop(facts));
  const allowed = allowedIn(facts, 'leak_mL_per_min');
  if (leak?.seen === true && allowed !== undefined && leak.low > allowed) list.push({ why: 'leak', leak });
  return list;
}

const allowedIn = ({ plan }: Facts, key: LimitKey): number | undefined =>
  allowedBy(plan.limits, key) ?? ADVISED_USUALLY[key];

/** Half of the seams that this may be are strained by more than the plan allows. */
function seamStop(facts: Facts): Reason[] {
  const allowed = allowedIn(facts, 'seamStrain_percent');
  const { seam } = facts;
  if (seam === undefined || allowed === undefined || !over(seam.now.median, allowed)) return [];
  return [{ why: 'seam strain', seam, allowed_percent: allowed }];
}

/** null: it parts before. */
const over = (percent: number | null, allowed: number): boolean => percent === null || percent > allowed;

const underPressure = ({ step }: Facts): boolean => step !== undefined && step.pressure_bar > 0;
const rising = ({ step }: Facts): boolean => step?.kind === 'rise' || step?.kind === 'final hold';

/** Too few readings, or too old ones: never a quiet state. */
function blindReasons(facts: Facts): Reason[] {
  const { gauges, girths, step } = facts;
  if (step === undefined || !underPressure(facts)) return [];
  const list: Reason[] = [];
  const wanted = new Set(step.reads);
  const [gauge] = gauges;
  if (gauge === undefined) list.push({ why: 'no reading', of: 'pressure' });
  else if (gauges.every(old)) list.push({ why: 'old reading', read: gauge });
  const wantsGirth =
    girthStep(facts) && facts.plan.places.some(({ reads, name }) => reads === 'girth' && wanted.has(name));
  if (!wantsGirth) return list;
  const [girth] = girths;
  if (girth === undefined) list.push({ why: 'no reading', of: 'girth' });
  else if (girths.every(old)) list.push({ why: 'old reading', read: girth });
  return list;
}

const girthStep = ({ step }: Facts): boolean => step?.kind === 'rise' || isHold(step);

/** The first gauge that is not too old; the first at all where all are. */
const goneBy = (gauges: readonly Read[]): readonly Read[] =>
  [gauges.find((gauge) => !old(gauge)) ?? gauges[0]].filter((read) => read !== undefined);

const old = ({ age, fresh }: Read): boolean => age > fresh;

function holdReasons(facts: Facts): Reason[] {
  const { oddities, step, gauges, forecast, hold, plan, leak, crossings } = facts;
  const list: Reason[] = crossings.map((crossing) => ({ why: 'limit', crossing }));
  for (const oddity of oddities) list.push({ why: 'oddity', oddity });
  if (leak?.seen === true) list.push({ why: 'leak', leak });
  if (forecast !== undefined && step?.kind === 'rise' && forecast.gives > MAY_GIVE)
    list.push({ why: 'gives way', chance: forecast.gives });
  list.push(...seamForeseen(facts));
  if (hold !== undefined && isHold(step) && !isOver(facts, hold))
    list.push({ why: 'hold goes on', hold, rate_percent_per_h: SETTLED_PERCENT });
  const now = goneBy(gauges)[0]?.value ?? 0;
  const atStep =
    step !== undefined && step.pressure_bar > 0 && now >= step.pressure_bar - plan.unit_bar * 0.1;
  if (atStep && step?.kind === 'rise') list.push({ why: 'at the step', pressure_bar: step.pressure_bar });
  return list;
}

/** On the way up, where half of such seams would be strained by more at the end. */
function seamForeseen(facts: Facts): Reason[] {
  const allowed = allowedIn(facts, 'seamStrain_percent');
  const { seam, step } = facts;
  if (seam === undefined || allowed === undefined || step?.kind !== 'rise') return [];
  return over(seam.end.median, allowed) ? [{ why: 'seam foreseen', seam, allowed_percent: allowed }] : [];
}

/** 0.1 %/h (core/stretch/hold.ts). */
const SETTLED_PERCENT = 0.1;

function isOver({ plan, step }: Facts, hold: HoldFacts): boolean {
  if (step?.kind === 'hold') return hold.minutes >= (step.hold?.minutes.value ?? 0);
  return (
    hold.minutes >= plan.rest.cap_min || (hold.minutes >= plan.rest.atLeast_min && hold.verdict === 'settled')
  );
}

/** Time to the growth that the plan allows, at the present pace, in rows. */
function paceReason(facts: Facts): Reason | undefined {
  const { pace, girths, step } = facts;
  const allowed = allowedIn(facts, 'growthUnderPressure_percent');
  const [girth] = girths;
  if (
    pace === undefined ||
    !(pace > 0) ||
    allowed === undefined ||
    girth === undefined ||
    step?.kind !== 'rise'
  )
    return undefined;
  const minutes = (allowed - girth.value) / pace;
  return minutes * 60 < LOOKS_LEFT * girth.fresh ? { why: 'too quick', pace, minutes } : undefined;
}

/** What is said besides, whatever the state. */
function besides(facts: Facts): Reason[] {
  const { forecast, step, plan, girths, hold, leak, noted } = facts;
  const list: Reason[] = [];
  if (noted !== undefined) list.push({ why: 'noted', oddity: noted });
  if (forecast === undefined && girthStep(facts)) list.push({ why: 'nothing foreseen' });
  list.push(...seamBesides(facts));
  if (hold !== undefined && step !== undefined && isOver(facts, hold))
    list.push({ why: 'hold is over', hold });
  if (leak !== undefined && !leak.seen) list.push({ why: 'no leak', leak });
  const [girth] = girths;
  const low = plan.target.growth_percent.arrived.low;
  if (step?.kind === 'final hold' && girth !== undefined && low !== undefined && girth.value < low)
    list.push({ why: 'stronger wall', growth_percent: girth.value, foreseen_percent: low });
  return list;
}

/** One in twenty such seams is strained by more than the plan allows; or nobody knows. */
function seamBesides(facts: Facts): Reason[] {
  const allowed = allowedIn(facts, 'seamStrain_percent');
  const { seam, forecast } = facts;
  if (allowed === undefined || !girthStep(facts)) return [];
  if (seam === undefined) return forecast === undefined ? [{ why: 'seam not judged' }] : [];
  return over(seam.now.wide[1], allowed) ? [{ why: 'seam noted', seam, allowed_percent: allowed }] : [];
}
