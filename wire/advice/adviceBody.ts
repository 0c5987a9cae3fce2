/** Body of an `advice` entry: what was advised, why, and on which readings. */
import type { AdviceBody } from '../day/body.ts';
import type { Advice } from './rules.ts';
import { explanationSentence, reasonSentence, tellerSentence } from './say.ts';

/** The same while the advice says the same for the same reasons, of the same step. */
export const toldBy = ({ state, upTo_bar, reasons }: Advice): string =>
  [state, upTo_bar?.toFixed(1) ?? '', ...reasons.map(({ why }) => why)].join();

/** Advice as it stands in the record. `readings`: the entries behind it. */
export function adviceBody(advice: Advice, readings: readonly number[]): AdviceBody {
  const oddity = advice.reasons.find((reason) => reason.why === 'oddity')?.oddity;
  const explanations = oddity?.explained.ranked
    .slice(0, 3)
    .map(({ explanation }) => explanationSentence(explanation));
  const tell = oddity?.explained.tell;
  return {
    state: advice.state,
    reasons: advice.reasons.map(reasonSentence),
    readings: [...new Set(readings)].sort((a, b) => a - b),
    ...(explanations === undefined ? {} : { explanations }),
    ...(tell === undefined ? {} : { tellApart: tellerSentence(tell) }),
  };
}
