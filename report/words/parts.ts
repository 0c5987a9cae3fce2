/** Where on the tank: the part and the face of its wall, in words. */
import type { Place } from '@hoopwright/core/stretch';
import type { Manner } from '../figure/manner.ts';
import type { Key } from './english.ts';
import { sentence } from './sentence.ts';

const PLACES: Readonly<Record<string, Readonly<Record<Place['face'], Key>>>> = {
  'bottom head': { inside: 'bottomInside', middle: 'bottomMiddle', outside: 'bottomOutside' },
  'top head': { inside: 'topInside', middle: 'topMiddle', outside: 'topOutside' },
  barrel: { inside: 'barrelInside', middle: 'barrelMiddle', outside: 'barrelOutside' },
  baffle: { inside: 'atBaffle', middle: 'atBaffle', outside: 'atBaffle' },
  skirt: { inside: 'atSkirt', middle: 'atSkirt', outside: 'atSkirt' },
};

/** "top head, inside face". */
export function partWords(manner: Manner, at: Pick<Place, 'part' | 'face'>): string {
  const keys = PLACES[at.part];
  if (keys === undefined) throw new Error(`no words for the part "${at.part}"`);
  // oxlint-disable-next-line typescript/no-unsafe-type-assertion -- the table is typed by key; the sentence has no placeholder
  return sentence(manner, keys[at.face] as 'atBaffle');
}
