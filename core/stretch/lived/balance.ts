/** What is in the tank: water counted at atmospheric pressure and the temperature of filling, and the air trapped with it. */
import type { Condition } from '../../shell/solve.ts';
import { ATMOSPHERE } from '../../units.ts';
import { airCompliance, STEEL_EXPANSION, waterCompliance, waterCompression, waterDensity } from '../water.ts';
import type { Warmth } from './weather.ts';

const KELVIN = 273.15;

export interface Contents {
  readonly warmth: Warmth;
  /** Temperature of water and wall at filling, °C. */
  readonly filledAt: number;
  /** Trapped air as it would be at filling, mm³. */
  readonly air: number;
}

/** Water that a room of `inside` (mm³, as the cold shell has it) holds at a pressure, mm³ at filling conditions. */
export function waterHeld(inside: number, pressure: number, { warmth, filledAt, air }: Contents): number {
  const room = inside * (1 + 3 * STEEL_EXPANSION * (warmth.wall - filledAt));
  const warm = (warmth.water + KELVIN) / (filledAt + KELVIN);
  const liquid = room - (air * warm * ATMOSPHERE) / (ATMOSPHERE + Math.max(pressure, 0));
  const squeezed = liquid + waterCompression(liquid, pressure, warmth.water);
  return (squeezed * waterDensity(warmth.water)) / waterDensity(filledAt);
}

/** Way out for water: so many mm³/s at 1 MPa, with the root of the pressure (an orifice). */
export type Opening = number;

/** mm³/s through an opening; straight under a hundredth of a bar, where the root would be too steep for Newton. */
export function outflow(opening: Opening, pressure: number): number {
  return pressure <= 0 ? 0 : (opening * pressure) / Math.sqrt(pressure + SOFT);
}
const SOFT = 1e-3;

const outflowSlope = (opening: Opening, pressure: number): number =>
  pressure <= 0 ? opening / Math.sqrt(SOFT) : (opening * (0.5 * pressure + SOFT)) / (pressure + SOFT) ** 1.5;

export interface Exchange extends Contents {
  /** mm³ that were in. */
  readonly water: number;
  /** mm³ that the pump adds in this step. */
  readonly added: number;
  /** s. */
  readonly seconds: number;
  readonly opening: Opening;
  /** Inside of the tank and volume under the line when the step began. */
  readonly from: { readonly inside: number; readonly volume: number };
}

/** Zero where the tank holds what was in, was added and did not leave. */
export function waterKept(step: Exchange): Condition {
  const { from, opening, seconds } = step;
  const inside = (volume: number): number => from.inside + volume - from.volume;
  return {
    value: (volume, pressure) =>
      waterHeld(inside(volume), pressure, step) -
      (step.water + step.added - seconds * outflow(opening, pressure)),
    slope: (volume, pressure) => [
      1,
      waterCompliance(inside(volume), pressure, step.warmth.water) +
        airCompliance(step.air, Math.max(pressure, 0)) +
        seconds * outflowSlope(opening, pressure),
    ],
    tolerance: 1e-9 * from.inside,
  };
}
