/** One likely steel, for what hardly changes from steel to steel: litres, rates, how girths go beside one another. */
import type { SteelDraw } from '@hoopwright/core/steel';
import type { QuickPath } from '@hoopwright/core/stretch';
import { fromLitre } from '@hoopwright/core/units';
import type { Plan } from '../../plan/plan.ts';

/** The draw whose sum of inputs is in the middle would do as well: any likely steel gives the litres and the rates. */
export const middleOf = (draws: readonly SteelDraw[]): SteelDraw =>
  [...draws].sort((a, b) => a.factors[1] - b.factors[1])[draws.length >> 1];

/** Growth rate (1/s) that the pump gives on arrival: its flow over the room of a unit of growth. */
export function arrivalRate({ water }: Plan, path: QuickPath | undefined): number {
  if (water.flow_L_per_min === undefined || path === undefined) return USUAL_RATE;
  const j = path.growth.findIndex((growth) => growth > 0.03);
  const room = (path.volume[j] - path.volume[j - 1]) / (path.growth[j] - path.growth[j - 1]);
  return fromLitre(water.flow_L_per_min) / 60 / room;
}
const USUAL_RATE = 3e-5;
