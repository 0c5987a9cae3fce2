/** What may be behind an odd reading, likeliest first, and the reading that would tell the first two apart. */

export const EXPLANATIONS = [
  'first gauge high',
  'first gauge low',
  'second gauge high',
  'second gauge low',
  'wire slipped',
  'wire gain',
  'soft course',
  'weak girth seam',
  'stronger steel',
  'softer steel',
  'thicker wall',
  'thinner wall',
  'gauge high',
  'gauge low',
  'leak',
  'air',
] as const;
export type Explanation = (typeof EXPLANATIONS)[number];

/** A reading that would tell two explanations apart. */
export const TELLS = [
  'ultrasonic wall',
  'elastic slope of girth',
  'second gauge',
  'tape over the girth',
  'litres drawn',
  'valve shut',
] as const;
export type Teller = (typeof TELLS)[number];

export interface Ranked {
  readonly explanation: Explanation;
  /** Chances add up to one over the list. */
  readonly chance: number;
}

export interface Explained {
  readonly ranked: readonly Ranked[];
  readonly tell?: Teller;
}

/** From logarithms of chance times likelihood. */
export function rankedBy(weights: readonly (readonly [Explanation, number])[]): Explained {
  const most = Math.max(...weights.map(([, weight]) => weight));
  const all = weights.reduce((sum, [, weight]) => sum + Math.exp(weight - most), 0);
  const ranked = weights
    .map(([explanation, weight]): Ranked => ({ explanation, chance: Math.exp(weight - most) / all }))
    .sort((a, b) => b.chance - a.chance);
  const tell = tellerOf(ranked[0]?.explanation, ranked[1]?.explanation);
  return { ranked, ...(tell === undefined ? {} : { tell }) };
}

const KIND: Readonly<Record<Explanation, 'gauge' | 'wire' | 'place' | 'steel' | 'wall' | 'water'>> = {
  'first gauge high': 'gauge',
  'first gauge low': 'gauge',
  'second gauge high': 'gauge',
  'second gauge low': 'gauge',
  'wire slipped': 'wire',
  'wire gain': 'wire',
  'soft course': 'place',
  'weak girth seam': 'place',
  'stronger steel': 'steel',
  'softer steel': 'steel',
  'thicker wall': 'wall',
  'thinner wall': 'wall',
  'gauge high': 'gauge',
  'gauge low': 'gauge',
  leak: 'water',
  air: 'water',
};

/** Stiffer steel and a thicker wall look alike where it yields: the wall by ultrasound, or the elastic slope, part them. */
function tellerOf(a: Explanation | undefined, b: Explanation | undefined): Teller | undefined {
  if (a === undefined || b === undefined) return undefined;
  const kinds = [KIND[a], KIND[b]];
  const has = (kind: (typeof kinds)[number]): boolean => kinds.includes(kind);
  if (has('steel') && has('wall')) return 'ultrasonic wall';
  if (has('gauge') && (has('wall') || has('steel'))) return 'second gauge';
  if (kinds.every((kind) => kind === 'gauge')) return 'elastic slope of girth';
  if (has('wire')) return 'tape over the girth';
  if (has('water')) return 'valve shut';
  return kinds.every((kind) => kind === 'place') ? 'tape over the girth' : 'litres drawn';
}

/** Density of a standard normal, but for a constant. */
const normal = (z: number): number => -0.5 * z * z;

/** Which of two gauges is off by `ratio` (first over second), by the elastic slopes over the model and their spread. */
export function gaugesExplained(
  ratio: number,
  slopes: readonly [number, number] | undefined,
  spread: number,
): Explained {
  const [a, b] = slopes ?? [1, 1];
  const first = normal((b - 1) / spread);
  const second = normal((a - 1) / spread);
  return ratio > 1
    ? rankedBy([
        ['first gauge high', first],
        ['second gauge low', second],
      ])
    : rankedBy([
        ['first gauge low', first],
        ['second gauge high', second],
      ]);
}

export interface PartedHistory {
  /** By how much the girth stands out, and its growth, moment by moment. */
  readonly points: readonly { readonly by: number; readonly growth: number }[];
  readonly blur: number;
  /** A girth seam lies within sqrt(r t) of this girth. */
  readonly nearSeam: boolean;
  /** It jumped from one reading to the next. */
  readonly jumped: boolean;
}

/** Weak seams over soft courses where a seam is near; our estimate. */
const SEAM_ODDS = Math.log(6);
const GAIN = 0.005;

export function partedExplained({ points, blur, nearSeam, jumped }: PartedHistory): Explained {
  const last = points[points.length - 1];
  const gain = normal(last.by / Math.max(1e-6, last.growth) / GAIN);
  const steady = points.reduce((sum, { by }) => sum + normal((by - last.by) / (3 * blur)), 0) / points.length;
  return rankedBy([
    ['soft course', 0],
    ['weak girth seam', nearSeam ? SEAM_ODDS : -4],
    ['wire slipped', jumped ? 6 : Math.max(-8, steady - 5)],
    ['wire gain', Math.max(-9, gain - 1)],
  ]);
}

export interface LevelGivens {
  /** Standard deviations by which the tank carries more (or less, negative) than the middle of its range. */
  readonly strength: number;
  readonly wall: number;
  readonly gauge: number;
}

/** Shares of the departure that steel, wall and gauge each take, as the readings have them. */
export function levelExplained({ strength, wall, gauge }: LevelGivens): Explained {
  const more = strength + wall + gauge > 0;
  return rankedBy([
    [more ? 'stronger steel' : 'softer steel', Math.abs(strength)],
    [more ? 'thicker wall' : 'thinner wall', Math.abs(wall)],
    [more ? 'gauge high' : 'gauge low', Math.abs(gauge)],
  ]);
}
