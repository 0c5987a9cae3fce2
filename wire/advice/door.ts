/** What other packages may use of the advice. */
export type { AdviceBody } from '../day/body.ts';
export { adviceBody, toldBy } from './adviceBody.ts';
export { Adviser, type AdviserGivens } from './adviser.ts';
export type { Facts, HoldFacts, LeakFacts, Oddity, Read, Stretchable } from './facts.ts';
export { type ForecastBody, type RangeBody, saysOther } from './forecastBody.ts';
export { neverReadyBody, readyBody, type ReadyBody, type Solved, solvingBody } from './readyBody.ts';
export { type Advice, advise, type Reason } from './rules.ts';
export {
  explanationSentence,
  forecastLine,
  forecastSentence,
  reasonSentence,
  tellerSentence,
} from './say.ts';
