/** What the lines before the table say of the specimen: gauge length, cross-section, seam, preload. */
import type { Row } from './sheet/row.ts';
import { numberIn, witnessOf } from './sheet/decimal.ts';
import { unitNamed } from './sheet/unit.ts';

export interface Specimen {
  /** mm. */
  readonly gauge?: number;
  /** mm². */
  readonly area?: number;
  readonly coupon?: 'plate' | 'across the seam';
  /** Width of the seam within the gauge length, mm. */
  readonly seamWidth?: number;
  readonly broke?: 'seam' | 'heat-affected zone' | 'plate';
  /** Stress the coupon was pulled to before this test, MPa. */
  readonly preloadStress?: number;
  /** Strain the coupon was stretched by before this test, as a fraction. */
  readonly preloadStrain?: number;
  /** Plate (sheet, bar) and heat the coupon was cut from, as the file calls them. */
  readonly plate?: string;
  readonly heat?: string;
  /** °C; only where the file names the unit. */
  readonly temperature?: number;
  /** Rate the file states, 1/s. */
  readonly rate?: number;
  /** The lines say that the figures are made up. */
  readonly invented?: boolean;
  /** What was taken for granted in reading this, one sentence each with its line. */
  readonly notes: readonly { readonly line: number; readonly says: string }[];
}

type Key =
  | 'seamWidth'
  | 'gauge'
  | 'area'
  | 'thickness'
  | 'width'
  | 'diameter'
  | 'plate'
  | 'heat'
  | 'temperature'
  | 'coupon'
  | 'broke'
  | 'preloadStrain'
  | 'preloadStress'
  | 'rate';

/** Keys in the order they are tried; a line is `key: value unit` with any of the usual signs between. */
const KEYS: readonly (readonly [Key, RegExp])[] = [
  ['seamWidth', /seam width|nahtbreite|weld width/],
  ['gauge', /gau?ge ?length|^l ?0$|^le$|^lo$|messl(ä|ae)nge|longueur (initiale|de base)/],
  ['area', /area|cross.?section|querschnitt|^s ?0$|^so$|section/],
  ['thickness', /thickness|dicke|[eé]paisseur|^a ?0$/],
  ['width', /width|breite|largeur|^b ?0$/],
  ['diameter', /diameter|durchmesser|diam[eè]tre|^d ?0$/],
  ['plate', /^(plate|sheet|bar|blech)$/],
  ['heat', /^(heat|melt|schmelze|coul[eé]e)( no\.?| number)?$/],
  ['temperature', /temperatur/],
  ['coupon', /^(coupon|specimen type|orientation)$/],
  ['broke', /^(broke|broke in|fracture|failure|place of fracture)$/],
  ['preloadStrain', /pre-?(load|stretch)\w* strain|pre-?strain|pre-?stretch/],
  ['preloadStress', /pre-?load/],
  ['rate', /strain.?rate/],
];

interface Entry {
  readonly key: Key;
  readonly value: string;
  readonly line: number;
  /** The key with the unit it may name in brackets. */
  readonly label: string;
}

export const specimenOf = (preface: readonly Row[]): Specimen => {
  const entries = preface.flatMap(entriesOf);
  const notes: { line: number; says: string }[] = [];
  const find = (key: Key): Entry | undefined => entries.find((entry) => entry.key === key);
  const length = (key: Key): number | undefined => sized(find(key), 'length', notes);
  const area =
    sized(find('area'), 'area', notes) ??
    sectionFrom(length('thickness'), length('width'), length('diameter'));
  const preloadStress = sized(find('preloadStress'), 'stress', notes);
  const preloadStrain = sized(find('preloadStrain'), 'strain', notes);
  const words = preface.map(({ text }) => text).join('\n');
  const [gauge, seamWidth] = [length('gauge'), length('seamWidth')];
  const coupon = couponIn(find('coupon')?.value ?? '');
  const broke = brokeIn(find('broke')?.value ?? '');
  const temperature = celsiusIn(find('temperature')?.value ?? '');
  const [plate, heat] = [find('plate')?.value.trim(), find('heat')?.value.trim()];
  const rate = numberOf(find('rate')?.value ?? '');
  return {
    ...(gauge !== undefined && { gauge }),
    ...(area !== undefined && { area }),
    ...(seamWidth !== undefined && { seamWidth }),
    ...(preloadStress !== undefined && { preloadStress }),
    ...(preloadStrain !== undefined && { preloadStrain }),
    ...(coupon && { coupon }),
    ...(plate && { plate }),
    ...(heat && { heat }),
    ...(temperature !== undefined && { temperature }),
    ...(broke && { broke }),
    ...(rate !== undefined && { rate: rate.value }),
    ...(/invented|made.?up/i.test(words) && { invented: true }),
    notes,
  };
};

/** A line may hold several entries between commas or braces: {'temperature': 21, 'strain_rate': 0.01}. */
const entriesOf = ({ line, fields, text }: Row): Entry[] => {
  const parts = /[:=]/.test(text) ? text.split(/[{},;|\t](?!\d)/) : [fields.filter(Boolean).join(': ')];
  return parts.flatMap((part) => {
    const match = /^[#%/*\s'"{]*([^:=]+?)['"\s]*[:=]\s*(.+?)[}\s]*$/.exec(part);
    if (!match) return [];
    const label = match[1].toLowerCase().replaceAll('_', ' ');
    const bare = label.replace(/[[(].*$/, '').trim();
    const key = KEYS.find(([, words]) => words.test(bare))?.[0];
    return key ? [{ key, value: match[2].replace(/['"]/g, ''), line, label }] : [];
  });
};

const numberOf = (text: string): { value: number; rest: string } | undefined => {
  const match = /^[:\s]*([+-]?[\d.,]+(?:e[+-]?\d+)?)[:;\s]*(.*)$/i.exec(text);
  if (!match) return undefined;
  const value = numberIn(match[1], witnessOf(match[1]) === ',' ? ',' : '.');
  return value === undefined ? undefined : { value, rest: match[2].trim() };
};

type Measure = 'length' | 'area' | 'stress' | 'strain';

/** Value in mm, mm², MPa or as a fraction. Without a unit the inside one is taken, and said. */
const sized = (
  entry: Entry | undefined,
  of: Measure,
  notes: { line: number; says: string }[],
): number | undefined => {
  const number = entry && numberOf(entry.value);
  if (!entry || !number || !(number.value > 0)) return undefined;
  const word = number.rest !== '' ? number.rest : (/[[(]([^\])]+)[\])]/.exec(entry.label)?.[1] ?? '');
  const factor = factorOf(word, of);
  if (factor !== undefined) return number.value * factor;
  const taken = { length: 'mm', area: 'mm²', stress: 'MPa', strain: 'a fraction' }[of];
  notes.push({
    line: entry.line,
    says: `${entry.label} ${number.value}: no unit that is known; taken as ${taken}`,
  });
  return number.value;
};

/** 21 °C, 70 F, 294 K; a figure without a unit may be any of them and is left. */
const celsiusIn = (text: string): number | undefined => {
  const number = numberOf(text);
  switch (number?.rest.replace(/[°º\s]|deg\.?/gi, '').toUpperCase()) {
    case 'C':
      return number?.value;
    case 'K':
      return number && number.value - 273.15;
    case 'F':
      return number && (number.value - 32) / 1.8;
    default:
      return undefined;
  }
};

const factorOf = (word: string, of: Measure): number | undefined => {
  if (of !== 'area') return unitNamed(word, of)?.factor;
  const length = /^(?:sq\.?\s*)?([a-zA-Zµ".]+?)(?:\s*(?:\^|\*\*)?[2²])?$/.exec(word.trim());
  const unit = length && unitNamed(length[1], 'length');
  return unit ? unit.factor ** 2 : undefined;
};

const sectionFrom = (thickness?: number, width?: number, diameter?: number): number | undefined => {
  if (thickness !== undefined && width !== undefined) return thickness * width;
  return diameter === undefined ? undefined : (Math.PI * diameter ** 2) / 4;
};

const couponIn = (text: string): Specimen['coupon'] =>
  /seam|weld|naht/i.test(text)
    ? 'across the seam'
    : /plate|sheet|parent|base/i.test(text)
      ? 'plate'
      : undefined;

const brokeIn = (text: string): Specimen['broke'] => {
  if (/heat|haz|wez/i.test(text)) return 'heat-affected zone';
  return /seam|weld|naht/i.test(text) ? 'seam' : /plate|sheet|parent|base/i.test(text) ? 'plate' : undefined;
};
