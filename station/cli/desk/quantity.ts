/** Quantities on the command line: a number with its unit, nothing guessed. */
import { fromBar, fromPercent, MPA_PER_PSI } from '@hoopwright/core/units';
import { BAD_INPUT, Ending } from './desk.ts';

const PRESSURE: Readonly<Record<string, number>> = { bar: fromBar(1), MPa: 1, kPa: 1e-3, psi: MPA_PER_PSI };

const NUMBER = /^([+-]?\d+(?:[.,]\d+)?(?:e[+-]?\d+)?)\s*([^\d\s].*)?$/i;

function numberAndUnit(text: string, option: string, wanted: string): { value: number; unit: string } {
  const match = NUMBER.exec(text.trim());
  if (match === null) throw new Ending(BAD_INPUT, `${option}: came "${text}", wanted ${wanted}`);
  return { value: Number(match[1].replace(',', '.')), unit: match[2]?.trim() ?? '' };
}

/** "27bar", "2.7 MPa", "390psi" to MPa. */
export function pressureFrom(text: string, option: string): number {
  const wanted = 'a pressure with its unit, such as 27bar, 2.7MPa or 392psi';
  const { value, unit } = numberAndUnit(text, option, wanted);
  const factor = PRESSURE[unit];
  if (factor === undefined || !(value > 0))
    throw new Ending(BAD_INPUT, `${option}: came "${text}", wanted ${wanted}`);
  return value * factor;
}

/** "4.4,8.8bar": the last unit counts for those without one. */
export function pressuresFrom(text: string, option: string): number[] {
  const parts = text.split(/[;\s]+|,(?=\s*\d)/).filter((part) => part !== '');
  const unit = /[a-z]+$/i.exec(text.trim())?.[0] ?? '';
  return parts.map((part) => pressureFrom(/[a-z]$/i.test(part) ? part : `${part}${unit}`, option));
}

/** "5%" to 0.05. */
export function percentFrom(text: string, option: string): number {
  const wanted = 'a growth in percent, such as 5%';
  const { value, unit } = numberAndUnit(text, option, wanted);
  if (unit !== '%' || !(value > 0))
    throw new Ending(BAD_INPUT, `${option}: came "${text}", wanted ${wanted}`);
  return fromPercent(value);
}
