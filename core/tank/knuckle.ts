/**
 * Will the knuckle wrinkle? A dished head is squeezed around the knuckle when the crown is blown out; a thin one
 * wrinkles there, and an axisymmetric path cannot show it. So the published pressures answer, each within its range.
 */
import type { Head } from './tank.ts';
import {
  enOutside,
  enWrinklingPressure,
  galletlyDesign,
  galletlyOutside,
  galletlyWrinkling,
  nominalTorisphere,
  shieldDrucker,
  shieldDruckerOutside,
  type Torisphere,
} from './wrinkle.ts';

/** One published pressure, MPa, and why it does not strictly apply here (empty: it does). */
export interface PublishedPressure {
  readonly name: string;
  /** Key into sources.bib. */
  readonly source: string;
  readonly says: 'wrinkling begins' | 'safe against wrinkling up to' | 'knuckle yields through';
  readonly pressure: number;
  readonly outside: readonly string[];
}

export type Verdict = 'no sign' | 'watch the knuckle' | 'outside validity' | 'no knuckle';

export interface KnuckleVerdict {
  readonly verdict: Verdict;
  /** One plain sentence. */
  readonly because: string;
  /** The torisphere the formulas were given: for an ellipsoid, the nominal one of EN 13445-3 7.5.4. */
  readonly torisphere?: Torisphere;
  readonly pressures: readonly PublishedPressure[];
}

export interface KnuckleLoad {
  /** Largest pressure on this head during the stretch, MPa. */
  readonly pressure: number;
  /** Rp0.2 of the head as it stands, MPa: for spun and pressed heads that of the formed metal where it is known. */
  readonly proof: number;
  readonly insideDiameter: number;
}

/** Published verdict on the knuckle of a head. Wrinkling under pressure is never ruled out by "no sign". */
export const knuckleVerdict = (head: Head, load: KnuckleLoad): KnuckleVerdict => {
  const found = torisphereOf(head, load.insideDiameter);
  if (typeof found === 'string')
    return {
      verdict: found === NO_KNUCKLE ? 'no knuckle' : 'outside validity',
      because: found,
      pressures: [],
    };
  const pressures = publishedPressures(found, load.proof, head.steel.young);
  const within = pressures.filter((one) => one.outside.length === 0 && one.says !== 'knuckle yields through');
  return { ...judge(within, load.pressure, pressures), torisphere: found, pressures };
};

const NO_KNUCKLE = 'a hemisphere has no knuckle: nothing is squeezed around it';

/** The torisphere for the formulas, or the sentence that says why there is none. */
const torisphereOf = (head: Head, insideDiameter: number): Torisphere | string => {
  const { shape, wall } = head;
  switch (shape.kind) {
    case 'hemispherical':
      return NO_KNUCKLE;
    case 'torispherical':
      return { insideDiameter, crownRadius: shape.crownRadius, knuckleRadius: shape.knuckleRadius, wall };
    case 'semi-ellipsoidal':
      return ellipsoidOf(insideDiameter, shape.depth, wall);
    case 'conical':
      return 'no published wrinkling pressure for a cone with a knuckle is built in: watch the knuckle';
    case 'flat':
      return 'a flat end has no knuckle formula; its corner is the place to watch';
  }
};

const ellipsoidOf = (insideDiameter: number, depth: number, wall: number): Torisphere | string => {
  const ratio = insideDiameter / (2 * depth);
  if (Math.abs(ratio - 1) < 1e-9) return NO_KNUCKLE;
  if (ratio < 1.7 || ratio > 2.2) {
    return (
      `the published formulas cover ellipsoids of diameter over twice the depth from 1.7 to 2.2; ` +
      `this one has ${ratio.toPrecision(3)}: watch the knuckle`
    );
  }
  return nominalTorisphere(insideDiameter, depth, wall);
};

const publishedPressures = (head: Torisphere, proof: number, young: number): PublishedPressure[] => [
  {
    name: 'EN 13445-3 7.5.3, test',
    source: 'en-13445-3',
    says: 'safe against wrinkling up to',
    // The test condition of the standard: design stress Rp0.2/1.05 instead of Rp0.2/1.5 (from memory).
    pressure: enWrinklingPressure(head, proof / 1.05),
    outside: enOutside(head),
  },
  {
    name: 'Galletly 1986, design',
    source: 'galletly-1986',
    says: 'safe against wrinkling up to',
    pressure: galletlyDesign(head, proof),
    outside: galletlyOutside(head),
  },
  {
    name: 'Galletly & Blachut 1985, perfect head',
    source: 'galletly-blachut-1985',
    says: 'wrinkling begins',
    pressure: galletlyWrinkling(head, proof, young),
    outside: galletlyOutside(head),
  },
  {
    name: 'Shield & Drucker 1961',
    source: 'shield-drucker-1961',
    says: 'knuckle yields through',
    pressure: shieldDrucker(head, proof),
    outside: shieldDruckerOutside(head),
  },
];

/** The lowest published pressure that applies decides; with none that applies, nothing can be said. */
const judge = (
  within: readonly PublishedPressure[],
  pressure: number,
  all: readonly PublishedPressure[],
): { verdict: Verdict; because: string } => {
  if (within.length === 0) {
    const reasons = new Set(
      all.filter((one) => one.says !== 'knuckle yields through').flatMap((one) => one.outside),
    );
    return {
      verdict: 'outside validity',
      because: `no published formula covers this head: ${[...reasons].join('; ')}`,
    };
  }
  const lowest = within.reduce((a, b) => (b.pressure < a.pressure ? b : a));
  const [at, limit] = [pressure, lowest.pressure].map((p) => `${(10 * p).toFixed(1)} bar`);
  return pressure < lowest.pressure
    ? {
        verdict: 'no sign',
        because: `${at} stays under the lowest published pressure, ${limit} (${lowest.name})`,
      }
    : {
        verdict: 'watch the knuckle',
        because: `${at} is over ${limit} (${lowest.name}): the knuckle may wrinkle`,
      };
};
