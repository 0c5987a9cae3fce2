import { enBeta, enThicknesses } from '../../core/tank/wrinkle.ts';
import { type Check, PRINTED, plusMinus, type Source } from '../check.ts';

const BETA = [
  [0.001, 1.1401],
  [0.002, 1.101],
  [0.005, 0.9499],
  [0.01, 0.8044],
  [0.02, 0.6965],
  [0.04, 0.5561],
];

const design = { pressure: 1, allowable: 160, buckling: 200 / 1.5, jointCoefficient: 1 };
const HEADS = [
  {
    name: 'R 500, r 50',
    crownRadius: 500,
    knuckleRadius: 50,
    crown: 1.565,
    knuckle: 2.759,
    wrinkling: 2.796,
  },
  {
    name: 'R 400, r 77',
    crownRadius: 400,
    knuckleRadius: 77,
    crown: 1.252,
    knuckle: 1.819,
    wrinkling: 1.857,
  },
];

const AGAINST = {
  crown: 'by the crown (e_s)',
  knuckle: 'against yielding of the knuckle (e_y)',
  wrinkling: 'against wrinkling of the knuckle (e_b)',
};

export const en13445: Source = {
  key: 'en-13445-3',
  citation: 'EN 13445-3, 7.5.3: torispherical ends (formulas from memory of the standard)',
  checks: [
    ...BETA.map(
      ([Y, theirs]): Check => ({
        id: `en-13445-3/beta-${Y}`,
        what: `factor beta at X 0.1, Y ${Y}`,
        ours: () => enBeta(Y, 0.1),
        theirs,
        unit: '1',
        tolerance: plusMinus(5e-5),
        reason: PRINTED,
        standing: 'computed from memory',
      }),
    ),
    ...HEADS.flatMap((head) =>
      (['crown', 'knuckle', 'wrinkling'] as const).map(
        (part): Check => ({
          id: `en-13445-3/${part}-${head.crownRadius}`,
          what: `wall needed ${AGAINST[part]}, Di 500, ${head.name}, f 160, Rp0.2 200 MPa, 10 bar`,
          ours: () => enThicknesses({ insideDiameter: 500, ...head }, design)[part],
          theirs: head[part],
          unit: 'mm',
          tolerance: plusMinus(5e-4),
          reason: PRINTED,
          standing: 'computed from memory',
        }),
      ),
    ),
  ],
};

const worked = { insideDiameter: 600, crownRadius: 507, knuckleRadius: 112 };
const workedDesign = { pressure: 0.66, allowable: 176.3, buckling: 355 / 1.5, jointCoefficient: 0.7 };
/** Its Z is printed as 2.559. */
const workedY = 10 ** -2.559;

const step = (name: string, what: string, ours: () => number, theirs: number, tolerance: number): Check => ({
  id: `en-13445-sheet/${name}`,
  what,
  ours,
  theirs,
  unit: name.startsWith('e') ? 'mm' : '1',
  tolerance: plusMinus(tolerance),
  reason: PRINTED,
  standing: 'published',
});

export const en13445Sheet: Source = {
  key: 'en-13445-sheet',
  citation:
    'A worked calculation sheet to EN 13445-3 7.5.3, Di 600, R 507, r 112 mm, 6.6 bar (document 399403984)',
  checks: [
    step('beta-06', 'beta at X 0.06', () => enBeta(workedY, 0.06), 1.567, 6e-4),
    step('beta-10', 'beta at X 0.1', () => enBeta(workedY, 0.1), 1.058, 6e-4),
    step('beta-20', 'beta at X 0.2', () => enBeta(workedY, 0.2), 0.526, 6e-4),
    step('beta', 'beta of the head, X 0.187', () => enBeta(workedY, 112 / 600), 0.597, 6e-4),
    step('e-crown', 'wall needed at the crown', () => enThicknesses(worked, workedDesign).crown, 1.4, 0.05),
    step(
      'e-knuckle',
      'wall needed at the knuckle',
      () => enThicknesses(worked, workedDesign).knuckle,
      1.1,
      0.05,
    ),
  ],
};
