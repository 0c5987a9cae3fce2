/** The evidence of a tank file. */
export { couponPaths, evidenceOf, type EvidenceRead, hasSteelEvidence } from './evidenceOf.ts';
export { type RollingSaid, rollingSaid, type SeamSaid, seamsSaid } from './said.ts';
export { type SteelAnswer, steelAnswer } from './steelAnswer.ts';
export { type CouponFiles, type EvaluatedTest, type EvidenceWords, hintsOf } from './couponTests.ts';
