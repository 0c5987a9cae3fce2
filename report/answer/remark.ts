/** A remark of a forecast, and what holds for every forecast, in whole sentences. */
import type { Limit, Remark } from '@hoopwright/core/stretch';
import { say, sayStated } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { sentence } from '../words/sentence.ts';

const BURSTS = {
  'pressure maximum': 'remarkBurstsPressure',
  'local necking': 'remarkBurstsNecking',
  seam: 'remarkBurstsSeam',
} as const satisfies Record<Limit['kind'], string>;

export function remarkSentence(remark: Remark, manner: Manner = USUAL_MANNER): string {
  const pressure = (value: number): string => say(manner, 'pressure', value);
  const strain = (value: number): string => say(manner, 'strain', value);
  switch (remark.code) {
    case 'no maximum':
      return sentence(manner, 'remarkNoMaximum', { reason: remark.reason });
    case 'bursts before target':
      return sentence(manner, BURSTS[remark.limit.kind], {
        pressure: pressure(remark.limit.pressure),
        target: pressure(remark.target),
      });
    case 'growth not reached':
      return sentence(manner, 'remarkGrowthNotReached', {
        asked: say(manner, 'growth', remark.asked),
        pressure: pressure(remark.limit.pressure),
        growth: say(manner, 'growth', remark.limit.growth),
      });
    case 'beyond evidence':
      return sentence(manner, 'remarkBeyondEvidence', {
        pressure: pressure(remark.pressure),
        plastic: strain(remark.plastic),
        evidence: strain(remark.evidence),
      });
    case 'hold above target':
      return sentence(manner, 'remarkHoldAbove', { pressure: pressure(remark.pressure) });
    case 'gives way in hold':
      return sentence(manner, 'remarkGivesWay', {
        pressure: pressure(remark.pressure),
        minutes: say(manner, 'minutes', remark.after),
      });
    case 'flat head':
      return sentence(manner, remark.end === 'top' ? 'remarkFlatTop' : 'remarkFlatBottom', {
        pressure: pressure(remark.limit),
      });
    case 'seam strain':
      return sentence(manner, 'remarkSeamStrain', {
        strain: strain(remark.strain),
        plate: strain(remark.plate),
        use: say(manner, 'share', remark.use),
      });
    case 'release stuck':
      return sentence(manner, 'remarkReleaseStuck', { reason: remark.reason });
    case 'no rate effect':
      return sentence(manner, 'remarkNoRate');
    case 'power law':
      return sentence(manner, 'remarkPowerLaw');
    case 'path stuck':
      return sentence(manner, 'remarkPathStuck', {
        pressure: pressure(remark.pressure),
        reason: remark.reason,
      });
  }
}

/** What no forecast of this kind can know. The wall limits of the standards are from memory. */
export const standingNotes = (manner: Manner = USUAL_MANNER): string[] => [
  sentence(manner, 'standingWrinkles'),
  sentence(manner, 'standingBulging'),
  sentence(manner, 'standingStandards', {
    from: sayStated(manner, 'length', 1),
    to: sayStated(manner, 'length', 3),
  }),
];
