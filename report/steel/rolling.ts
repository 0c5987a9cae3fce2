/** The plain finding about rolling: what it adds, and whether it can explain a tank that is stiffer than its range. */
import type { RollingSaid } from '@hoopwright/wire/evidence';
import { say, sayStated } from '../figure/figure.ts';
import { type Manner, USUAL_MANNER } from '../figure/manner.ts';
import { STEEL_ENGLISH } from './english.ts';
import { filled } from './filled.ts';

export function rollingText(said: RollingSaid, manner: Manner = USUAL_MANNER): string {
  const percent = (value: number): string => say(manner, 'strain', value / 100);
  const text = filled(said.explains ? 'rolling' : 'rollingNot', {
    thickness: sayStated(manner, 'wall', said.thickness_mm),
    diameter: sayStated(manner, 'length', said.insideDiameter_mm),
    surface: percent(said.surface_percent),
    average: percent(said.average_percent),
    more: percent(said.stiffer_percent),
    plastic: percent(said.at_percent),
    excess: percent(said.outOfRange_percent),
  });
  return said.noted ? text : `${text} ${STEEL_ENGLISH.rollingOnce}`;
}
