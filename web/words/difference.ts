/** What changed between two versions, as sentences. */
import type { Manner } from '@hoopwright/report/figure';
import type { Difference } from '@hoopwright/wire/project';
import { quantityOf } from '../state/file/quantityOf.ts';
import { statedText, unitOf } from '../state/file/stated.ts';
import { nameOf } from './names.ts';
import { words } from './say.ts';

export function differenceSentence(manner: Manner, { path, before, after }: Difference): string {
  const name = nameOf(path);
  const text = (value: unknown): string => valueText(manner, path, value);
  if (before === undefined) return words('diffNew', { name, after: text(after) });
  if (after === undefined) return words('diffGone', { name, before: text(before) });
  return words('diffChanged', { name, before: text(before), after: text(after) });
}

function valueText(manner: Manner, path: string, value: unknown): string {
  if (typeof value === 'number') {
    const kind = { path, quantity: quantityOf(path) };
    const { unit } = unitOf(manner, kind);
    const figure = statedText(manner, kind, value);
    return unit === '' ? figure : `${figure} ${unit}`;
  }
  if (typeof value === 'string') return words('quoted', { text: value });
  return JSON.stringify(value);
}
