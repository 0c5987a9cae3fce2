import { describe, expect, test } from 'vitest';
import type { StepKind } from '../plan/plan.ts';
import { samplePlan } from '../reading/sample.ts';
import type { Facts, Read } from './facts.ts';
import type { ForecastBody, RangeBody } from './forecastBody.ts';
import { adviceBody } from './adviceBody.ts';
import { advise } from './rules.ts';
import { forecastLine, reasonSentence } from './say.ts';

const plan = samplePlan((text) => text.slice(0, 8).padEnd(64, '0'));
const stepOf = (kind: StepKind) => {
  const step = plan.steps.findLast((one) => one.kind === kind);
  if (step === undefined) throw new Error(`no ${kind}`);
  return step;
};
const rise = stepOf('rise');
const read = (channel: string, value: number, age = 20): Read => ({ channel, value, age, fresh: 300 });
const range = (low: number, median: number, high: number): RangeBody => ({
  median,
  half: [0.5 * (low + median), 0.5 * (median + high)],
  wide: [low, high],
});
const forecast: ForecastBody = {
  growth_percent: range(2.1, 2.6, 3.3),
  pumped_L: range(7, 8, 9),
  firstYield_bar: range(21, 22, 23),
  maximum_bar: range(41, 44, 47),
  margin: range(1.37, 1.47, 1.57),
  settles_min: range(50, 70, 90),
  gives: 0.01,
  strange: 0.1,
  rows: 9,
  seconds: 1200,
};
const quiet: Facts = {
  plan,
  step: rise,
  gauges: [read('gauge A', rise.pressure_bar - 2), read('gauge B', rise.pressure_bar - 1.9)],
  gaugesInAll: 2,
  girths: [read('low', 1.2), read('high', 1.1)],
  crossings: [],
  forecast,
  oddities: [],
};
const states = (facts: Partial<Facts>): string => advise({ ...quiet, ...facts }).state;
const whys = (facts: Partial<Facts>): string[] =>
  advise({ ...quiet, ...facts }).reasons.map(({ why }) => why);

describe('advice', () => {
  test('has nothing against going on where all is fresh and within limits, up to the pressure of the step', () => {
    const advice = advise(quiet);
    expect(advice.state).toBe('nothing against going on');
    expect(advice.upTo_bar).toBe(rise.pressure_bar);
    expect(advice.channels).toEqual(['gauge A', 'low']);
  });

  test('cannot judge from an old gauge or an old girth, whatever else is well', () => {
    const gauges = [read('gauge A', 20, 301), read('gauge B', 20, 400)];
    expect(states({ gauges })).toBe('cannot judge');
    expect(whys({ girths: [read('low', 1.2, 305)] })).toEqual(['old reading']);
    expect(states({ girths: [] })).toBe('cannot judge');
  });

  test('goes by the second gauge where the first is old', () => {
    expect(states({ gauges: [read('gauge A', 20, 301), read('gauge B', 20)] })).toBe(
      'nothing against going on',
    );
  });

  test('stops where no gauge is left', () => {
    expect(whys({ gauges: [] })[0]).toBe('gauges lost');
    expect(states({ gauges: [] })).toBe('stop and release');
  });

  test('stops for a crossed limit even where readings are old, and holds for gauges that part', () => {
    const crossing = {
      limit: 'growthUnderPressure_percent',
      value: 9.1,
      allowed: 8,
      channels: ['low'],
      step: rise.number,
      seconds: 900,
    } as const;
    expect(states({ crossings: [crossing], girths: [read('low', 9.1, 999)] })).toBe('stop and release');
    expect(advise({ ...quiet, crossings: [crossing] }).channels).toEqual(['low']);
    expect(states({ crossings: [{ ...crossing, limit: 'gaugesApart_bar' }] })).toBe('hold');
  });

  test('stops near the maximum that one such tank in twenty has', () => {
    const near = { ...forecast, maximum_bar: range((rise.pressure_bar - 2) * 1.02, 40, 44) };
    expect(whys({ forecast: near })).toContain('near maximum');
  });

  test('goes by the limit of the plan there, and by the gauge that is not too old', () => {
    const gauges = [read('gauge A', 4, 301), read('gauge B', rise.pressure_bar - 2)];
    const near = { ...forecast, maximum_bar: range((rise.pressure_bar - 2) * 1.2, 40, 44) };
    expect(whys({ gauges, forecast: near })).not.toContain('near maximum');
    const set = { limit: 'marginToMaximum', value: 1.25, usual: 1.08 } as const;
    const strict = { ...plan, limits: [...plan.limits.filter(({ limit }) => limit !== set.limit), set] };
    expect(whys({ gauges, forecast: near, plan: strict })).toContain('near maximum');
    const before = { ...plan, limits: plan.limits.filter(({ limit }) => limit !== set.limit) };
    const nearer = { ...forecast, maximum_bar: range((rise.pressure_bar - 2) * 1.07, 40, 44) };
    expect(whys({ gauges, forecast: nearer, plan: before })).toContain('near maximum');
  });

  test('stops where the girth grows while the pressure falls, and not for the blur of the gauge', () => {
    const fallen = { pressure_bar: 0.9, growth_percent: 0.5, blur_bar: 0.2 };
    expect(states({ fallen })).toBe('stop and release');
    expect(states({ fallen: { ...fallen, pressure_bar: 0.1 } })).toBe('nothing against going on');
  });

  test('stops for a leak over what the plan allows, holds for one under it, and says how small a leak it would see', () => {
    const allowed = plan.limits.find(({ limit }) => limit === 'leak_mL_per_min')?.value ?? NaN;
    const leak = { seen: true, smallest: 9, noThermometer: false } as const;
    expect(states({ leak: { ...leak, loss: allowed + 12, low: allowed + 5, high: allowed + 20 } })).toBe(
      'stop and release',
    );
    expect(states({ leak: { ...leak, loss: allowed - 1, low: allowed - 3, high: allowed + 2 } })).toBe(
      'hold',
    );
    expect(whys({ leak: { ...leak, seen: false, loss: 0, low: -4, high: 4 } })).toContain('no leak');
  });

  test('slows down where the ceiling is nearer than two rows', () => {
    const allowed = plan.limits.find(({ limit }) => limit === 'growthUnderPressure_percent')?.value ?? NaN;
    expect(states({ girths: [read('low', allowed - 0.4)], pace: 0.2 })).toBe('slow down');
    expect(states({ girths: [read('low', allowed - 4)], pace: 0.1 })).toBe('nothing against going on');
  });

  test('holds where the gauge shows the pressure of the step', () => {
    expect(whys({ gauges: [read('gauge A', rise.pressure_bar)] })).toEqual(['at the step']);
  });

  test('says of a tank that grew less than foreseen at the stretch pressure that its wall is stronger, and no more pressure', () => {
    const step = stepOf('final hold');
    const target = {
      ...plan.target,
      growth_percent: { ...plan.target.growth_percent, arrived: { value: 2.4, low: 1.9, high: 2.9 } },
    };
    const facts = {
      ...quiet,
      plan: { ...plan, target },
      step,
      girths: [read('low', 1.3)],
      hold: { minutes: 500, verdict: 'settled' },
    } as const;
    const advice = advise(facts);
    expect(advice.reasons.map(({ why }) => why)).toContain('stronger wall');
    expect(advice.upTo_bar).toBeLessThanOrEqual(plan.target.pressure_bar);
    expect(advice.reasons.map(reasonSentence).join(' ')).toContain('a new plan, made after release');
  });

  test('never names more than the stretch pressure, even for a step that would', () => {
    const step = { ...rise, pressure_bar: 3 * plan.target.pressure_bar };
    expect(advise({ ...quiet, step }).upTo_bar).toBe(plan.target.pressure_bar);
  });
});

describe('a long seam', () => {
  const allowed = 9.3;
  const limit = { limit: 'seamStrain_percent', value: allowed, usual: 9 } as const;
  const seamed = { ...plan, limits: [...plan.limits.filter((one) => one.limit !== limit.limit), limit] };
  const end = range(6.1, 7.9, 9.1);
  const strained = (now: RangeBody, foreseen = end): Partial<Facts> => ({
    plan: seamed,
    seam: { channel: 'low', growth_percent: 1.2, now, end: foreseen },
  });

  test('is judged by its strain, far under every limit of the girth', () => {
    const advice = advise({ ...quiet, ...strained(range(8.2, 9.4, 11.7)) });
    expect(advice.state).toBe('stop and release');
    expect(advice.channels).toEqual(['low']);
    expect(advice.reasons.map(reasonSentence)).toEqual([
      'The long seam is strained by 9.4 % (8.2 to 11.7 %) where low has grown by 1.20 %; the plan allows 9.3 %.',
    ]);
    expect(states(strained(range(7.7, 9.2, 9.29)))).toBe('nothing against going on');
  });

  test('that parts in half of such tanks has no figure, and stops all the same', () => {
    const parts: RangeBody = { median: null, half: [9.1, null], wide: [8.4, null] };
    expect(states(strained(parts))).toBe('stop and release');
    expect(advise({ ...quiet, ...strained(parts) }).reasons.map(reasonSentence)[0]).toContain(
      'more than it bears',
    );
  });

  test('that would be strained by more at the end is held for on the way up, and not in the final hold', () => {
    const beyond = strained(range(3.3, 4.1, 5.2), range(8.8, 9.6, 12.2));
    expect(states(beyond)).toBe('hold');
    expect(whys(beyond)[0]).toBe('seam foreseen');
    expect(whys({ ...beyond, step: stepOf('final hold') })).not.toContain('seam foreseen');
  });

  test('of which one in twenty is strained by more is noted, with the coupon that would tell', () => {
    const facts = { ...quiet, ...strained(range(5.1, 7.2, 9.8)) };
    expect(advise(facts).state).toBe('nothing against going on');
    expect(advise(facts).reasons.map(reasonSentence).join(' ')).toContain('A coupon across the seam');
  });

  test('of which nothing is known is said not to be judged', () => {
    const { forecast: _, ...blind } = quiet;
    expect(advise({ ...blind, plan: seamed }).reasons.map(({ why }) => why)).toContain('seam not judged');
  });

  test('is in the forecast as it is said and read back', () => {
    const body = { ...forecast, seam_percent: range(3.9, 5.2, 8.14) };
    expect(forecastLine(JSON.parse(JSON.stringify(body)))).toBe(
      'Foreseen at the end of the final hold: 2.60 % of growth (2.10 to 3.30 %). The long seam is then strained by 5.2 % (3.9 to 8.1 %).',
    );
  });
});

describe('the level at which the tank carries', () => {
  const oddity = {
    what: 'stronger than foreseen',
    channels: ['low'],
    explained: {
      ranked: [
        { explanation: 'stronger steel', chance: 0.6 },
        { explanation: 'thicker wall', chance: 0.3 },
        { explanation: 'gauge high', chance: 0.1 },
      ],
      tell: 'ultrasonic wall',
    },
  } as const;

  test('outside its range is noted, and changes nothing of what is advised', () => {
    const advice = advise({ ...quiet, noted: oddity });
    expect(advice.state).toBe('nothing against going on');
    expect(reasonSentence(advice.reasons[1])).toContain('Noted');
    expect(adviceBody(advice, [7]).explanations).toBeUndefined();
  });

  test('far beyond it is said with what remains to explain it and what would tell it apart', () => {
    const advice = advise({ ...quiet, oddities: [oddity] });
    const body = adviceBody(advice, [7]);
    expect(body.state).toBe('hold');
    expect(body.explanations?.slice(0, 2)).toEqual([
      'The steel is stronger than the evidence says.',
      'The wall is thicker than stated.',
    ]);
    expect(body.tellApart).toContain('ultrasonic');
  });
});
