/** Reasons and explanations as whole sentences. */
import type { Explanation, Teller } from '@hoopwright/core/stretch';
import { crossingSentence } from '../reading/say.ts';
import type { Oddity, SeamFacts } from './facts.ts';
import { forecastShape, type RangeBody } from './forecastBody.ts';
import { readyShape } from './readyBody.ts';
import type { Reason } from './rules.ts';

const digits = (value: number, places: number): string => value.toFixed(places);

export function reasonSentence(reason: Reason): string {
  switch (reason.why) {
    case 'limit':
      return crossingSentence(reason.crossing);
    case 'gauges lost':
      return 'No gauge is left that can be believed; nobody knows the pressure.';
    case 'near maximum':
      return `At ${digits(reason.now_bar, 1)} bar it stands too near its maximum: one such tank in twenty bears less than ${digits(reason.low_bar, 1)} bar.`;
    case 'gives way':
      return `${digits(100 * reason.chance, 0)} of 100 such tanks give way at the planned stretch pressure; the plan has to be made anew, after release.`;
    case 'growth without pressure':
      return `The girth has grown by ${digits(reason.grown_percent, 2)} % while the pressure fell by ${digits(reason.fallen_bar, 1)} bar.`;
    case 'leak':
      return `Water is lost at ${digits(reason.leak.loss, 0)} mL/min (${digits(Math.max(0, reason.leak.low), 0)} to ${digits(reason.leak.high, 0)} mL/min).`;
    case 'no leak':
      return reason.leak.noThermometer
        ? `No leak is seen; it would be smaller than ${digits(reason.leak.smallest, 0)} mL/min. Without a thermometer in the water nothing smaller can be told.`
        : `No leak is seen; it would be smaller than ${digits(reason.leak.smallest, 0)} mL/min.`;
    case 'seam strain':
      return `The long seam is strained by ${rangeSaid(reason.seam.now)} where ${grown(reason.seam)}; the plan allows ${digits(reason.allowed_percent, 1)} %.`;
    case 'seam foreseen':
      return `At the end of the final hold the long seam is foreseen to be strained by ${rangeSaid(reason.seam.end)}; the plan allows ${digits(reason.allowed_percent, 1)} %. Less pressure is a new plan, made after release.`;
    case 'seam noted':
      return `Noted: the long seam is strained by ${rangeSaid(reason.seam.now)}; one such seam in twenty by more than the ${digits(reason.allowed_percent, 1)} % that the plan allows. A coupon across the seam would narrow this.`;
    case 'seam not judged':
      return 'The strain of the long seam is not judged: its steel has no range, or too little has been read.';
    case 'no reading':
      return reason.of === 'pressure'
        ? 'There is no reading of the pressure that can be believed.'
        : 'There is no reading of a girth that can be believed.';
    case 'old reading':
      return `${reason.read.channel} was read ${digits(reason.read.age, 0)} s ago; after ${digits(reason.read.fresh, 0)} s a reading is too old to go by.`;
    case 'nothing foreseen':
      return 'Nothing is foreseen: it is still being made ready, the steel has no range, or too little has been read.';
    case 'oddity':
      return odditySentence(reason.oddity);
    case 'noted':
      return `Noted: ${reason.oddity.channels.join(' and ')} stands outside the range of nine tanks in ten, on the ${reason.oddity.what === 'softer than foreseen' ? 'soft' : 'strong'} side.`;
    case 'at the step':
      return `The gauge shows the pressure of this step, ${digits(reason.pressure_bar, 1)} bar; go no higher in it.`;
    case 'hold goes on':
      return holdSentence(reason);
    case 'hold is over':
      return `The hold has lasted ${digits(reason.hold.minutes, 0)} min and has done what it was for.`;
    case 'too quick':
      return `It grows by ${digits(reason.pace, 2)} % a minute; the growth that the plan allows is ${digits(Math.max(0, reason.minutes), 1)} min away.`;
    case 'stronger wall':
      return `It has grown by ${digits(reason.growth_percent, 2)} %, less than the ${digits(reason.foreseen_percent, 2)} % foreseen at the least: the wall is stronger than foreseen. More pressure is a new plan, made after release.`;
    case 'within limits':
      return `Every reading is within the plan's limits; this step goes up to ${digits(reason.upTo_bar, 1)} bar.`;
  }
}

const grown = ({ channel, growth_percent }: SeamFacts): string =>
  `${channel} has grown by ${digits(growth_percent, 2)} %`;

/** "5.1 % (3.2 to 8.0 %)"; a seam that parts has no figure. */
function rangeSaid({ median, wide: [low, high] }: RangeBody): string {
  const figure = (value: number | null): string => (value === null ? 'more than it bears' : digits(value, 1));
  if (median === null) return 'more than it bears';
  return `${digits(median, 1)} % (${figure(low)} to ${figure(high)}${high === null ? '' : ' %'})`;
}

/** What is foreseen: of the growth, and of the long seam where there is one. */
export function forecastSentence(body: {
  readonly growth_percent: RangeBody;
  readonly seam_percent?: RangeBody | undefined;
}): string {
  const { growth_percent, seam_percent } = body;
  const growth = growthSentence(growth_percent);
  return seam_percent === undefined || growth_percent.wide[0] === null
    ? growth
    : `${growth} The long seam is then strained by ${rangeSaid(seam_percent)}.`;
}

function growthSentence({ median, wide: [low, high] }: RangeBody): string {
  if (low === null) return 'Foreseen: it gives way before the end of the final hold.';
  if (median === null || high === null)
    return `Foreseen at the end of the final hold: ${digits(low, 2)} % of growth at the least; it may give way before.`;
  return `Foreseen at the end of the final hold: ${digits(median, 2)} % of growth (${digits(low, 2)} to ${digits(high, 2)} %).`;
}

/** The same of an entry in a record; empty where it is of another kind. */
export function forecastLine(body: unknown): string {
  const ready = readyShape.safeParse(body);
  if (ready.success) return `${ready.data.ready.says} ${ready.data.ready.percent} %`;
  const read = forecastShape.safeParse(body);
  return read.success ? forecastSentence(read.data) : '';
}

function holdSentence({ hold, rate_percent_per_h }: Extract<Reason, { why: 'hold goes on' }>): string {
  if (hold.rate === undefined)
    return `The hold has lasted ${digits(hold.minutes, 0)} min; there are too few readings for a growth rate.`;
  const { value, low, high } = hold.rate;
  const rate = `${digits(value, 2)} %/h (${digits(Math.max(0, low), 2)} to ${digits(high, 2)} %/h)`;
  return hold.settles_min === undefined
    ? `The girth grows by ${rate} and is not foreseen to come under ${digits(rate_percent_per_h, 1)} %/h.`
    : `The girth grows by ${rate}; under ${digits(rate_percent_per_h, 1)} %/h is foreseen ${digits(hold.settles_min, 0)} min after the hold began.`;
}

function odditySentence({ what, channels }: Oddity): string {
  const who = channels.join(' and ');
  switch (what) {
    case 'gauges apart':
      return `${who} do not show the same pressure, by more than their classes allow.`;
    case 'wire slipped':
      return `${who} jumped from one reading to the next, and no other girth did.`;
    case 'girth stands out':
      return `${who} does not grow as the other girths say it should.`;
    case 'stronger than foreseen':
      return `At the growth that ${who} shows the tank carries more than 99 of 100 tanks of its range would.`;
    case 'softer than foreseen':
      return `At the growth that ${who} shows the tank carries less than 99 of 100 tanks of its range would.`;
  }
}

const EXPLAINED: Readonly<Record<Explanation, string>> = {
  'first gauge high': 'The first gauge shows too much.',
  'first gauge low': 'The first gauge shows too little.',
  'second gauge high': 'The second gauge shows too much.',
  'second gauge low': 'The second gauge shows too little.',
  'wire slipped': 'The wire slipped, or the tape was moved.',
  'wire gain': 'The wire shows more, or less, than it is drawn out.',
  'soft course': 'One course is softer, or thinner, than the others.',
  'weak girth seam': 'The girth seam beside it is weaker than the plate.',
  'stronger steel': 'The steel is stronger than the evidence says.',
  'softer steel': 'The steel is softer than the evidence says.',
  'thicker wall': 'The wall is thicker than stated.',
  'thinner wall': 'The wall is thinner than stated.',
  'gauge high': 'The gauge shows too much.',
  'gauge low': 'The gauge shows too little.',
  leak: 'Water is lost.',
  air: 'There is more air in the tank than was found.',
};
export const explanationSentence = (explanation: Explanation): string => EXPLAINED[explanation];

const TELLING: Readonly<Record<Teller, string>> = {
  'ultrasonic wall': 'An ultrasonic reading of the wall tells them apart, after release.',
  'elastic slope of girth':
    'Growth of girth per bar in the first step tells which: compare it by each gauge.',
  'second gauge': 'A second gauge tells them apart.',
  'tape over the girth': 'A tape over the same girth tells them apart, where the plan lets somebody read it.',
  'litres drawn': 'The litres drawn tell them apart.',
  'valve shut': 'A hold with the valve shut tells them apart.',
};
export const tellerSentence = (teller: Teller): string => TELLING[teller];
