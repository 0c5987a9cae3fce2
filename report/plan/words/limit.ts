/** Limits, what was assumed, what is open, what should be known: in sentences. */
import type { Assumed, Limit, Open, Plan, PlanRemark } from '@hoopwright/wire/plan';
import type { Figures } from '../figures.ts';
import { catalogue } from './fill.ts';
import { restRate } from './step.ts';

const LIMITS = {
  pressure_bar: 'Pressure over {value}',
  trappedAir_L: 'First step: more than {value} of air',
  leak_mL_per_min: 'Loss of water over {value}',
  growthLeft_percent: 'Growth that is left: more than {value}',
  growthUnderPressure_percent: 'Any girth grown by {value} under pressure',
  girthsApart_percent: 'Two girths {value} apart in growth',
  gaugesApart_bar: 'Two gauges {value} apart',
  seamStrain_percent: 'Long seam strained by {value}, as reckoned from the growth',
  slopeShare: 'Pressure over litres fallen to {value} of its elastic slope',
  growthWithoutPressure_percent: 'A girth grown by {value} while the pressure falls and nobody opens a valve',
  marginToMaximum: 'One such tank in twenty foreseen to bear less than {value} times the pressure at hand',
} as const;

const WHY = {
  pressure_bar: 'the stretch pressure of the duty',
  trappedAir_L: 'its energy is a tenth of that of wall and water (our choice, no source)',
  leak_mL_per_min:
    'the larger of what the wall takes up at {rate} %/h and of the smallest loss these instruments can see (our choice, no source)',
  growthLeft_percent: 'published practice is up to 7 % on diameter (ICMR2015_242)',
  growthUnderPressure_percent: 'the growth left and what springs back',
  girthsApart_percent: 'what is foreseen and a quarter of the growth (our choice, no source)',
  seamStrain_percent:
    'coupons of weld procedures are stretched 9 % before they are pulled (Zheng et al. 2012, doi 10.1115/1.4007039)',
  gaugesApart_bar: 'the errors of both gauges (EN 837-1 classes, from memory)',
  slopeShare: 'half of the least slope foreseen (our choice, no source)',
  growthWithoutPressure_percent:
    'more than readings blur and than creep gives in a minute (our choice, no source)',
  marginToMaximum: 'our choice, no source',
} as const;

const SET = { set: 'set by {by}: {why}; otherwise {usual}' } as const;

const limits = catalogue(LIMITS);
const whys = catalogue(WHY);
const set = catalogue(SET);

const limitFigure = (key: Limit['limit'], value: number, f: Figures): string => {
  switch (key) {
    case 'pressure_bar':
    case 'gaugesApart_bar':
      return f.pressure(value);
    case 'trappedAir_L':
      return f.litres(value);
    case 'leak_mL_per_min':
      return f.leak(value);
    case 'seamStrain_percent':
      return `${f.plain(value, 1)} %`;
    case 'marginToMaximum':
      return f.plain(value, 2);
    case 'slopeShare':
      return `${f.plain(100 * value, 1)} %`;
    default:
      return f.growth(value);
  }
};

export const limitText = ({ limit, value }: Limit, f: Figures): string =>
  limits(limit, { value: limitFigure(limit, value, f) });

export const limitReason = ({ limit, usual, set: own }: Limit, f: Figures): string =>
  own === undefined
    ? whys(limit, { rate: restRate(f) })
    : set('set', { by: own.by, why: own.why, usual: limitFigure(limit, usual, f) });

/** On which of them pumping stops and the pressure is let out. */
export const stopTexts = (plan: Plan, f: Figures): string[] =>
  plan.limits
    .filter(({ limit }) => limit !== 'trappedAir_L' && limit !== 'growthLeft_percent')
    .map((limit) => limitText(limit, f));

const ASSUMED: Readonly<Record<Assumed, string>> = {
  gauge:
    'No gauge is stated: one of class 1 is assumed, with the next nominal range over five quarters of the stretch pressure.',
  readings:
    'No reading of girths is stated: a taped scale read by camera to half a millimetre is assumed at every girth.',
  supply:
    'It is not stated how the water drawn is known: counted strokes, or a supply weighed to 50 g, are assumed.',
  'approach pressure':
    'No approach pressure is stated: nobody is at the tank while it is under any pressure.',
  'strokes a minute': 'Strokes a minute are not stated: 20 are assumed (common practice, no source).',
  'stand-off edition':
    'The edition of the stand-off method is not stated: the later one, which asks for more.',
  plugs: 'No plugs are stated: the bosses of the heads stand for them, which bounds the force from above.',
};

const OPEN: Readonly<Record<Open, string>> = {
  pump: 'What the pump gives: count strokes into a bucket.',
  chloride: 'Chloride in the test water.',
  'site temperature': 'Temperature expected on the day.',
  'relief valve': 'Relief valve: opening pressure, tried before the day.',
  'relief flow': 'What the relief valve passes when open.',
  release: 'How the pressure is let out from behind the wall.',
  'second release': 'The second way to let the pressure out.',
  floor: 'What floor and stand carry.',
  hose: 'Inside diameter of the hose, and how it is tied.',
  distance: 'How far people are from the tank, and behind what.',
  thermometer: 'A thermometer in the water of the tank.',
  'second gauge': 'A second gauge: with one alone nobody sees that it fails.',
};

const REMARKS: Readonly<Record<PlanRemark, string>> = {
  'no rate effect':
    'The steel states no rate effect: the length of the holds cannot be foreseen, and growth in them will be more than stands here.',
  'does not settle': 'The final hold is not expected to settle within its longest time.',
  'does not yield':
    'The barrel does not yield at the stretch pressure: this is a pressure test, not a stretch.',
  'hold within first step':
    'A hold of the duty lies within the first step and is left out: the tank is held there anyway.',
  'no maximum': 'The forecast found no maximum: the margin is not known.',
  'maximum beyond evidence': 'The maximum lies beyond the evidence for the curve: the margin is a guess.',
  'relief far over': 'The relief valve opens more than a tenth over the stretch pressure.',
  'gauge over-ranged':
    'A gauge ends at more than four times the stretch pressure: its first quarter is read (ASME VIII-1 UG-102 wants one and a half to four times, from memory).',
  'floor too weak': 'FLOOR OR STAND CARRY LESS THAN THE FILLED TANK WEIGHS.',
  'nearer than the method':
    'People are nearer than the stand-off method asks: decide with a licensed engineer what the wall must stop.',
  'chloride over limit': 'The water has more chloride than austenitic steel should see.',
  'seam strained over its limit':
    'At the end of the final hold the long seam is foreseen to be strained by more than its limit: a stronger seam, a coupon across it, or a lower stretch pressure.',
  'too cold': 'Metal or water are colder than a cold stretch is done.',
};

export const assumedText = (what: Assumed): string => ASSUMED[what];
export const openText = (what: Open): string => OPEN[what];
export const remarkText = (what: PlanRemark): string => REMARKS[what];
