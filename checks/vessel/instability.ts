import {
  type Criterion,
  cylinderInstability,
  sphereInstability,
  svenssonPressure,
  tubeYieldPressure,
  volumeGrowthAtConstantLength,
} from '../../core/stretch/thin/instability.ts';
import { type Check, PRINTED, plusMinus, type Source } from '../check.ts';

const TABLE: readonly (readonly [n: number, mises: number, tresca: number, shear: number, sphere: number])[] =
  [
    [0.1, 1.093, 0.933, 1.0127, 1.9205],
    [0.2, 1.0346, 0.8706, 0.952, 1.8442],
    [0.3, 0.9793, 0.8123, 0.8949, 1.7709],
    [0.45, 0.9018, 0.732, 0.8156, 1.6664],
  ];

const row = (n: number, name: Criterion | 'sphere', theirs: number): Check => ({
  id: `zhu-leis-2006/${name.replace(' ', '-')}-${n}`,
  what: `p r0/(t0 Rm) at the maximum, n ${n}, ${name === 'sphere' ? 'sphere, von Mises' : `closed cylinder, ${name}`}`,
  ours: () => (name === 'sphere' ? sphereInstability(n) : cylinderInstability(n, name)).strength,
  theirs,
  unit: '1',
  tolerance: plusMinus(5e-5),
  reason: PRINTED,
  standing: 'computed from published',
});

export const powerLawInstability: Source = {
  key: 'zhu-leis-2006',
  citation:
    'Zhu & Leis, Int. J. Pressure Vessels Piping 83 (2006) 663: plastic instability of pipes by criterion',
  checks: TABLE.flatMap(([n, mises, tresca, shear, ball]) => [
    row(n, 'von Mises', mises),
    row(n, 'Tresca', tresca),
    row(n, 'average shear', shear),
    row(n, 'sphere', ball),
  ]),
};

/** By how many percent Svensson's form stays under the exact thin-wall value. */
const svenssonDeficit = (n: number): number => {
  const radii = { inside: 249.995, outside: 250.005 };
  const exact = (cylinderInstability(n).strength * 0.01) / 250;
  return (1 - svenssonPressure(n, 1, radii) / exact) * 100;
};

export const svensson: Source = {
  key: 'svensson-1958',
  citation: 'Svensson, J. Appl. Mech. 25 (1958) 89: bursting pressure of cylindrical and spherical vessels',
  checks: [
    {
      id: 'svensson-1958/deficit',
      what: 'the engineering form stays 2-9 % under the exact thin-wall value, n 0.10-0.45',
      ours: () => (TABLE.every(([n]) => svenssonDeficit(n) >= 2 && svenssonDeficit(n) <= 9) ? 'yes' : 'no'),
      theirs: 'yes',
      unit: '',
      tolerance: plusMinus(0),
      reason: 'a range; here it is 2.7-8.0 %',
      standing: 'computed from memory',
    },
    {
      id: 'svensson-1958/hand',
      what: 'Rm 580 MPa, n 0.3, inside radius 300, outside 302 mm',
      ours: () => svenssonPressure(0.3, 580, { inside: 300, outside: 302 }),
      theirs: 3.5414,
      unit: 'MPa',
      tolerance: plusMinus(5e-5),
      reason: 'by hand: 580 (0.25/0.527) (2.71828/0.3)^0.3 ln(302/300)',
      standing: 'computed from memory',
    },
  ],
};

const tube = { radius: 30, wall: 1, yieldStress: 25, endForce: -2000 };
const tubeCheck = (criterion: 'von Mises' | 'Tresca', theirs: number): Check => ({
  id: `hosford-caddell/tube-${criterion.replace(' ', '-')}`,
  what: `closed tube 60 mm x 1 mm, Y 25 MPa, end compression 2000 N: yields at, ${criterion}`,
  ours: () => tubeYieldPressure(tube, criterion),
  theirs,
  unit: 'MPa',
  tolerance: plusMinus(5e-5),
  reason: PRINTED,
  standing: 'computed from published',
});

export const hosfordCaddell: Source = {
  key: 'hosford-caddell',
  citation: 'Hosford & Caddell, Metal Forming: Mechanics and Metallurgy, example 2.2',
  checks: [tubeCheck('Tresca', 0.8333), tubeCheck('von Mises', 0.8713)],
};

export const growthLimits: Source = {
  key: 'icmr2015-242',
  citation:
    'Paper ICMR2015_242 on cold-stretched vessels: growth in practice up to 7 % on diameter, 14 % on volume',
  checks: [
    {
      id: 'icmr2015-242/volume',
      what: 'volume growth at 7 % on diameter and constant length',
      ours: () => volumeGrowthAtConstantLength(0.07) * 100,
      theirs: 14.5,
      unit: '%',
      tolerance: plusMinus(0.05),
      reason: PRINTED,
      standing: 'computed from published',
    },
  ],
};
