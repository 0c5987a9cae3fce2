/** What a column holds, from its heading: the quantity, its unit, and whether it is what a tensile test needs. */
import { unitNamed, type Quantity, type Unit } from './unit.ts';

export type Meaning = 'strain' | 'stress' | 'force' | 'extension' | 'crosshead' | 'time';

export interface Heading {
  /** As written, unit and all. */
  readonly text: string;
  readonly meaning?: Meaning;
  readonly unit?: Unit;
  /** A word in the place of the unit that is none for this quantity. */
  readonly strangeUnit?: string;
  /** The heading says true or logarithmic. */
  readonly isTrue: boolean;
}

/** First that fits. German, French and Spanish headings of testing machines beside the English ones. */
const MEANINGS: readonly (readonly [Meaning, RegExp])[] = [
  ['crosshead', /cross-?\s?head|traverse|stroke|machine|kolben|grip|actuator|position|course/],
  ['stress', /stress|spannung|contrainte|(?<!\p{L})tensi[oó]n|sigma|σ|^(s|r)$/u],
  ['strain', /strain|dehnung|d[eé]formation|deformaci[oó]n|epsilon|ε|^e$/],
  ['force', /force|load|kraft|last|charge|fuerza|carga|effort|^(f|p)$/],
  [
    'extension',
    /extension|extenso|elongation|verl(ä|ae)ngerung|allongement|alargamiento|displacement|verschiebung|weg|^(dl|δl|Δl)$/,
  ],
  ['time', /time|zeit|temps|tiempo|^t$/],
];

/** Columns that sound like those above and are not. */
const OTHERS =
  /rate|geschwindigkeit|speed|vitesse|lateral|transvers|quer|width|breite|thick|dicke|temp|setpoint|soll|energy|work|modul|area|plastic|residual/;

const QUANTITY: Readonly<Record<Meaning, Quantity>> = {
  strain: 'strain',
  stress: 'stress',
  force: 'force',
  extension: 'length',
  crosshead: 'length',
  time: 'time',
};

export const quantityOf = (meaning: Meaning): Quantity => QUANTITY[meaning];

/** `under` is the word in the row of units below, where there is one. */
export const headingOf = (text: string, under = ''): Heading => {
  const { name, unitWord } = parted(text);
  const plain = name.toLowerCase().replaceAll('_', ' ').trim();
  const isTrue = /\b(true|wahre?|log|logarithmic|hencky|vraie?)\b/.test(plain);
  const meaning = OTHERS.test(plain) ? undefined : MEANINGS.find(([, words]) => words.test(plain))?.[0];
  if (!meaning) return { text, isTrue };
  const word = unitWord || under.trim().replace(/^[[(<]|[\])>]$/g, '');
  const unit = word === '' ? undefined : unitNamed(word, quantityOf(meaning));
  if (word !== '' && !unit) return { text, meaning, isTrue, strangeUnit: word };
  return { text, meaning, isTrue, ...(unit && { unit }) };
};

/** The heading without its unit. */
export const headingName = (text: string): string => parted(text).name;

/** `Stress (MPa)`, `Stress [MPa]`, `Stress, MPa`, `Stress / MPa`, `Kraft in N`, `stress_MPa`, `Strain %`. */
const parted = (text: string): { name: string; unitWord: string } => {
  const bracket = /^(.*?)\s*[[(<]([^\])>]*)[\])>]\s*$/.exec(text);
  if (bracket) return { name: bracket[1], unitWord: bracket[2] };
  const behind = /^(.+?)(?:\s*,\s*|\s+\/\s+|\s+in\s+|[_\s/:])([^\s_,/:][^\s_,:]*)$/.exec(text.trim());
  if (
    behind &&
    (['stress', 'strain', 'force', 'length', 'time'] as const).some((of) => unitNamed(behind[2], of))
  )
    return { name: behind[1], unitWord: behind[2] };
  const sign = /^(.*?)\s*(%)$/.exec(text);
  return sign ? { name: sign[1], unitWord: '%' } : { name: text, unitWord: '' };
};
