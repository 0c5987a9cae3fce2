/** Where a flat head stops being flat. */
import { flowOf } from '../../steel/flow.ts';
import { plateLimitPressure } from '../../tank/plate.ts';
import type { Tank } from '../../tank/tank.ts';

export interface FlatLimit {
  readonly end: 'top' | 'bottom';
  /** MPa. */
  readonly pressure: number;
}

/**
 * Pressure at which the weaker flat head dishes: plastic limit of a round plate free to turn at its edge, since the thin
 * barrel holds little. Undefined for a tank without one. Yield stress: the curve at 0.2 % plastic strain.
 */
export function flatLimitOf(tank: Tank): FlatLimit | undefined {
  const flow = new Float64Array(2);
  return (['bottom', 'top'] as const)
    .filter((end) => tank.heads[end].shape.kind === 'flat')
    .map((end): FlatLimit => {
      const { wall, steel } = tank.heads[end];
      flowOf(steel.flow).at(0.002, flow);
      const plate = { radius: tank.insideDiameter / 2, thickness: wall, edge: 'free to turn' } as const;
      return { end, pressure: plateLimitPressure(plate, flow[0]) };
    })
    .sort((a, b) => a.pressure - b.pressure)[0];
}
