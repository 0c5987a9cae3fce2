import { firstYieldRefusal, flowOf } from '../../core/steel/flow.ts';
import { type Check, plusMinus, type Source } from '../check.ts';

const out = new Float64Array(2);
const atProof = (K: number, n: number): number => {
  flowOf({ law: 'hollomon', K, n }).at(0.002, out);
  return out[0];
};

const common = {
  unit: 'MPa',
  tolerance: plusMinus(0.5),
  reason: 'printed to one MPa',
} as const;

const refused = (K: number, n: number): string =>
  firstYieldRefusal({ law: 'hollomon', K, n }) === undefined ? 'taken' : 'refused';

/** The negative check: Rp0.2 of annealed 304 is 215-235 MPa in the tests of Karlson et al. */
export const callister: Source = {
  key: 'callister-2005',
  citation:
    'Callister, Materials Science and Engineering, 2005: power law of annealed 304, K 1400 MPa, n 0.44',
  checks: [
    {
      ...common,
      id: 'callister-2005/proof',
      what: 'stress of the pure power law at 0.2 % plastic strain (measured: 215-235 MPa)',
      ours: () => atProof(1400, 0.44),
      theirs: 91,
      standing: 'computed from published',
    },
    {
      ...common,
      id: 'callister-2005/refusal',
      what: 'a pure power law asked for first yield is',
      ours: () => refused(1400, 0.44),
      theirs: 'refused',
      unit: '',
      reason: 'a word',
      standing: 'computed from published',
    },
  ],
};

export const kalpakjian: Source = {
  key: 'kalpakjian',
  citation:
    'Kalpakjian & Schmid, Manufacturing Engineering and Technology: power law of annealed 304, K 1275 MPa, n 0.45',
  checks: [
    {
      ...common,
      id: 'kalpakjian/proof',
      what: 'stress of the pure power law at 0.2 % plastic strain',
      ours: () => atProof(1275, 0.45),
      theirs: 78,
      standing: 'computed from memory',
    } satisfies Check,
  ],
};
