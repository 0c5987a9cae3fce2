/** What other packages may use of the stretch. */
export * from './danger/collapse.ts';
export * from './danger/energy.ts';
export {
  type Forecast,
  forecast,
  type ForecastOrders,
  GivenUp,
  type Place,
  type Remark,
} from './forecast.ts';
export { type Datum, type Moment, momentAt, type Phase, type Pumped, pumpedFor } from './growth.ts';
export type { Limit } from './limit/limit.ts';
export type { Released } from './release.ts';
export { type RiseSettings, STANDARD_RISE } from './rise.ts';
export * from './danger/standoff.ts';
export { forecastToGrowth, type GrowthAnswer, type GrowthAsked } from './target.ts';
export type { Unstretched } from './limit/unstretched.ts';
export * from './water.ts';
export * from './thin/creep.ts';
export * from './thin/instability.ts';
export * from './thin/vessel.ts';
export * from './day/rest.ts';
export * from './day/stored.ts';
export * from './day/leak.ts';
export { type Leg, quickDay, type QuickEnd } from './quick/day.ts';
export { drawnTank } from './quick/drawn.ts';
export {
  DAY_RUNS,
  fitQuickTank,
  type QuickError,
  quickPath,
  type QuickTank,
  runsFor,
  WANTED_RUNS,
} from './quick/quick.ts';
export { type BandPoint, type StretchRange, stretchRange } from './quick/range.ts';
export { type ShellRun, shellRun } from './quick/run.ts';
export * from './day/firstStep.ts';
export { largestWith, PLASTIC_PER_GROWTH, type QuickPath } from './quick/path.ts';
export {
  type Act,
  advance,
  type Burst,
  burst,
  justFilled,
  type Lived,
  type LivedOptions,
  type LivedTank,
  livedTank,
} from './lived/lived.ts';
export { filledAgain } from './lived/before.ts';
export { type BuiltIn, hiddenTank, variedTank } from './lived/hidden.ts';
export { type Truth, truthBetween, truthOf } from './lived/truth.ts';
export type { Weather } from './lived/weather.ts';
export {
  foresee,
  type Foresight,
  type ForesightOrders,
  pointsFor,
  type SeamForesight,
} from './know/foresee.ts';
export {
  gather,
  type Gathered,
  type GatherRule,
  gatherRow,
  NOTHING_GATHERED,
  type Shown,
  seenWith,
  TAPE_LAID,
} from './know/gather.ts';
export { rising } from './know/likeness.ts';
export { type Knowledge, knowFrom } from './know/know.ts';
export type { GirthSeen, Seen } from './know/seen.ts';
export { straysOf } from './know/strays.ts';
export { type Errors, type Strays, type Unknowns, unknownsOf } from './know/unknowns.ts';
export { type Answers, answersOf } from './know/hold/answers.ts';
export {
  balanceOf,
  type BalanceFound,
  type BalanceReading,
  type Doubt,
  type Doubts,
} from './know/hold/balance.ts';
export { type CreepFound, creepFound, type HoldReading } from './know/hold/creep.ts';
export {
  type Explained,
  type Explanation,
  EXPLANATIONS,
  gaugesExplained,
  partedExplained,
  type Ranked,
  type Teller,
} from './know/odd/explain.ts';
export { elasticBy, type ElasticPoint, gaugesApart } from './know/odd/gauges.ts';
export { type Level, levelBehind, levelNow, levelOf } from './know/odd/level.ts';
export { girthsNearSeam } from './know/odd/nearSeam.ts';
export { type Parted, partedGirth } from './know/odd/parted.ts';
export { SLIP_READINGS, slipOf } from './know/odd/slip.ts';
