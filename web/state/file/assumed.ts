/** The steel of a tank of which nothing is known yet: stated, said to be assumed, and gone as soon as there is evidence. */
import { type FileDraft, isRecord, valueAt, without, withValue } from './edit.ts';
import { hasEvidence } from '../server/steel.ts';

/**
 * Ludwigson fit to the mean of eight bars of annealed 304L (bars: Karlson 2023; the fit is this project's, as in
 * wire/tank), with the rate effect of the small bars of the same series.
 */
const ASSUMED = {
  flow: { law: 'ludwigson', K_MPa: 1349, n: 0.497, k1: 5.144, k2: -21.3 },
  flowRate_per_s: 0.0001,
  rate: { on: 'yield', perEfold_MPa: 2.6, reference_per_s: 0.00001 },
  note: 'Assumed: annealed 304L as published. Give a certificate or coupons.',
} as const;

/** The file with the assumed steel where it states none, and without it where the evidence speaks. */
export function settledSteel(file: FileDraft): FileDraft {
  if (!isRecord(valueAt(file, 'steel')) || Array.isArray(file['steel'])) return file;
  const stated = valueAt(file, 'steel.flow');
  const evidence = hasEvidence(file);
  if (stated === undefined && !evidence) return Object.entries(ASSUMED).reduce(put, file);
  if (evidence && JSON.stringify(stated) === JSON.stringify(ASSUMED.flow))
    return Object.keys(ASSUMED).reduce((left, key) => without(left, `steel.${key}`), file);
  return file;
}

const put = (file: FileDraft, [key, value]: [string, (typeof ASSUMED)[keyof typeof ASSUMED]]): FileDraft =>
  withValue(file, `steel.${key}`, value);
