/** Figures of a plan as people read them: the file's units in, text in the reader's units out. */
import { fromBar, fromLitre, fromPercent } from '@hoopwright/core/units';
import type { Ranged } from '@hoopwright/wire/plan';
import { fixed, say } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import { type Quantity, scaleOf } from '../figure/quantity.ts';

export interface Figures {
  readonly pressure: (bar: number) => string;
  /** Of a step: as fine as the steps of this plan are. */
  readonly step: (bar: number) => string;
  /** Steps of a gauge, under 1 bar. */
  readonly fine: (bar: number) => string;
  readonly girth: (mm: number) => string;
  /** Girth per pressure. */
  readonly slope: (mmPerBar: number) => string;
  readonly length: (mm: number) => string;
  readonly wall: (mm: number) => string;
  readonly litres: (litres: number) => string;
  readonly content: (litres: number) => string;
  readonly mass: (kg: number) => string;
  readonly growth: (percent: number) => string;
  readonly stress: (MPa: number) => string;
  readonly minutes: (minutes: number) => string;
  readonly temperature: (celsius: number) => string;
  readonly energy: (joule: number) => string;
  readonly force: (kN: number) => string;
  readonly distance: (m: number) => string;
  /** Small flows: leaks. */
  readonly leak: (mLPerMinute: number) => string;
  readonly flow: (litresPerMinute: number) => string;
  readonly perPressure: (mLPerBar: number) => string;
  /** A stroke, a step of the supply. */
  readonly sip: (mL: number) => string;
  readonly count: (value: number) => string;
  readonly plain: (value: number, digits: number) => string;
}

const JOULE_PER_FOOT_POUND = 1.3558179483314;
const KN_PER_POUND = 4.4482216152605e-3;
const M_PER_FOOT = 0.3048;
const ML_PER_CUBIC_INCH = 16.387064;
const L_PER_GALLON = 3.785411784;
const BAR_PER_PSI = 0.0689475729316836;

export function figuresFor(manner: Manner, unit_bar = 0.1): Figures {
  const of =
    (quantity: Quantity, inside: (value: number) => number) =>
    (value: number): string =>
      say(manner, quantity, inside(value));
  const same = (value: number): number => value;
  const pounds = manner.units === 'psi';
  const own =
    (
      metric: readonly [unit: string, digits: number],
      imperial: readonly [unit: string, digits: number, one: number],
    ) =>
    (value: number): string => {
      const [unit, digits, one] = pounds ? imperial : [...metric, 1];
      return `${fixed(manner, value / one, digits)} ${unit}`;
    };
  return {
    pressure: of('pressure', fromBar),
    step: stepPressure(manner, unit_bar),
    fine: finePressure(manner),
    girth: of('girth', same),
    slope: slopeText(manner),
    length: of('length', same),
    wall: of('wall', same),
    litres: of('volume', fromLitre),
    content: of('content', fromLitre),
    mass: of('mass', (kg) => kg / 1e3),
    growth: of('growth', fromPercent),
    stress: of('stress', same),
    minutes: of('minutes', (minutes) => 60 * minutes),
    temperature: of('temperature', same),
    energy: (joule) => {
      const value = pounds ? joule / JOULE_PER_FOOT_POUND : joule;
      const unit = pounds ? 'ft lbf' : 'J';
      return value >= 9999.5
        ? `${fixed(manner, value / 1e3, 1)} ${pounds ? '10³ ft lbf' : 'kJ'}`
        : `${fixed(manner, value, 0)} ${unit}`;
    },
    force: own(['kN', 1], ['lbf', 0, KN_PER_POUND]),
    distance: own(['m', 1], ['ft', 0, M_PER_FOOT]),
    leak: own(['mL/min', 1], ['in³/min', 2, ML_PER_CUBIC_INCH]),
    flow: own(['L/min', 2], ['gal/min', 3, L_PER_GALLON]),
    perPressure: own(['mL/bar', 0], ['in³/psi', 2, ML_PER_CUBIC_INCH / BAR_PER_PSI]),
    sip: own(['mL', 1], ['in³', 2, ML_PER_CUBIC_INCH]),
    count: (value) => fixed(manner, value, 0),
    plain: (value, digits) => fixed(manner, value, digits),
  };
}

/** One digit more than a pressure has. */
function finePressure(manner: Manner): (bar: number) => string {
  const { unit, one, digits } = scaleOf(manner.units, 'pressure');
  return (bar) => `${fixed(manner, fromBar(bar) / one, digits + 1)} ${unit}`;
}

function slopeText(manner: Manner): (mmPerBar: number) => string {
  const [girth, pressure] = [scaleOf(manner.units, 'girth'), scaleOf(manner.units, 'pressure')];
  // mm/bar to the reader's units, three figures.
  const factor = pressure.one / fromBar(1) / girth.one;
  return (slope) => {
    const value = slope * factor;
    const digits = Math.max(0, 2 - Math.floor(Math.log10(Math.max(Math.abs(value), 1e-9))));
    return `${fixed(manner, value, Math.min(digits, 6))} ${girth.unit}/${pressure.unit}`;
  };
}

/** Digits enough to tell one step from the next. */
function stepPressure(manner: Manner, unit_bar: number): (bar: number) => string {
  const { unit, one, digits } = scaleOf(manner.units, 'pressure');
  const step = fromBar(unit_bar) / one;
  const fine = Math.max(digits, Math.ceil(-Math.log10(step) - 1e-9));
  return (bar) => `${fixed(manner, fromBar(bar) / one, fine)} ${unit}`;
}

/** "4.71 %" or, with a range, "4.71 (4.02–5.48) %". `write` ends in the unit. */
export function rangedText(write: (value: number) => string, { value, low, high }: Ranged): string {
  const text = write(value);
  if (low === undefined || high === undefined) return text;
  // A range that is narrower than the last digit says nothing.
  if (write(low) === text && write(high) === text) return text;
  const [figure, unit] = parted(text);
  const ends = `${parted(write(low))[0]}–${parted(write(high))[0]}`;
  return unit === '' ? `${figure} (${ends})` : `${figure} (${ends}) ${unit}`;
}

/** The figure without its unit: for columns whose head names the unit. */
export const bare = (text: string): string => parted(text)[0];
export const unitOf = (text: string): string => parted(text)[1];

function parted(text: string): [figure: string, unit: string] {
  const gap = text.indexOf(' ');
  return gap < 0 ? [text, ''] : [text.slice(0, gap), text.slice(gap + 1)];
}
