/**
 * Seeded dice: the same seed gives the same throws on every machine. Core has no other source of chance.
 * Generator: xoshiro128** (Blackman & Vigna, ACM Trans. Math. Softw. 47 (2021) 36), seeded by splitmix32.
 */

export interface Dice {
  /** Uniform on the open interval (0, 1), 53 bits. */
  uniform(): number;
  /** Standard normal, by Marsaglia's polar method. */
  normal(): number;
  /** Whole number from 0 to n - 1. */
  below(n: number): number;
  /**
   * Dice of their own for a named purpose. They depend on the seed and the name only, not on what was thrown before,
   * so that a new throw in one place does not change every other.
   */
  named(name: string): Dice;
}

export const diceOf = (seed: number): Dice => {
  if (!Number.isSafeInteger(seed)) throw new Error(`a seed is a whole number, got ${seed}`);
  return seeded(mixed(seed >>> 0, Math.floor(seed / 2 ** 32) >>> 0));
};

const seeded = (key: number): Dice => {
  const [a, b, c, d] = [1, 2, 3, 4].map((step) => splitmix(key + Math.imul(step, 0x9e3779b9)));
  const next = xoshiro(a, b, c, d);
  const uniform = (): number => ((next() >>> 5) * 2 ** 26 + (next() >>> 6) + 0.5) / 2 ** 53;
  let spare: number | undefined;
  const normal = (): number => {
    if (spare !== undefined) {
      const kept = spare;
      spare = undefined;
      return kept;
    }
    for (;;) {
      const x = 2 * uniform() - 1;
      const y = 2 * uniform() - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const stretch = Math.sqrt((-2 * Math.log(square)) / square);
      spare = y * stretch;
      return x * stretch;
    }
  };
  return {
    uniform,
    normal,
    below: (n) => Math.floor(uniform() * n),
    named: (name) => seeded(mixed(key, hashed(name))),
  };
};

/** The bare generator from its four words of state, not all zero: whole numbers below 2^32. */
export const xoshiro = (s0: number, s1: number, s2: number, s3: number): (() => number) => {
  let [a, b, c, d] = [s0, s1, s2, s3];
  return () => {
    const result = Math.imul(rotated(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = rotated(d, 11);
    return result;
  };
};

const rotated = (x: number, by: number): number => (x << by) | (x >>> (32 - by));

/** Finaliser of splitmix32: every bit of the key moves every bit of the result. */
const splitmix = (key: number): number => {
  let z = key | 0;
  z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
  z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
  return (z ^ (z >>> 15)) >>> 0;
};

const mixed = (a: number, b: number): number => splitmix(splitmix(a + 0x9e3779b9) ^ Math.imul(b, 0x85ebca6b));

/** FNV-1a of the name's UTF-16 units. */
const hashed = (name: string): number => {
  let hash = 0x811c9dc5;
  for (let k = 0; k < name.length; k++) hash = Math.imul(hash ^ name.charCodeAt(k), 0x01000193);
  return hash >>> 0;
};
