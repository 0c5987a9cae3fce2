/** The tank that would carry the same duty without being stretched: what the weight is compared with. */
import { flowOf } from '../../steel/flow.ts';
import { type Duty, stretchPressure, type Tank } from '../../tank/tank.ts';

export interface Unstretched {
  /** Wall of the barrel, mm. */
  readonly wall: number;
  /** t. */
  readonly mass: number;
  /** Hoop stress it is allowed, MPa: the flow stress at 0.2 % plastic strain. */
  readonly allowed: number;
}

/**
 * Wall whose hoop stress p r/t (mean radius) at the stretch pressure reaches Rp0.2 of the plate: the same factor
 * against yield that the stretched tank has against new yield, by the rule of the codes (EN 13445-3 7.4.2, f = Rp0.2/1.5
 * at the working pressure). All walls of the tank are scaled alike for the mass. Undefined from twice Rp0.2 on: no wall
 * carries such a pressure by this rule.
 */
export function unstretchedFor(tank: Tank, duty: Duty, mass: number): Unstretched | undefined {
  const course = tank.courses.reduce((a, b) => (b.length > a.length ? b : a));
  const flow = new Float64Array(2);
  flowOf(course.steel.flow, 1).at(0.002, flow);
  const pressure = stretchPressure(duty);
  if (pressure >= 2 * flow[0]) return undefined;
  // t = p (Di + t)/2 / f.
  const wall = (pressure * tank.insideDiameter) / (2 * flow[0] - pressure);
  return { wall, mass: (mass * wall) / course.wall, allowed: flow[0] };
}
