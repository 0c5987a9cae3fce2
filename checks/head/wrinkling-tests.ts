import { fromKgPerM3, MM_PER_INCH, MPA_PER_KSI, MPA_PER_PSI } from '../../core/units.ts';
import { knuckleVerdict } from '../../core/tank/knuckle.ts';
import { type Check, plusMinus, type Source } from '../check.ts';

/** SA-516-70: 38 ksi minimum yield strength. */
const steel = {
  young: 200e3,
  poisson: 0.3,
  density: fromKgPerM3(7850),
  biaxialFactor: 1,
  flow: { law: 'swift', K: 900, n: 0.2, e0: 0.002 },
} as const;
const DIAMETER = 60 * MM_PER_INCH;

const verdictAt = (slenderness: number, psi: number): string =>
  knuckleVerdict(
    {
      shape: { kind: 'torispherical', crownRadius: DIAMETER, knuckleRadius: 0.06 * DIAMETER },
      wall: DIAMETER / slenderness,
      straightFlange: 0,
      steel,
    },
    { pressure: psi * MPA_PER_PSI, proof: 38 * MPA_PER_KSI, insideDiameter: DIAMETER },
  ).verdict;

const check = (name: string, what: string, ours: () => string, theirs: string): Check => ({
  id: `wrc-414/${name}`,
  what,
  ours,
  theirs,
  unit: '',
  tolerance: plusMinus(0),
  reason: 'a word',
  standing: 'published',
});

export const wrinklingTests: Source = {
  key: 'wrc-414',
  citation:
    'WRC Bulletin 414 (1996): two SA-516-70 vessels of 1524 mm, crown L/D 1, knuckle r/D 0.06, pressed to failure',
  checks: [
    check(
      'waves',
      'verdict on vessel 1 (D/t 238) at 600 psi, where its knuckle showed waves',
      () => verdictAt(238, 600),
      'watch the knuckle',
    ),
    check(
      'design',
      'verdict on vessel 1 at its design pressure, 85 psi',
      () => verdictAt(238, 85),
      'no sign',
    ),
  ],
};
