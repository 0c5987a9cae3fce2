import { root } from '../../core/math/root.ts';
import { flowOf } from '../../core/steel/flow.ts';
import { twoSlopeOf, twoSlopePlastic } from '../../core/steel/flow-two-slope.ts';
import { type Check, PRINTED, plusMinus, type Source } from '../check.ts';

const curve = twoSlopeOf(170, 485);
const out = new Float64Array(2);
const stressAt = (plastic: number): number => {
  flowOf({ law: 'two-slope', Rp02: 170, Rm: 485 }).at(plastic, out);
  return out[0];
};

/** True stress at a total strain, E 195 000 MPa. */
const stressAtTotal = (total: number): number =>
  root((stress) => twoSlopePlastic(curve, stress) + stress / 195e3 - total, 1, 780);

const one = (name: string, what: string, ours: () => number, theirs: number, step: number): Check => ({
  id: `asme-viii-2/${name}`,
  what,
  ours,
  theirs,
  unit: name.startsWith('m') ? '1' : 'MPa',
  tolerance: plusMinus(step),
  reason: PRINTED,
  standing: 'computed from published',
});

export const twoSlope: Source = {
  key: 'asme-viii-2',
  citation: 'ASME BPVC Section VIII Division 2, Annex 3-D (also Division 3, KM-620): stress-strain curve',
  checks: [
    one('m1', 'exponent m1 for Rp0.2 170, Rm 485 MPa', () => curve.m1, 0.2281, 5e-5),
    one('A1', 'constant A1', () => curve.A1, 703.3, 0.05),
    one('m2', 'exponent m2 (stainless constants from memory)', () => curve.m2, 0.4871, 5e-5),
    one('A2', 'constant A2', () => curve.A2, 1120.6, 0.05),
    one('uts', 'true stress at Rm', () => curve.trueUltimate, 789.4, 0.05),
    ...[
      [0.002, 165.2],
      [0.01, 215.4],
      [0.02, 236.7],
      [0.05, 278.2],
      [0.1, 365.2],
      [0.2, 511.7],
    ].map(([ep, stress]) =>
      one(`plastic-${ep}`, `true stress at true plastic strain ${ep}`, () => stressAt(ep), stress, 0.05),
    ),
    ...[
      [0.002, 149.7],
      [0.01, 212.0],
      [0.02, 234.7],
      [0.05, 276.2],
      [0.1, 362.0],
      [0.2, 508.4],
    ].map(([total, stress]) =>
      one(`total-${total}`, `true stress at total strain ${total}`, () => stressAtTotal(total), stress, 0.05),
    ),
  ],
};
