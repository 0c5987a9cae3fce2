/** Figures as people and machines write them: which sign is the decimal sign is settled by evidence, or asked. */

export type DecimalSign = '.' | ',';

const PLAIN = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)(e[+-]?\d+)?$/i;
/** Groups of three after a first group, all with one sign; then perhaps the other sign and decimals. */
const GROUPED = /^[+-]?\d{1,3}(?:([.,'’ \u00A0\u2009\u202F])\d{3}(?:\1\d{3})*)(?:[.,]\d+)?$/;

export const looksNumeric = (field: string): boolean => PLAIN.test(field) || GROUPED.test(field);

/** What a field says of the decimal sign. `either`: 1,234 may be one thousand or one and a bit. */
type Witness = 'none' | DecimalSign | 'either .' | 'either ,';

export const witnessOf = (field: string): Witness => {
  const text = field.replace(/^[+-]/, '');
  const last = Math.max(text.lastIndexOf('.'), text.lastIndexOf(','));
  if (last < 0) return 'none';
  const sign: DecimalSign = text[last] === '.' ? '.' : ',';
  const other = sign === '.' ? ',' : '.';
  if (text.includes(other)) return sign;
  if (text.indexOf(sign) !== last) return other;
  return /^[1-9]\d{0,2}[.,]\d{3}$/.test(text) ? `either ${sign}` : sign;
};

/** The number a field stands for, or undefined where it is none with this decimal sign. */
export const numberIn = (field: string, decimal: DecimalSign): number | undefined => {
  const group = decimal === '.' ? ',' : '.';
  const bare = field.replace(/['’ \u00A0\u2009\u202F]/g, '');
  if (!looksNumeric(field) || misplaced(bare, decimal, group)) return undefined;
  const value = Number(bare.replaceAll(group, '').replace(decimal, '.'));
  return Number.isFinite(value) ? value : undefined;
};

/** 12,5 in a file of decimal points is no group of three; neither are two decimal signs. */
const misplaced = (text: string, decimal: DecimalSign, group: string): boolean => {
  if (text.indexOf(decimal) !== text.lastIndexOf(decimal)) return true;
  const whole = text.split(decimal)[0].replace(/^[+-]/, '');
  if ((text.split(decimal)[1] ?? '').includes(group)) return true;
  if (!whole.includes(group)) return false;
  const groups = whole.split(group);
  return (
    groups[0].length > 3 ||
    groups[0] === '' ||
    groups[0] === '0' ||
    groups.slice(1).some((part) => part.length !== 3)
  );
};

export type DecimalAnswer =
  | { readonly kind: 'sign'; readonly decimal: DecimalSign; readonly grouped: boolean }
  /** Nothing tells 1,234 from 1.234: somebody has to say. */
  | { readonly kind: 'ask'; readonly place: number; readonly field: string }
  /** Both signs are used as decimal signs, and neither is a slip. */
  | { readonly kind: 'mixed'; readonly place: number; readonly field: string };

/** Fewer witnesses than this part of the others are slips; their rows are left out. */
const SLIPS = 0.05;

/**
 * Decimal sign of one column. `elsewhere` is what the other columns of the file say, where they say anything.
 * `wish` is what
 * the person says; it rules where the column itself is not clear. Places count from 0 within the column.
 */
export const decimalOf = (
  fields: readonly string[],
  { elsewhere, wish }: { readonly elsewhere?: DecimalSign; readonly wish?: DecimalSign } = {},
): DecimalAnswer => {
  const witnesses = fields.map(witnessOf);
  const count = (witness: Witness): number => witnesses.filter((one) => one === witness).length;
  const [points, commas] = [count('.'), count(',')];
  const [fewer, decimal]: [number, DecimalSign] = points >= commas ? [commas, '.'] : [points, ','];
  const first = (witness: Witness) => {
    const place = witnesses.indexOf(witness);
    return { place, field: fields[place] };
  };
  if (fewer > SLIPS * Math.max(points, commas))
    return { kind: 'mixed', ...first(decimal === '.' ? ',' : '.') };
  if (points + commas > 0) return grouping(fields, decimal, first);
  if (wish) return { kind: 'sign', decimal: wish, grouped: false };
  const [eitherPoint, eitherComma] = [count('either .'), count('either ,')];
  if (eitherPoint > 0 && eitherComma > 0)
    return elsewhere ? grouping(fields, elsewhere, first) : { kind: 'ask', ...first('either ,') };
  if (eitherPoint + eitherComma > 0)
    return ambiguous(fields, eitherPoint > 0 ? '.' : ',', { elsewhere, first });
  return { kind: 'sign', decimal: elsewhere ?? '.', grouped: false };
};

type First = (witness: Witness) => { place: number; field: string };

/** The sign is known; 1,234 beside it must then be a thousand, and the column must not jump by taking it so. */
const grouping = (fields: readonly string[], decimal: DecimalSign, first: First): DecimalAnswer => {
  const other: Witness = decimal === '.' ? 'either ,' : 'either .';
  const found = first(other);
  if (found.place < 0) return { kind: 'sign', decimal, grouped: false };
  return jumps(fields, decimal) ? { kind: 'mixed', ...found } : { kind: 'sign', decimal, grouped: true };
};

/** Only fields like 1,234, or whole numbers beside them. */
const ambiguous = (
  fields: readonly string[],
  sign: DecimalSign,
  { elsewhere, first }: { elsewhere: DecimalSign | undefined; first: First },
): DecimalAnswer => {
  const group = sign === ',' ? '.' : ',';
  const asDecimal = !jumps(fields, sign);
  const asGroup = !jumps(fields, group) && fields.some((field) => witnessOf(field) === 'none');
  if (asDecimal && (elsewhere === sign || (sign === '.' && !asGroup && elsewhere !== ',')))
    return { kind: 'sign', decimal: sign, grouped: false };
  if (asGroup && !asDecimal) return { kind: 'sign', decimal: group, grouped: true };
  return { kind: 'ask', ...first(`either ${sign}`) };
};

/** Neighbours written differently, one with the sign and one without, that differ about a thousandfold. */
const jumps = (fields: readonly string[], decimal: DecimalSign): boolean => {
  const read = fields.map((field) => ({
    size: Math.abs(numberIn(field, decimal) ?? 0),
    either: witnessOf(field).startsWith('either'),
  }));
  return read.slice(1).some((one, k) => {
    const [low, high] = one.size < read[k].size ? [one.size, read[k].size] : [read[k].size, one.size];
    return one.either !== read[k].either && low > 0 && high > 300 * low;
  });
};
