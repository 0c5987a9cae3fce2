/** What the published formulas say of the knuckle of each head, in one sentence. */
import { flowOf } from '@hoopwright/core/steel';
import { waterDensity } from '@hoopwright/core/stretch';
import { knuckleVerdict, type KnuckleVerdict, type Tank } from '@hoopwright/core/tank';
import { GRAVITY } from '@hoopwright/core/units';
import { say } from '../figure/figure.ts';
import type { Manner } from '../figure/manner.ts';
import { sentence } from '../words/sentence.ts';

type End = 'top' | 'bottom';

/** Plastic strain at which the proof stress is read. */
const PROOF = 0.002;

/** Verdict on a head when the gauge shows `pressure` (MPa). */
export function headVerdict(
  tank: Tank,
  end: End,
  pressure: number,
): { verdict: KnuckleVerdict; pressure: number } {
  const head = tank.heads[end];
  const flow = new Float64Array(2);
  flowOf(head.steel.flow, 1).at(PROOF + (head.formingStrain ?? 0), flow);
  const there = pressure + liquidHead(tank, end);
  const load = { pressure: there, proof: flow[0], insideDiameter: tank.insideDiameter };
  return { verdict: knuckleVerdict(head, load), pressure: there };
}

/** Weight of the water between the gauge and the tangent line of a head, MPa; only of a tank that stands upright. */
function liquidHead({ stand, length, water }: Tank, end: End): number {
  if (stand?.axis !== 'upright') return 0;
  const height = end === 'top' ? length : 0;
  return waterDensity(water.temperature) * GRAVITY * (stand.gauge - height);
}

const SENTENCES = {
  'no sign': { top: 'topKnuckleQuiet', bottom: 'bottomKnuckleQuiet' },
  'watch the knuckle': { top: 'topKnuckleWatch', bottom: 'bottomKnuckleWatch' },
  'outside validity': { top: 'topKnuckleUncovered', bottom: 'bottomKnuckleUncovered' },
  'no knuckle': { top: 'topKnuckleNone', bottom: 'bottomKnuckleNone' },
} as const;

export function knuckleSentence(tank: Tank, end: End, gauge: number, manner: Manner): string {
  const { verdict, pressure } = headVerdict(tank, end, gauge);
  if (verdict.verdict === 'outside validity' || verdict.verdict === 'no knuckle')
    return sentence(manner, SENTENCES[verdict.verdict][end]);
  const lowest = verdict.pressures
    .filter((one) => one.outside.length === 0 && one.says !== 'knuckle yields through')
    .reduce((a, b) => (b.pressure < a.pressure ? b : a));
  return sentence(manner, SENTENCES[verdict.verdict][end], {
    pressure: say(manner, 'pressure', pressure),
    limit: say(manner, 'pressure', lowest.pressure),
    source: lowest.name,
  });
}
