/** The real clock, but never twice the same, and real dice: claims about what came first hold on a quick machine too. */
import { randomBytes } from 'node:crypto';
import type { Surroundings } from '../store.ts';

export function rising(): Surroundings {
  let last = 0;
  return {
    clock: () => (last = Math.max(last + 1, Date.now())),
    dice: (bytes) => randomBytes(bytes),
  };
}
