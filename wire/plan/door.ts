/** The plan of the day, for other packages. */
export { drawsOn } from './foresight/drawn.ts';
export type { Foreseen, Foresight, ForesightOrders } from './foresight/foresee.ts';
export type { Danger, StandOffFigures } from './danger.ts';
export * from './freeze.ts';
export type { Ladder } from './foresight/ladder.ts';
export * from './plan.ts';
export { type PlanAnswer, planFor, type PlanGivens, tankDigest, type TextHash } from './planFor.ts';
export type { Draw, PlanRange } from './foresight/range.ts';
export type { Refusal } from './refusals.ts';
export { type DayFile, type Paper, PAPERS, type ReadingPlace } from './setup/day.ts';
export type { Assumed, Open } from './setup/setUp.ts';
