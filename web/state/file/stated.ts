/** Stated numbers as text and back: every digit that was given, the decimal mark of the reader, the unit of the reader. */
import { type Manner, type Quantity, scaleOf } from '@hoopwright/report/figure';
import { words } from '../../words/say.ts';
import { type Fault, readTyped } from './number.ts';
import { fileUnit, plainUnit, tidy, typedUnit, unitsFor } from './unit.ts';

/** What a field holds: `path` says the unit of the file; without a quantity the number has none. */
export interface Kind {
  readonly path: string;
  readonly quantity?: Quantity | undefined;
}

/** Unit behind the field, and the value of one of it in file units. */
export function unitOf(
  manner: Manner,
  { path, quantity }: Kind,
): { readonly unit: string; readonly one: number } {
  if (quantity === undefined) return { unit: plainUnit(path), one: 1 };
  const { unit, one } = scaleOf(manner.units, quantity);
  return {
    unit: path.endsWith('_L_per_min') ? `${unit}/min` : unit,
    one: one / (path.endsWith('_L_per_min') ? fileUnit(path) * 60 : fileUnit(path)),
  };
}

/** A number of the file as this person reads it. */
export function statedText(manner: Manner, kind: Kind, value: number): string {
  return String(tidy(value / unitOf(manner, kind).one)).replace('.', manner.decimal);
}

/**
 * A number of the file as it stands in a field that nobody is typing in: in a foreign unit as five figures, since what the
 * change of unit adds behind them was never stated.
 */
export function shownText(manner: Manner, kind: Kind, value: number): string {
  const { one } = unitOf(manner, kind);
  const foreign = Math.abs(Math.log10(one) - Math.round(Math.log10(one))) > 1e-9;
  return statedText(manner, kind, foreign ? Number((value / one).toPrecision(5)) * one : value);
}

export type Understood =
  | { readonly kind: 'value'; readonly value: number; readonly readBack: string }
  | {
      readonly kind: 'asked';
      readonly choices: readonly { readonly value: number; readonly readBack: string }[];
    }
  | { readonly kind: 'fault'; readonly sentence: string };

/** Text as typed to a number in file units, what it was taken for, or a sentence that says what is wrong with it. */
export function understand(manner: Manner, kind: Kind, text: string): Understood {
  const typed = readTyped(text);
  if (typed.kind === 'fault') return { kind: 'fault', sentence: faultSentence(typed.why, text, manner) };
  const one = oneOf(manner, kind, typed.rest);
  if (one === undefined) return { kind: 'fault', sentence: unitSentence(kind, typed.rest) };
  const meant = (number: number) => {
    const value = tidy(number * one);
    const { unit } = unitOf(manner, kind);
    const figure = statedText(manner, kind, value);
    return { value, readBack: unit === '' ? figure : `${figure} ${unit}` };
  };
  if (typed.kind === 'asked')
    return { kind: 'asked', choices: [meant(typed.fraction), meant(typed.thousands)] };
  return { kind: 'value', ...meant(typed.value) };
}

/** File units in one of the unit that was typed; without one it is the unit of the reader. */
function oneOf(manner: Manner, kind: Kind, rest: string): number | undefined {
  const own = unitOf(manner, kind);
  if (rest === '' || rest.toLowerCase() === own.unit.toLowerCase()) return own.one;
  if (kind.quantity === undefined || kind.path.endsWith('_L_per_min')) return undefined;
  const typed = typedUnit(kind.quantity, rest);
  return typed === undefined ? undefined : typed / fileUnit(kind.path);
}

const FAULTS = {
  empty: 'faultEmpty',
  'no number': 'faultNoNumber',
  marks: 'faultMarks',
  'too large': 'faultTooLarge',
} as const satisfies Record<Fault, string>;

const faultSentence = (why: Fault, text: string, manner: Manner): string => {
  const example = `12${manner.decimal}5`;
  return words(FAULTS[why], { text: text.trim().slice(0, 24), example });
};

function unitSentence({ path, quantity }: Kind, rest: string): string {
  const text = rest.slice(0, 16);
  const known = quantity === undefined ? [plainUnit(path)].filter((unit) => unit !== '') : unitsFor(quantity);
  return known.length === 0
    ? words('faultNoUnit', { text })
    : words('faultUnit', { text, units: known.join(', ') });
}
