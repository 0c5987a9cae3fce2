/** Reasons and causes as sentences, in the reader's units. */
import { figuresFor, rangedText } from '@hoopwright/report/plan';
import type { Manner } from '@hoopwright/report/figure';
import type { Cause, DayState } from '@hoopwright/wire/day';
import { say } from '../../words/day/say.ts';
import type { Reason } from '../tells/word.ts';
import { ageText, clockText, pressureText } from './figures.ts';

export function reasonText(reason: Reason, state: DayState, manner: Manner, now: Now): string {
  switch (reason.kind) {
    case 'said':
      return reason.says;
    case 'cause':
      return causeText(reason.cause, manner);
    case 'link lost':
      return say('reasonLinkLost', { age: ageText(now.silence_s) });
    case 'no pressure':
      return say('reasonNoPressure');
    case 'old':
      return say(reason.what === 'pressure' ? 'reasonOldPressure' : 'reasonOldGrowth', {
        age: ageText(reason.age_s),
        fresh: ageText(reason.fresh_s),
      });
    case 'broken off':
      return reason.pressure_bar === undefined
        ? say('reasonBrokenOffBare', { time: clockText(reason.since_ms) })
        : say('reasonBrokenOff', {
            time: clockText(reason.since_ms),
            pressure: pressureText(manner, reason.pressure_bar),
          });
    case 'hold':
      return holdText(state, manner, now.now_ms);
    case 'nothing':
      return say('reasonNothing');
    case 'stopping':
      return say('reasonStopping');
    case 'set up':
      return say('reasonSetUp');
    case 'after':
      return say('reasonAfter');
  }
}

interface Now {
  readonly now_ms: number;
  readonly silence_s: number;
}

function holdText({ hold, step, plan }: DayState, manner: Manner, now_ms: number): string {
  const f = figuresFor(manner);
  const planned = plan?.plan.steps.find(({ number }) => number === step?.number)?.hold?.minutes;
  const about = {
    planned: planned === undefined ? '–' : rangedText(f.minutes, planned),
    step: step?.number ?? '',
    pressure: pressureText(manner, step?.pressure_bar ?? 0),
    time: ageText((now_ms - (hold?.begun_ms ?? now_ms)) / 1000),
  };
  if (hold?.rate === undefined) return say('reasonHold', about);
  const { value, low, high } = hold.rate;
  return say('reasonHoldRate', {
    ...about,
    rate: f.plain(value, 2),
    low: f.plain(low, 2),
    high: f.plain(high, 2),
  });
}

export function causeText({ limit, value, allowed, channels }: Cause, manner: Manner): string {
  const f = figuresFor(manner);
  const who = whoText(channels);
  switch (limit) {
    case 'pressure_bar':
      return say('causePressure', { who, value: f.pressure(value), allowed: f.pressure(allowed) });
    case 'gaugesApart_bar':
      return say('causeGaugesApart', { who, value: f.pressure(value), allowed: f.pressure(allowed) });
    case 'growthUnderPressure_percent':
      return say('causeGrowth', { who, value: f.growth(value), allowed: f.growth(allowed) });
    case 'growthLeft_percent':
      return say('causeLeft', { who, value: f.growth(value), allowed: f.growth(allowed) });
    case 'girthsApart_percent':
      return say('causeGirthsApart', { who, value: f.growth(value), allowed: f.growth(allowed) });
    case 'slopeShare':
      return say('causeSlope', {
        value: `${f.plain(100 * value, 1)} %`,
        allowed: `${f.plain(100 * allowed, 1)} %`,
      });
    case 'trappedAir_L':
      return say('causeAir', { value: f.litres(value), allowed: f.litres(allowed) });
    case 'leak_mL_per_min':
      return say('causeLeak', { value: f.leak(value), allowed: f.leak(allowed) });
  }
}

const whoText = ([first = '', ...others]: readonly string[]): string =>
  others.reduce((one, other) => say('whoJoined', { one, other }), first);
