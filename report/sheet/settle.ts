/** Lettering that may stand in several places: each goes to the first place where it meets nothing set before it. */
import type { Text } from './mark.ts';
import { type Box, boxOf, overlap } from './measure.ts';

/** Lines that stand together, in one of several places, best first. */
export type Places = readonly (readonly Text[])[];

const AIR = 1.5;

const airy = ({ left, right, top, bottom }: Box): Box => ({
  left: left - AIR,
  right: right + AIR,
  top: top - AIR,
  bottom: bottom + AIR,
});

/** Where no place is free within `bounds`, the one that meets least of the others is taken. */
export function settle(groups: readonly Places[], bounds: Box, taken: readonly Text[] = []): Text[] {
  const boxes = taken.map(boxOf);
  return groups.flatMap((places) => {
    const met = (place: readonly Text[]): number =>
      place.reduce((sum, text) => {
        const box = airy(boxOf(text));
        const out =
          box.left < bounds.left ||
          box.right > bounds.right ||
          box.top < bounds.top ||
          box.bottom > bounds.bottom;
        return sum + boxes.filter((other) => overlap(box, other)).length + (out ? 1 : 0);
      }, 0);
    const best = places.reduce((a, b) => (met(a) > 0 && met(b) < met(a) ? b : a));
    boxes.push(...best.map(boxOf));
    return best;
  });
}
