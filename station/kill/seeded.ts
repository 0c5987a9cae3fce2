/** Dice for choosing moments: the same seed chooses the same ones. Not for statistics. */
export interface Seeded {
  /** A whole number from 0 to `below` - 1. */
  upTo(below: number): number;
}

/** Multiplier and increment of Numerical Recipes' quick generator (from memory); the high bits are used. */
export const seeded = (seed: number): Seeded => {
  let state = seed >>> 0;
  return {
    upTo: (below) => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return Math.floor((state / 2 ** 32) * below);
    },
  };
};
