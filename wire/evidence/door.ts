/** The evidence of a tank file. */
export {
  type CouponFiles,
  couponPaths,
  type EvaluatedTest,
  evidenceOf,
  type EvidenceRead,
  type EvidenceWords,
  hasSteelEvidence,
  hintsOf,
} from './evidenceOf.ts';
export { type SteelAnswer, steelAnswer } from './steelAnswer.ts';
