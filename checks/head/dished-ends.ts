import { type Dish, DIN_PROPORTIONS, ellipsoid, torisphere } from '../../core/tank/dish.ts';
import { nominalTorisphere } from '../../core/tank/wrinkle.ts';
import { type Check, PRINTED, percent, plusMinus, type Source } from '../check.ts';

const din = (standard: keyof typeof DIN_PROPORTIONS): Dish => {
  const { crown, knuckle } = DIN_PROPORTIONS[standard];
  return torisphere(1, crown, knuckle);
};

const exact = (name: string, what: string, ours: () => number, theirs: number): Check => ({
  id: `dished-ends/${name}`,
  what,
  ours,
  theirs,
  unit: '1',
  tolerance: plusMinus(5e-6),
  reason: PRINTED,
  standing: 'computed from published',
});

const handbook = (name: string, what: string, ours: () => number, theirs: number): Check => ({
  id: `din-28011/${name}`,
  what,
  ours,
  theirs,
  unit: '1',
  tolerance: percent(1.1),
  reason:
    'the handbook value is rounded and given for (Da - 2s)³; the exact volume differs by 1.03 and 0.75 %',
  standing: 'from memory',
});

export const dishedEnds: Source = {
  key: 'dished-ends',
  citation: 'Geometry of dished ends, by integration of the contour, for inside diameter 1',
  checks: [
    exact('depth-28011', 'depth of R 1, r 0.1', () => din('DIN 28011').depth, 0.19377),
    exact('depth-28013', 'depth of R 0.8, r 0.154', () => din('DIN 28013').depth, 0.25447),
    exact('volume-28011', 'volume of R 1, r 0.1', () => din('DIN 28011').volume, 0.09897),
    exact('volume-28013', 'volume of R 0.8, r 0.154', () => din('DIN 28013').volume, 0.13077),
    exact('volume-ellipsoid', 'volume of the 2:1 ellipsoid', () => ellipsoid(1, 0.25).volume, 0.1309),
    exact('volume-hemisphere', 'volume of the hemisphere', () => ellipsoid(1, 0.5).volume, 0.2618),
  ],
};

export const dinVolumes: Source = {
  key: 'din-28011',
  citation: 'DIN 28011 and DIN 28013, dished ends: V about 0.1 and 0.1298 (Da - 2s)³',
  checks: [
    handbook('volume-28011', 'volume factor of DIN 28011', () => din('DIN 28011').volume, 0.1),
    handbook('volume-28013', 'volume factor of DIN 28013', () => din('DIN 28013').volume, 0.1298),
  ],
};

export const ug32: Source = {
  key: 'asme-viii-1',
  citation:
    'ASME BPVC Section VIII Division 1, UG-32 head proportions, on a manufacturer’s sheet (document 312209428)',
  checks: [
    {
      id: 'asme-viii-1/depth-torispherical',
      what: 'depth over diameter of a torispherical head, R = D, r = D/10',
      ours: () => torisphere(1, 1, 0.1).depth,
      theirs: 0.194,
      unit: '1',
      tolerance: plusMinus(5e-4),
      reason: PRINTED,
      standing: 'published',
    },
    ...[
      {
        name: 'crown',
        what: 'crown radius',
        ours: () => nominalTorisphere(1, 0.25, 0.003).crownRadius,
        theirs: 0.9,
      },
      {
        name: 'knuckle',
        what: 'knuckle radius',
        ours: () => nominalTorisphere(1, 0.25, 0.003).knuckleRadius,
        theirs: 0.17,
      },
    ].map(
      ({ name, what, ours, theirs }): Check => ({
        id: `asme-viii-1/ellipsoid-${name}`,
        what: `${what} over diameter of the torisphere that stands for a 2:1 ellipsoid`,
        ours,
        theirs,
        unit: '1',
        tolerance: plusMinus(0.005),
        reason: PRINTED,
        standing: 'published',
      }),
    ),
  ],
};
