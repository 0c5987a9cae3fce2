/** The target and its water, in sentences. */
import type { FirstStepSees, LeakSeen, Model, Need, Place, PlanWater, Target } from '@hoopwright/wire/plan';
import { type Figures, rangedText } from '../figures.ts';
import { catalogue } from './fill.ts';
import { restRate } from './step.ts';

const ENGLISH = {
  pressure: 'Stretch pressure {pressure}: working pressure {working} times {factor}.',
  stress: 'Hoop stress of the thinnest course there, p r/t as welded: {stress}.',
  'model EN 13458-2':
    'The factor is that of EN 13458-2 Annex C ({en}; AS 1210 Supplement 2 has {en} too, ASME VIII-1 Appendix 44 {en} to {asme}).',
  'model EN 13530-2': 'The factor is that of EN 13530-2 ({low}).',
  'model ASME VIII-1 Appendix 44': 'The factor is within that of ASME VIII-1 Appendix 44 ({en} to {asme}).',
  'model none':
    'The factor is none of the published ones (EN 13530-2 {low}, EN 13458-2 {en}, ASME VIII-1 Appendix 44 {en} to {asme}).',
  yield: 'First yield anywhere at {first}; the barrel yields at {barrel}.',
  'yield first': 'First yield anywhere at {first}.',
  'yield barrel': 'The barrel yields at {barrel}.',
  growth:
    'Growth of the girth that grows most: {arrived} on arrival, {held} at the end of the final hold, both under pressure; {left} is left.',
  maximum: 'The forecast ends at {pressure} ({kind}), at {growth} growth under pressure.',
  'maximum none': 'The forecast found no maximum.',
  survive: '99 of 100 such tanks survive {pressure}.',
  'survive assured':
    '99 of 100 such tanks survive {pressure}; {assured} is what so many steels assure, and the stretch pressure stays under it.',
  'survive none':
    'No range of steel: the steel is assumed, and the pressure that 99 of 100 such tanks survive is not known.',
  fill: 'To fill: {fill} at {temperature}.',
  pump: 'To pump: {pump}. Of it the wall takes {growth}, compression of the water {compression}, the air {air}.',
  strokes: 'Strokes of {stroke}: {strokes}.',
  'per bar': 'Far below yield: wall {growth}, water {compression}, air {air}.',
  time: 'Time at the pump without the holds: {minutes} at {flow}.',
  'time none': 'What the pump gives is not stated: no time and no strokes.',
  'first air':
    'First step: air as foreseen would be found as {air}, the zero of the gauge to ±{zero}; the valve shut for {minutes} shows a loss of {loss} or more.',
  'first hand':
    'Without a screen: litres of air at filling = (litres at {to} less litres at {from} less {tank}) / {share}.',
  'first slope': '{name}: {slope} far below yield, known in the first step to ±{within} %.',
  'first blind':
    '{name}: {slope} far below yield, known in the first step to ±{within} % only: too blurred to check it there.',
  'leak shut':
    'Smallest loss that these instruments tell from none in {minutes}, valve shut: {shut}; valve open: {open}. Blurred most by {by}.',
  rate: 'Growth rate over the last half hour of the final hold: known to ±{rate} %/h. At {rest} %/h the wall takes up {uptake}.',
  'by litres': 'the supply',
  'by girth': 'the girths',
  'by pressure': 'the gauge',
  'by temperature': 'warming of the water',
} as const;

const filled = catalogue(ENGLISH);

export function targetTexts(target: Target, f: Figures): string[] {
  const { growth_percent: growth } = target;
  return [
    filled('pressure', {
      pressure: f.pressure(target.pressure_bar),
      working: f.pressure(target.workingPressure_bar),
      factor: f.plain(target.stretchFactor, 2),
    }),
    filled('stress', { stress: f.stress(target.hoopStress_MPa) }),
    modelText(target.model, f),
    ...yieldTexts(target, f),
    filled('growth', {
      arrived: rangedText(f.growth, growth.arrived),
      held: rangedText(f.growth, growth.held),
      left: rangedText(f.growth, growth.left),
    }),
    target.maximum === undefined
      ? filled('maximum none')
      : filled('maximum', {
          kind: target.maximum.kind,
          pressure: rangedText(f.pressure, target.maximum.pressure_bar),
          growth: f.growth(target.maximum.growth_percent),
        }),
    target.survive99_bar === undefined
      ? filled('survive none')
      : surviveText(target.survive99_bar, target.assured99_bar, f),
  ];
}

const surviveText = (survive: number, assured: number | undefined, f: Figures): string =>
  assured === undefined
    ? filled('survive', { pressure: f.pressure(survive) })
    : filled('survive assured', { pressure: f.pressure(survive), assured: f.pressure(assured) });

const modelText = (model: Model, f: Figures): string =>
  filled(`model ${model}`, { low: f.plain(1.33, 2), en: f.plain(1.5, 1), asme: f.plain(1.6, 1) });

function yieldTexts({ firstYield_bar: first, barrelYield_bar: barrel }: Target, f: Figures): string[] {
  if (first === undefined)
    return barrel === undefined ? [] : [filled('yield barrel', { barrel: f.pressure(barrel) })];
  return barrel === undefined
    ? [filled('yield first', { first: f.pressure(first) })]
    : [filled('yield', { first: f.pressure(first), barrel: f.pressure(barrel) })];
}

export function waterTexts(water: PlanWater, f: Figures): string[] {
  const { shares_L: shares, perBar_mL: per } = water;
  return [
    filled('fill', { fill: f.content(water.fill_L), temperature: f.temperature(water.temperature_C) }),
    filled('pump', {
      pump: rangedText(f.litres, water.pump_L),
      growth: f.litres(shares.growth),
      compression: f.litres(shares.compression),
      air: f.litres(shares.trappedAir),
    }),
    ...(water.stroke_mL === undefined || water.strokes === undefined
      ? []
      : [
          filled('strokes', {
            stroke: f.sip(water.stroke_mL),
            strokes: rangedText(f.count, water.strokes),
          }),
        ]),
    filled('per bar', {
      growth: f.perPressure(per.growth),
      compression: f.perPressure(per.compression),
      air: f.perPressure(per.trappedAir),
    }),
    water.flow_L_per_min === undefined || water.pumping_min === undefined
      ? filled('time none')
      : filled('time', {
          minutes: rangedText(f.minutes, water.pumping_min),
          flow: f.flow(water.flow_L_per_min),
        }),
  ];
}

/** @param points numbers of the first and the last point of the first step */
export function firstStepTexts(
  first: FirstStepSees,
  points: readonly [from: string, to: string],
  f: Figures,
): string[] {
  return [
    filled('first air', {
      air: rangedText(f.litres, first.air_L),
      zero: f.fine(0.5 * ((first.zero_bar.high ?? NaN) - (first.zero_bar.low ?? NaN))),
      minutes: f.minutes(first.minutes),
      loss: f.leak(first.loss_mL_per_min),
    }),
    filled('first hand', {
      from: points[0],
      to: points[1],
      tank: f.litres(first.byHand.tank_L),
      share: f.plain(first.byHand.share, 3),
    }),
    ...first.slopes.map(({ name, mm_per_bar, within_percent, tells }) =>
      filled(tells ? 'first slope' : 'first blind', {
        name,
        slope: f.slope(mm_per_bar),
        within: f.plain(within_percent, 0),
      }),
    ),
  ];
}

export function leakTexts(leak: LeakSeen, f: Figures): string[] {
  return [
    filled('leak shut', {
      minutes: f.minutes(leak.minutes),
      shut: f.leak(leak.shut_mL_per_min),
      open: f.leak(leak.open_mL_per_min),
      by: filled(`by ${leak.blurredBy}`),
    }),
    filled('rate', {
      rate: f.plain(leak.rate_percent_per_h, 3),
      uptake: f.leak(leak.uptake_mL_per_min),
      rest: restRate(f),
    }),
  ];
}

/** "reads" names in the plan that are no names of people. */
const READS: Readonly<Record<string, string>> = {
  strokes: 'strokes',
  weighing: 'supply, weighed',
  meter: 'supply, metered',
  thermometer: 'water temperature',
};

export const readName = (name: string): string => READS[name] ?? name;

export const placeRow = (place: Place, f: Figures): string[] => [
  readName(place.name),
  place.by,
  place.from,
  place.upTo_bar > 0 ? f.pressure(place.upTo_bar) : f.pressure(0),
];

export function needRow(need: Need, f: Figures): string[] {
  const write = (value: number | undefined): string => {
    if (value === undefined) return '–';
    switch (need.unit) {
      case 'bar':
        return value < 1 ? f.fine(value) : f.pressure(value);
      case 'mm':
        return value < 1 ? f.wall(value) : f.girth(value);
      case 'mL':
        return f.sip(value);
      case 'K':
        return `${f.plain(value, 2)} K`;
    }
  };
  return [
    readName(need.name),
    write(need.range),
    write(need.resolution),
    write(need.has.range),
    write(need.has.resolution),
    need.enough ? 'enough' : 'NOT ENOUGH',
  ];
}
