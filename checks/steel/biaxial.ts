import {
  AVERAGE_SHEAR_CLOSED_CYLINDER,
  biaxialFactorOf,
  hosfordClosedCylinder,
} from '../../core/steel/biaxial.ts';
import { flowOf } from '../../core/steel/flow.ts';
import { metalOf } from '../../core/steel/plane.ts';
import { atHoopStrain, longCylinder, underPressure } from '../../core/stretch/thin/vessel.ts';
import { type Check, plusMinus, type Source } from '../check.ts';
import { MEAN_304L } from '../figures/karlson.ts';

const mean = { law: 'points', plastic: MEAN_304L.plastic, stress: MEAN_304L.stress } as const;
const vessel = (factor: number) => longCylinder(metalOf(200e3, 0.3, flowOf(mean, factor)), 301, 2);

/** Growth (%, logarithmic) under the pressure at which von Mises forecasts 4 %. */
const growthInstead = (factor: number): number => {
  const { pressure } = atHoopStrain(vessel(1), 0.04);
  const carried = underPressure(vessel(factor), pressure);
  if (carried.kind !== 'held') throw new Error('burst');
  return carried.state.hoop * 100;
};

const pair = (name: string, closed: number, strength: number, growth: number): Check[] => [
  {
    id: `hosford-1972/strength-${name.replaceAll(' ', '-')}`,
    what: `plane-strain strength against von Mises, ${name}`,
    ours: () => (biaxialFactorOf(closed) - 1) * 100,
    theirs: strength,
    unit: '%',
    tolerance: plusMinus(0.05),
    reason: 'half a unit of the last printed digit',
    standing: 'computed from published',
  },
  {
    id: `hosford-1972/growth-${name.replaceAll(' ', '-')}`,
    what: `growth where von Mises forecasts 4.0 %, ${name} (mean curve of annealed 304L)`,
    ours: () => growthInstead(biaxialFactorOf(closed)),
    theirs: growth,
    unit: '%',
    tolerance: plusMinus(0.1),
    reason: 'printed digit (0.05); which curve and which strain the figure stands on is not said (0.05)',
    standing: 'computed from published',
  },
];

export const biaxial: Source = {
  key: 'hosford-1972',
  citation:
    'Hosford, J. Appl. Mech. 39 (1972) 607: yield criterion of exponent a; average shear stress: Zhu & Leis 2006',
  checks: [
    ...pair('Hosford exponent 6', hosfordClosedCylinder(6), -3.3, 4.9),
    ...pair('Hosford exponent 8', hosfordClosedCylinder(8), -5.7, 5.5),
    ...pair('average shear stress', AVERAGE_SHEAR_CLOSED_CYLINDER, -6.7, 5.7),
  ],
};
